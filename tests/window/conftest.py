"""The whole window on a screen nobody sees, on a book with four colonies, worked with real keys.

What a dialog asks is answered by keys too: `answer` waits for the next dialog and hands it to a test.
"""

import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.qt import theme
from beeworkbook.qt.memory import Memory
from beeworkbook.qt.palette import LIGHT
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.window.shell import Shell
from tests.rounds.orchard import DAY, make_orchard

LOOK_MS = 15
MOST_SECONDS = 5.0
"""How long to wait for the keyboard to come back; a slow machine may need it, a fast one does not."""
NO_MODIFIER = Qt.KeyboardModifier.NoModifier


class Answerer(QObject):
    """Answers the dialogs of a window in the order they come, each with a function of the test's own."""

    def __init__(self) -> None:
        super().__init__()
        self._waiting: list[Callable[[QWidget], object]] = []
        self.seen: list[str] = []
        self.wrong: list[BaseException] = []
        self._timer = QTimer(self)
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self._look)

    def __call__(self, act: Callable[[QWidget], object]) -> None:
        """Do this to the next dialog. It is given up if the function leaves it open."""
        self._waiting.append(act)
        self._timer.start()

    def _look(self) -> None:
        dialog = QApplication.activeModalWidget()
        if dialog is None or not self._waiting:
            return
        if not dialog.isActiveWindow():
            dialog.activateWindow()
            return
        self._timer.stop()
        self.seen.append(dialog.windowTitle())
        try:
            self._waiting.pop(0)(dialog)
        except BaseException as error:  # noqa: BLE001  # raised again when the test ends
            self.wrong.append(error)
        if self._waiting:
            self._timer.start()
        elif isinstance(dialog, QDialog) and dialog.isVisible():
            dialog.done(0)

    @property
    def is_waiting(self) -> bool:
        """Whether a dialog is awaited that has not come yet."""
        return bool(self._waiting)

    def forget(self) -> None:
        """Await no more dialogs."""
        self._waiting.clear()
        self._timer.stop()

    def finish(self) -> None:
        """Every dialog that was awaited came, and nothing went wrong in answering it."""
        self._timer.stop()
        if self.wrong:
            raise self.wrong[0]
        assert not self._waiting, "a dialog was awaited that never came"


@pytest.fixture
def answer(qtbot: QtBot) -> Iterator[Answerer]:  # noqa: ARG001  # a timer needs a program
    made = Answerer()
    yield made
    made.finish()


@pytest.fixture
def memory(tmp_path: Path) -> Memory:
    return Memory(tmp_path / "settings.json")


@pytest.fixture
def orchard(tmp_path: Path) -> Path:
    """The file of a book with four colonies that were looked at a week ago."""
    path = tmp_path / "orchard.beebook"
    make_orchard(path).close()
    return path


@pytest.fixture
def shell(qtbot: QtBot, memory: Memory) -> Iterator[Shell]:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    theme.load_fonts()
    theme.apply_theme(app, LIGHT)
    made = Shell(memory)
    qtbot.addWidget(made, before_close_func=_let_go)
    made.setWindowState(Qt.WindowState.WindowNoState)
    made.resize(1366, 705)
    with qtbot.waitActive(made):
        made.show()
    yield made
    made.close()
    theme.apply_theme(app, LIGHT)


def _let_go(shell: QWidget) -> None:
    """Put the workbook away at the end of a test without being asked about what could not be kept."""
    opener = getattr(getattr(shell, "on_close", None), "__self__", None)
    if isinstance(opener, Opener):
        opener.put_away()


@pytest.fixture
def opener(shell: Shell, memory: Memory) -> Opener:
    return Opener(shell, memory, lambda: DAY)


@pytest.fixture
def window(qtbot: QtBot, opener: Opener, orchard: Path) -> MainWindow:
    """The window on the orchard, in its first round, with the keyboard on it."""
    assert opener.begin(orchard)
    assert opener.window is not None
    opener.window.shell.activateWindow()
    opener.window.focus_view()
    qtbot.waitUntil(lambda: QApplication.focusWidget() is not None)
    return opener.window


def hand() -> QWidget:
    """The widget that has the keyboard. After a dialog a system gives it back to the window; here we do."""
    until = time.monotonic() + MOST_SECONDS
    while (found := QApplication.focusWidget()) is None and time.monotonic() < until:
        dialog = QApplication.activeModalWidget()
        for each in QApplication.topLevelWidgets():
            if each is dialog or (dialog is None and isinstance(each, Shell) and each.isVisible()):
                each.activateWindow()
        QApplication.processEvents()
    assert found is not None, "the keyboard is nowhere"
    return found


def press(
    key: Qt.Key,
    modifier: Qt.KeyboardModifier = NO_MODIFIER,
    *,
    times: int = 1,
    on: QWidget | None = None,
) -> QWidget:
    """Press a key where the keyboard is, shortcuts and all; gives the widget that got it."""
    target = on or hand()
    for _ in range(times):
        target = on or hand()
        QTest.keyClick(target, key, modifier)
    return target


def write(text: str) -> QWidget:
    """Type where the keyboard is, replacing what is selected; gives the widget that got it."""
    for letter in text:
        QTest.keyClicks(hand(), letter)
    return hand()


CTRL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
ALT = Qt.KeyboardModifier.AltModifier
