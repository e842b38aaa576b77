"""Frames a comb is built in: sizes, densities, and where each number was read.

The keeper's own frames are made here too. Hives, which say how many frames a box takes, are in
hives.py; the lattice of cells inside a frame is in lattice.py.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from beeworkbook.comb.lattice import DRONE_CELLS_PER_DM2, WORKER_CELLS_PER_DM2, Lattice, fit_lattice
from beeworkbook.words import number, say

LEAST_MM: Final = 60.0
MOST_MM: Final = 700.0
LEAST_CELLS_PER_DM2: Final = 150.0
MOST_CELLS_PER_DM2: Final = 600.0


class Confidence(StrEnum):
    """How the inside size of a frame is known."""

    PUBLISHED = "published"
    SUBTRACTED = "subtracted"
    ESTIMATED = "estimated"
    OWN = "own"


class OwnFrameError(ValueError):
    """A number given for a frame of one's own that no frame can have."""

    def __init__(self, field: str, message: str) -> None:
        super().__init__(message)
        self.field = field


@dataclass(frozen=True)
class FrameType:
    """One kind of frame. Inside sizes are the comb's; outer ones are for telling frames apart.

    Units: millimetres; cells per dm² of one side.
    """

    id: str
    name: str
    inside_width_mm: float
    inside_height_mm: float
    outer_width_mm: float | None = None
    outer_height_mm: float | None = None
    top_bar_mm: float | None = None
    cells_per_dm2: float = WORKER_CELLS_PER_DM2
    drone_cells_per_dm2: float = DRONE_CELLS_PER_DM2
    confidence: Confidence = Confidence.OWN
    source: str = ""

    @property
    def area_dm2(self) -> float:
        """Comb area of one side."""
        return self.inside_width_mm * self.inside_height_mm / 1e4

    @property
    def lattice(self) -> Lattice:
        """The cells of one side."""
        return fit_lattice(self.inside_width_mm, self.inside_height_mm, self.cells_per_dm2)

    @property
    def side_cells(self) -> float:
        """Worker cells of one side by its area, as shown to the keeper: a Zander side has 3 200.

        Source: area × density; the lattice's own count differs from it by up to 1 %.
        """
        return self.area_dm2 * self.cells_per_dm2


def own_frame(
    frame_id: str,
    name: str,
    inside_width_mm: float,
    inside_height_mm: float,
    *,
    cells_per_dm2: float = WORKER_CELLS_PER_DM2,
    drone_cells_per_dm2: float = DRONE_CELLS_PER_DM2,
) -> FrameType:
    """A frame of the keeper's own, checked.

    Units: millimetres inside the wood; cells per dm² of one side.
    Errors: OwnFrameError, a sentence for the keeper and the field it is about.
    Source: the limits are common practice, no source.
    """
    if not name.strip():
        raise OwnFrameError("name", say("A frame of your own needs a name."))
    _check("inside_width_mm", inside_width_mm)
    _check("inside_height_mm", inside_height_mm)
    _check("cells_per_dm2", cells_per_dm2)
    _check("drone_cells_per_dm2", drone_cells_per_dm2)
    if drone_cells_per_dm2 > cells_per_dm2:
        text = say("Drone cells are larger than worker cells, so fewer of them fit a square decimetre.")
        raise OwnFrameError("drone_cells_per_dm2", text)
    return FrameType(
        id=frame_id,
        name=name.strip(),
        inside_width_mm=float(inside_width_mm),
        inside_height_mm=float(inside_height_mm),
        cells_per_dm2=float(cells_per_dm2),
        drone_cells_per_dm2=float(drone_cells_per_dm2),
        source=say("the keeper’s own measure"),
    )


def _check(field: str, value: float) -> None:
    length = field.endswith("_mm")
    least, most = (LEAST_MM, MOST_MM) if length else (LEAST_CELLS_PER_DM2, MOST_CELLS_PER_DM2)
    if math.isfinite(value) and least <= value <= most:
        return
    texts = {
        "inside_width_mm": "The inside width of a frame is between {least} and {most} mm.",
        "inside_height_mm": "The inside height of a frame is between {least} and {most} mm.",
        "cells_per_dm2": "Worker cells on one side number between {least} and {most} per dm².",
        "drone_cells_per_dm2": "Drone cells on one side number between {least} and {most} per dm².",
    }
    raise OwnFrameError(field, say(texts[field], least=number(least), most=number(most)))


def _frame(  # noqa: PLR0917 - one line of the table below
    frame_id: str,
    name: str,
    inside: tuple[float, float],
    outer: tuple[float, float] | None,
    top_bar_mm: float | None,
    confidence: Confidence,
    source: str,
) -> FrameType:
    outer_width, outer_height = outer or (None, None)
    return FrameType(
        id=frame_id,
        name=name,
        inside_width_mm=inside[0],
        inside_height_mm=inside[1],
        outer_width_mm=outer_width,
        outer_height_mm=outer_height,
        top_bar_mm=top_bar_mm,
        confidence=confidence,
        source=source,
    )


_PUBLISHED, _SUBTRACTED, _ESTIMATED = Confidence.PUBLISHED, Confidence.SUBTRACTED, Confidence.ESTIMATED
_BS = (
    "D. Cushman, British Standard frame parts (BS 1300:1960); inside = outer less 9 mm sides, 18 + 8 mm bars"
)
_14X12 = "Taunton Honey equipment sizes and a UK list of hive sizes, 12 in side bar; wood as British Standard"
_SMITH = "D. Cushman, Smith frame dimensions: lug 19 mm, else British Standard; top bar 356 + 2 × 19"
_COMMERCIAL = (
    "D. Cushman, 16 × 10 in brood and 16 × 6 in super; wood as British Standard; top bar from memory"
)
_LANG = "frame construction write-up, everything2; inside 429 wide in use; "
_JUMBO = "UK list of hive sizes, side bar 11¼ in; bars as Langstroth deep"
_MD = "as jumbo (apiarynotes 2013); width from memory"
_ADAM = "post on beesource quoting a Dutch article of 1948 for the outer size; wood taken as Langstroth’s"
_BERTRAND = "E. Bertrand, La conduite du rucher, p. 237–239"
_ITALIAN = "comparison of hives “Tipi di arnie più diffuse”, 42 × 27 cm; Bertrand p. 235"
_ZANDER = "outer LV Württemberg; inside 8 dm² from 3 200 cells a side at 400 per dm², bees-online.at 2020"
_DE = "inside 354 × 205: imkerverein-dorsten.de, DNM page; outer: LV Württemberg; top bar alpentrogbeute.de"
_DE15 = "outer size from memory; wood as German normal; a club page’s “half as large again” would give 307 mm"
_SWISS = (
    "height E. Bertrand p. 282, width from memory, less 6 mm wood; area as by 1 250 bees, imker.felser.ch"
)
_SWISS_SUPER = "height E. Bertrand p. 282 (the old small frame), width from memory, less 6 mm wood"
_LAYENS = "inside É. Warré, L’apiculture pour tous, 0.37 × 0.31 m; outer and top bar E. Bertrand p. 275"
_VOIRNOT = "CARI (cari.be), overview of hives, 33 × 33 cm"

_ALL: Final = (
    _frame("bs_deep", "British Standard deep", (338, 190), (356, 216), 432, _SUBTRACTED, _BS),
    _frame("bs_shallow", "British Standard shallow", (338, 114), (356, 140), 432, _SUBTRACTED, _BS),
    _frame("bs_14x12", "British Standard 14 × 12", (338, 279), (356, 305), 432, _SUBTRACTED, _14X12),
    _frame("smith_deep", "Smith deep", (338, 190), (356, 216), 394, _SUBTRACTED, _SMITH),
    _frame("smith_shallow", "Smith shallow", (338, 114), (356, 140), 394, _SUBTRACTED, _SMITH),
    _frame("smith_14x12", "Smith 14 × 12", (338, 279), (356, 305), 394, _SUBTRACTED, _SMITH),
    _frame("commercial", "Commercial brood", (388, 228), (406, 254), 438, _SUBTRACTED, _COMMERCIAL),
    _frame("commercial_super", "Commercial super", (388, 126), (406, 152), 438, _SUBTRACTED, _COMMERCIAL),
    _frame(
        "langstroth_deep",
        "Langstroth deep",
        (429, 205),
        (448, 232),
        483,
        _SUBTRACTED,
        _LANG + "430 × 207 by subtraction; 429 × 205 agrees with 1 100 bees a side, Imdorf and others 1996",
    ),
    _frame(
        "langstroth_medium",
        "Langstroth medium",
        (429, 132),
        (448, 159),
        483,
        _SUBTRACTED,
        _LANG + "side bar 6¼ in, kingbee.us",
    ),
    _frame(
        "langstroth_shallow",
        "Langstroth shallow",
        (429, 110),
        (448, 137),
        483,
        _SUBTRACTED,
        _LANG + "side bar 5⅜ in, kingbee.us",
    ),
    _frame("langstroth_jumbo", "Langstroth jumbo", (429, 259), (448, 286), 483, _SUBTRACTED, _JUMBO),
    _frame("dadant_modified", "Modified Dadant brood", (429, 259), (448, 286), 483, _SUBTRACTED, _MD),
    _frame(
        "dadant_modified_super",
        "Modified Dadant super",
        (429, 132),
        (448, 159),
        483,
        _ESTIMATED,
        "outer size from memory; inside as Langstroth medium",
    ),
    _frame("brother_adam", "Brother Adam’s Dadant brood", (431, 258), (450, 285), 483, _ESTIMATED, _ADAM),
    _frame(
        "brother_adam_super", "Brother Adam’s Dadant super", (431, 118), (450, 145), 483, _ESTIMATED, _ADAM
    ),
    _frame(
        "dadant_blatt_old", "Dadant-Blatt brood, 26½ cm", (420, 265), (435, 300), 470, _PUBLISHED, _BERTRAND
    ),
    _frame("dadant_blatt", "Dadant-Blatt brood, 27 cm", (420, 270), (435, 300), 470, _PUBLISHED, _ITALIAN),
    _frame("dadant_blatt_super", "Dadant-Blatt super", (420, 135), (435, 160), 470, _PUBLISHED, _BERTRAND),
    _frame("zander", "Zander", (400, 200), (420, 220), 477, _PUBLISHED, _ZANDER),
    _frame("de_normal", "German normal", (354, 205), (370, 223), 394, _PUBLISHED, _DE),
    _frame("de_normal_15", "German normal 1½", (354, 320), (370, 338), 394, _ESTIMATED, _DE15),
    _frame("swiss", "Swiss brood", (274, 349), (286, 361), None, _ESTIMATED, _SWISS),
    _frame("swiss_super", "Swiss super, old", (274, 108), (286, 120), None, _ESTIMATED, _SWISS_SUPER),
    _frame("layens", "Layens", (310, 370), (330, 405), 368, _PUBLISHED, _LAYENS),
    _frame("voirnot", "Voirnot", (330, 330), None, None, _PUBLISHED, _VOIRNOT),
)

FRAME_TYPES: Final[Mapping[str, FrameType]] = MappingProxyType({frame.id: frame for frame in _ALL})
"""Every frame type that is shipped, by its own id. The ids are in workbooks and never change."""
