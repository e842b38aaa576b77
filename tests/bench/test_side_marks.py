from PySide6.QtCore import QPointF

from beeworkbook.bench.side_marks import SideMarks
from beeworkbook.colony.records import FrameId, Mark, MarkId, VisitId
from beeworkbook.comb.contents import Face, MarkKind


def mark(number: int, cell: int | None) -> Mark:
    return Mark(MarkId(number), VisitId(1), MarkKind.QUEEN, FrameId(1), Face.A, cell)


def along(cell: int) -> QPointF:
    return QPointF(10.0 * cell, 50.0)


def test_only_marks_with_a_cell_have_a_place() -> None:
    marks = SideMarks(along)
    assert marks.show([mark(1, 5), mark(2, None)]) == {mark(1, 5)}
    assert list(marks) == [mark(1, 5)]
    assert marks.show([mark(3, 9)]) == {mark(1, 5), mark(3, 9)}


def test_the_last_made_is_found_first() -> None:
    marks = SideMarks(along)
    marks.show([mark(1, 5), mark(2, 6), mark(3, 5)])
    assert marks.on(5) == mark(3, 5)
    assert marks.on(8) is None
    assert marks.at(QPointF(52.0, 51.0)) == mark(3, 5)
    assert marks.at(QPointF(500.0, 50.0)) is None


def test_a_dragged_mark_is_under_the_pointer() -> None:
    marks = SideMarks(along)
    first, second = mark(1, 5), mark(2, 9)
    marks.show([first, second])
    marks.dragged = first
    assert marks.places(QPointF(3.0, 4.0)) == [(first, QPointF(3.0, 4.0)), (second, along(9))]
    assert marks.places(None)[0][1] == along(5)
