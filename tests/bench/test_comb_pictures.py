import numpy as np
import pytest

from beeworkbook.bench.comb_pictures import CombPictures
from beeworkbook.bench.on_show import CombOnShow, combs_on_show
from beeworkbook.comb.contents import Content, Face
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.palette import DARK, LIGHT
from tests.workbook.keeping import Keeping


def combs(keeping: Keeping, desk: Desk) -> tuple[CombOnShow, ...]:
    box = desk.box()
    assert box is not None
    return combs_on_show(keeping.book, box, keeping.visit)


def pixels(pictures: CombPictures, comb: CombOnShow, face: Face) -> bytes:
    image = pictures.image(comb, face)
    assert image is not None
    return bytes(image.constBits())


@pytest.fixture
def pictures() -> CombPictures:
    return CombPictures()


def test_only_sides_with_something_on_them_have_a_picture(
    keeping: Keeping, desk: Desk, pictures: CombPictures
) -> None:
    shown = combs(keeping, desk)
    pictures.show(shown, 84, 47, 1.0, LIGHT)
    assert [pictures.image(comb, Face.A) is not None for comb in shown] == [True] * 5 + [False] * 6


def test_a_painted_side_is_the_picture_drawn_anew(
    keeping: Keeping, desk: Desk, pictures: CombPictures
) -> None:
    keeping.paint(5, Face.A, Content.EGGS, first=900, count=60)
    pictures.show(combs(keeping, desk), 84, 47, 1.0, LIGHT)
    before = pixels(pictures, combs(keeping, desk)[4], Face.A)
    keeping.paint(5, Face.A, Content.POLLEN, first=1200, count=80)
    after = combs(keeping, desk)
    pictures.show(after, 84, 47, 1.0, LIGHT)
    anew = CombPictures()
    anew.show(after, 84, 47, 1.0, LIGHT)
    assert pixels(pictures, after[4], Face.A) != before
    assert pixels(pictures, after[4], Face.A) == pixels(anew, after[4], Face.A)


def test_what_did_not_change_is_not_drawn_again(keeping: Keeping, desk: Desk, pictures: CombPictures) -> None:
    shown = combs(keeping, desk)
    pictures.show(shown, 84, 47, 1.0, LIGHT)
    kept = pictures.image(shown[0], Face.A)
    pictures.show(combs(keeping, desk), 84, 47, 1.0, LIGHT)
    assert pictures.image(shown[0], Face.A) is kept


def test_size_sharpness_and_theme_are_followed(keeping: Keeping, desk: Desk, pictures: CombPictures) -> None:
    shown = combs(keeping, desk)
    pictures.show(shown, 84, 47, 2.0, LIGHT)
    image = pictures.image(shown[0], Face.A)
    assert image is not None
    assert (image.width(), image.height(), image.devicePixelRatio()) == (168, 94, 2.0)
    light = pixels(pictures, shown[4], Face.A)
    pictures.show(shown, 84, 47, 2.0, DARK)
    assert np.array_equal(np.frombuffer(light, np.uint32).shape, (168 * 94,))
    assert pictures.image(shown[0], Face.A) is not None


def test_a_side_that_was_cleared_has_no_picture_any_more(
    keeping: Keeping, desk: Desk, pictures: CombPictures
) -> None:
    pictures.show(combs(keeping, desk), 84, 47, 1.0, LIGHT)
    keeping.book.undo()
    shown = combs(keeping, desk)
    pictures.show(shown, 84, 47, 1.0, LIGHT)
    assert [pictures.image(comb, Face.A) is not None for comb in shown].count(True) in {4, 5}
