"""Rounds, visits, events and feed: what the Visit menu does."""

from beeworkbook.colony.records import Colony, DueKind
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.event_form import EventForm, ends
from beeworkbook.window.dialogs.feed_form import FeedForm
from beeworkbook.window.dialogs.form import Choice, DayLine, Form, TextLine
from beeworkbook.window.dialogs.happened import HappenedDialog
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.mend import MoveVisit, RemoveVisit
from beeworkbook.workbook.edits.visit import BeginRound, BeginVisit


def begin_round(window: MainWindow) -> None:
    """Ask the day of a round and open it; weather and the rest are asked in the round's own head."""
    desk = window.desk
    apiary = desk.apiary
    if apiary is None:
        return
    form = Form(window, say("A round in {apiary}", apiary=apiary.name), say("Begin"))
    day = form.add(DayLine(say("Day"), desk.today, desk.today))
    if form.ask(lambda: desk.book.do(BeginRound(apiary.id, day.day), source=window)):
        desk.go(view=View.ROUND, apiary_id=apiary.id, day=day.day)
        window.focus_view()


def visit_on(window: MainWindow) -> None:
    """A look at this colony on a day that is asked."""
    desk = window.desk
    colony = desk.colony
    if colony is None:
        return
    form = Form(window, say("A look at {colony}", colony=colony.name), say("Open the page"))
    day = form.add(DayLine(say("Day"), desk.today, desk.today))
    if form.ask(lambda: desk.book.do(BeginVisit(colony.id, day.day), source=window)):
        desk.go(visit_id=form.made, view=View.BOX)
        window.focus_view()


def visit_earlier(window: MainWindow) -> None:
    """Leaf to the visit before; in the Round, where all colonies are seen, to the round before."""
    _leaf(window, -1)


def visit_later(window: MainWindow) -> None:
    """Leaf to the visit after, or to the next round."""
    _leaf(window, 1)


def _leaf(window: MainWindow, step: int) -> None:
    before = window.desk.spot
    if before.view is View.ROUND:
        window.desk.leaf_rounds(step)
    else:
        window.desk.leaf(step)
    if window.desk.spot != before or window.desk.colony is None:
        return
    if before.view is View.ROUND:
        window.tell(say("There is no earlier round.") if step < 0 else say("There is no later round."))
    else:
        window.tell(say("There is no earlier visit.") if step < 0 else say("There is no later visit."))


def add_event(window: MainWindow) -> None:
    """Note a dated line: what happened to this colony."""
    colony = window.desk.colony
    if colony is None:
        return
    form = EventForm(window, window.desk, colony)
    if form.ask_and_keep() and ends(form.chosen):
        window.tell(
            say("{colony} no longer stands from the day after. Undo brings it back.", colony=colony.name)
        )


def happened(window: MainWindow) -> None:
    """Every dated line of this colony, to be seen, changed or taken out."""
    colony = window.desk.colony
    if colony is not None:
        dialog = HappenedDialog(window, window.desk, colony)
        dialog.exec()
        dialog.deleteLater()


def give_feed(window: MainWindow) -> None:
    """Note feed as it is said, and what was left of the last."""
    colony = window.desk.colony
    if colony is not None:
        FeedForm(window, window.desk, colony).ask_and_keep()


def add_due(window: MainWindow) -> None:
    """Put something down for a day: to bring, or to do."""
    desk = window.desk
    colony, apiary = desk.colony, desk.apiary
    if apiary is None:
        return
    form = Form(window, say("Put something down for a day"), say("Put it down"))
    what = form.add(TextLine(say("What"), needed=True, hint=say("a box of frames to bring, a roof to mend")))
    day = form.add(DayLine(say("Day"), desk.today, desk.today, ahead=True))
    whose: list[tuple[str, object]] = [(say("the whole of {apiary}", apiary=apiary.name), None)]
    if colony is not None:
        whose.insert(0, (colony.name, colony.id))
    who = form.add(Choice(say("For"), whose))

    def keep() -> object:
        colony_id = colony.id if colony is not None and who.value is not None else None
        edit = AddDue(DueKind.BRING, day.day, what.text, colony_id, None if colony_id else apiary.id)
        return desk.book.do(edit, source=window)

    if form.ask(keep):
        window.tell(say("It stands in the Days, and on the round sheet under what to bring."))


def move_visit(window: MainWindow) -> None:
    """The whole page belongs to another colony or another day."""
    desk = window.desk
    visit = desk.visit
    if visit is None:
        window.tell(say("No visit lies open to be moved."))
        return
    form = Form(
        window, say("Move this visit"), say("Move it"), say("Combs, marks, answers and feed go with it.")
    )
    colonies = sorted(desk.book.read.find(Colony), key=lambda colony: colony.name.casefold())
    to = form.add(Choice(say("To colony"), [(held.name, held.id) for held in colonies], visit.colony_id))
    day = form.add(DayLine(say("To day"), visit.day, desk.today))

    def move() -> object:
        edit = MoveVisit(visit.id, to.value, day.day)  # type: ignore[arg-type]  # the options are colony ids
        return desk.book.do(edit, source=window)

    if form.ask(move):
        desk.go(visit_id=form.made)


def remove_visit(window: MainWindow) -> None:
    """Take the visit out; undo brings it back, so nothing is asked."""
    visit = window.desk.visit
    if visit is None:
        window.tell(say("No visit lies open to be taken out."))
    elif window.desk.do(RemoveVisit(visit.id), source=window) is None and window.desk.visit is None:
        window.tell(say("The visit of {day} is out. Undo brings it back.", day=date_words(visit.day, "day")))
