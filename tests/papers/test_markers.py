import itertools

import cv2
import numpy as np
import pytest

from beeworkbook.colony.sheet_models import sheet_code
from beeworkbook.papers.comb_forms import forms
from beeworkbook.papers.markers import (
    PLACES,
    VALUES,
    Runs,
    code_runs,
    marker_meaning,
    marker_number,
    marker_runs,
    plain_code,
    runs_page_description,
)
from beeworkbook.papers.options import Paper
from beeworkbook.papers.rect import Rect


def squares(runs: Runs, size: int) -> np.ndarray[tuple[int, int], np.dtype[np.uint8]]:
    drawn = np.full((size, size), 255, np.uint8)
    for row, first, count in runs:
        drawn[row, first : first + count] = 0
    return drawn


def test_a_marker_tells_its_place_and_the_layout_or_the_page() -> None:
    for place, layout, page in itertools.product(range(PLACES), (1, 8), (1, 5)):
        told = layout if place % 3 != 1 else page
        assert marker_meaning(marker_number(place, layout, page)) == (place, told)


def test_numbers_tell_layout_and_page_apart_on_every_sheet() -> None:
    numbers = {
        (layout, page): tuple(marker_number(place, layout, page) for place in range(PLACES))
        for layout in range(VALUES)
        for page in range(1, VALUES + 1)
    }
    assert len(set(numbers.values())) == len(numbers)
    assert all(len(set(found)) == PLACES for found in numbers.values())


def test_every_form_has_a_layout_number_of_its_own() -> None:
    numbers = [form.number for paper in (Paper.A4, Paper.LETTER) for form in forms(paper)]
    assert len(set(numbers)) == len(numbers)
    assert all(0 < number < VALUES for number in numbers)


def test_pages_past_the_last_value_begin_again() -> None:
    assert marker_number(1, 1, 1) == marker_number(1, 1, 1 + VALUES)


@pytest.mark.parametrize(
    ("place", "layout", "page"), [(-1, 0, 1), (21, 0, 1), (0, VALUES, 1), (0, -1, 1), (0, 0, 0)]
)
def test_what_no_marker_can_tell_is_refused(place: int, layout: int, page: int) -> None:
    with pytest.raises(ValueError, match="no such"):
        marker_number(place, layout, page)


@pytest.mark.parametrize("number", [-1, PLACES * VALUES])
def test_a_foreign_marker_means_nothing(number: int) -> None:
    with pytest.raises(ValueError, match="no such marker"):
        marker_meaning(number)


@pytest.mark.parametrize("number", [0, 22, 150, 335])
def test_a_marker_is_drawn_as_the_family_has_it(number: int) -> None:
    family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)
    assert (
        squares(marker_runs(number), 8) == cv2.aruco.generateImageMarker(family, number, 8, borderBits=1)
    ).all()


@pytest.mark.parametrize("plain", ["K3QF7 P1 R4", plain_code(sheet_code(612_345), 16, 999)])
def test_the_code_is_small_and_is_read_back(plain: str) -> None:
    runs, size = code_runs(plain)
    drawn = np.pad(squares(runs, size), 4, constant_values=255)
    read, _, _ = cv2.QRCodeDetector().detectAndDecode(
        cv2.resize(drawn, None, fx=8, fy=8, interpolation=cv2.INTER_NEAREST)
    )
    assert read == plain
    assert size == 21


def test_the_code_bears_a_quarter_of_it_being_dirty() -> None:
    # Level Q restores about 25 % of the codewords (ISO/IEC 18004); this blot is a fortieth of the area.
    runs, size = code_runs("K3QF7 P1 R4")
    drawn = np.pad(squares(runs, size), 4, constant_values=255)
    drawn[16:19, 13:17] = 0
    read, _, _ = cv2.QRCodeDetector().detectAndDecode(
        cv2.resize(drawn, None, fx=8, fy=8, interpolation=cv2.INTER_NEAREST)
    )
    assert read == "K3QF7 P1 R4"


def test_a_path_is_one_fill_placed_from_the_top_left() -> None:
    described = runs_page_description(((0, 0, 8), (7, 2, 1)), 8, Rect(0, 0, 25.4, 25.4), 254.0)
    assert described == "q 0 g 9.00000 0 0 -9.00000 0.0000 720.0000 cm 0 0 8 1 re 2 7 1 1 re f Q"
