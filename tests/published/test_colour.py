"""Colour differences and contrasts against published values."""

import numpy as np
import pytest

from beeworkbook.comb.colour import Sight, contrast_ratio, delta_e_2000, hex_of, rgb_of, simulate, to_lab

BLACK, WHITE = "#000000", "#FFFFFF"

# Sharma, Wu & Dalal 2005, Color Res. Appl. 30:21-30, table 1: pair number, L*a*b* twice, CIEDE2000.
SHARMA = [
    (1, (50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
    (4, (50, -1.3802, -84.2814), (50, 0, -82.7485), 1.0000),
    (7, (50, 0, 0), (50, -1, 2), 2.3669),
    (9, (50, 2.49, -0.001), (50, -2.49, 0.0009), 7.1792),
    (11, (50, 2.49, -0.001), (50, -2.49, 0.0011), 7.2195),
    (17, (50, 2.5, 0), (73, 25, -18), 27.1492),
    (25, (60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
    (29, (22.7233, 20.0904, -46.694), (23.0331, 14.973, -42.5619), 2.0373),
    (34, (2.0776, 0.0795, -1.135), (0.9033, -0.0636, -0.5514), 0.9082),
]


@pytest.mark.parametrize(("pair", "lab", "other", "distance"), SHARMA)
def test_ciede2000_pairs(
    pair: int, lab: tuple[float, ...], other: tuple[float, ...], distance: float
) -> None:
    assert float(delta_e_2000(lab, other)) == pytest.approx(distance, abs=1e-4), pair
    assert float(delta_e_2000(other, lab)) == pytest.approx(distance, abs=1e-4), pair


@pytest.mark.parametrize(
    ("colour", "other", "ratio"),
    [
        # WCAG 2.2 formula, computed by hand from it.
        (BLACK, WHITE, 21.00),
        ("#767676", WHITE, 4.54),
        ("#777777", WHITE, 4.48),
        # Manning, "Math for web design", published.
        ("#0000FF", WHITE, 8.59),
        ("#0000FF", "#FF0000", 2.15),
        # Okabe & Ito 2002, "Color Universal Design": their blue and yellow, contrast by the WCAG formula.
        ("#0072B2", WHITE, 5.19),
        ("#F0E442", WHITE, 1.32),
        # The same set on white: orange, sky blue, bluish green, vermillion, reddish purple.
        ("#E69F00", WHITE, 2.25),
        ("#56B4E9", WHITE, 2.31),
        ("#009E73", WHITE, 3.42),
        ("#D55E00", WHITE, 3.87),
        ("#CC79A7", WHITE, 3.06),
    ],
)
def test_wcag_contrast(colour: str, other: str, ratio: float) -> None:
    assert contrast_ratio(rgb_of(colour), rgb_of(other)) == pytest.approx(ratio, abs=0.01)


def test_white_and_primaries_in_lab() -> None:
    """CIE 15:2004 with IEC 61966-2-1: white, and the red of sRGB as commonly printed (from memory)."""
    assert to_lab(rgb_of(WHITE)) == pytest.approx([100, 0, 0], abs=0.01)
    assert to_lab(rgb_of("#FF0000")) == pytest.approx([53.24, 80.09, 67.20], abs=0.02)


@pytest.mark.parametrize("sight", list(Sight))
def test_greys_stay_grey_in_every_eye(sight: Sight) -> None:
    """Machado, Oliveira & Fernandes 2009: every row of their matrices sums to one."""
    greys = np.array([rgb_of(grey) for grey in (BLACK, "#777777", WHITE)])
    assert np.abs(simulate(greys, sight) - greys).max() < 1e-5


def test_red_and_green_confuse_the_red_green_blind_only() -> None:
    """The confusion each simulation is named after: red and green for protan and deutan, not for tritan."""
    pair = np.array([rgb_of("#B06050"), rgb_of("#7C7C50")])

    def apart(sight: Sight) -> float:
        red, green = to_lab(simulate(pair, sight))
        return float(delta_e_2000(red, green))

    assert apart(Sight.DEUTAN) < apart(Sight.NORMAL) / 2
    assert apart(Sight.PROTAN) < apart(Sight.NORMAL) / 2
    assert apart(Sight.TRITAN) > apart(Sight.NORMAL) / 2


def test_missing_cones_turn_red_into_a_known_colour() -> None:
    """Machado 2009, severity 1, by hand on pure red: the first column of each matrix, clipped and coded."""
    assert hex_of(simulate(rgb_of("#FF0000"), Sight.PROTAN)) == "#6D5F00"
    assert hex_of(simulate(rgb_of("#FF0000"), Sight.DEUTAN)) == "#A39000"
    assert hex_of(simulate(rgb_of("#FF0000"), Sight.TRITAN)) == "#FF000F"
