import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.comb.contents import CONTENTS, Content, Origin
from beeworkbook.comb.lattice import Cells, fit_lattice
from beeworkbook.comb.legend import fill_of
from beeworkbook.comb.regions import ellipse
from beeworkbook.qt.cell_map import Sight, cell_map
from beeworkbook.qt.comb_colours import Paint, colour_table
from beeworkbook.qt.face_picture import FacePicture

LATTICE = fit_lattice(160.0, 120.0)
SIGHT = Sight(3.0, 2.0, 2.0)
PAINT = Paint(Origin.PAINTED, dark=False, beside="#E9EDEA", edge="#6F7D79")


def picture(cells: Cells, sight: Sight = SIGHT) -> FacePicture:
    made = FacePicture(cell_map(LATTICE, sight, 484, 364), colour_table(PAINT))
    made.show(cells)
    return made


def speckled(seed: int = 3) -> Cells:
    return np.random.default_rng(seed).integers(0, len(CONTENTS), LATTICE.cells).astype(np.uint8)


@pytest.mark.usefixtures("qapp")
def test_a_patched_picture_is_the_picture_drawn_anew() -> None:
    cells = speckled()
    made = picture(cells)
    for centre, content in (
        ((60.0, 60.0), Content.SEALED),
        ((2.0, 2.0), Content.EGGS),
        ((158.0, 118.0), Content.GAP),
    ):
        chosen = ellipse(LATTICE, centre, 14.0, 9.0)
        cells = cells.copy()
        cells[chosen] = content
        changed = made.patch(chosen, cells)
        assert changed.width() < 120
        assert np.array_equal(made.pixels, picture(cells).pixels)


@settings(max_examples=15)
@given(seed=st.integers(0, 999), scale=st.sampled_from([1.1, 2.0, 4.7]))
def test_nothing_outside_the_rectangle_changes(qapp: object, seed: int, scale: float) -> None:
    del qapp
    cells = speckled(seed)
    made = picture(cells, Sight(scale, -10.0, 4.0))
    before = made.pixels.copy()
    chosen = np.array(sorted({seed % LATTICE.cells, (seed * 7) % LATTICE.cells}))
    cells = cells.copy()
    cells[chosen] = Content.STORES
    rect = made.patch(chosen, cells)
    after = picture(cells, Sight(scale, -10.0, 4.0)).pixels
    assert np.array_equal(made.pixels, after)
    outside = np.ones(before.shape, np.bool_)
    outside[rect.top() : rect.bottom() + 1, rect.left() : rect.right() + 1] = False
    assert np.array_equal(before[outside], after[outside])


@pytest.mark.usefixtures("qapp")
def test_a_cell_shows_the_fill_of_its_content() -> None:
    for content in CONTENTS:
        made = picture(np.full(LATTICE.cells, content, np.uint8), Sight(8.0, -300.0, -200.0))
        shown = {f"#{int(colour) & 0xFFFFFF:06X}" for colour in made.pixels[100:200, 100:200].ravel()}
        assert fill_of(content).upper() in shown


@pytest.mark.usefixtures("qapp")
def test_the_image_shows_the_pixels_without_a_copy() -> None:
    made = picture(speckled())
    assert made.image.pixel(200, 100) == int(made.pixels[100, 200])


@pytest.mark.usefixtures("qapp")
def test_no_cells_change_no_pixel() -> None:
    made = picture(speckled())
    assert made.patch(np.empty(0, np.intp), speckled()).isEmpty()


@pytest.mark.usefixtures("qapp")
def test_cells_of_another_comb_are_refused() -> None:
    with pytest.raises(ValueError, match="shape"):
        picture(np.zeros(7, np.uint8))
