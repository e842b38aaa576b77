"""The square markers a photograph of a sheet is straightened by, and the code that names the sheet.

Twenty-one markers in three columns and seven rows. The number of a marker is its place, 0 to 20, plus
21 times what it tells: the outer columns tell the layout, the middle one the page.
"""

from functools import cache, lru_cache
from typing import Final

from beeworkbook.papers.marker_bits import MARKER_BITS
from beeworkbook.papers.rect import Rect

MARKER_MM: Final = 8.0
CODE_MM: Final = 17.2
COLUMNS: Final = 3
ROWS: Final = 7
PLACES: Final = COLUMNS * ROWS
VALUES: Final = len(MARKER_BITS) // PLACES
"""How many layouts, and how many pages before the count begins again."""
_CELLS: Final = 8
_BITS: Final = 6
_MIDDLE: Final = 1
_POINTS: Final = 72 / 25.4

Runs = tuple[tuple[int, int, int], ...]
"""Black stretches: row, first column, how many."""


def marker_number(place: int, layout: int, page: int) -> int:
    """The marker for one of the 21 places, counted row by row; page counts from 1.

    Errors: ValueError if there is no such place or layout, or page is under 1.
    """
    if not (0 <= place < PLACES and 0 <= layout < VALUES and page >= 1):
        raise ValueError("no such place, layout or page")
    tells = page % VALUES if place % COLUMNS == _MIDDLE else layout
    return tells * PLACES + place


def marker_meaning(number: int) -> tuple[int, int]:
    """Place and what it tells: the layout, or in the middle column the page modulo VALUES.

    Errors: ValueError if the number is not one of ours.
    """
    if not 0 <= number < PLACES * VALUES:
        raise ValueError("no such marker")
    tells, place = divmod(number, PLACES)
    return place, tells


@cache
def marker_runs(number: int) -> Runs:
    """A marker as black stretches on its 8 × 8 squares, its black rim among them."""
    bits = MARKER_BITS[number]
    dark = [[True] * _CELLS for _ in range(_CELLS)]
    for index in range(_BITS * _BITS):
        row, column = divmod(index, _BITS)
        dark[row + 1][column + 1] = not bits >> (_BITS * _BITS - 1 - index) & 1
    return _runs(dark)


@lru_cache(maxsize=64)
def code_runs(plain: str) -> tuple[Runs, int]:
    """The QR code of a text at level Q as black stretches, and how many squares it is wide.

    Source: ISO/IEC 18004, by the library segno.
    """
    import segno

    rows = [
        [bool(square) for square in row] for row in segno.make_qr(plain, error="q", boost_error=False).matrix
    ]
    return _runs(rows), len(rows)


def plain_code(code: str, page: int, revision: int) -> str:
    """What the code says, also printed in plain characters: "K3QF7 P1 R4"."""
    return f"{code} P{page} R{revision}"


def runs_page_description(runs: Runs, squares: int, place: Rect, page_height_mm: float) -> str:
    """The black stretches as one filled path, which leaves no seams between squares.

    Units: place in millimetres from the top left; the operators are in PDF points.
    """
    square = place.width / squares * _POINTS
    left, top = place.x * _POINTS, (page_height_mm - place.y) * _POINTS
    return f"q 0 g {square:.5f} 0 0 {-square:.5f} {left:.4f} {top:.4f} cm {_boxes(runs)} f Q"


@lru_cache(maxsize=512)
def _boxes(runs: Runs) -> str:
    return " ".join(f"{first} {row} {count} 1 re" for row, first, count in runs)


def _runs(rows: list[list[bool]]) -> Runs:
    found: list[tuple[int, int, int]] = []
    for at, row in enumerate(rows):
        column = 0
        while column < len(row):
            start = column
            while column < len(row) and row[column]:
                column += 1
            if column > start:
                found.append((at, start, column - start))
            column = max(column, start + 1)
    return tuple(found)
