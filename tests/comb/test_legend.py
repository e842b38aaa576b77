"""Contents are told apart by colour and by pattern, in every eye, on either ground: computed, measured."""

from functools import lru_cache
from itertools import combinations

import numpy as np
import pytest

from beeworkbook.comb.colour import (
    Colours,
    Sight,
    chroma,
    contrast_ratio,
    delta_e_2000,
    mix_light,
    rgb_of,
    simulate,
    to_lab,
)
from beeworkbook.comb.contents import KEY_LETTERS, Content, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.legend import (
    GROUND_DARK,
    GROUND_LIGHT,
    INK,
    LEGEND,
    LOOKS,
    fill_of,
    letter_of,
)
from beeworkbook.comb.patterns import Marks, MarkShape, box_marks
from tests.comb.inked import Seen, draw, look_at, patch_mask

GROUNDS = {"light ground": GROUND_LIGHT, "dark ground": GROUND_DARK}
FILLS = {
    **{content.name: fill_of(content) for content in LEGEND if content is not Content.NOT_RECORDED},
    **GROUNDS,
}
PRINTED_MM = 60.0
PIXELS_PER_MM = 60.0
PATTERNED = [content for content in LEGEND if content is not Content.NOT_RECORDED]


def least_pair(colours: Colours, sight: Sight) -> tuple[float, str]:
    lab = to_lab(simulate(colours, sight))
    table = delta_e_2000(lab[:, None], lab[None])
    names = list(FILLS)
    return min((float(table[i, j]), f"{names[i]}, {names[j]}") for i, j in combinations(range(len(names)), 2))


@pytest.mark.parametrize(
    ("sight", "pure", "inked"),
    [(Sight.NORMAL, 22, 20), (Sight.PROTAN, 11, 10), (Sight.DEUTAN, 11, 10), (Sight.TRITAN, 11, 10)],
)
def test_every_pair_of_fills_and_grounds_is_apart(sight: Sight, pure: float, inked: float) -> None:
    """Both themes' grounds are in; a gap has a fill of its own. Bounds: the project's own, issue 3."""
    colours = np.array([rgb_of(fill) for fill in FILLS.values()])
    distance, pair = least_pair(colours, sight)
    assert distance >= pure, pair
    distance, pair = least_pair(mix_light(colours, rgb_of(INK), 0.25), sight)
    assert distance >= inked, pair


@pytest.mark.parametrize("content", PATTERNED)
def test_dark_ink_stands_on_every_fill_and_fills_are_calm(content: Content) -> None:
    fill = rgb_of(fill_of(content))
    assert contrast_ratio(fill, rgb_of(INK)) >= 3
    assert float(chroma(fill)) < 50


@pytest.mark.parametrize("content", PATTERNED)
def test_the_pattern_can_be_seen_on_screen(content: Content) -> None:
    """Laid at its strength the mark is at least a quarter darker or lighter than its fill; bound our own."""
    entry = LEGEND[content]
    fill = rgb_of(entry.fill)
    mark = fill + entry.screen_ink * (rgb_of(INK) - fill)
    assert contrast_ratio(fill, mark) >= 1.25


def patches() -> list[list[int]]:
    """Twelve patches of six cells, anywhere on a British deep side."""
    lattice = FRAME_TYPES["bs_deep"].lattice
    inner = np.flatnonzero((lattice.neighbour_table >= 0).all(axis=1))
    chosen = np.random.default_rng(60).choice(inner, 12, replace=False)
    return [[int(cell), *map(int, lattice.neighbour_table[cell][:5])] for cell in chosen]


@lru_cache
def seen_on_paper() -> dict[Content, list[Seen]]:
    """What the pixels of every patch show of every pattern, on a comb printed 60 mm wide."""
    frame = FRAME_TYPES["bs_deep"]
    seen: dict[Content, list[Seen]] = {content: [] for content in LEGEND}
    for cells in patches():
        mask, first = patch_mask(frame.lattice, cells, PRINTED_MM / frame.inside_width_mm, PIXELS_PER_MM)
        height, width = (length / PIXELS_PER_MM for length in mask.shape)
        for content, entry in LEGEND.items():
            box = (first[0], first[1], first[0] + width, first[1] + height)
            marks = moved(box_marks(entry.pattern, entry.pattern.paper_mm, box), first[0], first[1])
            ink = draw(marks, width, height, PIXELS_PER_MM)
            seen[content].append(look_at(ink, mask, PIXELS_PER_MM))
    return seen


def moved(marks: Marks, x: float, y: float) -> Marks:
    place = np.array((x, y))
    return Marks(
        marks.line_mm,
        marks.lines - np.tile(place, 2),
        marks.rings - np.append(place, 0),
        marks.discs - np.append(place, 0),
        marks.flecks - place,
    )


@pytest.mark.parametrize("content", list(LEGEND))
def test_what_is_seen_at_six_cells_is_what_was_meant(content: Content) -> None:
    pattern = LEGEND[content].pattern
    for seen in seen_on_paper()[content]:
        assert seen.shape is pattern.shape
        assert seen.ink_share == pytest.approx(pattern.ink_share, abs=0.08)
        if pattern.shape is MarkShape.LINE:
            assert seen.angle_deg is not None
            off = abs(seen.angle_deg - (pattern.angle_deg or 0.0)) % 180
            assert min(off, 180 - off) < 1


@pytest.mark.parametrize(("one", "other"), list(combinations(LEGEND, 2)))
def test_any_two_patterns_differ_at_six_cells_of_a_small_comb(one: Content, other: Content) -> None:
    """Whatever the patch: in kind, by 45 degrees, or by 20 points of ink, all measured on pixels."""
    seen = seen_on_paper()
    assert all(here.differs(there) for here in seen[one] for there in seen[other])


def test_brood_slants_the_other_way_from_stores() -> None:
    brood, stores = LEGEND[Content.BROOD].pattern, LEGEND[Content.STORES].pattern
    assert (brood.angle_deg or 0) - (stores.angle_deg or 0) == 90
    assert brood.spacing == stores.spacing


def test_nothing_is_solid_black_and_what_is_not_recorded_is_blank() -> None:
    assert max(entry.pattern.ink_share for entry in LEGEND.values()) < 0.6
    assert LEGEND[Content.NOT_RECORDED].pattern.shape is MarkShape.NONE


def test_only_the_ground_changes_with_the_theme() -> None:
    changed = {content for content in LEGEND if fill_of(content) != fill_of(content, dark=True)}
    assert changed == {Content.NOT_RECORDED}


def test_the_legend_stands_in_the_order_of_the_keys() -> None:
    assert [*LEGEND] == [*KEY_LETTERS, Content.NOT_RECORDED]
    assert letter_of(Content.STORES) == "H"
    assert not letter_of(Content.NOT_RECORDED)
    assert LEGEND[Content.OPEN].name == "open brood"


def test_what_was_not_drawn_by_hand_looks_different() -> None:
    painted, guessed, assumed = (LOOKS[o] for o in (Origin.PAINTED, Origin.EIGHTHS, Origin.ASSUMED))
    assert painted.walls
    assert not painted.dash_mm
    assert not guessed.walls
    assert guessed.dash_mm
    assert assumed.strength <= 0.5 < guessed.strength
    assert set(LOOKS) == set(Origin)
