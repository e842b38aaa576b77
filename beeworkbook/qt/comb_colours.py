"""The colour of every content under every strength of ink, as small tables to look pixels up in.

One table for each way a side can have come to be and each theme: an assumed side is paler, a
laid-out one has no single cells and dashed regions. The values come from comb/legend.py.
"""

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.contents import CONTENTS, Content, Origin
from beeworkbook.comb.legend import INK, LOOKS, OUTLINE_INK, WALL_INK, fill_of
from beeworkbook.qt.cell_map import CellMap, Coverage
from beeworkbook.qt.comb_inks import SCREEN_PX_PER_MM

OUTSIDE: Final = len(CONTENTS)
"""The row of the tables that stands for beside the comb."""
_LEVELS: Final = 256


@dataclass(frozen=True)
class Paint:
    """All that decides a side's colours besides its cells.

    look is how the side came to be; beside and edge are the chrome's "#RRGGBB" round the comb and for
    lines on the bare ground.
    """

    look: Origin
    dark: bool
    beside: str
    edge: str


@dataclass(frozen=True, eq=False)
class ColourTable:
    """Colours by content and ink. Shapes: colours (13, 256) of 0xffRRGGBB."""

    colours: npt.NDArray[np.uint32]
    walls: bool
    dash_mm: tuple[float, ...]

    def lines(self, cell_map: CellMap, px_per_px: float = 1.0) -> tuple[Coverage, Coverage]:
        """The ink of the walls between cells alike, and of the outlines between different ones.

        px_per_px is how many pixels of the screen one of the window's own is.
        Shapes: as the map.
        """
        outline = _scaled(cell_map.line, OUTLINE_INK)
        if self.dash_mm:
            outline *= _dashes(cell_map, self.dash_mm, SCREEN_PX_PER_MM * px_per_px)
        wall = _scaled(cell_map.line, WALL_INK * _calm(cell_map)) if self.walls else np.zeros_like(outline)
        return wall, outline


@lru_cache(maxsize=16)
def colour_table(paint: Paint) -> ColourTable:
    """The table of a paint."""
    look = LOOKS[paint.look]
    ground = _rgb(fill_of(Content.NOT_RECORDED, dark=paint.dark))
    fills = np.array([_rgb(fill_of(content, dark=paint.dark)) for content in CONTENTS] + [_rgb(paint.beside)])
    inks = np.array([_rgb(INK)] * len(CONTENTS) + [_rgb(paint.beside)])
    inks[Content.NOT_RECORDED] = _rgb(paint.edge)
    fills[: len(CONTENTS)] = ground + (fills[: len(CONTENTS)] - ground) * look.strength
    inks[: len(CONTENTS)] = ground + (inks[: len(CONTENTS)] - ground) * look.strength
    share = (np.arange(_LEVELS) / (_LEVELS - 1))[None, :, None]
    mixed = fills[:, None, :] * (1 - share) + inks[:, None, :] * share
    return ColourTable(packed(mixed), look.walls, look.dash_mm)


def packed(rgb: npt.NDArray[np.floating]) -> npt.NDArray[np.uint32]:
    """0xffRRGGBB of colours of 0 to 255. Shapes: (..., 3) to (...)."""
    whole = np.rint(rgb).astype(np.uint32)
    made: npt.NDArray[np.uint32] = (
        np.uint32(0xFF000000) | (whole[..., 0] << 16) | (whole[..., 1] << 8) | whole[..., 2]
    )
    return made


def unpacked(colours: npt.NDArray[np.uint32]) -> npt.NDArray[np.float64]:
    """The colours of 0 to 255 in 0xffRRGGBB. Shapes: (...) to (..., 3)."""
    return np.stack([(colours >> shift) & 255 for shift in (16, 8, 0)], axis=-1).astype(np.float64)


def _rgb(colour: str) -> npt.NDArray[np.float64]:
    return np.array([int(colour[at : at + 2], 16) for at in (1, 3, 5)], np.float64)


def _scaled(line: Coverage, strength: float) -> Coverage:
    scaled: Coverage = np.rint(np.arange(_LEVELS) * strength).astype(np.uint8).take(line)
    return scaled


def _calm(cell_map: CellMap) -> float:
    """Walls of cells only a few pixels wide would grey the whole side, so they fade there."""
    return min(1.0, cell_map.lattice.pitch_x_mm * cell_map.sight.scale / 7.0)


def _dashes(cell_map: CellMap, dash_mm: tuple[float, ...], px_per_mm: float) -> Coverage:
    """Where a dashed outline has ink: stripes across the picture, which no wall runs along."""
    on, off = dash_mm[0] * px_per_mm, dash_mm[1] * px_per_mm
    x = np.arange(cell_map.width, dtype=np.float32)[None, :]
    y = np.arange(cell_map.height, dtype=np.float32)[:, None]
    return (((x + np.float32(0.62) * y) % np.float32(on + off)) < np.float32(on)).astype(np.uint8)
