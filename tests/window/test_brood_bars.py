"""The small bars of a season: one a visit, as high as its brood, hollow where it was a line."""

from datetime import date

from pytestqt.qtbot import QtBot

from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.brood_bars import BroodBar, BroodBars

MARCH, APRIL, MAY = date(2026, 3, 14), date(2026, 4, 18), date(2026, 5, 16)
BARS = (BroodBar(MARCH, 1.0, hollow=True), BroodBar(APRIL, 3.0), BroodBar(MAY, 6.0, at_least=True))


def _bars(qtbot: QtBot, bars: tuple[BroodBar, ...] = BARS) -> BroodBars:
    made = BroodBars(LIGHT)
    qtbot.addWidget(made)
    made.resize(246, 92)
    made.show_bars(bars, MAY)
    return made


def test_bars_stand_by_day_and_as_high_as_their_brood(qtbot: QtBot) -> None:
    rects = _bars(qtbot).bar_rects()
    assert [rect.left() for rect in rects] == sorted(rect.left() for rect in rects)
    assert rects[2].height() > 1.9 * rects[1].height() > 3.8 * rects[0].height()
    assert len({rect.bottom() for rect in rects}) == 1
    assert rects[-1].right() <= 246
    assert rects[0].left() >= 0


def test_solid_and_hollow_are_told_apart_by_shape(qtbot: QtBot) -> None:
    made = _bars(qtbot)
    picture = made.grab().toImage()
    rects = [rect.center().toPoint() for rect in made.bar_rects()]
    ground = picture.pixelColor(246 // 2, 6)
    assert picture.pixelColor(rects[1]) != ground
    assert picture.pixelColor(rects[0]) == ground  # hollow: a line
    assert picture.pixelColor(rects[2]) == ground  # open upwards: not all combs


def test_no_bars_no_rects_and_many_still_fit(qtbot: QtBot) -> None:
    assert _bars(qtbot, ()).bar_rects() == []
    _bars(qtbot, ()).grab()
    many = tuple(BroodBar(date.fromordinal(MARCH.toordinal() + 2 * i), 3.0) for i in range(60))
    rects = _bars(qtbot, many).bar_rects()
    assert max(rect.right() for rect in rects) <= 246
    assert min(rect.width() for rect in rects) > 1


def test_it_can_be_read_aloud_and_goes_dark(qtbot: QtBot) -> None:
    made = _bars(qtbot)
    assert made.accessibleDescription() == "14 March 1, 18 April 3, 16 May 6"
    light = made.grab().toImage()
    made.set_palette(DARK)
    assert made.grab().toImage() != light
    assert made.minimumSizeHint().width() <= made.sizeHint().width()
