"""Other names for what is under the keeper's hand, and taking things out of the book again."""

from dataclasses import dataclass

from PySide6.QtWidgets import QWidget

from beeworkbook.colony.records import (
    Apiary,
    Colony,
    ColonyId,
    Event,
    EventKind,
    Frame,
    Hive,
    Part,
    Queen,
    Record,
    Stand,
)
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.form import Choice, Form, TextLine
from beeworkbook.words import say
from beeworkbook.workbook.edits.place import RemoveRecord, RenameRecord
from beeworkbook.workbook.edits.together import Together


@dataclass(frozen=True)
class Named:
    """Something with a name, and what it is in words."""

    words: str
    cls: type[Record]
    id: int
    name: str


def queen_of(desk: Desk, colony_id: ColonyId) -> Queen | None:
    """The queen of the last line that speaks of one, up to the desk's day."""
    kinds = {EventKind.QUEEN_CAME, EventKind.QUEEN_MARKED}
    told = [
        event
        for event in desk.book.read.find(Event, colony_id=colony_id)
        if event.kind in kinds and event.queen_id is not None and event.day <= desk.spot.day
    ]
    last = max(told, key=lambda event: (event.day, event.id), default=None)
    return desk.book.read.get(Queen, last.queen_id) if last and last.queen_id else None


def named_here(desk: Desk) -> list[Named]:
    """What bears a name where the keeper is, from the bees outwards."""
    read, colony, apiary, hive, box = desk.book.read, desk.colony, desk.apiary, desk.hive_day(), desk.box()
    made: list[Named] = []
    if colony is not None:
        made.append(Named(say("Colony"), Colony, colony.id, colony.name))
        queen = queen_of(desk, colony.id)
        if queen is not None:
            made.append(Named(say("Queen"), Queen, queen.id, queen.name))
    if hive is not None:
        made.append(Named(say("Hive"), Hive, hive.hive.id, hive.hive.name))
        stand = read.get(Stand, hive.housing.stand_id)
        if stand is not None:
            made.append(Named(say("Stand"), Stand, stand.id, stand.name))
    if apiary is not None:
        made.append(Named(say("Apiary"), Apiary, apiary.id, apiary.name))
    if box is not None:
        made.append(Named(say("This box"), Part, box.part.id, box.part.name))
    frame = read.get(Frame, desk.spot.frame_id) if desk.spot.frame_id else None
    if frame is not None:
        made.append(Named(say("This comb"), Frame, frame.id, frame.name))
    return made


def ask_names(parent: QWidget, desk: Desk) -> bool:
    """Ask for other names and keep what was changed, as one step; whether there was something."""
    held = named_here(desk)
    if not held:
        return False
    form = Form(parent, say("Other names"), say("Rename"))
    fields = [form.add(TextLine(each.words, each.name)) for each in held]

    def keep() -> object:
        edits = tuple(
            RenameRecord(each.cls, each.id, field.text)
            for each, field in zip(held, fields, strict=True)
            if field.text != each.name
        )
        return desk.book.do(Together(edits, say("rename")), source=parent) if edits else None

    return form.ask(keep)


def ask_removal(parent: QWidget, desk: Desk) -> bool:
    """Ask what was entered by mistake and take it out with all that hangs on it; undo brings it back."""
    held = [each for each in named_here(desk) if each.cls is not Hive]
    if not held:
        return False
    form = Form(
        parent,
        say("Take out of the book"),
        say("Take it out"),
        say(
            "For what was entered by mistake: it goes with every visit and drawing that hangs on it. "
            "A colony that died, was sold or united, a box or comb taken off, are noted as such instead, "
            "and their history stays. Undo brings it back while the program runs."
        ),
    )
    options: list[tuple[str, object]] = [
        (say("{what}: {name}", what=each.words, name=each.name or say("without a name")), each)
        for each in held
    ]
    chosen = form.add(Choice(say("What"), options))

    def take_out() -> object:
        each = chosen.value
        if not isinstance(each, Named):
            return None
        return desk.book.do(RemoveRecord(each.cls, each.id), source=parent)

    return form.ask(take_out)
