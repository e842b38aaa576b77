"""A comb typed in letters and eighths: its sides laid out, copied, assumed or taken away, its marks set."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from beeworkbook.colony.records import FrameId, Level, Mark, MarkId, Side, Visit, VisitId
from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.contents import CellKind, Face, MarkKind, Origin
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.layout import lay_out
from beeworkbook.comb.orientation import entrance_mark
from beeworkbook.comb.side import blank_cells
from beeworkbook.comb.typed import SideKind, TypedComb, TypedSide, TypingError, parse_comb, write_side
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.edits.looking import raise_level
from beeworkbook.workbook.edits.sides import cells_in, copied, last_side, put_side, side_name, side_or_blank
from beeworkbook.workbook.errors import NotReadableError
from beeworkbook.workbook.found import comb_name, frame_type_of, side_of, the, way_of
from beeworkbook.workbook.place import Done, Place

_TYPED_KINDS: Final = frozenset({MarkKind.QUEEN, MarkKind.QUEEN_CELL})
_SIGNS: Final = {SideKind.UNCHANGED: "=", SideKind.ASSUMED: "?"}


@dataclass(frozen=True)
class LayOutComb:
    """A comb as typed: "E1O2S4H1", "S4 / S2O2", "=", "?", "-", with W, Q and K.

    What was typed of this comb before is replaced, also marks without a cell; an empty text takes
    it away. Cells painted on a side that is not typed now, and marks on cells, stay.
    """

    visit_id: VisitId
    frame_id: FrameId
    typed: str

    @property
    def merge_key(self) -> str | None:
        """The field of one comb."""
        return f"comb:{self.visit_id}:{self.frame_id}"

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if the comb hung nowhere; NotReadableError, with the letter."""
        visit = the(tx, Visit, self.visit_id)
        try:
            comb = parse_comb(self.typed, installed_letters())
        except TypingError as error:
            raise NotReadableError(error.message, error.position) from error
        for face in Face:
            self._lay_out(tx, visit, face, comb.sides.get(face))
        self._mark(tx, comb)
        level = _level_of(comb)
        if level is not None:
            raise_level(tx, visit, level)
        name = comb_name(tx, self.frame_id, visit.day)
        place = Place(visit.colony_id, visit.id, frame_id=self.frame_id)
        return Done(None, say("type comb {comb}", comb=name), place)

    def _lay_out(self, tx: Transaction, visit: Visit, face: Face, typed: TypedSide | None) -> None:
        present = side_of(tx, visit.id, self.frame_id, face)
        unsaid = typed is None or _says_marks_only(typed)
        if typed is None or unsaid or typed.kind is SideKind.NOT_LOOKED:
            goes = not unsaid or (
                present is not None and present.origin is not Origin.PAINTED and present.typed
            )
            if present is not None and goes:
                tx.remove(Side, present.id)
            return
        base = side_or_blank(tx, visit, self.frame_id, face)
        side = replace(
            self._filled(tx, visit, base, typed),
            covered=_covered(base, typed),
            typed=write_side(replace(typed, queen=False, cells=())),
        )
        put_side(tx, side)

    def _filled(self, tx: Transaction, visit: Visit, base: Side, typed: TypedSide) -> Side:
        if typed.kind in _SIGNS:
            return self._copied(tx, visit, base, typed.kind)
        if not typed.all_eighths:
            return base if base.origin is Origin.PAINTED else _blank(tx, base)
        if base.origin is Origin.EIGHTHS and base.typed and _same_eighths(base, typed):
            return base
        frame = frame_type_of(tx, base.frame_type)
        cells = lay_out(
            frame,
            typed.all_eighths,
            base.face,
            entrance_end=entrance_mark(way_of(tx, base.part_id, visit.day), base.face),
            seed=_seed(base),
        )
        return replace(base, origin=Origin.EIGHTHS, grain=Origin.EIGHTHS, cells=pack(cells), copied_from=None)

    def _copied(self, tx: Transaction, visit: Visit, base: Side, kind: SideKind) -> Side:
        seen = kind is SideKind.UNCHANGED
        source = last_side(tx, visit, self.frame_id, base.face, seen=seen)
        if source is None:
            text = say(
                "{side} was not noted before, so it cannot be shown as last time.", side=side_name(base)
            )
            raise NotReadableError(text, self.typed.find(_SIGNS[kind]))
        return copied(tx, base, source, Origin.UNCHANGED if seen else Origin.ASSUMED)

    def _mark(self, tx: Transaction, comb: TypedComb) -> None:
        """The marks typed of this comb, those already there left alone."""
        wanted = Counter(_typed_marks(comb))
        for mark in tx.find(Mark, visit_id=self.visit_id, frame_id=self.frame_id):
            if mark.cell is not None or mark.kind not in _TYPED_KINDS:
                continue
            key = (mark.face, mark.kind, mark.cell_kind)
            if wanted[key] > 0:
                wanted[key] -= 1
            else:
                tx.remove(Mark, mark.id)
        for face, kind, cell_kind in wanted.elements():
            tx.add(Mark(MarkId(0), self.visit_id, kind, self.frame_id, face, cell_kind=cell_kind))


def _typed_marks(comb: TypedComb) -> Iterable[tuple[Face | None, MarkKind, CellKind | None]]:
    seen: list[tuple[Face | None, bool, tuple[CellKind, ...]]] = [(None, comb.queen, comb.cells)]
    seen += [(face, side.queen, side.cells) for face, side in comb.sides.items()]
    for face, queen, cells in seen:
        if queen:
            yield face, MarkKind.QUEEN, None
        for kind in cells:
            yield face, MarkKind.QUEEN_CELL, kind


def _says_marks_only(typed: TypedSide) -> bool:
    return typed.kind is SideKind.EIGHTHS and not typed.all_eighths and typed.bees is None


def _same_eighths(base: Side, typed: TypedSide) -> bool:
    before = parse_comb(base.typed).sides.get(Face.A)
    return before is not None and before.all_eighths == typed.all_eighths


def _covered(base: Side, typed: TypedSide) -> float | None:
    """Bees as typed; those noted in another way stay."""
    if typed.bees is not None:
        return typed.bees
    before = parse_comb(base.typed).sides.get(Face.A) if base.typed else None
    return None if before is not None and before.bees is not None else base.covered


def _blank(tx: Transaction, base: Side) -> Side:
    frame = frame_type_of(tx, base.frame_type)
    if not unpack(base.cells, cells=cells_in(tx, base)).any() and base.origin is Origin.EIGHTHS:
        return base
    blank = pack(blank_cells(frame.lattice))
    return replace(base, origin=Origin.EIGHTHS, grain=Origin.EIGHTHS, cells=blank, copied_from=None)


def _seed(side: Side) -> int:
    """One comb side is always laid out alike, and no two quite the same."""
    return 2 * int(side.frame_id) + (side.face is Face.B)


def _level_of(comb: TypedComb) -> Level | None:
    looked = [side for side in comb.sides.values() if side.kind in {SideKind.EIGHTHS, SideKind.UNCHANGED}]
    if not looked:
        return Level.BY_COMB if comb.queen or comb.cells else None
    return Level.BY_COMB if comb.alike else Level.BY_SIDE
