"""The rows of the Page: what was asked of a visit and what was noted, with nothing claimed unseen."""

from dataclasses import dataclass

from beeworkbook.colony import phrases
from beeworkbook.colony.queens import mark_words
from beeworkbook.colony.records import Answer, EventKind, FrameId, Level, Question, Reply
from beeworkbook.colony.stores import stores_basis
from beeworkbook.colony.story import Field, Target, VisitStory, left_texts
from beeworkbook.colony.written import write_answer
from beeworkbook.comb.contents import ALL_BROOD, Content, MarkKind
from beeworkbook.words import say, say_count


@dataclass(frozen=True)
class PageRow:
    """A row of the Page. recorded False: nobody noted it (set in italics). `basis` is for a tooltip.

    `frames` are the combs it came from, to light up in the box.
    """

    label: str
    value: str
    target: Target
    recorded: bool = True
    basis: str = ""
    frames: frozenset[FrameId] = frozenset()


def page_rows(story: VisitStory) -> tuple[PageRow, ...]:
    """The rows of the Page for one visit, in the order they are read."""
    if story.totals.visit.level is Level.PASSED_OVER:
        return (PageRow(say("Opened"), say("passed over"), Field.LEVEL),)
    rows = [
        _opened_row(story),
        _queen_row(story),
        _found_row(story, Question.EGGS, Content.EGGS, say("Eggs")),
        _found_row(story, Question.YOUNG, Content.OPEN, say("Open brood")),
        *_brood_rows(story),
        _bees_row(story),
        _cells_row(story),
        _stores_row(story),
        _plain_row(story, Question.POLLEN, say("Pollen")),
        _plain_row(story, Question.TEMPER, say("Temper")),
        _plain_row(story, Question.ROOM, say("Room")),
        _plain_row(story, Question.DRAWN, say("Drawn")),
        *_feed_rows(story),
        *_heft_rows(story),
        _plain_row(story, Question.SIGNS, say("Signs")),
    ]
    return tuple(row for row in rows if row.recorded or _is_asked(story, row.target))


def _is_asked(story: VisitStory, target: Target) -> bool:
    """A question the round left out is not said to be not recorded."""
    return story.asked is None or not isinstance(target, Question) or target in story.asked


def row_text(row: PageRow) -> str:
    """A row as one sentence, for paper: "Brood: on 7 combs, worth 4.2"."""
    return say("{label}: {value}", label=row.label, value=row.value)


def _blank_row(story: VisitStory, question: Question, label: str) -> PageRow:
    return PageRow(label, phrases.not_said(story.answer(question)), question, recorded=False)


def _opened_row(story: VisitStory) -> PageRow:
    level = story.totals.visit.level
    if level is Level.NOT_OPENED:
        return PageRow(say("Opened"), say("no"), Question.OPENED)
    reply = story.reply(Question.OPENED)
    if reply in {Reply.YES, Reply.NO}:
        return PageRow(say("Opened"), say("yes") if reply is Reply.YES else say("no"), Question.OPENED)
    if level in {Level.BY_COMB, Level.BY_SIDE, Level.PAINTED} and story.totals.counted_sides:
        return PageRow(say("Opened"), say("yes"), Question.OPENED)  # combs were looked at
    return _blank_row(story, Question.OPENED, say("Opened"))


def _queen_row(story: VisitStory) -> PageRow:
    label, place = say("Queen"), story.queen_place
    if place is not None:
        where = phrases.place_words(place.comb, place.face, place.box)
        said = [say("seen on {place}", place=where) if where else say("seen")]
        if place.colour:
            said.append(say("{colour} mark", colour=say(place.colour)))
        return PageRow(label, ", ".join(said), Question.QUEEN, basis=_queen_basis(story))
    if story.reply(Question.QUEEN) is Reply.NO:
        return PageRow(label, say("looked for, not seen"), Question.QUEEN)
    return _blank_row(story, Question.QUEEN, label)


def _queen_basis(story: VisitStory) -> str:
    queen = story.queen
    if queen is None or not queen.mark_colour or queen.year is not None:
        return ""
    return mark_words(queen.mark_colour, story.totals.visit.day.year)


def _found_row(story: VisitStory, question: Question, content: Content, label: str) -> PageRow:
    """Eggs and open brood: what was drawn was seen, whatever the line says."""
    combs, frames = story.where(question, content), story.frames_with(content)
    if combs:
        value = say("seen, on {combs}", combs=combs)
    elif story.reply(question) is Reply.YES:
        value = say("seen")
    elif story.reply(question) is Reply.NO:
        value = say("none seen")
    else:
        return _blank_row(story, question, label)
    return PageRow(label, value, question, frames=frames)


def _brood_rows(story: VisitStory) -> tuple[PageRow, ...]:
    brood = story.figures.brood
    if brood is None:
        return (_blank_row(story, Question.BROOD, say("Brood")),)
    frames = story.frames_with(*ALL_BROOD)
    cells = phrases.brood_cells(brood, at_least=story.figures.at_least)
    basis = "; ".join(filter(None, (phrases.looked_at(story.figures), cells)))
    value = phrases.brood_value(brood, story.figures)
    rows = [PageRow(say("Brood"), value, Question.BROOD, basis=basis, frames=frames)]
    if cells:
        rows.append(PageRow(say("In cells"), cells, Question.BROOD, frames=frames))
    if phrases.drone_cells(brood):
        drones = story.frames_with(Content.DRONE)
        rows.append(PageRow(say("Drone brood"), phrases.drone_cells(brood), Question.BROOD, frames=drones))
    return tuple(rows)


def _bees_row(story: VisitStory) -> PageRow:
    bees, answer = story.figures.bees, story.answer(Question.SEAMS)
    if bees is not None:
        basis = (
            say("seams, as combs of bees on average (Simpson 1969)")
            if bees.seams is not None
            else say("125 bees on a dm² covered (Imdorf and others 1996)")
        )
        return PageRow(say("Bees"), phrases.bees_value(bees), Question.SEAMS, basis=basis)
    if answer is not None and answer.number is not None:
        value = say_count(answer.number, "1 seam", "{n} seams")
        return PageRow(say("Bees"), value, Question.SEAMS)
    if story.reply(Question.SEAMS) is Reply.NO:
        return PageRow(say("Bees"), say("no seam filled"), Question.SEAMS)
    return _blank_row(story, Question.SEAMS, say("Bees"))


def _cells_row(story: VisitStory) -> PageRow:
    cells, label = story.cells, say("Cells")
    if cells:
        frames = frozenset(
            mark.frame_id
            for mark in story.marks
            if mark.kind is MarkKind.QUEEN_CELL and mark.frame_id is not None
        )
        value = ", ".join(phrases.cells_words(cell) for cell in cells)
        return PageRow(label, value, Question.CELLS, frames=frames)
    if story.reply(Question.CELLS) is Reply.NO:
        return PageRow(label, say("none seen"), Question.CELLS)
    if story.reply(Question.CELLS) is Reply.YES:
        return PageRow(label, say("seen"), Question.CELLS)
    return _blank_row(story, Question.CELLS, label)


def _stores_row(story: VisitStory) -> PageRow:
    stores, label = story.figures.stores, say("Stores")
    if stores is not None:
        basis = stores_basis(stores.parts) if stores.parts is not None else say("as said in the line")
        frames = story.frames_with(Content.STORES, Content.NECTAR)
        return PageRow(label, phrases.stores_value(stores), Question.STORES, basis=basis, frames=frames)
    return _plain_row(story, Question.STORES, label)


def _plain_row(story: VisitStory, question: Question, label: str) -> PageRow:
    answer = story.answer(question)
    if answer is None or answer.reply not in {Reply.YES, Reply.NO}:
        return _blank_row(story, question, label)
    return PageRow(label, _answer_value(question, answer), question)


def _answer_value(question: Question, answer: Answer) -> str:
    if question is Question.DRAWN and answer.number is not None:
        return say_count(answer.number, "1 comb being drawn", "{n} combs being drawn")
    if question is Question.POLLEN:
        return say("coming in") if answer.reply is Reply.YES else say("none coming in")
    if question is Question.SIGNS and answer.reply is Reply.NO:
        return say("none seen")
    return write_answer(question, answer)


def _feed_rows(story: VisitStory) -> tuple[PageRow, ...]:
    left = tuple(PageRow(say("Feed left"), text, Field.LEFT) for text in left_texts(story))
    if not story.feeds:
        return (*left, PageRow(say("Feed"), say("not recorded"), Field.FEED, recorded=False))
    given = (PageRow(say("Feed"), phrases.feed_given(feed), Field.FEED) for feed in story.feeds)
    return (*left, *given)


def _heft_rows(story: VisitStory) -> tuple[PageRow, ...]:
    hefts = (event for event in story.events if event.kind is EventKind.HEFT)
    return tuple(PageRow(say("Heft"), phrases.heft_value(event), Field.HEFT) for event in hefts)
