"""Long work in a thread of its own, with progress and a way to stop it, while the window stays alive."""

import logging
import threading
from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEventLoop, Qt, QTimer
from PySide6.QtWidgets import QProgressDialog

from beeworkbook.window.dialogs.told import show_sentence
from beeworkbook.words import say
from beeworkbook.workbook.errors import RefusedError, StoreError
from beeworkbook.workbook.exchange import StoppedError

if TYPE_CHECKING:
    from beeworkbook.window.main_window import MainWindow

Tell = Callable[[int, int], None]
Stop = Callable[[], bool]

_LOOK_MS: Final = 40
_log = logging.getLogger(__name__)


def run_with_progress(window: "MainWindow", title: str, work: Callable[[Tell, Stop], object]) -> bool:
    """Do `work` beside the window; it tells how much of the whole is done and asks whether to stop.

    True when it came to its end; what went wrong is shown in its own sentence, and False is given.
    """
    share, stopped = [0.0], threading.Event()
    failed: list[Exception] = []

    def tell(done: int, whole: int) -> None:
        share[0] = done / max(1, whole)

    def do() -> None:
        try:
            work(tell, stopped.is_set)
        except Exception as error:  # noqa: BLE001  # shown below, in the window's own thread
            failed.append(error)

    dialog = QProgressDialog(title, say("Stop"), 0, 1000, window.shell)
    dialog.setWindowTitle(title)
    dialog.setWindowModality(Qt.WindowModality.WindowModal)
    dialog.setMinimumDuration(300)
    dialog.canceled.connect(stopped.set)
    thread = threading.Thread(target=do, daemon=True)
    loop = QEventLoop()
    timer = QTimer()

    def look() -> None:
        if not thread.is_alive():
            loop.quit()
        elif not stopped.is_set():
            dialog.setValue(min(999, int(share[0] * 1000)))

    timer.timeout.connect(look)
    thread.start()
    timer.start(_LOOK_MS)
    if thread.is_alive():
        loop.exec()
    timer.stop()
    dialog.reset()
    return _ended(window, title, failed)


def _ended(window: "MainWindow", title: str, failed: list[Exception]) -> bool:
    if not failed:
        return True
    error = failed[0]
    if isinstance(error, StoppedError):
        window.tell(say("Stopped. Nothing was changed."))
    else:
        if not isinstance(error, (RefusedError, StoreError)):
            _log.error("work failed: %s", title, exc_info=error)
        show_sentence(window.shell, title, str(error))
    return False
