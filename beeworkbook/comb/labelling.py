"""Numbering the connected pieces of a grid: the one routine of SciPy that a comb needs, loaded alone.

The whole of scipy.ndimage would cost the first flood fill half a second and the program 28 MB; the
routine itself is a small extension of its own. Where it is not found as such, the whole is loaded.
"""

import sys
from collections.abc import Callable
from functools import cache
from importlib.machinery import PathFinder
from importlib.util import find_spec, module_from_spec
from types import ModuleType
from typing import Final

import numpy as np
import numpy.typing as npt

Grid = npt.NDArray[np.bool_]
Labels = npt.NDArray[np.int32]

_PIECE: Final = "scipy.ndimage._ni_label"


def labels_of(grid: Grid, neighbours: Grid) -> Labels:
    """A number for every connected piece of what is true, from 1 on; 0 where it is false.

    Shapes: grid (rows, columns); neighbours (3, 3), which places beside one belong to it, symmetric
    about the middle; result as the grid.
    """
    return _routine()(grid, neighbours)


@cache
def _routine() -> Callable[[Grid, Grid], Labels]:
    piece = _loaded_alone()
    return _whole() if piece is None else _by(piece)


def _by(piece: ModuleType) -> Callable[[Grid, Grid], Labels]:
    number = piece._label  # noqa: SLF001  # what scipy.ndimage.label itself calls once it has looked at its arguments

    def labels(grid: Grid, neighbours: Grid) -> Labels:
        found = np.empty(grid.shape, np.int32)
        number(grid, neighbours, found)
        return found

    return labels


def _whole() -> Callable[[Grid, Grid], Labels]:
    from scipy import ndimage

    def labels(grid: Grid, neighbours: Grid) -> Labels:
        found: Labels = ndimage.label(grid, neighbours)[0]
        return found

    return labels


def _loaded_alone() -> ModuleType | None:
    """The extension without the package round it, None if this SciPy keeps the routine elsewhere."""
    if _PIECE in sys.modules:
        return sys.modules[_PIECE]
    package = find_spec("scipy")
    places = package.submodule_search_locations if package is not None else None
    spec = PathFinder.find_spec(_PIECE, [f"{place}/ndimage" for place in places or ()])
    if spec is None or spec.loader is None:
        return None
    piece = module_from_spec(spec)
    try:
        spec.loader.exec_module(piece)
    except ImportError:
        return None
    return piece if hasattr(piece, "_label") else None
