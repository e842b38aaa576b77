import pytest
from PySide6.QtCore import QPointF
from pytestqt.qtbot import QtBot

from beeworkbook.bench.comb_row import MOST_ACROSS, CombRow, RowSizes
from beeworkbook.bench.on_show import CombOnShow, SideOnShow
from beeworkbook.colony.records import Frame, FrameId
from beeworkbook.comb.contents import Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.qt.palette import LIGHT


@pytest.mark.parametrize(("room", "combs", "pitch"), [(970, 11, 88.2), (1960, 11, 178.2), (970, 16, 80.8)])
def test_the_combs_share_the_room_up_to_twelve(room: int, combs: int, pitch: float) -> None:
    sizes = RowSizes.fitted(room, combs, 0.56, 200)
    assert sizes.pitch == pytest.approx(pitch, abs=0.1)
    assert sizes.height == pytest.approx(sizes.width * 0.56, abs=1)
    assert MOST_ACROSS == 12


def test_a_tall_comb_is_held_low_in_its_proportion() -> None:
    sizes = RowSizes.fitted(970, 11, 1.4, 60)
    assert sizes.height == 60
    assert sizes.width == pytest.approx(60 / 1.4, abs=1)


def test_few_combs_are_not_blown_up() -> None:
    assert RowSizes.fitted(970, 2, 0.56, 200).pitch == pytest.approx(970 / 6)


def test_sides_are_found_where_they_are_drawn(qtbot: QtBot) -> None:
    row = CombRow(LIGHT)
    qtbot.addWidget(row)
    row.show_combs([CombOnShow(place) for place in range(1, 12)])
    for place in (1, 6, 11):
        for face in Face:
            assert row.side_at(row.picture_rect(place, face).center()) == (place, face)
    assert row.side_at(QPointF(row.width() + 50.0, 30.0)) is None
    assert row.seam_at(QPointF(-30.0, 30.0)) is None


def test_places_that_are_free_are_passed_over(qtbot: QtBot) -> None:
    row = CombRow(LIGHT)
    qtbot.addWidget(row)
    row.show_combs([CombOnShow(place) for place in range(1, 4)])
    with qtbot.assertNotEmitted(row.chosen):
        row._step(1)
        row._go_to_end(last=True)
    assert not row.grab().isNull()


def test_combs_a_sentence_came_from_are_lit_and_put_out_again(qtbot: QtBot) -> None:
    row = CombRow(LIGHT)
    qtbot.addWidget(row)
    frame_type = FRAME_TYPES["bs_deep"]
    sides = {face: SideOnShow(face, frame_type) for face in Face}
    row.show_combs([CombOnShow(place, Frame(FrameId(place), "bs_deep"), sides) for place in (1, 2, 3)])
    dark = row.grab().toImage()
    row.light_combs({FrameId(2)})
    assert row.lit == {FrameId(2)}
    lit = row.grab().toImage()
    changed = [
        x
        for x in range(dark.width())
        if any(dark.pixel(x, y) != lit.pixel(x, y) for y in range(dark.height()))
    ]
    ratio = dark.devicePixelRatio()
    assert row.column(2).left() <= min(changed) / ratio
    assert max(changed) / ratio <= row.column(2).right()
    row.light_combs(())
    assert row.grab().toImage() == dark
