"""The readable notation of a side: one letter a cell, run lengths, one line a row of cells.

"12H3_" is twelve cells of sealed stores and three not recorded. The letters are fixed for ever
(contents.NOTATION_LETTERS); what a keeper types is another notation, in typed.py.
"""

import re
from itertools import groupby, pairwise
from typing import Final

import numpy as np

from beeworkbook.comb.contents import NOTATION_LETTERS
from beeworkbook.comb.lattice import Cells, Lattice, read_only
from beeworkbook.words import say

_LETTERS: Final = "".join(letter for _, letter in sorted(NOTATION_LETTERS.items()))
_CODES: Final = {letter: int(content) for content, letter in NOTATION_LETTERS.items()}
_RUN: Final = re.compile(f"([1-9][0-9]{{0,5}})?([{_LETTERS}])")


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
    letters = "".join(_LETTERS[code] for code in cells.tolist())
    starts = lattice.row_starts.tolist()
    return "\n".join(_runs(letters[start:end]) for start, end in pairwise(starts))


def from_text(lattice: Lattice, text: str) -> Cells:
    """The cells in a notation, whose rows must be those of the lattice.

    A run is measured before it is written out, so that a hostile length costs nothing.
    Shapes: result (lattice.cells,), read-only. Errors: NotationError with row, column, reason.
    """
    lines = text.split("\n", lattice.rows)
    if len(lines) > lattice.rows:
        raise NotationError(lattice.rows + 1, 1, say("the comb has only {rows} rows", rows=lattice.rows))
    if len(lines) < lattice.rows:
        rows = say("there are {found} rows and not {rows}", found=len(lines), rows=lattice.rows)
        raise NotationError(len(lines), len(lines[-1]) + 1, rows)
    codes = bytearray()
    for row, line in enumerate(lines):
        _read_row(row, line, lattice.row_length(row), codes)
    return read_only(np.frombuffer(bytes(codes), np.uint8))


def _runs(row: str) -> str:
    lengths = ((letter, sum(1 for _ in run)) for letter, run in groupby(row))
    return "".join(letter if length == 1 else f"{length}{letter}" for letter, length in lengths)


def _read_row(row: int, line: str, length: int, codes: bytearray) -> None:
    left, place = length, 0
    while place < len(line):
        run = _RUN.match(line, place)
        if run is None:
            raise NotationError(row + 1, place + 1, _what_is_wrong(line, place))
        count = int(run[1] or 1)
        if count > left:
            reason = say("more than the {cells} cells of this row", cells=length)
            raise NotationError(row + 1, place + 1, reason)
        codes.extend(bytes((_CODES[run[2]],)) * count)
        left -= count
        place = run.end()
    if left:
        raise NotationError(row + 1, place + 1, say("{cells} cells are missing", cells=left))


def _what_is_wrong(line: str, place: int) -> str:
    if line[place] not in "123456789":
        return say("“{letter}” is no content and no length", letter=line[place])
    return say("a length must be a number up to 999999 with a letter of a content after it")
