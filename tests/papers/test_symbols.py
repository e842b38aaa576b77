import io
from collections.abc import Callable

import numpy as np
import pytest

from beeworkbook.papers import symbols
from beeworkbook.papers.options import PaperOptions
from beeworkbook.papers.page import Document
from beeworkbook.papers.rect import Rect
from tests.papers.printed import Picture, Printed, cut, darkness


def drawn(draw: Callable[[Document], None]) -> Picture:
    stream = io.BytesIO()
    document = Document(stream, PaperOptions(), "")
    draw(document)
    document.close()
    return Printed(stream.getvalue()).picture(dpi=300)


def extent(picture: Picture) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of what is drawn, in millimetres."""
    rows, columns = np.nonzero(picture.min(axis=2) < 200)
    left, top, right, bottom = (
        float(edge) * 25.4 / 300 for edge in (columns.min(), rows.min(), columns.max() + 1, rows.max() + 1)
    )
    return left, top, right, bottom


def test_an_eye_lies_round_its_middle() -> None:
    left, top, right, bottom = extent(drawn(lambda document: symbols.eye(document, (50, 50), 3.0)))
    assert ((left + right) / 2, (top + bottom) / 2) == pytest.approx((50, 50), abs=0.15)
    assert right - left == pytest.approx(3.1, abs=0.4)
    assert bottom - top < right - left


@pytest.mark.parametrize(
    ("way", "side"),
    [("left", (50, 50.0, 51.9, 50)), ("right", (48.1, 50, 50, 50)), ("down", (49, 48.1, 51, 50))],
)
def test_an_arrow_points_at_its_tip(way: str, side: tuple[float, float, float, float]) -> None:
    left, _, right, bottom = extent(drawn(lambda document: symbols.arrow(document, (50, 50), way)))  # type: ignore[arg-type]
    assert left == pytest.approx(side[0], abs=0.2)
    assert right == pytest.approx(side[2], abs=0.2)
    if way == "down":
        assert bottom == pytest.approx(50, abs=0.2)


def test_a_cross_stays_in_its_box() -> None:
    place = Rect(50, 50, 5, 5)
    left, top, right, bottom = extent(drawn(lambda document: symbols.cross(document, place)))
    assert place.holds(Rect(left, top, right - left, bottom - top))


def test_a_mark_is_a_white_disc_with_its_letters() -> None:
    def draw(document: Document) -> None:
        document.box(Rect(40, 40, 20, 20), 0.0, fill=(0, 0, 0))
        symbols.lettered(document, (50, 50), "KC")

    picture = drawn(draw)
    assert darkness(cut(picture, Rect(49.5, 48.0, 1.0, 0.5), 300)) < 0.05
    assert 0.1 < darkness(cut(picture, Rect(48.4, 49, 3.2, 2), 300)) < 0.7
