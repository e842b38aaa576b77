"""Start the window: show it, then load what it needs, open the workbook, and put the two together.

The shell is painted before the store, the charts and the papers are imported, so that a start is felt
at once.
"""

import builtins
import gc
import logging
import os
import sys
import traceback
from collections.abc import Callable
from datetime import date
from pathlib import Path
from types import TracebackType
from typing import Final

from beeworkbook.places import log_path, settings_path
from beeworkbook.words import load_catalogue, use_catalogue

_LOG_BYTES: Final = 500_000
_SETTLED_MS: Final = 600
"""After a start: by then all is painted, and a short pause is not felt."""
_log = logging.getLogger(__name__)


def run(path: Path | None, today: Callable[[], date]) -> int:
    """Open the window on a workbook (or where it was left) and stay until it is closed."""
    gc.disable()  # nothing is thrown away while everything is being made
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import QApplication

    _import_plainly()
    from beeworkbook.qt import theme
    from beeworkbook.qt.first_paint import when_painted
    from beeworkbook.qt.memory import Memory
    from beeworkbook.qt.palette import DARK, LIGHT
    from beeworkbook.window.shell import Shell

    start_log()
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)  # noqa: S101  # there is no other kind here
    app.setApplicationName("beeworkbook")
    memory = Memory(settings_path())
    use_language(memory.get("language"))
    theme.load_fonts()
    theme.apply_theme(app, DARK if memory.get("dark") else LIGHT)
    shell = Shell(memory)
    sys.excepthook = _hook(shell)

    def furnish() -> None:
        from beeworkbook.window.opening import Opener

        opener = Opener(shell, memory, today)
        if not opener.begin(path, box_first=True):
            # The window that has it open came forward: what was asked for is seen.
            app.exit(0 if opener.brought_forward else 1)
        QTimer.singleShot(_SETTLED_MS, shell, settle)

    def settle() -> None:
        from beeworkbook.qt.icons import program_icon
        from beeworkbook.qt.spare import give_back

        app.setWindowIcon(program_icon())
        # What a start has made stays till the end: it need not be looked through again and again.
        gc.collect()
        gc.freeze()
        gc.enable()
        give_back()

    when_painted(shell, furnish)
    shell.show()
    return app.exec()


def _import_plainly() -> None:
    """Take Qt's import hook out: it reads the source of every module for a feature nobody asks for here.

    Measured: a quarter of the time to load, and all those sources kept in memory.
    """
    plain = getattr(builtins, "__orig_import__", None)
    if plain is not None:
        builtins.__import__ = plain


def has_screen() -> bool:
    """Whether a window could be shown here."""
    if sys.platform in {"win32", "darwin"}:
        return True
    chosen = os.environ.get("QT_QPA_PLATFORM", "")
    if chosen in {"offscreen", "minimal", "vnc"}:
        return chosen == "vnc"
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


class _Log(logging.Handler):
    """A small log in the keeper's own folder, opened when there is something to write."""

    _file: logging.Handler | None = None

    def emit(self, record: logging.LogRecord) -> None:
        """Write a record; a folder that cannot be written is no reason to stop."""
        try:
            if self._file is None:
                self._file = _opened(log_path())
            self._file.emit(record)
        except OSError:
            self.handleError(record)

    def close(self) -> None:
        """Let go of the file."""
        if self._file is not None:
            self._file.close()
        super().close()


def _opened(place: Path) -> logging.Handler:
    from logging.handlers import RotatingFileHandler  # late: it loads sockets, and a start is measured

    place.parent.mkdir(parents=True, exist_ok=True)
    opened = RotatingFileHandler(place, maxBytes=_LOG_BYTES, backupCount=1, encoding="utf-8", delay=True)
    opened.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    return opened


def start_log() -> None:
    """Keep what is logged in the keeper's own folder."""
    root = logging.getLogger()
    if not any(isinstance(held, _Log) for held in root.handlers):
        root.addHandler(_Log())
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
