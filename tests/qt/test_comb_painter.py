import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from beeworkbook.comb.contents import CONTENTS, Content, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.lattice import fit_lattice
from beeworkbook.comb.legend import GROUND_DARK, GROUND_LIGHT, fill_of
from beeworkbook.qt.cell_map import Sight
from beeworkbook.qt.comb_painter import (
    dashed_pen,
    face_picture,
    paint_bare,
    paint_of,
    side_image,
    swatch,
    thumbnail,
)
from beeworkbook.qt.palette import DARK, LIGHT, Palette

LATTICE = fit_lattice(160.0, 120.0)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("frame", ["bs_deep", "dadant_blatt"])
def test_every_cell_centre_of_a_picture_shows_its_content(frame: str) -> None:
    lattice = FRAME_TYPES[frame].lattice
    cells = np.random.default_rng(5).integers(0, len(CONTENTS), lattice.cells).astype(np.uint8)
    image = side_image(lattice, cells, paint_of(LIGHT), round(lattice.width_mm * 8))
    for cell in range(0, lattice.cells, 97):
        x, y = (lattice.centres[cell] * 8).astype(int)
        around = {
            image.pixelColor(int(x) + dx, int(y) + dy).name().upper()
            for dx in range(-16, 17, 2)
            for dy in range(-16, 17, 2)
        }
        assert fill_of(Content(int(cells[cell]))).upper() in around


@pytest.mark.usefixtures("qapp")
def test_a_picture_keeps_the_comb_in_proportion() -> None:
    image = side_image(LATTICE, np.zeros(LATTICE.cells, np.uint8), paint_of(LIGHT), 320)
    assert (image.width(), image.height()) == (320, 240)


@pytest.mark.usefixtures("qapp")
def test_pictures_know_the_pixels_of_the_screen() -> None:
    kept = face_picture(LATTICE, Sight(4.0, 0.0, 0.0), 640, 480, paint_of(LIGHT), 2.0)
    assert kept.image.devicePixelRatio() == 2.0
    small = thumbnail(LATTICE, 168, 126, paint_of(LIGHT), 2.0)
    assert small.image.devicePixelRatio() == 2.0
    assert (small.image.width(), small.image.height()) == (168, 126)


@pytest.mark.usefixtures("qapp")
def test_swatches_differ_and_show_their_fill() -> None:
    made = {content: swatch(content, 22, 18, LIGHT) for content in CONTENTS}
    for content, image in made.items():
        shown = {image.pixelColor(x, y).name().upper() for x in range(22) for y in range(18)}
        assert fill_of(content).upper() in shown
    assert len({bytes(image.constBits()) for image in made.values()}) == len(made)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize(("palette", "ground"), [(LIGHT, GROUND_LIGHT), (DARK, GROUND_DARK)])
def test_a_bare_side_is_ground_with_a_dashed_edge(palette: Palette, ground: str) -> None:
    image = QImage(80, 50, QImage.Format.Format_RGB32)
    image.fill(QColor("#FF00FF"))
    painter = QPainter(image)
    paint_bare(painter, QRectF(0, 0, 80, 50), palette)
    painter.end()
    assert image.pixelColor(40, 25).name().upper() == ground
    edge = [image.pixelColor(x, 0).name().upper() for x in range(80)]
    assert palette.edge in edge
    assert ground in edge


def test_a_theme_and_an_origin_make_a_paint() -> None:
    assert paint_of(DARK, Origin.ASSUMED).dark
    assert paint_of(LIGHT).beside == LIGHT.board
    assert paint_of(LIGHT, beside=LIGHT.sunk).beside == LIGHT.sunk
    assert dashed_pen(LIGHT).color().name().upper() == LIGHT.edge
