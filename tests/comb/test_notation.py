import random
import re
from itertools import groupby, pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.contents import NOTATION_LETTERS as LETTERS
from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Cells, Lattice, fit_lattice
from beeworkbook.comb.notation import NotationError, from_text, to_text
from beeworkbook.comb.side import blank_cells

SMALL = fit_lattice(60, 40)
LATTICES = (SMALL, fit_lattice(338, 114), fit_lattice(338, 190))


@given(st.sampled_from(LATTICES), st.integers(0, 2**32 - 1), st.integers(1, 40))
def test_the_notation_comes_back(lattice: Lattice, seed: int, run: int) -> None:
    few = np.random.default_rng(seed).integers(0, 12, lattice.cells // run + 1)
    cells = np.repeat(few, run)[: lattice.cells].astype(np.uint8)
    text = to_text(lattice, cells)
    back = from_text(lattice, text)
    assert np.array_equal(back, cells)
    assert not back.flags.writeable
    assert len(text.split("\n")) == lattice.rows


def by_hand(lattice: Lattice, cells: Cells) -> str:
    """The notation, cell by cell."""
    lines = []
    for start, end in pairwise(lattice.row_starts.tolist()):
        runs = [(int(code), len(list(run))) for code, run in groupby(cells[start:end])]
        lines.append(
            "".join(f"{length if length > 1 else ''}{LETTERS[Content(code)]}" for code, length in runs)
        )
    return "\n".join(lines)


@given(st.sampled_from(LATTICES), st.integers(0, 2**32 - 1), st.integers(1, 300), st.integers(0, 40))
def test_the_notation_is_that_of_a_patient_hand(lattice: Lattice, seed: int, run: int, specks: int) -> None:
    dice = np.random.default_rng(seed)
    cells = np.repeat(dice.integers(0, 12, lattice.cells // run + 1), run)[: lattice.cells].astype(np.uint8)
    cells[dice.integers(0, lattice.cells, specks)] = Content.EGGS
    text = to_text(lattice, cells)
    assert text == by_hand(lattice, cells)
    written_out = re.sub(r"(?<![0-9])([A-Z_])", r"1\1", text)
    assert np.array_equal(from_text(lattice, written_out), cells)


@given(st.integers(0, 2**32 - 1))
def test_whatever_is_spoiled_is_refused_or_read_as_it_stands(seed: int) -> None:
    dice = random.Random(seed)
    cells = np.random.default_rng(seed).choice(12, SMALL.cells).astype(np.uint8)
    letters = list(to_text(SMALL, cells))
    for _ in range(dice.randint(1, 3)):
        letters[dice.randrange(len(letters))] = dice.choice("0123456789_GFCEOSBDPNH\nx ")
    text = "".join(letters)
    try:
        found = from_text(SMALL, text)
    except NotationError:
        return
    rows = [re.findall(r"([0-9]*)(.)", line) for line in text.split("\n")]
    written_out = ["".join(int(length or 1) * letter for length, letter in row) for row in rows]
    assert [len(row) for row in written_out] == SMALL.row_lengths.tolist()
    assert by_hand(SMALL, found) == to_text(SMALL, from_text(SMALL, "\n".join(written_out)))


def test_a_row_reads_as_runs_of_letters() -> None:
    cells = blank_cells(SMALL).copy()
    cells[:9] = (Content.STORES,) * 7 + (Content.EGGS, Content.GAP)
    first = to_text(SMALL, cells).split("\n")[0]
    assert first == f"7HEG{SMALL.first_row - 9}_"


def test_runs_may_be_written_out() -> None:
    text = "\n".join("S" * SMALL.row_length(row) for row in range(SMALL.rows))
    assert np.array_equal(from_text(SMALL, text), blank_cells(SMALL, Content.SEALED))


def changed(row: int, line: str) -> str:
    lines = to_text(SMALL, blank_cells(SMALL)).split("\n")
    lines[row] = line
    return "\n".join(lines)


FIRST = SMALL.first_row


@pytest.mark.parametrize(
    ("text", "row", "column", "reason"),
    [
        (changed(2, f"{FIRST - 3}H"), 3, len(f"{FIRST - 3}H") + 1, "3 cells are missing"),
        (changed(0, ""), 1, 1, f"{FIRST} cells are missing"),
        (changed(0, f"{FIRST}HE"), 1, len(f"{FIRST}H") + 1, f"more than the {FIRST} cells"),
        (changed(0, "999999H"), 1, 1, f"more than the {FIRST} cells"),
        (changed(0, "9999999999999999999999H"), 1, 1, "a length must be a number up to 999999"),
        (changed(0, "5"), 1, 1, "a length must be a number"),
        (changed(0, "2Hx"), 1, 3, "“x” is no content"),
        (changed(0, "2H0E"), 1, 3, "“0” is no content"),
        (changed(0, "2h"), 1, 1, "a length must be"),
        (changed(0, "２H"), 1, 1, "“２” is no content"),
        (changed(1, " 2H"), 2, 1, "“ ” is no content"),
        (to_text(SMALL, blank_cells(SMALL)) + "\n", SMALL.rows + 1, 1, "only"),
        ("5H\n4H", 2, 3, "there are 2 rows and not"),
        ("", 1, 1, "there are 1 rows"),
    ],
)
def test_damage_is_refused_with_its_place(text: str, row: int, column: int, reason: str) -> None:
    with pytest.raises(NotationError, match=reason) as caught:
        from_text(SMALL, text)
    assert (caught.value.row, caught.value.column) == (row, column)
    assert caught.value.reason in str(caught.value)


def test_a_book_of_rows_is_not_split() -> None:
    with pytest.raises(NotationError, match="only"):
        from_text(SMALL, "\n" * 5_000_000)


def test_only_cells_of_the_lattice_are_written() -> None:
    with pytest.raises(ValueError, match="not of this lattice"):
        to_text(SMALL, np.zeros(3, np.uint8))
