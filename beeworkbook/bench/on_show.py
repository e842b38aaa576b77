"""What the box and the bench show of a visit, as values: every comb, its sides, its marks, its text.

Read once from the book, then only looked at; nothing here draws and nothing counts.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from beeworkbook.colony.hive import PartDay, PlacedFrame
from beeworkbook.colony.records import Frame, FrameId, FrameMake, Mark, Side, VisitId
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import Content, Face, Origin
from beeworkbook.comb.eighths import read_back, whole_eighths
from beeworkbook.comb.frames import FrameType
from beeworkbook.comb.lattice import Cells
from beeworkbook.comb.side import blank_cells
from beeworkbook.comb.typed import TypedComb, TypedSide, write_comb
from beeworkbook.words import say
from beeworkbook.workbook.typed_back import comb_text
from beeworkbook.workbook.workbook import Workbook


@dataclass(frozen=True, eq=False)
class SideOnShow:
    """One side of one comb. `side` is None where nothing was noted of it in this visit."""

    face: Face
    frame_type: FrameType
    side: Side | None = None

    @cached_property
    def cells(self) -> Cells:
        """What its cells hold. Shapes: (cells of the frame type,), read-only."""
        lattice = self.frame_type.lattice
        return unpack(self.side.cells, cells=lattice.cells) if self.side else blank_cells(lattice)

    @property
    def look(self) -> Origin:
        """How it is drawn: an unchanged side looks like what it copies, a blank one like a painted one."""
        if self.side is None:
            return Origin.PAINTED
        return self.side.grain if self.side.origin is Origin.UNCHANGED else self.side.origin

    @property
    def is_blank(self) -> bool:
        """Whether nothing is recorded on it."""
        return self.side is None or not self.cells.any()

    @property
    def word(self) -> str:
        """How it came to be, in a word; empty if it was painted."""
        if self.side is None:
            return say("not looked at")
        if self.side.origin is Origin.ASSUMED:
            return say("assumed, as last time")
        if self.side.origin is Origin.UNCHANGED:
            return say("unchanged")
        if self.side.origin is Origin.PAINTED:
            return ""
        return say("laid out") if self.cells.any() else say("nothing recorded")


@dataclass(frozen=True, eq=False)
class CombOnShow:
    """One place of a box. `frame` is None where the place is free; a dummy board has no sides."""

    place: int
    frame: Frame | None = None
    sides: Mapping[Face, SideOnShow] = field(default_factory=dict)
    marks: tuple[Mark, ...] = ()
    typed: str = ""

    @property
    def is_comb(self) -> bool:
        """Whether something can be drawn on it."""
        return bool(self.sides)

    @property
    def word(self) -> str:
        """What stands under the comb: its text, or how it came to be."""
        if self.frame is None:
            return say("free")
        if not self.sides:
            return say("dummy board")
        origins = {side.side.origin for side in self.sides.values() if side.side is not None}
        if Origin.PAINTED in origins:
            return say("painted")
        if self.typed and "?" not in self.typed:
            return self.typed
        if Origin.ASSUMED in origins:
            return say("assumed")
        return say("unchanged") if origins == {Origin.UNCHANGED} else ""

    @property
    def painted_text(self) -> str:
        """The comb in letters and whole eighths, read back from its cells; empty if nothing is noted."""
        noted = {face: side.side for face, side in self.sides.items() if side.side is not None}
        if not noted:
            return ""
        return last_text(noted, next(iter(self.sides.values())).frame_type)

    @property
    def is_emphatic(self) -> bool:
        """Whether the word under it is a word and not the text that was typed."""
        return self.word != self.typed

    def on_side(self, face: Face) -> tuple[Mark, ...]:
        """The marks on the cells of this side."""
        return tuple(mark for mark in self.marks if mark.face is face and mark.cell is not None)

    def without_cell(self, face: Face | None) -> tuple[Mark, ...]:
        """The marks of a side, or of the whole comb, that nobody gave a cell."""
        return tuple(mark for mark in self.marks if mark.face is face and mark.cell is None)


def combs_on_show(book: Workbook, box: PartDay, visit_id: VisitId | None) -> tuple[CombOnShow, ...]:
    """The combs of a box in hive order, as they were looked at in a visit; blank without one."""
    sides = book.read.sides(visit_id) if visit_id is not None else ()
    marks = book.read.marks(visit_id) if visit_id is not None else ()
    by_frame: dict[FrameId, list[Side]] = {}
    for side in sides:
        by_frame.setdefault(side.frame_id, []).append(side)
    return tuple(
        _comb(book, placed, by_frame.get(placed.frame.id, ()) if placed.frame else (), marks)
        for placed in box.frames
    )


def comb_on_show(book: Workbook, placed: PlacedFrame, visit_id: VisitId | None) -> CombOnShow:
    """One comb alone, as it was looked at in a visit; blank without one."""
    if visit_id is None or placed.frame is None:
        return _comb(book, placed, (), ())
    sides = book.read.find(Side, visit_id=visit_id, frame_id=placed.frame.id)
    marks = book.read.find(Mark, visit_id=visit_id, frame_id=placed.frame.id)
    return _comb(book, placed, sides, marks)


def last_text(sides: Mapping[Face, Side], frame_type: FrameType) -> str:
    """The comb of the visit before in letters and whole eighths, also if it was painted."""
    typed = {
        face: TypedSide(
            eighths={
                content: float(eighths)
                for content, eighths in whole_eighths(_eighths(side, frame_type)).items()
            }
        )
        for face, side in sorted(sides.items())
        if side.frame_type == frame_type.id
    }
    return write_comb(TypedComb(typed), gap=" ")


def _eighths(side: Side, frame_type: FrameType) -> dict[Content, float]:
    return dict(read_back(frame_type, unpack(side.cells, cells=frame_type.lattice.cells)))


def _comb(book: Workbook, placed: PlacedFrame, sides: Sequence[Side], marks: Sequence[Mark]) -> CombOnShow:
    frame = placed.frame
    if frame is None or frame.make is not FrameMake.FRAME:
        return CombOnShow(placed.place, frame)
    noted = {side.face: side for side in sides}
    own = tuple(mark for mark in marks if mark.frame_id == frame.id)
    shown = {
        face: SideOnShow(
            face,
            book.read.frame_type(noted[face].frame_type if face in noted else frame.frame_type),
            noted.get(face),
        )
        for face in Face
    }
    return CombOnShow(placed.place, frame, shown, own, comb_text(noted.values(), own))
