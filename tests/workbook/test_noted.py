"""What makes a visit more than a page that was opened."""

from collections.abc import Callable

import pytest

from beeworkbook.colony.records import EventKind, Level, Question, Visit, VisitId
from beeworkbook.comb.contents import MarkKind
from beeworkbook.workbook.edits.events import AddEvent
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft
from beeworkbook.workbook.edits.marks import AddMark
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit, SetAnswer, SetLevel, SetNext, SetNote
from beeworkbook.workbook.noted import is_noted
from beeworkbook.workbook.place import Edit
from tests.workbook.keeping import LATER, LOOK, Keeping, as_int


def test_an_opened_page_is_not_noted_whatever_its_level(keeping: Keeping) -> None:
    assert not is_noted(keeping.book.read, keeping.noted())
    keeping.book.do(SetLevel(keeping.visit, Level.PAINTED))
    assert not is_noted(keeping.book.read, keeping.noted())


@pytest.mark.parametrize(
    "noting",
    [
        lambda keeping: SetAnswer(keeping.visit, Question.EGGS, "n"),
        lambda keeping: SetNote(keeping.visit, "flying well"),
        lambda keeping: SetNext(keeping.visit, LATER, "why"),
        lambda keeping: LayOutComb(keeping.visit, keeping.frame(3), "S4"),
        lambda keeping: AddMark(keeping.visit, MarkKind.QUEEN, keeping.frame(3)),
        lambda keeping: GiveFeed(keeping.colony, LOOK, "1L 1:1", keeping.visit),
        lambda keeping: SetFeedLeft(keeping.book.read.feeds(keeping.colony)[0].id, "0", LOOK),
        lambda keeping: AddEvent(keeping.colony, LOOK, EventKind.NOTE, "a gale", keeping.visit),
    ],
)
def test_anything_that_is_kept_of_it_is_noted(keeping: Keeping, noting: Callable[[Keeping], Edit]) -> None:
    keeping.book.do(noting(keeping))
    assert is_noted(keeping.book.read, keeping.noted())


def test_what_was_only_assumed_was_not_noted(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(3), "S4"))
    later = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    keeping.book.do(LayOutComb(later, keeping.frame(3), "?"))
    visit = keeping.book.read.get(Visit, later)
    assert visit is not None
    assert not is_noted(keeping.book.read, visit)
