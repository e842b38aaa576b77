"""Colonies, stands and apiaries: what the Hive menu does."""

from beeworkbook.colony.records import Apiary, Colony, Stand, StandId
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Choice, DayLine, Form, TextBlock, TextLine
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import say
from beeworkbook.workbook.edits.hive import MoveColony, NumberFromOtherEnd
from beeworkbook.workbook.edits.mend import MirrorDrawings
from beeworkbook.workbook.edits.place import AddApiary, AddStand, RemoveRecord


def add_colony(window: MainWindow) -> None:
    """Bees have come: ask what, where and into which hive."""
    from beeworkbook.window.dialogs.arrival import ArrivalForm

    form = ArrivalForm(window, window.desk)
    if form.ask() and form.colony_id is not None:
        window.desk.go(colony_id=form.colony_id, view=View.BOX)
        window.focus_view()


def add_apiary(window: MainWindow) -> None:
    """A second place where colonies stand."""
    form = Form(window, say("Another apiary"), say("Add it"))
    name = form.add(TextLine(say("Name"), needed=True))
    place = form.add(TextLine(say("Where it lies")))
    reference = form.add(
        TextLine(say("Map reference"), hint=say("printed on sheets for an ambulance; it can be left off"))
    )
    note = form.add(TextBlock(say("Note")))
    if form.ask():
        made = window.desk.do(AddApiary(name.text, place.text, reference.text, note.text), source=window)
        if made is not None:
            window.desk.go(apiary_id=made, colony_id=None, visit_id=None)


def go_apiary(window: MainWindow) -> None:
    """The next apiary of the book."""
    desk = window.desk
    ids = [apiary.id for apiary in desk.book.read.apiaries()]
    if len(ids) < 2 or desk.spot.apiary_id not in ids:
        window.tell(say("There is one apiary in this workbook."))
        return
    following = ids[(ids.index(desk.spot.apiary_id) + 1) % len(ids)]
    desk.go(apiary_id=following, colony_id=None, visit_id=None)


def move_colony(window: MainWindow) -> None:
    """From a day on the hive stands elsewhere."""
    desk = window.desk
    colony = desk.colony
    if colony is None:
        return
    form = Form(
        window,
        say("Move {colony} to another stand", colony=colony.name),
        say("Move it"),
        say(
            "A full hive is heavy: two people, straps, the entrance shut. "
            "Local rules may ask that a move is told."
        ),
    )
    day = form.add(DayLine(say("From day"), desk.spot.day, desk.today))
    apiaries = desk.book.read.apiaries()
    stands: list[tuple[str, object]] = [
        (f"{apiary.name}, {stand.name}", stand.id)
        for apiary in apiaries
        for stand in desk.book.read.stands(apiary.id)
    ]
    new = [(say("a new stand in {apiary}", apiary=apiary.name), apiary) for apiary in apiaries]
    to = form.add(Choice(say("To stand"), [*stands, *new]))
    name = form.add(TextLine(say("New stand's name")))
    if not form.ask():
        return
    stand_id = to.value
    if isinstance(stand_id, Apiary):
        stand_id = desk.do(AddStand(stand_id.id, name.text or say("new stand")), source=window)
    if isinstance(stand_id, int):
        desk.do(MoveColony(colony.id, StandId(stand_id), day.day), source=window)


def other_end(window: MainWindow) -> None:
    """The combs were counted from the wrong end: for good, or in this visit only."""
    desk = window.desk
    if desk.spot.part_id is None:
        return
    form = Form(window, say("Number from the other end"), say("Do it"))
    lasting = (say("from this day on, the box is numbered from the other end"), True)
    once = (say("only this visit was noted from the other end"), False)
    which = form.add(Choice(say("Which"), [once, lasting] if desk.spot.visit_id else [lasting]))
    if not form.ask():
        return
    if which.value:
        desk.do(NumberFromOtherEnd(desk.spot.part_id, desk.spot.day), source=window)
    elif desk.spot.visit_id is not None:
        desk.do(MirrorDrawings(desk.spot.visit_id, desk.spot.part_id), source=window)


def remove_colony(window: MainWindow) -> None:
    """Take a colony out with all its visits; undo brings it back."""
    colony = window.desk.colony
    if colony is None:
        return
    form = Form(
        window,
        say("Remove {colony}", colony=colony.name),
        say("Remove it"),
        say(
            "This takes {colony} out of the book with every visit. If it died, was sold or united, "
            "note that as something that happened instead, and its history stays. "
            "Undo brings it back while the program runs.",
            colony=colony.name,
        ),
    )
    if form.ask():
        window.desk.do(RemoveRecord(Colony, colony.id), source=window)


def stand_name(window: MainWindow, stand_id: int) -> str:
    """The name of a stand."""
    stand = window.desk.book.read.get(Stand, stand_id)
    return stand.name if stand else ""
