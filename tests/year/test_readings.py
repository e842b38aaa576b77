"""A reading says all values of a day, each with its doubt, and never more than was noted."""

from beeworkbook.colony.records import ColonyId
from beeworkbook.colony.timeline import SeasonPoint
from beeworkbook.comb.contents import Content
from beeworkbook.year.choice import Measure
from beeworkbook.year.panes import Entry, Stop
from beeworkbook.year.readings import DayReading, point_words, read_stop
from tests.year import pointing
from tests.year.pointing import at_least, by_comb, by_line, not_opened

AREA, CELLS = Measure.AREA, Measure.CELLS


def entry(point: SeasonPoint, name: str = "Pear", style: int = 0, *, seen: int = 11) -> Entry:
    return Entry(ColonyId(1), name, style, point, pointing.figures(point, seen))


def reading(
    point: SeasonPoint, measure: Measure = AREA, *, seen: int = 11, marks: tuple[str, ...] = ()
) -> DayReading:
    return read_stop(Stop(1.0, point.day, (entry(point, seen=seen),), marks), measure, stacked=True)


def values(found: DayReading) -> dict[str, str]:
    return {row.label: row.value for row in found.rows}


def test_a_visit_by_comb_is_read_by_stage() -> None:
    found = reading(by_comb("2026-05-16", 5, 10, 20, drone=1.25), marks=("queen seen",))
    assert found.heading == "Sat 16 May 2026"
    assert values(found) == {
        "worker brood": "about 35 dm² (32 to 39)",
        "sealed brood": "20 dm²",
        "open brood": "10 dm²",
        "eggs": "5 dm²",
        "drone brood": "1.3 dm²",
    }
    assert found.remarks == ("queen seen",)
    assert {row.content for row in found.rows} >= {Content.EGGS, Content.DRONE}


def test_cells_have_two_figures_too() -> None:
    assert values(reading(by_comb("2026-05-16", 5, 10, 20), CELLS))["worker brood"] == (
        "about 14\u202f000 cells (13\u202f000 to 15\u202f000)"
    )


def test_a_line_has_no_stages_and_says_so() -> None:
    found = reading(by_line("2026-05-16", 40))
    assert values(found) == {
        "worker brood": "about 40 dm² (32 to 48)",
        "brood, age not noted": "40 dm²",
        "stores": "7 kg",
        "bees": "9\u202f000",
    }
    assert found.remarks == ("said in one line",)


def test_some_combs_are_at_least_so_much() -> None:
    found = reading(at_least("2026-05-16", 12), seen=4)
    assert values(found)["worker brood"] == "at least 12 dm²"
    assert found.remarks == ("4 of 11 combs, so at least",)


def test_a_visit_that_opened_nothing_reads_nothing() -> None:
    found = reading(not_opened("2026-05-16"))
    assert found.rows == ()
    assert found.remarks == ("not opened",)
    assert point_words(not_opened("2026-05-16"), AREA) == "no figure for brood"


def test_lines_compared_are_a_row_each_with_the_day_where_it_differs() -> None:
    here, there = by_comb("2026-05-16", 5, 10, 20), by_line("2026-05-14", 40)
    stop = Stop(1.0, here.day, (entry(here), entry(there, "Gate", 1)))
    found = read_stop(stop, AREA, stacked=False)
    assert values(found) == {
        "Pear": "about 35 dm²",
        "Gate": "about 40 dm², 7 kg, 9\u202f000 bees, 14 May",
    }
    assert [row.style for row in found.rows] == [0, 1]


def test_a_reading_is_one_text_for_ears() -> None:
    found = reading(by_line("2026-05-16", 40), marks=("super on",))
    assert found.text.splitlines() == [
        "Sat 16 May 2026",
        "worker brood about 40 dm² (32 to 48)",
        "brood, age not noted 40 dm²",
        "stores 7 kg",
        "bees 9\u202f000",
        "said in one line",
        "super on",
    ]
