"""One line that a terminal rewrites; elsewhere a line only when there is something new to say."""

import io
import re

import pytest

from beeworkbook.setup import progress
from beeworkbook.setup.progress import Progress


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_terminal_shows_one_line_rewritten() -> None:
    stream = Terminal()
    with Progress("fetching", stream) as line:
        line.say("done")
    shown = [part.rstrip() for part in stream.getvalue().split("\r")]
    assert re.fullmatch(r"fetching · \d+:\d\d", shown[1])
    assert re.fullmatch(r"done · \d+:\d\d", shown[-1])
    assert stream.getvalue().count("\n") == 1


def test_a_line_never_runs_past_the_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    stream = Terminal()
    with Progress("x" * 200, stream):
        pass
    assert {len(part.rstrip("\n")) for part in stream.getvalue().split("\r")[1:]} == {39}


def test_a_log_gets_a_line_at_the_start_and_at_the_end() -> None:
    stream = io.StringIO()
    with Progress("fetching", stream) as line:
        line.say("done")
    assert [text.split(" · ")[0] for text in stream.getvalue().splitlines()] == ["fetching", "done"]


def test_a_log_is_not_told_the_same_twice() -> None:
    stream = io.StringIO()
    with Progress("fetching", stream):
        pass
    assert len(stream.getvalue().splitlines()) == 1


def test_a_log_hears_of_a_change_now_and_then(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(progress, "_TICK_SECONDS", 0.001)
    monkeypatch.setattr(progress, "_PRINT_EVERY_SECONDS", 0.0)
    stream = io.StringIO()
    with Progress("one", stream) as line:
        line.say("two")
        while "two" not in stream.getvalue():
            pass
        line.say("three")
    assert [text.split(" · ")[0] for text in stream.getvalue().splitlines()] == ["one", "two", "three"]
