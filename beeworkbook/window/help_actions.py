"""Help that ships with the program: how the book is kept, every key, the cautions, and what this is."""

import platform
from typing import Final

from PySide6.QtCore import Qt, QUrl, qVersion
from PySide6.QtGui import QKeySequence, QTextCursor
from PySide6.QtWidgets import QDialog, QPushButton, QTextBrowser, QVBoxLayout

from beeworkbook import __version__
from beeworkbook.bench.bench_keys import key_help
from beeworkbook.places import log_path
from beeworkbook.resources import MissingResourceError, resource
from beeworkbook.window.actions import ACTIONS, MENUS
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import installed_catalogue, say

_SIZE: Final = (760, 620)
_ABOVE_HEADING: Final = 14


class HelpWindow(QDialog):
    """A page of help beside the window; it does not stop the work."""

    def __init__(self, window: MainWindow, title: str, markdown: str) -> None:
        """A page of help."""
        super().__init__(window.shell)
        self.setWindowTitle(title)
        self.resize(*_SIZE)
        self.setModal(False)
        self.text = QTextBrowser()
        self.text.setObjectName("help")
        self.text.setAccessibleName(title)
        self.text.setOpenLinks(False)
        self.text.document().setDocumentMargin(18)
        self.text.setSource(QUrl())
        self.text.setMarkdown(markdown)
        _part_headings(self.text)
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 10, 10, 10)
        column.addWidget(self.text)
        close = QPushButton(say("Close"))
        close.setToolTip(say("Back to the book (Escape)"))
        close.clicked.connect(self.close)
        column.addWidget(close, alignment=Qt.AlignmentFlag.AlignRight)


def help(window: MainWindow) -> None:  # noqa: A001  # the action's name; nothing here calls the built-in
    """How the book is kept."""
    _show(window, say("Help"), _shipped("help.md"))


def help_keys(window: MainWindow) -> None:
    """Every key on one page."""
    _show(window, say("Keys"), keys_page())


def help_cautions(window: MainWindow) -> None:
    """Stings, lifting, smoke, acids, notifiable disease."""
    _show(window, say("Cautions"), _shipped("cautions.md"))


def about(window: MainWindow) -> None:
    """Version, licence, where the log lies."""
    lines = [
        "# beeworkbook",
        say("Version {version}. Licence: MIT; the text ships with the program.", version=__version__),
        say("Qt {qt}, Python {python}.", qt=qVersion(), python=platform.python_version()),
        say("Nothing is ever sent anywhere. The log lies at {place}.", place=log_path()),
        say("This workbook lies at {place}.", place=window.desk.book.path),
        say("Type: Lato and Gentium Book Plus, under the Open Font License."),
    ]
    _show(window, say("About"), "\n\n".join(lines))


def keys_page() -> str:
    """All keys as a table, a menu a heading, then the bench."""
    parts = [f"# {say('Keys')}"]
    for menu in MENUS:
        parts.append(f"\n## {say(menu)}\n\n| {say('key')} | {say('does')} |\n|---|---|")
        for spec in ACTIONS:
            if spec.menu == menu:
                keys = QKeySequence(spec.keys).toString(QKeySequence.SequenceFormat.NativeText)
                parts.append(f"| {keys} | {say(spec.text)}: {say(spec.tip)} |")
    parts.append(f"\n## {say('On the box and the bench')}\n\n| {say('key')} | {say('does')} |\n|---|---|")
    parts.extend(f"| {row.keys} | {row.does} |" for row in key_help())
    return "\n".join(parts)


def _part_headings(text: QTextBrowser) -> None:
    """Leave room above each heading, so that a page can be skimmed."""
    block = text.document().begin()
    while block.isValid():
        form = block.blockFormat()
        if form.headingLevel() > 1:
            form.setTopMargin(_ABOVE_HEADING)
            QTextCursor(block).setBlockFormat(form)
        block = block.next()


def _shipped(name: str) -> str:
    """A page of help, in the language in use if there is one in it."""
    language = installed_catalogue().language
    for page in (f"{language}/{name}", name):
        try:
            return resource("help", page).read_text(encoding="utf-8")
        except (MissingResourceError, OSError):
            continue
    return say("This page of help is missing from the installation.")


def _show(window: MainWindow, title: str, markdown: str) -> None:
    page = HelpWindow(window, title, markdown)
    page.show()
    page.text.setFocus()
