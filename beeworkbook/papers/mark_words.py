"""Marks of a visit as letters on a comb and as words among the notes.

Notes are numbered through the whole sheet, so that the number on the comb leads to its words.
"""

from collections.abc import Iterator, Mapping

from beeworkbook.colony.records import Mark, MarkId
from beeworkbook.colony.sheet_models import CombSheetModel
from beeworkbook.comb.contents import Face, MarkKind
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.names import cell_fate_name, cell_kind_name
from beeworkbook.words import say


def marked(model: CombSheetModel) -> Iterator[tuple[str, Mark]]:
    """Every mark with where it is: "6B", "comb 6", or the whole visit."""
    several = len(model.boxes) > 1
    for box in model.boxes:
        prefix = f"{box.name} " if several else ""
        for comb in box.combs:
            for face in Face:
                for mark in comb.side(face).marks:
                    yield f"{prefix}{comb.place}{face.value}", mark
            for mark in comb.marks:
                yield prefix + say("comb {place}", place=comb.place), mark
    for mark in model.visit.marks if model.visit else ():
        yield "", mark


def note_numbers(model: CombSheetModel) -> dict[MarkId, int]:
    """The number of every note, in the order of the combs."""
    notes = [mark.id for _, mark in marked(model) if mark.kind is MarkKind.NOTE]
    return {mark: index for index, mark in enumerate(notes, 1)}


def mark_letters(mark: Mark, numbers: Mapping[MarkId, int]) -> str:
    """Q, K and the letter of its kind, or the number of a note."""
    letters = installed_letters()
    if mark.kind is MarkKind.QUEEN:
        return letters.queen
    if mark.kind is MarkKind.QUEEN_CELL:
        return letters.queen_cell + (letters.cell_kinds[mark.cell_kind] if mark.cell_kind else "")
    return str(numbers.get(mark.id, ""))


def mark_texts(model: CombSheetModel) -> list[str]:
    """Every mark in words, a line each: "6B: charged queen cell, chosen"."""
    numbers = note_numbers(model)
    return [_worded(where, mark, numbers) for where, mark in marked(model)]


def _worded(where: str, mark: Mark, numbers: Mapping[MarkId, int]) -> str:
    if mark.kind is MarkKind.NOTE:
        lead = say("note {number}", number=numbers[mark.id])
        place = f"{where}, {lead}" if where else lead
        return f"{place}: {mark.text}"
    what = say("queen seen")
    if mark.kind is MarkKind.QUEEN_CELL:
        what = cell_kind_name(mark.cell_kind) if mark.cell_kind else say("queen cell")
        what += f", {cell_fate_name(mark.fate)}" if mark.fate else ""
    said = f"{what}. {mark.text}" if mark.text else what
    return f"{where}: {said}" if where else said
