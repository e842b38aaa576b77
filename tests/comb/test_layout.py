"""A comb laid out from eighths: exactly what was said, where bees would have put it."""

import statistics
import zlib

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import ndimage

from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.eighths import EighthsError, counts_for, read_back
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.comb.lattice import Cells
from beeworkbook.comb.layout import lay_out
from beeworkbook.comb.typed import parse_comb

FRAME = FRAME_TYPES["bs_deep"]
PLAUSIBLE_BOX = [
    "H5N2.",
    "S1P1H4.",
    "O1S2P1H3.",
    "E1O1S3P1H1.",
    "E1O1S3P1H1.",
    "E1O2S2P1H1.",
    "O1S3P1H2.",
    "O1S2P1H2.",
    "S1P1H4.",
    "H3N2.",
    "F",
]
SAID: list[Content] = [content for content in Content if content is not Content.NOT_RECORDED]
seeds = st.integers(0, 2**31)


def laid(text: str, *, seed: int = 0, face: Face = Face.A, entrance_end: str | None = None) -> Cells:
    said = parse_comb(text).sides[Face.A].all_eighths
    return lay_out(FRAME, said, face, entrance_end=entrance_end, seed=seed)


def middle(cells: Cells, *contents: Content) -> tuple[float, float]:
    """Mean place of these contents, as shares of width and height from the top left."""
    x, y = FRAME.lattice.centres[np.isin(cells, contents)].mean(axis=0)
    return float(x) / FRAME.inside_width_mm, float(y) / FRAME.inside_height_mm


def pieces(cells: Cells, *contents: Content) -> int:
    """In how many patches these contents lie."""
    row, slanted = FRAME.lattice.sheared
    grid = np.zeros((FRAME.lattice.rows, int(np.ptp(slanted)) + 1), bool)
    grid[row, slanted - slanted.min()] = np.isin(cells, contents)
    return int(ndimage.label(grid, structure=[[0, 1, 1], [1, 1, 1], [1, 1, 0]])[1])


@st.composite
def eighths(draw: st.DrawFn) -> dict[Content, float]:
    chosen = draw(st.lists(st.sampled_from(SAID), unique=True, max_size=11))
    weights = [draw(st.integers(0, 8)) for _ in chosen]
    filled = draw(st.sampled_from([8.0, 6.0, 2.5]))
    total = sum(weights)
    return {c: filled * w / total for c, w in zip(chosen, weights, strict=True)} if total else {}


@settings(max_examples=60, deadline=None)
@given(
    eighths(),
    seeds,
    st.sampled_from(["bs_deep", "zander", "langstroth_shallow"]),
    st.sampled_from(Face),
    st.sampled_from([None, "left", "right", "face"]),
)
def test_every_content_has_exactly_its_cells(
    said: dict[Content, float], seed: int, frame_id: str, face: Face, entrance_end: str | None
) -> None:
    frame = FRAME_TYPES[frame_id]
    cells = lay_out(frame, said, face, entrance_end=entrance_end, seed=seed)
    counts = np.bincount(cells, minlength=len(Content))
    wanted = counts_for(said, frame.lattice.cells)
    assert {content: int(counts[content]) for content in SAID} == {c: wanted.get(c, 0) for c in SAID}
    found = read_back(frame, cells)
    assert all(abs(found.get(content, 0.0) - share) <= 8.01 / len(cells) for content, share in said.items())
    assert not cells.flags.writeable


@pytest.mark.parametrize("content", SAID)
def test_one_content_alone_takes_the_whole_side_or_one_place(content: Content) -> None:
    whole = lay_out(FRAME, {content: 8.0}, Face.A)
    assert (whole == content).all()
    part = lay_out(FRAME, {content: 2.0}, Face.A, seed=3)
    assert set(np.unique(part)) == {0, content}
    assert pieces(part, content) <= 4


def test_the_same_seed_gives_the_same_comb_and_another_does_not() -> None:
    first = laid("E1O2S3P1H1", seed=7)
    assert np.array_equal(first, laid("E1O2S3P1H1", seed=7))
    assert not np.array_equal(first, laid("E1O2S3P1H1", seed=8))
    assert not np.array_equal(first, laid("E1O2S3P1H1", seed=7, face=Face.B))


@settings(max_examples=25, deadline=None)
@given(seeds, st.sampled_from(["E1O1S3P1H1.", "E1O2S2P1H1.", "O1S2P1H3.", "E1O2S4H1"]))
def test_brood_is_one_patch_with_the_youngest_inside(seed: int, text: str) -> None:
    cells = laid(text, seed=seed)
    brood = (Content.EGGS, Content.OPEN, Content.SEALED)
    assert pieces(cells, *brood) <= 2
    heart = np.array(middle(cells, *brood)) * (FRAME.inside_width_mm, FRAME.inside_height_mm)
    far = {c: np.hypot(*(FRAME.lattice.centres[cells == c] - heart).T) for c in brood if (cells == c).any()}
    means = [float(distances.mean()) for distances in far.values()]
    assert means == sorted(means)
    x, y = middle(cells, *brood)
    assert x == pytest.approx(0.5, abs=0.12)
    assert 0.45 < y < 0.7


@settings(max_examples=25, deadline=None)
@given(seeds)
def test_stores_lie_above_pollen_against_brood_and_empty_comb_below(seed: int) -> None:
    cells = laid("O1S2P1H2.", seed=seed)
    assert middle(cells, Content.STORES)[1] < middle(cells, Content.POLLEN)[1]
    assert middle(cells, Content.POLLEN)[1] < middle(cells, Content.SEALED)[1]
    assert middle(cells, Content.EMPTY)[1] > middle(cells, Content.SEALED)[1]
    near = FRAME.lattice.neighbour_table[cells == Content.POLLEN]
    touching = (near >= 0) & np.isin(cells[near], (Content.SEALED, Content.POLLEN))
    assert touching.any(axis=1).mean() > 0.9


@settings(max_examples=25, deadline=None)
@given(seeds)
def test_nectar_lies_under_the_stores_and_pollen_under_the_nectar(seed: int) -> None:
    cells = laid("H3N1P1.", seed=seed)
    depths = [middle(cells, c)[1] for c in (Content.STORES, Content.NECTAR, Content.POLLEN, Content.EMPTY)]
    assert depths == sorted(depths)


@settings(max_examples=25, deadline=None)
@given(seeds)
def test_gaps_and_drones_are_low(seed: int) -> None:
    cells = laid("G0.5D1S3H2.", seed=seed)
    assert middle(cells, Content.GAP)[1] > 0.7
    assert middle(cells, Content.DRONE)[1] > 0.7
    upper = FRAME.lattice.centres[:, 1] < 0.4 * FRAME.inside_height_mm
    assert not np.isin(cells[upper], (Content.GAP, Content.DRONE)).any()


def test_foundation_is_left_at_the_sides() -> None:
    cells = laid("F4H1.", seed=1)
    across = np.abs(2 * FRAME.lattice.centres[:, 0] / FRAME.inside_width_mm - 1)
    assert across[cells == Content.FOUNDATION].mean() > across[cells == Content.EMPTY].mean() + 0.3


def test_the_nest_leans_to_the_entrance_and_the_stores_away() -> None:
    def mean_x(entrance_end: str | None, content: Content) -> float:
        sides = [laid("E1O1S2H2.", seed=seed, entrance_end=entrance_end) for seed in range(12)]
        return statistics.fmean(middle(cells, content)[0] for cells in sides)

    assert mean_x("left", Content.SEALED) < mean_x(None, Content.SEALED) < mean_x("right", Content.SEALED)
    assert mean_x("left", Content.STORES) > mean_x(None, Content.STORES) > mean_x("right", Content.STORES)


def test_borders_are_a_little_uneven() -> None:
    """The rim of the brood wavers about its own oval: neither drawn with compasses nor torn."""
    cells = laid("S3H2.", seed=5)
    ring = cells == Content.SEALED
    near = FRAME.lattice.neighbour_table
    rim = ring & ~((near < 0) | ring[near]).all(axis=1)
    x, y = (FRAME.lattice.centres[rim] - FRAME.lattice.centres[ring].mean(axis=0)).T
    spread = FRAME.lattice.centres[ring].std(axis=0)
    oval = np.hypot(x / spread[0], y / spread[1])
    assert 0.02 < oval.std() / oval.mean() < 0.15


def test_a_plausible_box_packs_small() -> None:
    """At most 0.08 byte a cell in the median, as issue 3 asks of the stored form: zlib 6 on a byte a cell."""
    packed = [
        len(zlib.compress(laid(text, seed=11 * n, face=face).tobytes(), 6)) / FRAME.lattice.cells
        for n, text in enumerate(PLAUSIBLE_BOX)
        for face in Face
    ]
    assert statistics.median(packed) <= 0.08


def test_a_tiny_frame_and_too_many_eighths() -> None:
    tiny = FrameType("tiny", "tiny", 60.0, 60.0)
    cells = lay_out(tiny, {Content.SEALED: 3.0, Content.POLLEN: 2.0, Content.DRONE: 1.0}, Face.B)
    assert len(cells) == tiny.lattice.cells
    with pytest.raises(EighthsError):
        lay_out(FRAME, {Content.SEALED: 9.0}, Face.A)
