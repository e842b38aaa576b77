"""Long work beside the window: its end, its errors, and the button that stops it."""

import threading
import time
from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox, QProgressDialog, QWidget

from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.work import run_with_progress
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.exchange import StoppedError
from tests.window.conftest import Answerer, press


def test_work_runs_beside_the_window_and_comes_to_its_end(window: MainWindow) -> None:
    threads: list[int] = []

    def work(tell: Callable[[int, int], None], stop: Callable[[], bool]) -> None:
        threads.append(threading.get_ident())
        tell(1, 2)
        assert not stop()

    assert run_with_progress(window, "Counting", work)
    assert threads[0] != threading.get_ident()


def test_a_refusal_is_shown_in_its_own_sentence(window: MainWindow, answer: Answerer) -> None:
    def work(_tell: object, _stop: object) -> None:
        raise RefusedError("There is already a file.")

    seen: list[str] = []

    def read(box: QWidget) -> None:
        assert isinstance(box, QMessageBox)
        seen.append(box.text())

    answer(read)
    assert not run_with_progress(window, "Writing", work)
    assert seen == ["There is already a file."]


def test_escape_stops_it_and_nothing_is_changed(window: MainWindow, answer: Answerer) -> None:
    told: list[bool] = []

    def work(tell: Callable[[int, int], None], stop: Callable[[], bool]) -> None:
        until = time.monotonic() + 20
        while time.monotonic() < until:
            tell(1, 3)
            if stop():
                told.append(True)
                raise StoppedError
            time.sleep(0.005)

    def stop_it(dialog: QWidget) -> None:
        assert isinstance(dialog, QProgressDialog)
        assert dialog.windowTitle() == "Reading"
        press(Qt.Key.Key_Escape, on=dialog)

    answer(stop_it)
    assert not run_with_progress(window, "Reading", work)
    assert told == [True]
    assert window.told_line.sentence == "Stopped. Nothing was changed."
