import subprocess
import threading
from types import SimpleNamespace
from typing import Any

import pytest
from PySide6.QtGui import QGuiApplication
from pytestqt.qtbot import QtBot

from beeworkbook.qt import motion
from beeworkbook.qt.motion import STILL_VARIABLE, Motion, wants_stillness


@pytest.mark.usefixtures("qapp")
def test_nothing_moves_where_nobody_sees_it() -> None:
    assert QGuiApplication.platformName() == "offscreen"
    assert not Motion().allowed()


def test_the_first_time_the_system_is_asked_and_then_its_answer_holds(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QGuiApplication, "platformName", lambda: "xcb")
    answers = threading.Event()

    def answer(_platform: str) -> bool:
        answers.wait()
        return False

    monkeypatch.setattr(motion, "wants_stillness", answer)
    asked = Motion()
    assert not asked.allowed()
    answers.set()
    qtbot.waitUntil(asked.allowed)
    monkeypatch.setenv(STILL_VARIABLE, "1")
    assert not asked.allowed()


def test_a_system_that_wants_stillness_gets_it(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(QGuiApplication, "platformName", lambda: "xcb")
    monkeypatch.setattr(motion, "wants_stillness", lambda _platform: True)
    asked = Motion()
    asked.allowed()
    assert asked._asking is not None
    asked._asking.join()
    assert not asked.allowed()
    assert qtbot is not None


@pytest.mark.parametrize(
    ("platform", "answer", "still"),
    [
        ("linux", "false\n", True),
        ("linux", "true\n", False),
        ("darwin", "1\n", True),
        ("darwin", "0\n", False),
        ("linux", "", False),
    ],
)
def test_each_system_answers_in_its_own_words(
    monkeypatch: pytest.MonkeyPatch, platform: str, answer: str, *, still: bool
) -> None:
    monkeypatch.setattr("shutil.which", lambda name: f"/somewhere/{name}")
    monkeypatch.setattr(subprocess, "run", lambda *_a, **_k: SimpleNamespace(stdout=answer))
    assert wants_stillness(platform) is still


def test_a_system_that_cannot_be_asked_or_does_not_answer_is_not_still(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def silent(*_words: Any, **_named: Any) -> None:
        raise subprocess.TimeoutExpired("gsettings", 2.0)

    monkeypatch.setattr("shutil.which", lambda _name: None)
    assert not wants_stillness("linux")
    assert not wants_stillness("plan9")
    monkeypatch.setattr("shutil.which", lambda name: f"/somewhere/{name}")
    monkeypatch.setattr(subprocess, "run", silent)
    assert not wants_stillness("linux")
