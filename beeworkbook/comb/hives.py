"""Hives a colony can be added in: which frames their boxes take, how many, how far apart.

Numbers are what a box usually takes; the keeper may hang more or fewer.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

NUCLEUS_FRAMES: Final = (5, 6)
"""Frames of a nucleus box, any of the brood frames. Source: common practice, no source."""

HOFFMAN_PITCH_MM: Final = 35.0
"""Middle to middle of two combs. Source: German encyclopaedia article Rähmchen, 35 mm (32–38)."""


@dataclass(frozen=True)
class HiveKind:
    """One kind of hive. Without a super frame it grows sideways and takes no supers.

    Units: millimetres from the middle of one comb to the middle of the next.
    """

    id: str
    name: str
    brood_frame: str
    brood_frames: int
    super_frame: str | None
    super_frames: int
    pitch_mm: float
    source: str


_UK = "UK list of hive sizes; exam-revision table, bbkamodules 2015; narrow spacing 38 mm D. Cushman"
_TABLE = "exam-revision table, bbkamodules 2015; narrow spacing 38 mm D. Cushman; supers common practice"
_LANG = "UK list of hive sizes; spacing of Hoffman frames; supers common practice, fewer where spaced wide"
_MD = "exam-revision table, bbkamodules 2015; spacing 38 mm D. Cushman; supers common practice"
_ADAM = "box 465 mm inside, post on beesource quoting a Dutch article of 1948; at 38 mm twelve fit (computed)"
_BLATT12 = (
    "E. Bertrand, La conduite du rucher, p. 237–239, 251: 12 in 450 mm at 37 mm; supers computed likewise"
)
_BLATT10 = (
    "museoapicoltura.it, apicolturagiordano.it: 10 in 385 mm, so 38.5 mm (computed); 9 combs in a super"
)
_LAYENS = "E. Bertrand p. 272: 20 in 767 mm, so 38.4 mm (computed)"
_ZANDER = "pitch 35 mm schwaebisch-hall.lvwi.de; 9–11 frames common practice, no source"
_SWISS = "pitch 35 mm E. Bertrand p. 283; number of frames from memory"
_VOIRNOT = "number of frames from memory; spacing of Hoffman frames"

_ALL: Final = (
    HiveKind("national", "National", "bs_deep", 11, "bs_shallow", 10, 38.0, _UK),
    HiveKind("national_14x12", "National 14 × 12", "bs_14x12", 11, "bs_shallow", 10, 38.0, _UK),
    HiveKind("wbc", "WBC", "bs_deep", 10, "bs_shallow", 10, 38.0, _TABLE),
    HiveKind("smith", "Smith", "smith_deep", 11, "smith_shallow", 10, 38.0, _TABLE),
    HiveKind("commercial", "Commercial", "commercial", 11, "commercial_super", 10, 38.0, _TABLE),
    HiveKind(
        "langstroth_10",
        "Langstroth, 10 frames",
        "langstroth_deep",
        10,
        "langstroth_medium",
        10,
        HOFFMAN_PITCH_MM,
        _LANG,
    ),
    HiveKind(
        "langstroth_8",
        "Langstroth, 8 frames",
        "langstroth_deep",
        8,
        "langstroth_medium",
        8,
        HOFFMAN_PITCH_MM,
        _LANG,
    ),
    HiveKind(
        "jumbo", "Langstroth jumbo", "langstroth_jumbo", 10, "langstroth_medium", 10, HOFFMAN_PITCH_MM, _LANG
    ),
    HiveKind(
        "dadant_modified", "Modified Dadant", "dadant_modified", 11, "dadant_modified_super", 11, 38.0, _MD
    ),
    HiveKind(
        "brother_adam", "Brother Adam’s Dadant", "brother_adam", 12, "brother_adam_super", 12, 38.0, _ADAM
    ),
    HiveKind(
        "dadant_blatt_12",
        "Dadant-Blatt, 12 combs",
        "dadant_blatt",
        12,
        "dadant_blatt_super",
        12,
        37.0,
        _BLATT12,
    ),
    HiveKind(
        "dadant_blatt_10",
        "Dadant-Blatt, 10 combs",
        "dadant_blatt",
        10,
        "dadant_blatt_super",
        9,
        38.5,
        _BLATT10,
    ),
    HiveKind("zander", "Zander", "zander", 10, "zander", 10, 35.0, _ZANDER),
    HiveKind("de_normal", "German normal", "de_normal", 11, "de_normal", 11, 35.0, _ZANDER),
    HiveKind("de_normal_15", "German normal 1½", "de_normal_15", 11, "de_normal", 11, 35.0, _ZANDER),
    HiveKind("swiss", "Swiss", "swiss", 14, "swiss_super", 14, 35.0, _SWISS),
    HiveKind("layens", "Layens", "layens", 20, None, 0, 38.4, _LAYENS),
    HiveKind("voirnot", "Voirnot", "voirnot", 10, "voirnot", 10, HOFFMAN_PITCH_MM, _VOIRNOT),
)

HIVE_KINDS: Final[Mapping[str, HiveKind]] = MappingProxyType({hive.id: hive for hive in _ALL})
"""Every kind of hive that is shipped, by its own id. The ids are in workbooks and never change."""
