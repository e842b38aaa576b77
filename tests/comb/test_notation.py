import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Lattice, fit_lattice
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
