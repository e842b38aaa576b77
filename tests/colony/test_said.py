import pytest

from beeworkbook.colony.said import (
    CellsSaid,
    SaidError,
    read_cells,
    read_combs,
    read_queen,
    write_cells,
    write_combs,
)
from beeworkbook.comb.contents import CellKind, Face


def test_two_combs_beside_each_other_are_two_combs() -> None:
    assert write_combs((4, 5)) == "4, 5"
    assert write_combs((4, 5, 6)) == "4–6"
    assert read_combs("4–5 and 8") == (4, 5, 8)


def test_kinds_of_queen_cell_by_letter_and_by_word() -> None:
    for kind, letter in zip(CellKind, "uecsmt", strict=True):
        (cells,) = read_cells(f"2{letter}")
        assert cells == CellsSaid(kind, 2)
        assert read_cells(write_cells((cells,))) == (cells,)


def test_a_sentence_about_cells_is_understood() -> None:
    assert read_cells("1 charged cell on 5B and 2 play cups") == (
        CellsSaid(CellKind.CHARGED, 1, 5, Face.B),
        CellsSaid(CellKind.PLAY_CUP, 2),
    )


@pytest.mark.parametrize("typed", ["1 charged 9, 2 cups", "1C 9 2U", "1 charged cell on 9 and 2 cups"])
def test_a_comb_without_its_side_is_a_place_too(typed: str) -> None:
    cells = (CellsSaid(CellKind.CHARGED, 1, 9), CellsSaid(CellKind.PLAY_CUP, 2))
    assert read_cells(typed) == cells
    assert write_cells(cells) == "1 charged 9, 2 cups"
    assert write_cells(read_cells("3 cells 9")) == "3 cells 9"


@pytest.mark.parametrize("typed", ["1c 5 6", "1c 5b 6", "1c 99", "2 and 3 cups", "2 on 5"])
def test_a_number_that_is_no_comb_is_not_taken_for_one(typed: str) -> None:
    with pytest.raises(SaidError):
        read_cells(typed)


def test_a_place_follows_its_cell_once() -> None:
    with pytest.raises(SaidError):
        read_cells("1c 5b 6a")
    with pytest.raises(SaidError):
        read_cells("999 cups")


def test_one_letter_is_no_colour_of_a_queen() -> None:
    with pytest.raises(SaidError):
        read_queen("5 w")
    with pytest.raises(SaidError):
        read_queen("5A 6B")
