"""What stands in the field of a comb: its sides and marks of one visit written as they were typed."""

from collections.abc import Iterable
from typing import Final

from beeworkbook.colony.records import Mark, Side
from beeworkbook.comb.contents import CellKind, Face, MarkKind
from beeworkbook.comb.key_letters import KeyLetters, installed_letters
from beeworkbook.comb.typed import TypedComb, TypedSide, parse_comb, write_comb

_NOTHING: Final = TypedSide()


def comb_text(sides: Iterable[Side], marks: Iterable[Mark] = (), letters: KeyLetters | None = None) -> str:
    """The text of one comb, e.g. "E1O2S4H1" or "S4 / S2O2Q"; a painted side has none.

    sides and marks are those of one frame in one visit; marks on cells are left out, since they
    were not typed. Typing the text again changes nothing.
    """
    loose = [mark for mark in marks if mark.cell is None]
    typed = {side.face: _read(side.typed) for side in sides if side.typed}
    faces = {mark.face for mark in loose if mark.face is not None and mark.kind is not MarkKind.NOTE}
    found: dict[Face, TypedSide] = {}
    for face in Face:
        if face in typed or face in faces:
            side = typed.get(face, _NOTHING)
            queen, cells = _on(loose, face)
            found[face] = TypedSide(side.kind, side.eighths, side.rest_empty, side.bees, queen, cells)
    queen, cells = _on(loose, None)
    return write_comb(TypedComb(found, queen, cells), letters or installed_letters())


def _read(text: str) -> TypedSide:
    return parse_comb(text).sides.get(Face.A, _NOTHING)


def _on(marks: Iterable[Mark], face: Face | None) -> tuple[bool, tuple[CellKind, ...]]:
    here = [mark for mark in marks if mark.face is face]
    queen = any(mark.kind is MarkKind.QUEEN for mark in here)
    kinds = (mark.cell_kind for mark in here if mark.kind is MarkKind.QUEEN_CELL)
    return queen, tuple(kind for kind in kinds if kind is not None)
