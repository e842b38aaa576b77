import io
import itertools

import numpy as np
import pypdfium2
import pytest
from reportlab.pdfgen.canvas import Canvas

from beeworkbook.comb.contents import Content
from beeworkbook.comb.legend import LEGEND
from beeworkbook.comb.patterns import MarkShape
from beeworkbook.papers.comb_patterns import pattern_operators

HATCHED = [content for content in LEGEND if LEGEND[content].pattern.shape is not MarkShape.NONE]
WIDE, HIGH = 55.0, 31.0
POINTS = 72 / 25.4


def drawn(content: Content, dpi: int = 400) -> np.ndarray[tuple[int, int], np.dtype[np.uint8]]:
    """The pattern alone, black on white, cut to its rectangle."""
    stream = io.BytesIO()
    canvas = Canvas(stream, pagesize=(WIDE * POINTS, HIGH * POINTS), invariant=1)
    operators = pattern_operators(LEGEND[content].pattern, WIDE, HIGH, (0, 0, 0), (1, 1, 1))
    canvas.addLiteral(f"q 1 0 0 -1 0 {HIGH * POINTS:.4f} cm {operators.decode()} Q")
    canvas.save()
    picture: np.ndarray[tuple[int, int], np.dtype[np.uint8]] = (
        pypdfium2.PdfDocument(stream.getvalue())[0].render(scale=dpi / 72).to_numpy()[:, :, 0]
    )
    return picture


@pytest.mark.parametrize("content", HATCHED)
def test_a_pattern_covers_the_share_of_paper_the_legend_says(content: Content) -> None:
    picture = drawn(content)
    inner = picture[40:-40, 40:-40]
    ink = 1 - float(inner.mean()) / 255
    assert ink == pytest.approx(LEGEND[content].pattern.ink_share, abs=0.025)


@pytest.mark.parametrize("content", HATCHED)
def test_a_pattern_reaches_every_part_of_its_rectangle(content: Content) -> None:
    picture = drawn(content, 200) < 128
    rows, columns = picture.shape
    step = 40  # 5 mm: wider than the widest pattern's period
    for top, left in itertools.product(range(0, rows - step, step), range(0, columns - step, step)):
        assert picture[top : top + step, left : left + step].any()


@pytest.mark.parametrize("content", HATCHED)
def test_a_pattern_is_small_once_packed(content: Content) -> None:
    import zlib

    operators = pattern_operators(LEGEND[content].pattern, WIDE, HIGH, (0, 0, 0), (1, 1, 1))
    assert len(zlib.compress(operators)) < 4_000


def test_what_is_not_recorded_is_blank() -> None:
    operators = pattern_operators(LEGEND[Content.NOT_RECORDED].pattern, WIDE, HIGH, (0, 0, 0), (1, 1, 1))
    assert operators == b"0 0 0 RG 0 0 0 rg"
