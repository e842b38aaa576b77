from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.queens import (
    MARK_COLOURS,
    SWATCHES,
    mark_colour,
    mark_words,
    proposed_years,
    queen_words,
    read_colour,
)
from beeworkbook.colony.records import Queen, QueenId


@given(st.integers(1950, 2100), st.integers(1, 4))
def test_the_years_a_colour_proposes_bear_that_colour_and_are_not_ahead(this_year: int, count: int) -> None:
    for colour in MARK_COLOURS:
        years = proposed_years(colour, this_year, count)
        assert [mark_colour(year) for year in years] == [colour] * count
        assert this_year - 5 < years[0] <= this_year
        assert list(years) == [years[0] - 5 * step for step in range(count)]


def test_a_mark_proposes_and_never_decides() -> None:
    assert mark_words("blue", 2026) == "blue, so perhaps 2025"
    assert mark_words("purple", 2026) == "purple"
    assert mark_words("", 2026) == ""
    assert proposed_years("purple", 2026) == ()


def test_a_colour_is_read_from_two_letters() -> None:
    assert [read_colour(colour[:2].upper()) for colour in MARK_COLOURS] == list(MARK_COLOURS)
    assert read_colour("b") is None
    assert read_colour("brown") is None
    assert set(SWATCHES) == set(MARK_COLOURS)


def test_a_queen_is_told_as_far_as_she_is_known() -> None:
    assert queen_words(Queen(QueenId(1))) == ""
    assert queen_words(Queen(QueenId(1), year=2026)) == "of 2026"
    known = Queen(QueenId(1), "Ada", "blue", "12", 2025, clipped=True)
    assert queen_words(known) == "Ada, of 2025, marked blue 12, clipped"
    assert queen_words(Queen(QueenId(1), mark_text="12", clipped=False)) == "marked 12, not clipped"
