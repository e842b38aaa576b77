"""Start the window: show it, then load what it needs, open the workbook, and put the two together.

The shell is painted before the store, the charts and the papers are imported, so that a start is felt
at once.
"""

import logging
import os
import sys
import traceback
from collections.abc import Callable
from datetime import date
from logging.handlers import RotatingFileHandler
from pathlib import Path
from types import TracebackType
from typing import Final

from beeworkbook.places import log_path, settings_path
from beeworkbook.words import load_catalogue, say, use_catalogue

_LOG_BYTES: Final = 500_000
_log = logging.getLogger(__name__)


def run(path: Path | None, today: Callable[[], date], *, picture: Path | None = None) -> int:
    """Open the window on a workbook (or where it was left) and stay until it is closed.

    `picture` writes a picture of the window once it is painted and closes it, for the documents.
    """
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    from beeworkbook.qt import theme
    from beeworkbook.qt.icons import program_icon
    from beeworkbook.qt.memory import Memory
    from beeworkbook.qt.palette import DARK, LIGHT
    from beeworkbook.window.shell import Shell

    start_log()
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)  # noqa: S101  # there is no other kind here
    app.setApplicationName("beeworkbook")
    app.setWindowIcon(program_icon())
    memory = Memory(settings_path())
    use_language(memory.get("language"))
    theme.load_fonts()
    theme.apply_theme(app, DARK if memory.get("dark") else LIGHT)
    shell = Shell(memory)
    sys.excepthook = _hook(shell)
    shell.show()

    def furnish() -> None:
        from beeworkbook.window.opening import Opener

        opener = Opener(shell, memory, today)
        if not opener.begin(path):
            app.exit(1)
            return
        if picture is not None:
            QTimer.singleShot(900, lambda: (shell.grab().save(str(picture)), shell.close()))

    QTimer.singleShot(0, furnish)
    return app.exec()


def has_screen() -> bool:
    """Whether a window could be shown here."""
    if sys.platform in {"win32", "darwin"}:
        return True
    chosen = os.environ.get("QT_QPA_PLATFORM", "")
    if chosen in {"offscreen", "minimal", "vnc"}:
        return chosen == "vnc"
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def start_log() -> None:
    """Keep a small log in the keeper's own folder; a folder that cannot be written is no reason to stop."""
    place = log_path()
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        handler = RotatingFileHandler(place, maxBytes=_LOG_BYTES, backupCount=1, encoding="utf-8", delay=True)
    except OSError:
        return
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    root = logging.getLogger()
    if not any(isinstance(held, RotatingFileHandler) for held in root.handlers):
        root.addHandler(handler)
        root.setLevel(logging.INFO)


def use_language(chosen: object) -> None:
    """Install the catalogue the keeper chose; English when there is none of that name."""
    from beeworkbook.resources import MissingResourceError, resource

    if not isinstance(chosen, str) or not chosen:
        return
    try:
        use_catalogue(load_catalogue(resource("languages", f"{chosen}.json")))
    except (MissingResourceError, OSError, ValueError):
        _log.warning("the language %s could not be loaded", chosen, exc_info=True)


def _hook(shell: object) -> Callable[[type[BaseException], BaseException, TracebackType | None], None]:
    """What to do with an error nobody foresaw: log it, show a sentence, go on."""
    shown = [False]

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if issubclass(kind, KeyboardInterrupt):
            sys.__excepthook__(kind, error, trace)
            return
        details = "".join(traceback.format_exception(kind, error, trace))
        _log.error("unforeseen\n%s", details)
        if shown[0]:
            return
        shown[0] = True
        try:
            from PySide6.QtWidgets import QWidget

            from beeworkbook.window.dialogs.told import show_unforeseen

            show_unforeseen(shell if isinstance(shell, QWidget) else None, details)
        finally:
            shown[0] = False

    return hook


def title_words() -> str:
    """The program's name as it stands in a title."""
    return say("beeworkbook")
