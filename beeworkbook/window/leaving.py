"""Before a workbook is put away: what was typed and could not be kept is told, and may be gone back to."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox

from beeworkbook.colony.records import Colony
from beeworkbook.qt.desk import View
from beeworkbook.words import date_words, say, say_count

if TYPE_CHECKING:
    from beeworkbook.bench.key_line import CombHere
    from beeworkbook.window.main_window import MainWindow


@dataclass(frozen=True)
class Left:
    """A text that is in no book: where it stands, what it is, why it was not taken, and the way back."""

    where: str
    text: str
    why: str
    go_back: Callable[[], None]

    @property
    def words(self) -> str:
        """All of it in one line."""
        said = say("{where}: “{text}”", where=self.where, text=self.text)
        return say("{said} – {why}", said=said, why=self.why) if self.why else said


def left_behind(window: "MainWindow") -> tuple[Left, ...]:
    """What would be lost if the workbook were put away now, after all that can be kept was kept."""
    if not window.is_furnished:
        return ()
    return (*_of_rounds(window), *_of_key_line(window), *_of_note(window))


def may_leave(window: "MainWindow") -> bool:
    """Whether the workbook may be put away. What would be lost is told; going back leads to it."""
    window.keep_what_is_typed()
    left = left_behind(window)
    if not left or _close_anyway(window, left):
        return True
    left[0].go_back()
    return False


def _close_anyway(window: "MainWindow", left: tuple[Left, ...]) -> bool:
    box = QMessageBox(QMessageBox.Icon.NoIcon, say("Not everything is kept"), "", parent=window.shell)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setText(
        say_count(
            len(left),
            "One thing you typed could not be kept, and closing lets it go:",
            "{n} things you typed could not be kept, and closing lets them go:",
        )
    )
    box.setInformativeText("\n".join(each.words for each in left))
    back = box.addButton(say("Go back"), QMessageBox.ButtonRole.RejectRole)
    close = box.addButton(say("Close anyway"), QMessageBox.ButtonRole.AcceptRole)
    back.setToolTip(say("To where the first of them stands, to mend it"))
    close.setToolTip(say("All else is kept; these are not"))
    box.setDefaultButton(back)
    box.setEscapeButton(back)
    box.exec()
    return box.clickedButton() is close


def _of_rounds(window: "MainWindow") -> list[Left]:
    from beeworkbook.rounds.field import field_heading
    from beeworkbook.rounds.round_view import RoundView

    view = window.face_if_made(View.ROUND)
    if not isinstance(view, RoundView):
        return []
    return [
        Left(
            say(
                "{colony}, {day}, {field}",
                colony=_name(window, held.spot.colony_id),
                day=date_words(held.day),
                field=field_heading(held.spot.target),
            ),
            held.text,
            held.why,
            partial(view.lead_back, held),
        )
        for held in view.untaken
    ]


def _of_key_line(window: "MainWindow") -> list[Left]:
    desk, line = window.desk, window.key_line

    def go_back(where: "CombHere") -> None:
        desk.go(view=View.BOX, colony_id=where.colony_id, day=where.day, frame_id=where.frame_id)
        line.field.setFocus(Qt.FocusReason.OtherFocusReason)

    made = []
    for where, text in line.untaken.items():
        hive = desk.book.read.hive_day(where.colony_id, where.day)
        held = hive.place_of(where.frame_id) if hive is not None else None
        comb = say("comb {place}", place=held[1]) if held is not None else say("a comb")
        name = _name(window, where.colony_id)
        said = say("{colony}, {day}, {field}", colony=name, day=date_words(where.day), field=comb)
        made.append(Left(said, text, "", partial(go_back, where)))
    return made


def _of_note(window: "MainWindow") -> list[Left]:
    note = window.page.day.note
    if not note.touched:
        return []
    return [Left(say("the note"), note.text(), "", window.page.take_focus)]


def _name(window: "MainWindow", colony_id: object) -> str:
    colony = window.desk.book.read.get(Colony, colony_id)
    return colony.name if colony is not None else ""
