"""What a chart is made of, as plain values: panes with bands, curves, dots and gaps, marks and stops.

Built by chart_model.py, drawn by the modules beside it. Units: x in days from the axis' first day, y in
the pane's own unit.
"""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import Final

import numpy as np
import numpy.typing as npt

from beeworkbook.colony.figures import VisitFigures
from beeworkbook.colony.records import ColonyId, VisitId
from beeworkbook.colony.timeline import MarkSort, SeasonPoint
from beeworkbook.comb.contents import Content
from beeworkbook.year.day_axis import DayAxis

Values = npt.NDArray[np.float64]

LAST_YEAR_STYLE: Final = -1
"""The style of the dashed line of the year before."""


class PaneKey(StrEnum):
    """The panes that stand under one another on one axis of days."""

    BROOD = "brood"
    DRONES = "drones"
    STORES = "stores"
    BEES = "bees"


class DotShape(StrEnum):
    """How a visit's dot looks: combs noted, said in one line, or combs missing and so at least."""

    FULL = "full"
    HOLLOW = "hollow"
    OPEN = "open"


@dataclass(frozen=True, eq=False)
class Band:
    """The area of one content over a run of visits. Shapes: x, low and high (n,), n at least 2.

    assumed: nobody noted this content at some visit in between; it is shown paler and counted nowhere.
    """

    content: Content
    x: Values
    low: Values
    high: Values
    assumed: bool = False


@dataclass(frozen=True, eq=False)
class Curve:
    """A line through a run of visits. style counts the lines of a pane that must be told apart.

    Shapes: x and y (n,). name is empty for all but the run that bears the label.
    """

    style: int
    x: Values
    y: Values
    name: str = ""


@dataclass(frozen=True)
class Dot:
    """One visit. high None: open upwards. style None: the dot of a stack."""

    x: float
    y: float
    low: float
    high: float | None
    shape: DotShape
    visit_id: VisitId
    style: int | None = None


@dataclass(frozen=True)
class Gap:
    """A silence that no curve crosses, and why."""

    left: float
    right: float
    text: str


@dataclass(frozen=True, eq=False)
class Pane:
    """One pane: what is drawn in it, back to front, and how far its axis reaches."""

    key: PaneKey
    name: str
    unit: str
    low: float
    high: float
    bands: tuple[Band, ...] = ()
    curves: tuple[Curve, ...] = ()
    dots: tuple[Dot, ...] = ()
    gaps: tuple[Gap, ...] = ()


@dataclass(frozen=True)
class PlacedMark:
    """Something that happened, at its place."""

    x: float
    day: date
    sort: MarkSort
    text: str


@dataclass(frozen=True)
class Entry:
    """One visit that a stop reads: whose it is, its point, and the figures behind it."""

    colony_id: ColonyId
    name: str
    style: int
    point: SeasonPoint
    figures: VisitFigures


@dataclass(frozen=True)
class Stop:
    """A place where the hover line stops: a visit's day and all that is read there, its own first."""

    x: float
    day: date
    entries: tuple[Entry, ...]
    marks: tuple[str, ...] = ()

    @property
    def visit_id(self) -> VisitId:
        """The visit that a click here opens."""
        return self.entries[0].point.visit_id


@dataclass(frozen=True, eq=False)
class ChartModel:
    """A whole chart as values."""

    title: str
    subtitle: str
    axis: DayAxis
    panes: tuple[Pane, ...]
    marks: tuple[PlacedMark, ...]
    stops: tuple[Stop, ...]
    stacked: bool
    names: tuple[tuple[str, int], ...] = ()
    """The curves by name and style, where there are several."""
    note: str = ""
    """Why something is not drawn, where something is not."""

    @property
    def shapes(self) -> frozenset[DotShape]:
        """The shapes of dot that occur, for the key below."""
        return frozenset(dot.shape for pane in self.panes for dot in pane.dots)

    @property
    def assumes(self) -> bool:
        """Whether stages are shown that nobody noted."""
        return any(band.assumed for pane in self.panes for band in pane.bands)
