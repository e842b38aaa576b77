import math

import pytest

from beeworkbook.comb.frames import FRAME_TYPES, Confidence, FrameType, OwnFrameError, own_frame
from beeworkbook.comb.lattice import DRONE_CELLS_PER_DM2, WORKER_CELLS_PER_DM2


@pytest.mark.parametrize("frame", FRAME_TYPES.values(), ids=list(FRAME_TYPES))
def test_every_frame_says_where_its_size_was_read(frame: FrameType) -> None:
    assert frame.source
    assert frame.confidence is not Confidence.OWN
    assert frame.name == frame.name.strip() != ""
    assert FRAME_TYPES[frame.id] is frame
    if frame.outer_width_mm is not None and frame.outer_height_mm is not None:
        assert 10 <= frame.outer_width_mm - frame.inside_width_mm <= 22
        assert 10 <= frame.outer_height_mm - frame.inside_height_mm <= 36
    if frame.top_bar_mm is not None and frame.outer_width_mm is not None:
        assert frame.top_bar_mm > frame.outer_width_mm


def test_names_are_told_apart() -> None:
    assert len({frame.name for frame in FRAME_TYPES.values()}) == len(FRAME_TYPES)


def test_the_two_meanings_of_dn_have_ids_of_their_own() -> None:
    assert FRAME_TYPES["bs_deep"].area_dm2 != FRAME_TYPES["de_normal"].area_dm2


def test_a_frame_of_ones_own() -> None:
    frame = own_frame("own_1", "  Grandfather’s  ", 300, 240, cells_per_dm2=427)
    assert frame.name == "Grandfather’s"
    assert frame.confidence is Confidence.OWN
    assert frame.area_dm2 == pytest.approx(7.2)
    assert frame.side_cells == pytest.approx(7.2 * 427)
    assert frame.lattice.cells == pytest.approx(7.2 * 427, rel=0.01)
    assert frame.drone_cells_per_dm2 == DRONE_CELLS_PER_DM2


def test_an_own_frame_counts_like_any_other_until_told_otherwise() -> None:
    assert own_frame("own_1", "Mine", 300, 240).cells_per_dm2 == WORKER_CELLS_PER_DM2


@pytest.mark.parametrize(
    ("field", "width", "height", "worker", "drone", "words"),
    [
        ("inside_width_mm", 59.9, 200, 400, 230, "inside width of a frame is between 60 and 700 mm"),
        ("inside_width_mm", math.nan, 200, 400, 230, "inside width"),
        ("inside_height_mm", 300, 701, 400, 230, "inside height of a frame is between 60 and 700 mm"),
        ("inside_height_mm", 300, math.inf, 400, 230, "inside height"),
        ("cells_per_dm2", 300, 200, 40, 230, "Worker cells on one side number between 150 and 600"),
        ("drone_cells_per_dm2", 300, 200, 400, 100, "Drone cells on one side number between 150 and 600"),
        ("drone_cells_per_dm2", 300, 200, 400, 401, "Drone cells are larger"),
    ],
)
def test_what_no_frame_can_have_is_refused_in_words(
    field: str, width: float, height: float, worker: float, drone: float, words: str
) -> None:
    with pytest.raises(OwnFrameError, match=words) as caught:
        own_frame("own_1", "Mine", width, height, cells_per_dm2=worker, drone_cells_per_dm2=drone)
    assert caught.value.field == field


def test_an_own_frame_needs_a_name() -> None:
    with pytest.raises(OwnFrameError, match="needs a name") as caught:
        own_frame("own_1", "  ", 300, 200)
    assert caught.value.field == "name"


@pytest.mark.parametrize("size", [(60, 60), (60, 700), (700, 60), (700, 700)])
def test_the_largest_and_smallest_own_frame_has_a_lattice(size: tuple[float, float]) -> None:
    for density in (150, 600):
        frame = own_frame("own_1", "Mine", *size, cells_per_dm2=density, drone_cells_per_dm2=150)
        assert frame.lattice.cells == pytest.approx(frame.side_cells, rel=0.01)
