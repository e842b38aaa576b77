"""Opening, making, restoring workbooks, and what is said when one cannot be opened."""

import logging
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final
from zlib import adler32, crc32

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from beeworkbook.places import user_data_folder
from beeworkbook.qt.memory import Memory
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.shell import Shell
from beeworkbook.words import say
from beeworkbook.workbook.errors import AlreadyOpenError, RefusedError, StoreError
from beeworkbook.workbook.sample_copy import SAMPLE_NAME, make_sample
from beeworkbook.workbook.workbook import Workbook, restore_copy

if TYPE_CHECKING:
    from PySide6.QtNetwork import QLocalServer

_WAIT_MS: Final = 1500
_log = logging.getLogger(__name__)


class Opener(QObject):
    """What stands in the shell: one open workbook at a time."""

    def __init__(self, shell: Shell, memory: Memory, today: Callable[[], date]) -> None:
        """An opener for a shell that is still bare."""
        super().__init__(shell)
        self._shell = shell
        self._memory = memory
        self._today = today
        self._server: QLocalServer | None = None
        self.brought_forward = False
        """Whether the last file asked for lies open in another window, which came forward."""
        self.window: MainWindow | None = None
        shell.on_close = self._close

    # --- ways to begin ----------------------------------------------------------------------------

    def begin(self, path: Path | None, *, box_first: bool = False) -> bool:
        """Open what was asked for, else the last workbook, else the sample; whether one is open.

        With `box_first` what is round the box is made once the box is seen.
        """
        self._box_first = box_first
        try:
            return self._begin(path)
        finally:
            self._box_first = False

    def _begin(self, path: Path | None) -> bool:
        if path is not None:
            return self.open(path)
        last = self._memory.get("last_workbook")
        if isinstance(last, str) and Path(last).is_file() and self.open(Path(last)):
            return True
        if self.window is None and self.brought_forward:
            return False
        return self.open_sample()

    def open(self, path: Path) -> bool:
        """Open a workbook; what stands in the way is said in a sentence, and the one open stays open."""
        self.brought_forward = False
        try:
            if self.window is not None and path.resolve() == self.window.desk.book.path.resolve():
                return True
            if not self._may_leave():
                return False
            read_only = not _writable(path)
            book = Workbook.open(
                path, today=self._today, copies=copies_folder(), reach=server_name(path), read_only=read_only
            )
        except AlreadyOpenError as error:
            self.brought_forward = bring_forward(path)
            if not self.brought_forward:
                self._say(say("Already open"), str(error))
            return False
        except (StoreError, RefusedError, OSError) as error:
            _log.warning("could not open %s", path, exc_info=True)
            self._say(say("The workbook was not opened"), _sentence(error, path))
            return False
        self.furnish(book)
        return True

    def create(self, path: Path, title: str) -> bool:
        """Make an empty workbook and open it."""
        if not self._may_leave():
            return False
        try:
            book = Workbook.create(
                path, title, today=self._today, copies=copies_folder(), reach=server_name(path)
            )
        except (StoreError, RefusedError, OSError) as error:
            self._say(say("No workbook was made"), _sentence(error, path))
            return False
        self.furnish(book)
        return True

    def open_sample(self) -> bool:
        """Open the keeper's copy of the sample; it is made the first time and never written over."""
        path = user_data_folder() / SAMPLE_NAME
        if not path.exists():
            try:
                make_sample(path)
            except (StoreError, RefusedError, OSError) as error:
                self._say(say("The sample could not be copied"), _sentence(error, path))
                return False
        return self.open(path)

    def restore(self, copy: Any) -> None:
        """Put a kept copy in the place of the workbook and open it."""
        if self.window is None or not self._may_leave():
            return
        book = self.window.desk.book
        path = book.path
        self.put_away()
        try:
            restore_copy(path, copy, copies_folder())
        except (StoreError, RefusedError, OSError) as error:
            self._say(say("The copy was not restored"), _sentence(error, path))
        self.open(path)

    # --- within -----------------------------------------------------------------------------------

    _box_first = False

    def furnish(self, book: Workbook) -> None:
        """Put the faces of an open workbook in the place of the ones before."""
        self.put_away()
        self.window = MainWindow(self._shell, book, self._memory, self, box_first=self._box_first)
        self._memory.put("last_workbook", str(book.path))
        if self.window.is_furnished:
            self._listen(book.path)
        else:
            self.window.furnished.connect(lambda: self._listen(book.path))

    def put_away(self) -> None:
        """Close the workbook that lies open, if there is one, and listen no more."""
        if self._server is not None:
            self._server.close()
            self._server = None
        if self.window is not None:
            window, self.window = self.window, None
            window.put_away()
            self._shell.bare(say("No workbook lies open"))
            window.deleteLater()

    def _close(self) -> bool:
        if not self._may_leave():
            return False
        self.put_away()
        return True

    def _may_leave(self) -> bool:
        """Whether the workbook that lies open may be put away; what could not be kept is told first."""
        if self.window is None:
            return True
        from beeworkbook.window.leaving import may_leave

        return may_leave(self.window)

    def _listen(self, path: Path) -> None:
        """Wait for a second start on the same file, to come forward then."""
        from PySide6.QtNetwork import QLocalServer  # late: the window is seen before anyone can ask

        server = QLocalServer(self)
        server.setSocketOptions(QLocalServer.SocketOption.UserAccessOption)
        name = server_name(path)
        if not server.listen(name):
            QLocalServer.removeServer(name)
            server.listen(name)
        server.newConnection.connect(self._come_forward)
        self._server = server

    def _come_forward(self) -> None:
        if self._server is not None:
            connection = self._server.nextPendingConnection()
            if connection is not None:
                connection.close()
        self._shell.setWindowState(self._shell.windowState() & ~self._shell.windowState().WindowMinimized)
        self._shell.show()
        self._shell.raise_()
        self._shell.activateWindow()

    def _say(self, title: str, sentence: str) -> None:
        parent: QWidget | None = self._shell if self._shell.isVisible() else None
        from beeworkbook.window.dialogs.told import show_sentence

        show_sentence(parent, title, sentence)


def copies_folder() -> Path:
    """Where the daily copies lie: beside what the keeper keeps, never in a sync folder."""
    return user_data_folder() / "copies"


def server_name(path: Path) -> str:
    """The name under which the window of a workbook can be reached."""
    place = str(path.resolve()).encode("utf-8", "surrogateescape")
    return f"beeworkbook-{crc32(place):08x}{adler32(place):08x}"


def bring_forward(path: Path) -> bool:
    """Ask the window that has this workbook open to come forward; whether it answered."""
    from PySide6.QtNetwork import QLocalSocket

    socket = QLocalSocket()
    socket.connectToServer(server_name(path))
    answered = socket.waitForConnected(_WAIT_MS)
    socket.close()
    return answered


def _writable(path: Path) -> bool:
    import os

    return not path.exists() or os.access(path, os.W_OK)


def _sentence(error: Exception, path: Path) -> str:
    if isinstance(error, OSError):
        return say(
            "{path} cannot be read or written: {reason}.", path=path, reason=error.strerror or str(error)
        )
    return str(error)
