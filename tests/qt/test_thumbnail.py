import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.comb.contents import CONTENTS, Content, Origin
from beeworkbook.comb.lattice import Cells, fit_lattice
from beeworkbook.comb.legend import fill_of
from beeworkbook.comb.regions import ellipse
from beeworkbook.qt import thumbnail
from beeworkbook.qt.comb_colours import Paint, colour_table, unpacked
from beeworkbook.qt.thumbnail import Thumbnail, sights

LATTICE = fit_lattice(338.0, 190.0)
PAINT = Paint(Origin.PAINTED, dark=False, beside="#E9EDEA", edge="#6F7D79")


def picture(cells: Cells, width: int = 84, height: int = 47, scale: float = 1.0) -> Thumbnail:
    made = Thumbnail(sights(LATTICE, width, height), PAINT, scale)
    made.show(cells)
    return made


def speckled(seed: int = 3) -> Cells:
    return np.random.default_rng(seed).integers(0, len(CONTENTS), LATTICE.cells).astype(np.uint8)


@settings(max_examples=25)
@given(
    seed=st.integers(0, 999),
    x=st.floats(0, 338),
    y=st.floats(0, 190),
    size=st.sampled_from([(84, 47), (178, 100), (31, 60)]),
)
def test_a_patched_picture_is_the_picture_drawn_anew(
    qapp: object, seed: int, x: float, y: float, size: tuple[int, int]
) -> None:
    del qapp
    cells = speckled(seed)
    made = picture(cells, *size)
    chosen = ellipse(LATTICE, (x, y), 12.0, 12.0)
    cells = cells.copy()
    cells[chosen] = Content.SEALED
    made.patch(chosen, cells)
    assert np.array_equal(made.pixels, picture(cells, *size).pixels)


@pytest.mark.usefixtures("qapp")
def test_only_a_small_part_is_filled_again() -> None:
    cells = speckled()
    rect = picture(cells).patch(ellipse(LATTICE, (100.0, 100.0), 12.0, 12.0), cells)
    assert rect.width() < 14
    assert rect.height() < 14


@pytest.mark.usefixtures("qapp")
def test_a_side_of_one_content_shows_its_fill() -> None:
    for content in CONTENTS:
        made = picture(np.full(LATTICE.cells, content, np.uint8), 168, 94, 2.0)
        colours, counts = np.unique(made.pixels, return_counts=True)
        fill = int(fill_of(content)[1:], 16) | 0xFF000000
        share = counts[colours == fill].sum() / counts.sum()
        assert share > 0.05


@pytest.mark.usefixtures("qapp")
def test_a_border_is_drawn_dark_and_blended() -> None:
    cells = np.full(LATTICE.cells, Content.STORES, np.uint8)
    cells[LATTICE.centres[:, 0] < 150.0] = Content.EMPTY
    row = picture(cells).pixels[20]
    border = round(150.0 / LATTICE.width_mm * 84)
    brightness = [(int(colour) >> 8) & 255 for colour in row[border - 3 : border + 4]]
    assert min(brightness) < 0.75 * min(brightness[0], brightness[-1])


@pytest.mark.usefixtures("qapp")
def test_no_cells_change_no_pixel() -> None:
    assert picture(speckled()).patch(np.empty(0, np.intp), speckled()).isEmpty()


def test_a_picture_without_a_pixel_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one pixel"):
        sights(LATTICE, 10, 0)


def test_a_blend_is_the_mean_of_its_five_contents_under_the_ink_of_its_outline() -> None:
    table = unpacked(colour_table(PAINT).colours).astype(float)
    blends = thumbnail._blends(PAINT)
    dice = np.random.default_rng(5)
    for middle, *corners in dice.integers(len(CONTENTS), size=(300, 5)).tolist():
        at = int(np.ravel_multi_index((middle, *corners), (len(CONTENTS),) * 5))
        if {middle} == set(corners):
            assert blends[at] == thumbnail._ONE_CONTENT
            continue
        fill = table[middle, 0] / 2 + sum(table[corner, 0] / 8 for corner in corners)
        ink = thumbnail._OUTLINE_INK[sum(corner != middle for corner in corners)]
        wanted = fill * (1 - ink) + table[middle, -1] * ink
        assert np.abs(unpacked(blends[at : at + 1])[0] - wanted).max() <= 0.75
