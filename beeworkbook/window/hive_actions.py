"""Colonies, stands and apiaries: what the Hive menu does."""

from beeworkbook.colony.records import (
    Apiary,
    Colony,
    ColonyId,
    FrameId,
    Housing,
    Side,
    Stand,
    VisitId,
)
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Choice, DayLine, Form, TextBlock, TextLine
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.hive import MoveColony, NumberFromOtherEnd
from beeworkbook.workbook.edits.mend import MirrorDrawings
from beeworkbook.workbook.edits.new_stand import MoveToNewStand
from beeworkbook.workbook.edits.place import AddApiary, ChangeRecord, ReorderStands
from beeworkbook.workbook.edits.visit import BeginVisit


def add_colony(window: MainWindow) -> None:
    """Bees have come: ask what, where and into which hive; then their combs, if the keeper likes."""
    from beeworkbook.window.dialogs.arrival import ArrivalForm

    desk = window.desk
    form = ArrivalForm(window, desk)
    if not form.ask_and_enter() or form.colony_id is None:
        return
    colony = desk.book.read.get(Colony, form.colony_id)
    if colony is None:
        return
    if not form.draws_now:
        desk.go(colony_id=colony.id, view=View.BOX)
        window.focus_view()
        return
    visit_id = desk.do(BeginVisit(colony.id, colony.came_on), source=window)
    if not isinstance(visit_id, int):
        return
    desk.go(colony_id=colony.id, visit_id=VisitId(visit_id), view=View.BOX)
    first = _first_comb_that_came(window, VisitId(visit_id))
    if first is not None:
        desk.go(frame_id=first)
    window.focus_view()
    window.key_line.begin("")
    window.tell(say("Type what is on this comb, Enter goes on to the next; Esc when it is enough."))


def _first_comb_that_came(window: MainWindow, visit_id: VisitId) -> FrameId | None:
    """The first comb of which nothing was noted yet: the flanking frames are new and noted as such."""
    box = window.desk.box()
    noted = {side.frame_id for side in window.desk.book.read.find(Side, visit_id=visit_id)}
    frames = [place.frame for place in box.frames if place.frame is not None] if box else []
    return next((frame.id for frame in frames if frame.id not in noted), None)


def add_apiary(window: MainWindow) -> None:
    """A second place where colonies stand."""
    form = Form(window, say("Another apiary"), say("Add it"))
    fields = _apiary_fields(form, None)

    def add() -> object:
        return window.desk.book.do(AddApiary(*(field.text for field in fields)), source=window)

    if form.ask(add):
        window.desk.go(apiary_id=form.made, colony_id=None, visit_id=None)


def change_apiary(window: MainWindow) -> None:
    """Where the apiary lies, and what is to be known of it."""
    apiary = window.desk.apiary
    if apiary is None:
        return
    form = Form(window, say("The apiary {name}", name=apiary.name), say("Keep"))
    fields = _apiary_fields(form, apiary)

    def keep() -> object:
        name, place, reference, note = (field.text for field in fields)
        after = Apiary(apiary.id, name, apiary.position, place, reference, note)
        return window.desk.book.do(ChangeRecord(after), source=window)

    form.ask(keep)


def _apiary_fields(form: Form, apiary: Apiary | None) -> tuple[TextLine | TextBlock, ...]:
    name = form.add(TextLine(say("Name"), apiary.name if apiary else "", needed=True))
    place = form.add(TextLine(say("Where it lies"), apiary.place if apiary else ""))
    reference = form.add(
        TextLine(
            say("Map reference"),
            apiary.map_reference if apiary else "",
            hint=say("printed on sheets for an ambulance; it can be left off"),
        )
    )
    note = form.add(TextBlock(say("Note"), apiary.note if apiary else ""))
    return name, place, reference, note


def go_apiary(window: MainWindow) -> None:
    """The next apiary of the book."""
    desk = window.desk
    ids = [apiary.id for apiary in desk.book.read.apiaries()]
    if len(ids) < 2 or desk.spot.apiary_id not in ids:
        window.tell(say("There is one apiary in this workbook."))
        return
    following = ids[(ids.index(desk.spot.apiary_id) + 1) % len(ids)]
    desk.go(apiary_id=following, colony_id=None, visit_id=None, day=desk.today)
    if desk.apiary is not None:
        window.tell(say("Now in {apiary}.", apiary=desk.apiary.name))


def go_colony(window: MainWindow) -> None:
    """Any colony of the book, also one that stands nowhere any more."""
    desk = window.desk
    colonies = sorted(desk.book.read.find(Colony), key=lambda colony: colony.name.casefold())
    if not colonies:
        return
    form = Form(window, say("Go to a colony"), say("Go there"), say("Type the first letters of its name."))
    options: list[tuple[str, object]] = [(_colony_words(window, colony), colony.id) for colony in colonies]
    chosen = form.add(Choice(say("Colony"), options, desk.spot.colony_id))
    if not form.ask() or not isinstance(chosen.value, int):
        return
    colony_id = ColonyId(chosen.value)
    if desk.spot.view in {View.FIRST, View.ROUND} and desk.book.read.home(colony_id, desk.spot.day) is None:
        desk.go(view=View.BOX)
    desk.go(colony_id=colony_id)
    window.focus_view()


def _colony_words(window: MainWindow, colony: Colony) -> str:
    read = window.desk.book.read
    homes = sorted(read.find(Housing, colony_id=colony.id), key=lambda home: home.since)
    if not homes:
        return colony.name
    stand = read.get(Stand, homes[-1].stand_id)
    apiary = read.get(Apiary, stand.apiary_id) if stand is not None else None
    where = apiary.name if apiary is not None else ""
    until = homes[-1].until
    if until is not None and until <= window.desk.today:
        return say(
            "{name}, {where}, till {day}", name=colony.name, where=where, day=date_words(until, "day_year")
        )
    return say("{name}, {where}", name=colony.name, where=where)


def stand_earlier(window: MainWindow) -> None:
    """This stand comes one earlier in the walk."""
    _shift_stand(window, -1)


def stand_later(window: MainWindow) -> None:
    """This stand comes one later in the walk."""
    _shift_stand(window, 1)


def _shift_stand(window: MainWindow, step: int) -> None:
    desk = window.desk
    hive = desk.hive_day()
    if hive is None or desk.spot.apiary_id is None:
        return
    order = [stand.id for stand in desk.book.read.stands(desk.spot.apiary_id)]
    at = order.index(hive.housing.stand_id)
    if 0 <= at + step < len(order):
        order[at], order[at + step] = order[at + step], order[at]
        desk.do(ReorderStands(desk.spot.apiary_id, tuple(order)), source=window)


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
        (say("{name}, {where}", name=stand.name, where=apiary.name), stand)
        for apiary in apiaries
        for stand in desk.book.read.stands(apiary.id)
    ]
    new: list[tuple[str, object]] = [
        (say("a new stand in {apiary}", apiary=apiary.name), apiary) for apiary in apiaries
    ]
    to = form.add(Choice(say("To stand"), [*new, *stands]))
    name = form.add(TextLine(say("New stand’s name"), hint=say("only for a new stand")))

    def move() -> object:
        if isinstance(to.value, Apiary):
            called = name.text or say("new stand")
            return desk.book.do(MoveToNewStand(colony.id, to.value.id, called, day.day), source=window)
        if isinstance(to.value, Stand):
            return desk.book.do(MoveColony(colony.id, to.value.id, day.day), source=window)
        return None

    form.ask(move)


def other_end(window: MainWindow) -> None:
    """The combs were counted from the wrong end: for good, or in this visit only."""
    desk = window.desk
    part_id, visit_id = desk.spot.part_id, desk.spot.visit_id
    if part_id is None:
        return
    form = Form(window, say("Number from the other end"), say("Do it"))
    lasting = (say("from this day on, the box is numbered from the other end"), True)
    once = (say("only this visit was noted from the other end"), False)
    which = form.add(Choice(say("Which"), [once, lasting] if visit_id is not None else [lasting]))

    def turn() -> object:
        if which.value or visit_id is None:
            return desk.book.do(NumberFromOtherEnd(part_id, desk.spot.day), source=window)
        return desk.book.do(MirrorDrawings(visit_id, part_id), source=window)

    form.ask(turn)


def take_out(window: MainWindow) -> None:
    """Take out of the book what was entered by mistake; undo brings it back."""
    from beeworkbook.window.dialogs.naming import ask_removal

    ask_removal(window, window.desk)
