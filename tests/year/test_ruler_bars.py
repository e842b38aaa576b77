"""The ruler has a bar a visit, as high as its brood, and no height where nobody noted any."""

from datetime import date

from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.year.panes import LAST_YEAR_STYLE, DotShape
from beeworkbook.year.ruler_bars import RulerModel, ruler_model, visit_words
from tests.year import pointing
from tests.year.pointing import at_least, by_comb, by_line, not_opened

POINTS = (
    by_comb("2026-04-10", 5, 10, 20),
    by_line("2026-04-20", 40),
    at_least("2026-05-01", 30),
    not_opened("2026-05-10"),
)


def made(shown: tuple[date, ...] = (), due: date | None = None) -> RulerModel:
    before = (by_comb("2025-05-01", 10, 20, 40), by_comb("2025-05-10", 10, 20, 50))
    return ruler_model(2026, Hemisphere.NORTH, POINTS, before, shown, due)


def test_a_bar_a_visit() -> None:
    assert [(bar.height, bar.shape) for bar in made().bars] == [
        (35, DotShape.FULL),
        (40, DotShape.HOLLOW),
        (30, DotShape.OPEN),
        (None, None),
    ]


def test_the_highest_bar_of_both_years_fills_it() -> None:
    assert made().high == 80
    assert ruler_model(2026, Hemisphere.NORTH, (by_line("2026-04-20", 1),), ()).high == 10


def test_last_year_is_a_curve_at_its_days() -> None:
    (curve,) = made().last_year
    assert (curve.style, curve.x.tolist(), curve.y.tolist()) == (LAST_YEAR_STYLE, [61, 70], [70, 80])


def test_what_is_due_is_shown_where_the_ruler_reaches() -> None:
    assert made(due=date(2026, 5, 19)).due == date(2026, 5, 19)
    assert made(due=date(2027, 5, 19)).due is None


def test_the_ruler_reaches_to_the_day_the_keeper_is_at() -> None:
    axis = made(shown=(date(2026, 1, 6),)).axis
    assert axis.shows(date(2026, 1, 6))


def test_the_nearest_bar_is_found_if_it_is_near() -> None:
    model = made()
    found = model.bar_at(41.0, within=2)
    assert found is not None
    assert found.day == date(2026, 4, 10)
    assert model.bar_at(45.0, within=2) is None
    assert ruler_model(2026, Hemisphere.NORTH, (), ()).bar_at(45.0, within=200) is None


def test_a_visit_says_its_figures_and_how_well_anybody_looked() -> None:
    line, some = POINTS[1], POINTS[2]
    assert visit_words(line, pointing.figures(line)).splitlines() == [
        "Mon 20 April 2026",
        "brood: about 40 dm²",
        "said in one line",
        "stores about 7 kg",
    ]
    assert visit_words(some, pointing.figures(some, 4)).splitlines() == [
        "Fri 1 May 2026",
        "brood: at least 30 dm²",
        "4 of 11 combs",
    ]
    assert visit_words(POINTS[3], None).splitlines() == ["Sun 10 May 2026", "not opened"]
