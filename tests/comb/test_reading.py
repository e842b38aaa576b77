"""A typed comb read back in words."""

import pytest

from beeworkbook.comb.reading import describe
from beeworkbook.comb.typed import TypedComb, parse_comb


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            "E1O1S3P1H1. /",
            "eggs 1, open 1, sealed 3, pollen 1, stores 1, the rest empty: 8 of 8 eighths of side A",
        ),
        ("S4", "sealed 4: 4 of 8 eighths of each side"),
        ("S2.5 / H", "sealed 2.5: 2.5 of 8 eighths of side A; stores 8: 8 of 8 eighths of side B"),
        ("= / -", "side A looked at and unchanged; side B not looked at"),
        ("?", "each side not looked at, assumed as last time"),
        (".", "all of it empty: 8 of 8 eighths of each side"),
        ("S4W5", "sealed 4: 4 of 8 eighths of each side, bees on 5 eighths of each side"),
        ("W5", "bees on 5 eighths of each side"),
        (
            "S4Q / KC KC",
            "sealed 4: 4 of 8 eighths of side A, queen on side A; 2 × charged queen cell on side B",
        ),
        ("QKU", "queen on this comb, play cup on this comb"),
        ("", ""),
    ],
)
def test_a_typed_comb_is_read_back(text: str, words: str) -> None:
    assert describe(parse_comb(text)) == words


def test_nothing_typed_is_nothing_said() -> None:
    assert describe(TypedComb()) == ""
