"""The marks that lie on cells of one side: which is where, and which is in the hand."""

from collections.abc import Callable, Iterable, Iterator

from PySide6.QtCore import QPointF

from beeworkbook.colony.records import Mark
from beeworkbook.comb.names import cell_fate_name
from beeworkbook.qt.marks import DISC_PX, mark_name


class SideMarks:
    """The marks on a side. A mark without a cell has no place here."""

    def __init__(self, place_of: Callable[[int], QPointF]) -> None:
        """No marks yet; `place_of` gives the place of a cell on the canvas."""
        self._place_of = place_of
        self._marks: tuple[Mark, ...] = ()
        self.dragged: Mark | None = None

    def __iter__(self) -> Iterator[Mark]:
        return iter(self._marks)

    def show(self, marks: Iterable[Mark]) -> set[Mark]:
        """Show these; the marks whose places have to be painted again."""
        before = self._marks
        self._marks = tuple(mark for mark in marks if mark.cell is not None)
        return {*before, *self._marks}

    def at(self, place: QPointF) -> Mark | None:
        """The mark whose disc lies under a place, the last made first."""
        for mark in reversed(self._marks):
            away = self._place_of(mark.cell or 0) - place
            if away.manhattanLength() <= DISC_PX * 0.6:
                return mark
        return None

    def on(self, cell: int) -> Mark | None:
        """The mark on a cell, the last made first."""
        return next((mark for mark in reversed(self._marks) if mark.cell == cell), None)

    def words(self, mark: Mark | None) -> str:
        """What a mark says, with what became of its cell: "charged queen cell, knocked down"; else empty."""
        if mark is None:
            return ""
        fate = cell_fate_name(mark.fate) if mark.fate is not None else ""
        return ", ".join(filter(None, (mark_name(mark.kind, mark.cell_kind, mark.text), fate)))

    def places(self, pointer: QPointF | None) -> list[tuple[Mark, QPointF]]:
        """Every mark and where it is drawn; the one being dragged is under the pointer."""
        return [
            (
                mark,
                pointer if mark is self.dragged and pointer is not None else self._place_of(mark.cell or 0),
            )
            for mark in self._marks
        ]
