import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.feeding import ParsedFeed, Taken, parse_feed
from beeworkbook.colony.syrup import (
    crystallises_below_c,
    is_thin,
    share_of_strength,
    soluble_share,
    stores_from_sugar_kg,
    sugar_kg,
    sugar_per_litre_kg,
    sugar_share,
    syrup_litres,
)

PARTS = st.floats(0.2, 3)


def said(typed: str) -> ParsedFeed:
    feed = parse_feed(typed)
    assert feed is not None
    return feed


@given(PARTS, st.floats(0.1, 20))
def test_litres_hold_the_sugar_they_were_made_from(parts: float, sugar: float) -> None:
    litres = syrup_litres(sugar, parts, 1)
    assert litres * sugar_per_litre_kg(parts, 1) == pytest.approx(sugar)


@given(PARTS)
def test_the_strength_of_a_syrup_gives_its_share_back(parts: float) -> None:
    share = sugar_share(parts, 1)
    assert share_of_strength(sugar_per_litre_kg(parts, 1)) == pytest.approx(share, abs=1e-9)


@given(PARTS)
def test_a_syrup_sets_just_below_where_it_is_saturated(parts: float) -> None:
    below = crystallises_below_c(parts, 1)
    if below is None:
        assert sugar_share(parts, 1) <= soluble_share(0)
    else:
        assert soluble_share(below) == pytest.approx(sugar_share(parts, 1), abs=1e-6)


def test_sugar_is_known_only_where_it_was_said() -> None:
    thin, fondant, plain, dry, weighed = map(
        said, ("2 L 1:1", "2 kg fondant", "2 L", "2 kg dry sugar", "3 kg 2:1")
    )
    assert sugar_kg(thin) == pytest.approx(1.23, abs=0.005)
    assert sugar_kg(thin, Taken(litres=1.0)) == pytest.approx(0.615, abs=0.003)
    assert sugar_kg(dry) == 2
    assert sugar_kg(weighed) == pytest.approx(2)
    assert sugar_kg(weighed, Taken(litres=None)) is None
    assert sugar_kg(fondant) is None
    assert sugar_kg(plain) is None


def test_thin_syrup_makes_less_of_its_sugar() -> None:
    assert is_thin(1, 1)
    assert not is_thin(3, 2)
    assert stores_from_sugar_kg(1, thin=True) < stores_from_sugar_kg(1)


def test_what_cannot_be_mixed_is_refused() -> None:
    with pytest.raises(ValueError, match="more than nought"):
        sugar_share(0, 1)
    with pytest.raises(ValueError, match="as strong"):
        share_of_strength(2.0)
