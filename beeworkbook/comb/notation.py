"""The readable notation of a side: one letter a cell, run lengths, one line a row of cells.

"12H3_" is twelve cells of sealed stores and three not recorded. The letters are fixed for ever
(contents.NOTATION_LETTERS); what a keeper types is another notation, in typed.py.
"""

import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Final

import numpy as np

from beeworkbook.comb.contents import NOTATION_LETTERS
from beeworkbook.comb.lattice import Cells, Lattice, read_only
from beeworkbook.words import say

_LETTERS: Final = "".join(letter for _, letter in sorted(NOTATION_LETTERS.items()))
_RUN: Final = re.compile(f"([1-9][0-9]{{0,5}})?([{_LETTERS}])")
_WHOLE: Final = re.compile(f"(?:(?:[1-9][0-9]{{0,5}})?[{_LETTERS}]|\n)*+")
_SIGN: Final = re.compile(f"[{_LETTERS}\n]")
_DIGITS: Final = b"0123456789"
_ROW_END: Final = 255
_CODE_BYTES: Final = bytes.maketrans(f"{_LETTERS}\n".encode(), bytes((*range(len(_LETTERS)), _ROW_END)))


class NotationError(ValueError):
    """The notation of a side breaks off at this row and column, and why.

    row and column count from 1, the column in letters of the line.
    """

    def __init__(self, row: int, column: int, reason: str) -> None:
        text = say("Row {row}, letter {column}: {reason}.", row=row, column=column, reason=reason)
        super().__init__(text)
        self.row = row
        self.column = column
        self.reason = reason


def to_text(lattice: Lattice, cells: Cells) -> str:
    """The notation of these cells: a line a row, each run as its length (from two on) and letter.

    Shapes: cells (lattice.cells,). Errors: ValueError on a wrong length.
    """
    if len(cells) != lattice.cells:
        raise ValueError("the cells are not of this lattice")
    turns = np.flatnonzero(cells[1:] != cells[:-1]) + 1
    bounds = np.union1d(turns, lattice.row_starts)  # a run ends at the end of its row
    lengths, codes = np.diff(bounds).tolist(), cells[bounds[:-1]].tolist()
    runs = [
        _LETTERS[code] if length == 1 else f"{length}{_LETTERS[code]}"
        for length, code in zip(lengths, codes, strict=True)
    ]
    rows = np.searchsorted(bounds, lattice.row_starts).tolist()
    return "\n".join("".join(runs[start:end]) for start, end in pairwise(rows))


def from_text(lattice: Lattice, text: str) -> Cells:
    """The cells in a notation, whose rows must be those of the lattice.

    A run is measured before it is written out, so that a hostile length costs nothing.
    Shapes: result (lattice.cells,), read-only. Errors: NotationError with row, column, reason.
    """
    cells = _read_at_once(lattice, text)
    if cells is None:
        raise next(_faults(lattice, text))
    return cells


def _read_at_once(lattice: Lattice, text: str) -> Cells | None:
    """The cells of a notation that is right; None if anything is wrong, to be found row by row."""
    longest = 2 * lattice.cells + lattice.rows  # every cell written as "1S"
    if not text or len(text) > longest or _WHOLE.fullmatch(text) is None:
        return None
    codes = np.frombuffer(text.encode().translate(_CODE_BYTES, _DIGITS), np.uint8)
    lengths = _SIGN.split(text)  # one before each letter, blank for one cell, and nothing at the end
    counts = np.array([int(length or 1) for length in lengths[:-1]], np.intp)
    row_ends = codes == _ROW_END
    counts[row_ends] = 0
    reached = np.cumsum(counts)
    if reached[-1] != lattice.cells or not np.array_equal(reached[row_ends], lattice.row_starts[1:-1]):
        return None
    return read_only(np.repeat(codes, counts))


def _faults(lattice: Lattice, text: str) -> Iterator[NotationError]:
    """What is wrong with a notation that could not be read, the first fault first."""
    lines = text.split("\n", lattice.rows)
    if len(lines) > lattice.rows:
        yield NotationError(lattice.rows + 1, 1, say("the comb has only {rows} rows", rows=lattice.rows))
    if len(lines) < lattice.rows:
        rows = say("there are {found} rows and not {rows}", found=len(lines), rows=lattice.rows)
        yield NotationError(len(lines), len(lines[-1]) + 1, rows)
    for row, line in enumerate(lines):
        yield from _faults_in_row(row, line, lattice.row_length(row))


def _faults_in_row(row: int, line: str, length: int) -> Iterator[NotationError]:
    left, place = length, 0
    while place < len(line):
        run = _RUN.match(line, place)
        if run is None:
            yield NotationError(row + 1, place + 1, _what_is_wrong(line, place))
            return
        count = int(run[1] or 1)
        if count > left:
            reason = say("more than the {cells} cells of this row", cells=length)
            yield NotationError(row + 1, place + 1, reason)
            return
        left -= count
        place = run.end()
    if left:
        yield NotationError(row + 1, place + 1, say("{cells} cells are missing", cells=left))


def _what_is_wrong(line: str, place: int) -> str:
    if line[place] not in "123456789":
        return say("“{letter}” is no content and no length", letter=line[place])
    return say("a length must be a number up to 999999 with a letter of a content after it")
