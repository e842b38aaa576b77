"""The international colours of queen marks."""

import pytest

from beeworkbook.colony.queens import mark_colour


@pytest.mark.parametrize(
    ("year", "colour"),
    # Years ending 1, 6 white; 2, 7 yellow; 3, 8 red; 4, 9 green; 5, 0 blue: BEE-L archive 2000,
    # launcestonbeekeepers.org.uk, highfieldbees.co.uk; 2019 green, 2016 and 2021 white: a beekeeping blog.
    [
        (2016, "white"),
        (2019, "green"),
        (2020, "blue"),
        (2021, "white"),
        (2022, "yellow"),
        (2023, "red"),
        (2024, "green"),
        (2025, "blue"),
        (2026, "white"),
        (2027, "yellow"),
        (2033, "red"),
    ],
)
def test_colour_of_a_year(year: int, colour: str) -> None:
    assert mark_colour(year) == colour
