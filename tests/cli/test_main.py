import os
import subprocess
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import beeworkbook.app as the_app
from beeworkbook import __version__
from beeworkbook.cli import opening
from beeworkbook.cli.command import Command, CommandError, Today
from beeworkbook.cli.commands import COMMANDS
from beeworkbook.cli.main import main
from tests.cli.conftest import Typed


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[tuple[Path | None, date]]:
    """What the window was asked to open, in its place."""
    seen: list[tuple[Path | None, date]] = []

    def run(path: Path | None, today: Callable[[], date]) -> int:
        seen.append((path, today()))
        return 0

    monkeypatch.setattr(the_app, "has_screen", lambda: True)
    monkeypatch.setattr(the_app, "run", run)
    return seen


def replace(monkeypatch: pytest.MonkeyPatch, error: BaseException) -> None:
    """Let `frames` end in this."""

    def fail(*_words: object) -> int:
        raise error

    frames = COMMANDS["frames"]
    broken = Command("frames", frames.summary, frames.example, frames.words, fail)
    monkeypatch.setitem(COMMANDS, "frames", broken)


def test_help_names_every_command_and_the_version_is_said(typed: Typed) -> None:
    told = typed("--help")
    assert told.code == 0
    assert all(f"  {name} " in told.out for name in COMMANDS)
    assert typed("--version").out == f"beeworkbook {__version__}\n"


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_help_with_its_example(typed: Typed, name: str) -> None:
    told = typed(name, "--help")
    assert told.code == 0
    assert f"usage: beeworkbook {name}" in told.out
    assert f"Example:\n  {COMMANDS[name].example}" in told.out


def test_nothing_typed_opens_the_window_where_it_was_left(opened: list[tuple[Path | None, date]]) -> None:
    assert main([]) == 0
    assert [path for path, _ in opened] == [None]


def test_a_workbook_or_any_file_is_opened_on_the_day_that_was_said(
    opened: list[tuple[Path | None, date]], tmp_path: Path
) -> None:
    book, other = tmp_path / "a.beebook", tmp_path / "frames"
    book.touch()
    other.touch()
    assert main([str(book), "--today", "2026-05-16"]) == 0
    assert main(["--today=2025-01-02", str(other)]) == 0
    assert opened == [(book, date(2026, 5, 16)), (other, date(2025, 1, 2))]


def test_the_clock_tells_today_if_nothing_was_said(opened: list[tuple[Path | None, date]]) -> None:
    before = date.today()  # noqa: DTZ011 - the keeper's own day
    main([])
    assert before <= opened[0][1] <= date.today()  # noqa: DTZ011


@pytest.mark.parametrize(
    ("words", "code", "part"),
    [
        (["nothing-of-the-kind"], 2, "neither a command nor a workbook"),
        (["gone.beebook"], 1, "no workbook at gone.beebook"),
        (["--nonsense"], 2, "neither a command nor a workbook"),
        (["frames", "--nonsense"], 2, "--nonsense"),
        (["new"], 2, "WORKBOOK"),
        (["season", "x.beebook"], 2, "COLONY"),
        (["--today"], 2, "is not a day"),
        (["--today", "16 May"], 2, "“16 May” is not a day"),
        (["check", "gone.beebook"], 1, "gone.beebook"),
        (["check", "a\0b"], 2, "is no path"),
        (["check", ""], 2, "is no path"),
        (["x" * 5000], 2, "neither"),
    ],
)
def test_an_error_is_one_sentence_and_a_code(
    capsys: pytest.CaptureFixture[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    words: list[str],
    code: int,
    part: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(words) == code
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.startswith("beeworkbook: ")
    assert told.err.endswith(".\n")
    assert told.err.count("\n") == 1
    assert part in told.err


def test_a_second_word_after_a_workbook_is_too_much(typed: Typed, sample: Path) -> None:
    told = typed(sample, "check")
    assert told.code == 2
    assert "“check” is too much" in told.err


def test_a_day_after_two_dashes_is_no_option(typed: Typed) -> None:
    assert typed("comb", "--", "--today").code == 2


def test_without_a_screen_the_papers_and_pictures_are_written(
    typed: Typed, sample: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[Path | None] = []
    monkeypatch.setattr(the_app, "has_screen", lambda: False)

    def note(path: Path | None, _today: Today) -> int:
        asked.append(path)
        return 0

    monkeypatch.setattr("beeworkbook.cli.unattended.do_unattended", note)
    told = typed(sample)
    assert (told.code, asked) == (0, [sample])
    assert "no screen" in told.err


def test_what_was_not_foreseen_is_not_hidden(typed: Typed, monkeypatch: pytest.MonkeyPatch) -> None:
    replace(monkeypatch, ZeroDivisionError())
    with pytest.raises(ZeroDivisionError):
        typed("frames")


@pytest.mark.parametrize(
    ("error", "part"), [(KeyboardInterrupt(), "Stopped"), (CommandError("The shed is shut."), "shut")]
)
def test_what_stops_a_command_is_said(
    typed: Typed, monkeypatch: pytest.MonkeyPatch, error: BaseException, part: str
) -> None:
    replace(monkeypatch, error)
    told = typed("frames")
    assert told.code == 1
    assert part in told.err


def test_a_reader_that_goes_away_is_no_trouble(tmp_path: Path) -> None:
    read, write = os.pipe()
    os.close(read)
    command = [sys.executable, "-m", "beeworkbook", "frames", "--json"]
    with os.fdopen(write, "wb") as gone:
        told = subprocess.run(
            command,
            stdout=gone,
            stderr=subprocess.PIPE,
            check=False,
            cwd=tmp_path,
            env={**os.environ, "PYTHONPATH": str(Path(opening.__file__).parents[2])},
        )
    assert (told.returncode, told.stderr) == (1, b"")


def test_a_console_without_these_letters_is_no_trouble(tmp_path: Path) -> None:
    command = [sys.executable, "-m", "beeworkbook", "frames"]
    told = subprocess.run(
        command,
        capture_output=True,
        check=False,
        cwd=tmp_path,
        env={
            **os.environ,
            "PYTHONPATH": str(Path(opening.__file__).parents[2]),
            "PYTHONIOENCODING": "ascii",
        },
    )
    assert (told.returncode, told.stderr) == (0, b"")
    assert b"\\xd7" in told.stdout


@given(st.lists(st.text(max_size=12), min_size=1, max_size=5))
def test_no_words_bring_it_down(words: list[str]) -> None:
    if words[0].endswith(".beebook"):
        return
    assert main(["comb", *words]) in {0, 1, 2}
