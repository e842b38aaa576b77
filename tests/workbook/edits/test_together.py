import pytest

from beeworkbook.colony.records import Level, Question
from beeworkbook.workbook.edits import SetAnswer, SetLevel, SetNote, Together
from beeworkbook.workbook.errors import NotReadableError
from tests.workbook.keeping import Keeping


def test_several_edits_are_one_step_done_or_refused_as_one(keeping: Keeping) -> None:
    before, steps = keeping.everything(), len(keeping.book._history)
    edits = (SetNote(keeping.visit, "quiet"), SetAnswer(keeping.visit, Question.EGGS, "y"))
    keeping.book.do(Together(edits, "enter the line"))
    assert keeping.book.undo_label == "enter the line"
    assert len(keeping.book._history) == steps + 1
    place = keeping.book.undo()
    assert place is not None
    assert place.question is Question.EGGS
    assert keeping.everything() == before
    wrong = (SetLevel(keeping.visit, Level.NOT_OPENED), SetAnswer(keeping.visit, Question.STORES, "?!"))
    with pytest.raises(NotReadableError):
        keeping.book.do(Together(wrong, "enter the line"))
    assert keeping.everything() == before
    assert keeping.book.do(Together((), "nothing")) is None
    assert len(keeping.book._history) == steps
