"""A visit begun with what is noted in it, as one step."""

import pytest

from beeworkbook.colony.records import ColonyId, Level, VisitId
from beeworkbook.workbook.edits.in_visit import NO_VISIT, InVisit, with_visit
from beeworkbook.workbook.edits.place import RenameRecord
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import SetNote
from beeworkbook.workbook.errors import GoneError, NotReadableError
from tests.workbook.keeping import LATER, LOOK, Keeping


def test_the_visit_comes_and_goes_with_what_is_noted(keeping: Keeping) -> None:
    before = keeping.everything()
    keeping.book.do(InVisit(keeping.colony, LATER, LayOutComb(NO_VISIT, keeping.frame(3), "H8")))
    visit = keeping.book.read.visits(keeping.colony)[-1]
    assert (visit.day, visit.level) == (LATER, Level.BY_COMB)
    assert len(keeping.book.read.sides(visit.id)) == 2
    assert keeping.book.undo_label == "type comb 3"
    place = keeping.book.undo()
    assert place is not None
    assert (place.colony_id, place.visit_id, place.day) == (keeping.colony, visit.id, LATER)
    assert keeping.everything() == before


def test_that_days_visit_is_gone_on_with(keeping: Keeping) -> None:
    keeping.book.do(InVisit(keeping.colony, LOOK, SetNote(NO_VISIT, "steady")))
    assert keeping.noted().note == "steady"


def test_what_is_refused_begins_no_visit(keeping: Keeping) -> None:
    before = keeping.everything()
    with pytest.raises(NotReadableError):
        keeping.book.do(InVisit(keeping.colony, LATER, LayOutComb(NO_VISIT, keeping.frame(3), "H9")))
    with pytest.raises(GoneError):
        keeping.book.do(InVisit(ColonyId(99), LATER, SetNote(NO_VISIT, "steady")))
    assert keeping.everything() == before


def test_an_edit_without_a_visit_stays_as_it_is() -> None:
    from beeworkbook.colony.records import Colony

    edit = RenameRecord(Colony, ColonyId(1), "Plum")
    assert with_visit(edit, VisitId(3)) is edit
    assert with_visit(SetNote(NO_VISIT, "steady"), VisitId(3)) == SetNote(VisitId(3), "steady")


def test_several_edits_are_all_of_the_visit_that_begins(keeping: Keeping) -> None:
    frames = keeping.frame(3), keeping.frame(4)
    typed = tuple(LayOutComb(NO_VISIT, frame, "H8") for frame in frames)
    visits = keeping.book.read.visits(keeping.colony)
    keeping.book.do(InVisit(keeping.colony, LATER, Together(typed, "type two combs")))
    visit = keeping.book.read.visits(keeping.colony)[-1]
    assert {side.frame_id for side in keeping.book.read.sides(visit.id)} == set(frames)
    keeping.book.undo()
    assert keeping.book.read.visits(keeping.colony) == visits
