from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import Way
from beeworkbook.colony.sheet_models import (
    CombSheetModel,
    SheetComb,
    SheetSide,
    is_sheet_code,
    sheet_code,
)
from beeworkbook.comb.contents import Face
from beeworkbook.comb.lattice import fit_lattice


def test_every_number_has_its_own_code() -> None:
    assert len({sheet_code(number) for number in range(5000)}) == 5000


def test_the_whole_room_of_codes_is_used_once() -> None:
    step = 237_911
    assert np.gcd(step, 28**4) == 1
    assert sheet_code(0) == sheet_code(28**4)


@given(st.integers(0, 28**4 - 1), st.integers(0, 4), st.integers(1, 27))
def test_a_slip_of_one_letter_is_noticed(number: int, at: int, by: int) -> None:
    letters = "23456789ACDEFGHJKMNPQRTUVWXY"
    code = sheet_code(number)
    slipped = code[:at] + letters[(letters.index(code[at]) + by) % 28] + code[at + 1 :]
    assert is_sheet_code(code)
    assert not is_sheet_code(slipped)


@pytest.mark.parametrize("code", ["", "AAAA", "AAAAAA", "0AAAA", "aaaaa", "K3Q F"])
def test_what_is_no_code_is_told(code: str) -> None:
    assert not is_sheet_code(code)


def test_a_negative_number_has_no_code() -> None:
    with pytest.raises(ValueError, match="not negative"):
        sheet_code(-1)


def test_a_comb_knows_its_sides_by_face() -> None:
    comb = SheetComb(1, "invented", fit_lattice(338, 190), SheetSide(Face.A, last="H8"))
    assert comb.side(Face.A).last == "H8"
    assert comb.side(Face.B).face is Face.B


def test_a_sheet_without_a_visit_is_blank() -> None:
    model = CombSheetModel("AAAAA", 1, "Gate", "2", date(2026, 5, 16), Way.COLD, ())
    assert model.visit is None
