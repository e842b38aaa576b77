"""A chart shows what was asked for, and nothing that the book does not hold."""

from datetime import date

import pytest

from beeworkbook.colony.records import ColonyId, EventKind
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.comb.contents import Content
from beeworkbook.workbook.edits.events import AddEvent
from beeworkbook.workbook.edits.place import SetSetting
from beeworkbook.year.chart_model import build, model_of, year_words
from beeworkbook.year.choice import Arrangement, Choice, Measure
from beeworkbook.year.panes import LAST_YEAR_STYLE, ChartModel, DotShape, PaneKey
from tests.year.season_book import SeasonBook


def built(season_book: SeasonBook, choice: Choice) -> ChartModel:
    made = build(season_book.book, choice)
    assert made is not None
    return made


def test_one_season_of_one_colony_is_stacked(season_book: SeasonBook) -> None:
    model = built(season_book, Choice((season_book.pear,), 2026))
    assert model.stacked
    assert (model.title, model.subtitle) == ("Pear", "brood over the season 2026")
    (pane,) = model.panes
    assert {band.content for band in pane.bands} == {
        Content.EGGS,
        Content.OPEN,
        Content.SEALED,
        Content.DRONE,
    }
    assert [dot.shape for dot in pane.dots] == [
        DotShape.FULL,
        DotShape.HOLLOW,
        DotShape.FULL,
        DotShape.OPEN,
        DotShape.FULL,
    ]
    assert model.note == "1 visit without a figure for brood is not shown"


def test_last_year_is_one_dashed_line(season_book: SeasonBook) -> None:
    choice = Choice((season_book.pear,), 2026)
    pane = built(season_book, choice).panes[0]
    before = [curve for curve in pane.curves if curve.style == LAST_YEAR_STYLE]
    assert [curve.name for curve in before] == ["last year"]
    axis = built(season_book, choice).axis
    assert before[0].x.tolist()[-2:] == [axis.place(date(2026, 5, 16)), axis.place(date(2026, 6, 6))]
    without = built(season_book, Choice((season_book.pear,), 2026, last_year=False)).panes[0]
    assert all(curve.style != LAST_YEAR_STYLE for curve in without.curves)


def test_the_pane_is_as_high_as_its_highest_doubt(season_book: SeasonBook) -> None:
    for measure in Measure:
        pane = built(season_book, Choice((season_book.pear,), 2026, measure=measure)).panes[0]
        assert pane.high >= max(dot.high or dot.y for dot in pane.dots)
        assert pane.low < min((float(band.low.min()) for band in pane.bands), default=0.0)


def test_drones_go_where_they_are_not_wanted_no_more(season_book: SeasonBook) -> None:
    pane = built(season_book, Choice((season_book.pear,), 2026, drones=False)).panes[0]
    assert Content.DRONE not in {band.content for band in pane.bands}


def test_stores_and_bees_come_on_request_in_panes_of_their_own(season_book: SeasonBook) -> None:
    model = built(season_book, Choice((season_book.pear,), 2026, stores=True, bees=True))
    assert [pane.key for pane in model.panes] == [PaneKey.BROOD, PaneKey.STORES, PaneKey.BEES]
    bees = model.panes[2]
    assert [dot.shape for dot in bees.dots] == [DotShape.HOLLOW]


def test_colonies_together_are_lines_with_their_names(season_book: SeasonBook) -> None:
    model = built(season_book, Choice((season_book.pear, season_book.gate), 2026))
    assert not model.stacked
    assert model.title == "Pear, Gate"
    assert model.names == (("Pear", 0), ("Gate", 1))
    brood, drones = model.panes
    assert (brood.key, drones.key) == (PaneKey.BROOD, PaneKey.DRONES)
    assert {curve.name for curve in brood.curves} == {"Pear", "Gate"}
    assert {mark.text for mark in model.marks} == {
        "Pear: queen seen, blue",
        "Pear: super on",
        "Pear: 2 L 1:1 given",
    }


def test_a_stop_reads_the_other_colonies_nearest_visit(season_book: SeasonBook) -> None:
    model = built(season_book, Choice((season_book.pear, season_book.gate), 2026))
    stop = next(stop for stop in model.stops if stop.day == date(2026, 5, 2))
    assert [(entry.name, entry.point.day.day) for entry in stop.entries] == [("Pear", 2), ("Gate", 3)]
    far = next(stop for stop in model.stops if stop.day == date(2026, 4, 18))
    assert [entry.name for entry in far.entries] == ["Pear"]


def test_years_lie_over_one_another_the_latest_first(season_book: SeasonBook) -> None:
    model = built(season_book, Choice((season_book.pear,), 2026, arrangement=Arrangement.YEARS))
    assert model.axis.folded
    assert model.names == (("2026", 0), ("2025", 1))
    places = {stop.x for stop in model.stops if (stop.day.month, stop.day.day) == (5, 16)}
    assert len(places) == 1
    assert {mark.day.year for mark in model.marks} == {2026}


def test_years_of_several_colonies_are_told_apart(season_book: SeasonBook) -> None:
    choice = Choice((season_book.pear, season_book.gate), 2026, arrangement=Arrangement.YEARS)
    names = [name for name, _ in built(season_book, choice).names]
    assert names == ["Pear 2026", "Pear 2025", "Gate 2026", "Gate 2025"]


def test_all_seasons_stand_in_a_row_with_the_winter_not_joined(season_book: SeasonBook) -> None:
    model = built(season_book, Choice((season_book.pear,), 2026, arrangement=Arrangement.ROW))
    assert (model.axis.since, model.axis.until) == (date(2025, 4, 1), date(2026, 6, 1))
    assert model.subtitle == "brood from 2025 to 2026"
    assert [gap.text for gap in model.panes[0].gaps] == ["45 weeks without a figure, so not joined"]


def test_a_season_nobody_looked_in_is_an_empty_chart(season_book: SeasonBook) -> None:
    model = built(season_book, Choice((season_book.pear,), 2020))
    assert model.stops == ()
    assert model.panes[0].dots == ()
    assert model.panes[0].high > 0


def test_a_colony_that_is_gone_is_no_chart(season_book: SeasonBook) -> None:
    assert build(season_book.book, Choice((ColonyId(99),), 2026)) is None
    with pytest.raises(ValueError, match="colony"):
        model_of((), Choice((), 2026), Hemisphere.NORTH, date(2026, 5, 1))


def test_in_the_south_a_season_has_two_years(season_book: SeasonBook) -> None:
    season_book.book.do(SetSetting("hemisphere", "south"))
    model = built(season_book, Choice((season_book.pear,), 2025))
    assert model.subtitle == "brood over the season 2025/26"
    assert year_words(2099, Hemisphere.SOUTH) == "2099/00"
    assert date(2026, 5, 16) in {stop.day for stop in model.stops}


def test_alike_marks_of_one_day_are_one_sign(season_book: SeasonBook) -> None:
    for day in (11, 11):
        season_book.book.do(AddEvent(season_book.pear, date(2026, 5, day), EventKind.QUEEN_SEEN))
    model = built(season_book, Choice((season_book.pear,), 2026))
    assert [mark.text for mark in model.marks if mark.day == date(2026, 5, 11)] == ["2 × queen seen"]
