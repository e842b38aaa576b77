"""Colour arithmetic: inverses, shapes and mixtures. Published values are in tests/published."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.colour import (
    Sight,
    chroma,
    contrast_ratio,
    delta_e_2000,
    from_linear,
    hex_of,
    luminance,
    mix_light,
    rgb_of,
    simulate,
    to_lab,
    to_linear,
)

hexes = st.integers(0, 0xFFFFFF).map(lambda code: f"#{code:06X}")


@given(hexes)
def test_hex_and_light_go_there_and_back(colour: str) -> None:
    assert hex_of(rgb_of(colour)) == colour
    assert hex_of(from_linear(to_linear(rgb_of(colour)))) == colour


@given(hexes, hexes)
def test_distance_is_symmetric_and_nought_for_the_same(one: str, other: str) -> None:
    first, second = to_lab(rgb_of(one)), to_lab(rgb_of(other))
    assert delta_e_2000(first, second) == pytest.approx(delta_e_2000(second, first), abs=1e-6)
    assert delta_e_2000(first, first) == pytest.approx(0, abs=1e-6)


def test_distances_broadcast_over_a_table() -> None:
    lab = to_lab(np.array([rgb_of("#336897"), rgb_of("#E3A674"), rgb_of("#FBEE99")]))
    table = delta_e_2000(lab[:, None], lab[None])
    assert table.shape == (3, 3)
    assert table[0, 2] == pytest.approx(float(delta_e_2000(lab[0], lab[2])))


def test_a_quarter_of_ink_darkens_in_light_not_in_code() -> None:
    mixed = mix_light(rgb_of("#FFFFFF"), rgb_of("#000000"), 0.25)
    assert float(luminance(mixed)) == pytest.approx(0.75)
    assert hex_of(mix_light(rgb_of("#336897"), rgb_of("#000000"), 0)) == "#336897"


def test_simulated_colours_can_be_shown() -> None:
    for sight in Sight:
        seen = simulate(np.array([rgb_of("#00FF00"), rgb_of("#FF00FF")]), sight)
        assert seen.min() >= 0
        assert seen.max() <= 1


def test_greys_have_no_chroma_and_black_on_black_no_contrast() -> None:
    assert float(chroma(rgb_of("#808080"))) == pytest.approx(0, abs=0.02)
    assert contrast_ratio(rgb_of("#000000"), rgb_of("#000000")) == 1
