import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.orientation import (
    EntranceMark,
    entrance_mark,
    entrance_words,
    faces,
    from_other_end,
    neighbour_place,
    own_face,
    points_in_hive,
    seam_of,
    sides_of_seam,
    to_hive_coordinates,
)
from beeworkbook.comb.regions import ellipse
from beeworkbook.comb.side import blank_cells

LATTICE = FRAME_TYPES["bs_deep"].lattice
BOTH = st.sampled_from(list(Face))

# The hive as seen by someone behind it who looks the way they fly.
RIGHT, AHEAD, UP = np.eye(3)


def picture_left(outward: np.ndarray[tuple[int], np.dtype[np.float64]]) -> list[float]:
    """What lies at the left of the picture of a side whose outward normal is given: plain geometry."""
    looking = -outward
    to_the_right = np.cross(looking, UP)
    return [float(value) for value in -to_the_right]


def test_the_entrance_end_follows_from_geometry() -> None:
    # Cold way: comb 1 is at the left, so A looks left and B right; the entrance is ahead.
    assert picture_left(-RIGHT) == AHEAD.tolist()
    assert entrance_mark("cold", Face.A) is EntranceMark.LEFT
    assert picture_left(RIGHT) == (-AHEAD).tolist()
    assert entrance_mark("cold", Face.B) is EntranceMark.RIGHT


def test_warm_way_the_face_towards_the_entrance_is_marked() -> None:
    # Comb 1 is at the entrance, so side A of every comb looks ahead, towards it.
    assert entrance_mark("warm", Face.A) is EntranceMark.FACE
    assert entrance_mark("warm", Face.B) is EntranceMark.NONE


def test_the_mark_has_a_word() -> None:
    assert entrance_words("cold", Face.A) == entrance_words("cold", Face.B) == "entrance end"
    assert entrance_words("warm", Face.A) == "towards the entrance"
    assert entrance_words("warm", Face.B) == ""
    with pytest.raises(ValueError, match="lukewarm"):
        entrance_mark("lukewarm", Face.A)


def test_side_a_faces_the_wall_of_comb_one() -> None:
    assert faces(1, 11, Face.A) == "facing the wall"
    assert faces(1, 11, Face.B) == "facing comb 2"
    assert faces(5, 11, Face.A) == "facing comb 4"
    assert faces(5, 11, Face.B) == "facing comb 6"
    assert faces(11, 11, Face.B) == "facing the wall"
    assert neighbour_place(1, 1, Face.B) is None


@pytest.mark.parametrize("place", [0, 12, -1])
def test_a_place_the_box_has_not_is_refused(place: int) -> None:
    with pytest.raises(ValueError, match=str(place)):
        faces(place, 11, Face.A)
    with pytest.raises(ValueError, match=str(place)):
        from_other_end(place, 11, Face.A)


@given(st.integers(1, 25), st.data(), BOTH)
def test_two_sides_that_face_each_other_share_a_seam(places: int, data: st.DataObject, face: Face) -> None:
    place = data.draw(st.integers(1, places))
    seam = seam_of(place, face)
    assert (place, face) in sides_of_seam(seam, places)
    faced = neighbour_place(place, places, face)
    if faced is None:
        assert sides_of_seam(seam, places) == ((place, face),)
    else:
        assert seam_of(faced, face.other) == seam
        assert neighbour_place(faced, places, face.other) == place


def test_a_seam_the_box_has_not_is_refused() -> None:
    for seam in (-1, 12):
        with pytest.raises(ValueError, match=str(seam)):
            sides_of_seam(seam, 11)


@given(st.integers(1, 25), st.data(), BOTH)
def test_numbered_from_the_other_end_each_side_still_faces_the_same(
    places: int, data: st.DataObject, face: Face
) -> None:
    place = data.draw(st.integers(1, places))
    again = from_other_end(place, places, face)
    assert from_other_end(again[0], places, again[1]) == (place, face)
    faced, faced_again = neighbour_place(place, places, face), neighbour_place(again[0], places, again[1])
    assert faced_again == (None if faced is None else places + 1 - faced)


@given(BOTH, st.booleans())
def test_a_turned_frame_changes_its_letters_and_twice_is_nothing(face: Face, turned: bool) -> None:
    assert own_face(own_face(face, turned=turned), turned=turned) is face
    assert (own_face(face, turned=turned) is face) is not turned


def test_brood_at_the_entrance_lies_at_the_same_end_of_both_sides() -> None:
    # Drawn at the entrance end of each picture: left on A, right on B (cold way).
    patch_a = blank_cells(LATTICE).copy()
    patch_a[ellipse(LATTICE, (70, 120), 40, 30)] = Content.SEALED
    patch_b = blank_cells(LATTICE).copy()
    patch_b[ellipse(LATTICE, (LATTICE.width_mm - 70, 120), 40, 30)] = Content.SEALED
    through_a = to_hive_coordinates(LATTICE, patch_a, Face.A)
    assert np.array_equal(through_a, to_hive_coordinates(LATTICE, patch_b, Face.B))
    assert not np.array_equal(patch_a, patch_b)


@given(BOTH)
def test_points_are_laid_over_as_cells_are(face: Face) -> None:
    moved = points_in_hive(LATTICE, LATTICE.centres, face)
    numbers = np.arange(LATTICE.cells) % 12
    cells = to_hive_coordinates(LATTICE, numbers.astype(np.uint8), face)
    assert np.array_equal(cells[LATTICE.cells_at(moved)], numbers)
