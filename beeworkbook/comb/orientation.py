"""Which way round: the one place where the view convention is written down.

Stand behind the hive and look the way the bees fly.

- Combs are numbered from a fixed end. Cold way (combs at right angles to the entrance) comb 1 is
  at the left; warm way (combs parallel to it) comb 1 is at the entrance.
- Side A of a comb faces comb 1's wall, that is comb i - 1; side B faces comb i + 1.
- A side is drawn as it is seen by someone who looks straight at it, the top bar above. So, cold
  way, the entrance end is at the left of every side A and at the right of every side B; warm way,
  side A of every comb is the one towards the entrance.
- Two sides of a comb, or the two sides of a seam, are laid over one another by turning side B into
  the picture of side A, left for right.

Source: sides A and B as in BEEBOOK (Delaplane and others 2013, §4.2); left and right by geometry;
the fixed end is common practice, no source.
"""

from enum import StrEnum
from typing import Final

from beeworkbook.comb.contents import Face
from beeworkbook.comb.lattice import Cells, Lattice, Points
from beeworkbook.comb.regions import mirror
from beeworkbook.words import say

WAYS: Final = ("cold", "warm")


class EntranceMark(StrEnum):
    """What a drawn side shows of the entrance."""

    LEFT = "left"
    RIGHT = "right"
    FACE = "face"
    NONE = "none"


def entrance_mark(way: str, face: Face) -> EntranceMark:
    """Where the entrance is marked on a side: at an end of the picture, on the whole face, or not.

    Errors: ValueError if way is neither "cold" nor "warm".
    """
    if way not in WAYS:
        raise ValueError(way)
    if way == "cold":
        return EntranceMark.LEFT if face is Face.A else EntranceMark.RIGHT
    return EntranceMark.FACE if face is Face.A else EntranceMark.NONE


def entrance_words(way: str, face: Face) -> str:
    """The word that stands beside the mark; empty where there is none.

    Errors: ValueError if way is neither "cold" nor "warm".
    """
    mark = entrance_mark(way, face)
    if mark is EntranceMark.NONE:
        return ""
    return say("towards the entrance") if mark is EntranceMark.FACE else say("entrance end")


def neighbour_place(place: int, places: int, face: Face) -> int | None:
    """The place of the comb that this side faces, None where it faces the wall.

    Errors: ValueError if the box has no such place.
    """
    _check_place(place, places)
    faced = place - 1 if face is Face.A else place + 1
    return faced if 1 <= faced <= places else None


def faces(place: int, places: int, face: Face) -> str:
    """What this side faces, in words: "facing comb 4" or "facing the wall".

    Errors: ValueError if the box has no such place.
    """
    faced = neighbour_place(place, places, face)
    return say("facing the wall") if faced is None else say("facing comb {place}", place=faced)


def seam_of(place: int, face: Face) -> int:
    """The seam a side looks into. Seam n lies between combs n and n + 1, seam 0 at comb 1's wall."""
    return place - 1 if face is Face.A else place


def sides_of_seam(seam: int, places: int) -> tuple[tuple[int, Face], ...]:
    """The sides, as place and face, that look into a seam: two between combs, one at a wall.

    Errors: ValueError if the box has no such seam.
    """
    if not 0 <= seam <= places:
        raise ValueError(seam)
    both = ((seam, Face.B), (seam + 1, Face.A))
    return tuple((place, face) for place, face in both if 1 <= place <= places)


def from_other_end(place: int, places: int, face: Face) -> tuple[int, Face]:
    """Place and face of the same side when the box is numbered from its other end.

    Errors: ValueError if the box has no such place.
    """
    _check_place(place, places)
    return places + 1 - place, face.other


def own_face(face: Face, *, turned: bool) -> Face:
    """Which face of the wood hangs towards this face of the box, and the other way about.

    A frame's own faces are named when it is first recorded. A frame that hangs turned keeps its
    pictures, since each is drawn as seen straight on; only the letters change places.
    """
    return face.other if turned else face


def to_hive_coordinates(lattice: Lattice, cells: Cells, face: Face) -> Cells:
    """The side as seen through the comb from side A, so that both can be laid over one another.

    Cold way, the entrance end is then at the left for both. Shapes: as cells.
    Errors: ValueError on a wrong length.
    """
    return cells if face is Face.A else mirror(lattice, cells)


def points_in_hive(lattice: Lattice, points: Points, face: Face) -> Points:
    """Points of a side in the picture of side A, exactly.

    Shapes: points (n, 2), result likewise. Units: millimetres on the comb.
    """
    if face is Face.A:
        return points
    turned = points.copy()
    turned[:, 0] = lattice.width_mm - points[:, 0]
    return turned


def _check_place(place: int, places: int) -> None:
    if not 1 <= place <= places:
        raise ValueError(place)
