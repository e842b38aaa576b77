"""A filled sheet is read back from a slanted, unevenly lit, blurred and grainy picture of it.

The reader of a later issue is not here; this shows that the layout carries it: markers, code, ticks and
bars come out of the picture by the field map alone.
"""

import cv2
import numpy as np
import numpy.typing as npt
import pytest

from beeworkbook.comb.contents import Content
from beeworkbook.papers.field_map import FieldKind, PageMap, field_map_from_json
from beeworkbook.papers.markers import marker_meaning
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.rect import Rect
from tests.papers import invented
from tests.papers.printed import Picture, cut, darkness, print_combs

FLAT_DPI = 203.2  # eight dots a millimetre
Grey = npt.NDArray[np.uint8]


def photographed(picture: Picture, seed: int) -> Grey:
    """An invented photograph: a slant of 6 % of the width, a shadow, a blur of 1.4 and grain of 8 of 255."""
    chance = np.random.default_rng(seed)
    grey = cv2.cvtColor(picture, cv2.COLOR_RGB2GRAY)
    height, width = grey.shape
    corners = np.array([[0, 0], [width, 0], [width, height], [0, height]], np.float32)
    moved = (corners + chance.uniform(-0.06, 0.06, (4, 2)) * width + 120).astype(np.float32)
    slanted = cv2.warpPerspective(
        grey, cv2.getPerspectiveTransform(corners, moved), (width + 240, height + 240), borderValue=120
    )
    lit = cv2.GaussianBlur(slanted, (0, 0), 1.4) * np.linspace(0.6, 1.0, width + 240)
    grainy: Grey = np.clip(lit + chance.normal(0, 8, lit.shape), 0, 255).astype(np.uint8)
    return grainy


def straightened(photograph: Grey, page: PageMap) -> tuple[set[int], Grey]:
    """The numbers of the markers found, and the page laid flat by them, eight dots a millimetre."""
    family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)
    corners, numbers, _ = cv2.aruco.ArucoDetector(family).detectMarkers(photograph)
    places = {marker.number: marker.place.centre for marker in page.markers}
    found = [int(number) for number in numbers.ravel()]
    seen = np.array([corner[0].mean(axis=0) for corner in corners], np.float32)
    paper = np.array([places[number] for number in found], np.float32) * 8
    flatten, _ = cv2.findHomography(seen, paper, cv2.RANSAC)
    size = (round(page.width_mm * 8), round(page.height_mm * 8))
    return set(found), cv2.warpPerspective(photograph, flatten, size).astype(np.uint8)


@pytest.mark.parametrize("paper", [Paper.A4, Paper.LETTER])
@pytest.mark.parametrize("frame", ["bs_deep", "layens", "bs_shallow"])
def test_a_photograph_of_a_filled_sheet_can_be_read(frame: str, paper: Paper) -> None:
    box = invented.box(frame, 6)
    printed = print_combs(invented.model(box, filled=True), options=PaperOptions(paper, colour=False))
    page = field_map_from_json(printed.maps[0].to_json()).pages[0]
    found, flat = straightened(photographed(printed.picture(0, 170), seed=5), page)
    assert found == {marker.number for marker in page.markers}
    assert {told for place, told in map(marker_meaning, found) if place % 3 == 1} == {1}
    assert {told for place, told in map(marker_meaning, found) if place % 3 != 1} == {page.layout}

    colour = np.dstack([flat] * 3)
    codes = [
        cv2.QRCodeDetector().detectAndDecode(cut(colour, code.inset(-2), FLAT_DPI))[0] for code in page.codes
    ]
    assert page.plain in codes

    white = cv2.GaussianBlur(cv2.dilate(flat, np.ones((61, 61))), (0, 0), 40)
    even = np.dstack([np.clip(flat / white * 255, 0, 255).astype(np.uint8)] * 3)
    printed_here = {field.name for field in page.fields}
    for place in range(1, 7):
        side = f"box1.comb{place}.A"
        if f"{side}.comb" in printed_here:
            check_ticks_and_bars(even, page, side, invented.eighths_of(place, 6))


def check_ticks_and_bars(flat: Picture, page: PageMap, side: str, eighths: dict[Content, float]) -> None:
    for name, ticked in (("looked", True), ("eggs", Content.EGGS in eighths), ("queen", False)):
        place = page.field(f"{side}.{name}").place
        assert (darkness(cut(flat, place.inset(0.9), FLAT_DPI)) > 0.12) == ticked, (side, name)
    for name, content in (("sealed", Content.SEALED), ("stores", Content.STORES)):
        field = page.field(f"{side}.bar.{name}")
        assert field.kind is FieldKind.BAR
        middle = Rect(field.place.x + 0.4, field.place.centre[1] - 0.3, field.place.width - 0.4, 0.6)
        drawn = (cut(flat, middle, FLAT_DPI).mean(axis=(0, 2)) < 140).mean() * 8
        assert drawn == pytest.approx(eighths.get(content, 0.0), abs=0.2), (side, name)
