"""An empty workbook: the sample to look at, or a first colony."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from beeworkbook.qt.desk import Desk
from beeworkbook.qt.icons import program_icon
from beeworkbook.window.commands import Commands
from beeworkbook.words import say


class FirstStart(QWidget):
    """Two ways to begin, and what the book is for in a sentence."""

    def __init__(self, desk: Desk, commands: Commands) -> None:
        """The first page of the desk's empty book."""
        super().__init__()
        self.setObjectName("ground")
        column = QVBoxLayout(self)
        column.setAlignment(Qt.AlignmentFlag.AlignCenter)
        column.setSpacing(14)
        picture = QLabel()
        picture.setPixmap(program_icon().pixmap(96, 96))
        picture.setAccessibleName(say("beeworkbook"))
        column.addWidget(picture)
        head = QLabel(say("{title} is empty", title=desk.book.title))
        head.setObjectName("name")
        column.addWidget(head)
        words = QLabel(
            say(
                "Enter the first colony as it came: a nucleus, a package, a swarm or a whole hive. "
                "Or look round in the sample first; it is an invented apiary, "
                "and what you do there touches nothing of yours."
            )
        )
        words.setWordWrap(True)
        words.setFixedWidth(520)
        column.addWidget(words)
        self.first_colony = QPushButton(say("Enter the first colony"))
        self.first_colony.setDefault(True)
        self.first_colony.setToolTip(say("Where, what hive and frames, what came, queen, feed (Ctrl+N)"))
        self.first_colony.setAutoDefault(True)
        self.first_colony.clicked.connect(lambda: commands.do("add_colony"))
        self.sample = QPushButton(say("Look round in the sample"))
        self.sample.setToolTip(say("Open your copy of the invented sample apiary (Ctrl+Shift+O)"))
        self.sample.setAutoDefault(True)
        self.sample.clicked.connect(lambda: commands.do("open_sample"))
        self.first_colony.setEnabled(not desk.book.read_only)
        for button in (self.first_colony, self.sample):
            button.setMinimumWidth(260)
            column.addWidget(button, alignment=Qt.AlignmentFlag.AlignLeft)

    def take_focus(self) -> None:
        """Put the keyboard on the first way."""
        first = self.first_colony if self.first_colony.isEnabled() else self.sample
        first.setFocus(Qt.FocusReason.OtherFocusReason)
