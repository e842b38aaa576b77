"""A finished field is one edit, or none."""

import pytest

from beeworkbook.colony.records import Level, Question, Visit
from beeworkbook.colony.sentences import Field
from beeworkbook.rounds.field import FieldError
from beeworkbook.rounds.row import Row, read_row
from beeworkbook.rounds.writing import edit_of, keep
from beeworkbook.workbook.errors import NotReadableError, RefusedError
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY


def _row(book: Workbook) -> Row:
    place = book.read.standing(book.read.apiaries()[0].id, DAY)[0]
    assert place.colony is not None
    return read_row(book, place.stand, place.colony, DAY)


def _keep(book: Workbook, target: Question | Field, typed: str) -> object:
    return keep(book, _row(book), target, typed, book.read.apiaries()[0].id, "")


def test_a_blank_field_of_an_untouched_line_begins_nothing(book: Workbook) -> None:
    apiary_id = book.read.apiaries()[0].id
    for target in (Question.EGGS, Field.FEED, Field.NOTE, Field.NEXT):
        assert edit_of(_row(book), target, "", apiary_id, "") is None
    assert edit_of(_row(book), Field.FEED, "-", apiary_id, "") is None
    assert _keep(book, Field.NOTE, "  ") is None
    assert _row(book).now.visit is None


def test_an_answer_is_kept_and_taken_away_again(book: Workbook) -> None:
    visit_id = _keep(book, Question.EGGS, "4-6")
    visit = book.read.get(Visit, visit_id)
    assert visit is not None
    assert visit.day == DAY
    assert _keep(book, Question.EGGS, "4-6") == visit_id
    assert _keep(book, Question.EGGS, "") is None
    assert _row(book).now.visit is None
    assert book.undo_label == "answer eggs"


def test_each_field_is_a_step_of_its_own(book: Workbook) -> None:
    _keep(book, Field.NOTE, "calm")
    _keep(book, Field.NOTE, "calm, flying")
    book.undo()
    visit = _row(book).now.visit
    assert visit is not None
    assert visit.note == "calm"


def test_passing_over_is_kept_and_taken_back(book: Workbook) -> None:
    _keep(book, Question.OPENED, "x")
    assert _row(book).passed
    _keep(book, Field.NOTE, "rain")
    visit = _row(book).now.visit
    assert visit is not None
    assert (visit.level, visit.note) == (Level.PASSED_OVER, "rain")
    _keep(book, Field.NOTE, "")
    _keep(book, Question.OPENED, "")
    assert _row(book).now.visit is None


def test_a_colony_looked_at_was_not_passed_over(book: Workbook) -> None:
    _keep(book, Question.EGGS, "y")
    with pytest.raises(RefusedError, match="passed over"):
        _keep(book, Question.OPENED, "x")


def test_refusals_keep_nothing(book: Workbook) -> None:
    with pytest.raises(NotReadableError):
        _keep(book, Question.BROOD, "5/9")
    with pytest.raises(NotReadableError):
        _keep(book, Field.FEED, "lots")
    with pytest.raises(FieldError):
        _keep(book, Field.NEXT, "soon")
    assert _row(book).now.visit is None
