"""The program started as a person starts it and closed again; its log, its language, its last resort."""

import json
import logging
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook import app as program
from beeworkbook.app import has_screen, start_log, use_language
from beeworkbook.places import log_path
from beeworkbook.words import Catalogue, installed_catalogue, say, use_catalogue
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, make_orchard
from tests.window.conftest import Answerer

START = """
import datetime, sys
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
app = QApplication([])
from beeworkbook.window.shell import Shell
def look():
    shell = next(w for w in app.topLevelWidgets() if isinstance(w, Shell))
    window = shell.centralWidget()
    if not getattr(window, "is_furnished", False):
        return
    timer.stop()
    print(shell.windowTitle(), window.desk.spot.view.value, window.desk.colony.name)
    shell.close()
timer = QTimer()
timer.timeout.connect(look)
timer.start(50)
from beeworkbook.app import run
sys.exit(run(Path(sys.argv[1]) if len(sys.argv) > 1 else None, lambda: datetime.date(2026, 5, 16)))
"""


@pytest.fixture(autouse=True)
def _plain_logging() -> Iterator[None]:
    root = logging.getLogger()
    held, level = list(root.handlers), root.level
    yield
    for handler in set(root.handlers) - set(held):
        handler.close()
    root.handlers[:] = held
    root.setLevel(level)


@pytest.fixture(autouse=True)
def _plain_words() -> Iterator[None]:
    held = installed_catalogue()
    yield
    use_catalogue(held)


@pytest.fixture
def answer(qtbot: QtBot) -> Iterator[Answerer]:  # noqa: ARG001  # a timer needs a program
    made = Answerer()
    yield made
    made.finish()


def start(home: Path, *paths: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", START, *map(str, paths)],
        env={**os.environ, "BEEWORKBOOK_HOME": str(home), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )


def test_it_opens_a_workbook_and_the_next_start_reopens_it(home: Path, tmp_path: Path) -> None:
    path = tmp_path / "orchard.beebook"
    make_orchard(path).close()
    first = start(home, path)
    assert (first.returncode, first.stdout.strip()) == (0, "Orchard book round Pear Tree"), first.stderr
    assert json.loads((home / "settings.json").read_text(encoding="utf-8"))["last_workbook"] == str(path)
    again = start(home)
    assert (again.returncode, again.stdout.strip()) == (0, "Orchard book round Pear Tree"), again.stderr
    Workbook.open(path, today=DAY).close()


def test_what_nobody_foresaw_is_logged_and_shown_once_and_the_program_goes_on(
    qtbot: QtBot, answer: Answerer
) -> None:
    start_log()
    shell = QWidget()
    qtbot.addWidget(shell)
    hook = program._hook(shell)

    def read(box: QWidget) -> None:
        assert isinstance(box, QMessageBox)
        hook(ValueError, ValueError("a second while the first is read"), None)
        assert "Nothing is sent" in box.text()

    answer(read)
    hook(ValueError, ValueError("a slip of ours"), None)
    assert answer.seen == ["Something went wrong in the program"]
    logged = log_path().read_text(encoding="utf-8")
    assert "ValueError: a slip of ours" in logged
    assert "a second while the first is read" in logged


def test_a_log_that_cannot_be_written_is_no_reason_to_stop(
    home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (home / "file").write_text("in the way", encoding="utf-8")
    monkeypatch.setenv("BEEWORKBOOK_HOME", str(home / "file"))
    monkeypatch.setattr(logging, "raiseExceptions", False)
    start_log()
    logging.getLogger("beeworkbook").warning("nobody hears this")


def test_the_chosen_language_is_used_and_a_missing_one_is_english(caplog: pytest.LogCaptureFixture) -> None:
    use_catalogue(Catalogue({"Keep": "Behalten"}))
    use_language("no such language")
    assert "could not be loaded" in caplog.text
    assert say("Keep") == "Behalten"
    for nothing in (None, "", 7):
        use_language(nothing)
    assert say("Keep") == "Behalten"


@pytest.mark.parametrize(
    ("environment", "seen"),
    [
        ({"DISPLAY": ":0"}, True),
        ({"WAYLAND_DISPLAY": "wayland-0"}, True),
        ({}, False),
        ({"DISPLAY": ":0", "QT_QPA_PLATFORM": "offscreen"}, False),
        ({"QT_QPA_PLATFORM": "vnc"}, True),
    ],
)
def test_a_screen_is_known_by_the_environment(
    monkeypatch: pytest.MonkeyPatch, environment: dict[str, str], *, seen: bool
) -> None:
    monkeypatch.setattr(sys, "platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    assert has_screen() is seen


def test_other_systems_have_a_screen(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "win32")
    assert has_screen()
