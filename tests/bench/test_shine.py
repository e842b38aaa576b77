import numpy as np
import pytest

from beeworkbook.bench.shine import shine_image, shine_rings
from beeworkbook.bench.tools.base import Work
from beeworkbook.bench.viewport import Viewport
from beeworkbook.comb.contents import Content
from beeworkbook.comb.outline import ring_area_mm2
from beeworkbook.comb.regions import ellipse


def test_brood_is_ringed_once_a_stage_and_stores_are_not(work: Work) -> None:
    cells = work.cells.copy()
    cells[ellipse(work.lattice, (100.0, 70.0), 25.0, 18.0)] = Content.EGGS
    rings = shine_rings(work.lattice, cells)
    areas = sorted({round(abs(ring_area_mm2(ring)), -2) for ring in rings})
    assert areas[0] == pytest.approx(np.pi * 25 * 18, rel=0.15)
    assert areas[-1] == pytest.approx(np.pi * 60 * 40, rel=0.1)


def test_a_few_stray_cells_say_nothing(work: Work) -> None:
    cells = np.full_like(work.cells, Content.STORES)
    cells[:3] = Content.EGGS
    assert shine_rings(work.lattice, cells) == []


def test_without_brood_the_stores_are_ringed(work: Work) -> None:
    cells = np.full_like(work.cells, Content.EMPTY)
    cells[ellipse(work.lattice, (100.0, 70.0), 60.0, 40.0)] = Content.STORES
    (ring, *others) = shine_rings(work.lattice, cells)
    assert abs(ring_area_mm2(ring)) == pytest.approx(np.pi * 60 * 40, rel=0.1)
    assert len(others) == 1  # of stores and nectar together


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("ratio", [1.0, 2.0])
def test_the_rings_are_drawn_at_the_pixels_of_the_screen_on_a_clear_ground(work: Work, ratio: float) -> None:
    view = Viewport.fitted(work.lattice, 400, 300, ratio)
    image = shine_image(shine_rings(work.lattice, work.cells), view)
    assert (image.width(), image.height()) == view.picture_size
    x, y = view.to_px((100.0, 70.0))
    assert image.pixelColor(int((x - view.left) * ratio), int((y - view.top) * ratio)).alpha() == 0
    alphas = [image.pixelColor(step, image.height() // 2).alpha() for step in range(image.width())]
    assert max(alphas) > 100
