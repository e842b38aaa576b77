import numpy as np
import pytest

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.lattice import fit_lattice
from beeworkbook.comb.legend import LEGEND
from beeworkbook.comb.patterns import cell_marks
from beeworkbook.qt.cell_map import Sight, cell_map
from beeworkbook.qt.comb_inks import InkFields, coverage, strip_ink

LATTICE = fit_lattice(160.0, 120.0)
DRAWN = [content for content in CONTENTS if content is not Content.NOT_RECORDED]


def field_of(content: Content, sight: Sight, width: int, height: int) -> np.ndarray:
    fields = InkFields(cell_map(LATTICE, sight, width, height))
    fields.make([content])
    size = width * height
    return fields.fields[content * size : (content + 1) * size].reshape(height, width)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("content", DRAWN)
def test_a_looked_up_pattern_is_the_pattern_drawn_mark_by_mark(content: Content) -> None:
    sight = Sight(4.0, 0.0, 0.0)
    made = field_of(content, sight, 640, 480)
    drawn = coverage(cell_marks(LEGEND[content].pattern, LATTICE), 640, 480, sight.scale)
    asked = drawn * LEGEND[content].screen_ink
    # The tile is looked up to a quarter of a pixel, so single pixels of an edge may differ.
    inner = np.s_[20:460, 20:620]
    assert np.abs(made[inner].astype(float) - asked[inner]).mean() < 6.0
    assert made[inner].mean() == pytest.approx(asked[inner].mean(), rel=0.12, abs=0.6)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("content", DRAWN)
def test_a_pattern_lays_as_much_ink_as_the_legend_says(content: Content) -> None:
    made = field_of(content, Sight(5.0, 0.0, 0.0), 700, 500)
    entry = LEGEND[content]
    share = float(made[50:450, 50:650].mean()) / 255 / entry.screen_ink
    assert share == pytest.approx(entry.pattern.ink_share, rel=0.1, abs=0.004)


@pytest.mark.usefixtures("qapp")
def test_no_content_is_made_before_it_is_asked_for() -> None:
    fields = InkFields(cell_map(LATTICE, Sight(3.0, 0.0, 0.0), 300, 200))
    fields.make([Content.EGGS, Content.NOT_RECORDED])
    by_content = fields.fields.reshape(13, -1)
    assert by_content[Content.EGGS].any()
    assert not by_content[Content.SEALED].any()
    assert not by_content[Content.NOT_RECORDED].any()


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("scale", [1.0, 2.0])
def test_small_pictures_carry_the_patterns_at_the_period_of_the_screen(scale: float) -> None:
    width, height = int(168 * scale), int(94 * scale)
    for content in DRAWN:
        entry = LEGEND[content]
        share = float(strip_ink(content, width, height, scale).mean()) / 255 / entry.screen_ink
        assert share == pytest.approx(entry.pattern.ink_share, rel=0.12, abs=0.006)
    assert not strip_ink(Content.NOT_RECORDED, width, height, scale).any()
