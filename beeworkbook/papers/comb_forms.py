"""The forms of a comb sheet: where, on each paper, every comb with its ticks and bars has its place.

Beside: bars in the outer columns, combs inside, markers on the seams between frames. Below: for
shallow frames, the bars under a wide comb. Pocket: A5, no bars and no markers. Lengths in
millimetres; nothing here draws, and nothing here knows a colony.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Final

from beeworkbook.comb.contents import Face
from beeworkbook.comb.lattice import Lattice
from beeworkbook.papers.markers import CODE_MM, MARKER_MM, ROWS
from beeworkbook.papers.options import Paper
from beeworkbook.papers.rect import Rect, fitted

EIGHTHS: Final = 8
EIGHTH_MM: Final = 4.6
BAR_MM: Final = EIGHTHS * EIGHTH_MM
TICK_MM: Final = 5.0
LEAST_COMB_MM2: Final = 1500.0
TICKS: Final = ("looked", "eggs", "queen", "queen_cell")
BARS: Final = ("bees", "sealed", "open", "drone", "pollen", "stores")

ENTRANCE_MM: Final = 0.9
"""The bar that marks the entrance end, outside the comb."""
SYMBOL_MM: Final = 2.6
"""Room for a tick's sign beside its box."""
QUIET_MM: Final = 1.0
"""White round a marker: one of its squares, which its family asks for."""
_WORDS: Final = "words"
_BAND: Final = MARKER_MM + 2 * QUIET_MM
_TOP: Final = 26.4
_FOOT: Final = 24.0
_LOW_MARGIN: Final = 5.0
_BAR_GAP: Final = 0.75


@dataclass(frozen=True, eq=False)
class SidePlan:
    """The places of one side, one and the same object on every page. `ticks`, `bars` go by TICKS, BARS.

    `comb` is the largest a comb can be, `words` the strip above it for label, entrance and last time.
    Tick symbols stand above their box, or beside it where `symbols_beside`.
    """

    face: Face
    comb: Rect
    words: Rect
    ticks: tuple[Rect, ...]
    bars: tuple[Rect, ...]
    symbols_beside: bool = False

    def comb_place(self, width_mm: float, height_mm: float) -> Rect:
        """The comb in its true proportion, as large as there is room, low in its place."""
        return fitted(width_mm, height_mm, self.comb)


@dataclass(frozen=True)
class RowPlan:
    """One frame: both sides and the whole strip they lie in."""

    whole: Rect
    a: SidePlan
    b: SidePlan


@dataclass(frozen=True)
class Form:
    """One layout of a page. `number` is what its markers tell; 0 has no markers."""

    number: int
    name: str
    paper: Paper
    margin: float
    rows: tuple[RowPlan, ...]
    markers: tuple[Rect, ...]
    codes: tuple[Rect, ...]
    header: Rect
    foot: tuple[Rect, ...]

    @property
    def is_of_words(self) -> bool:
        """Whether it is a page of words alone, without a comb to read a legend for."""
        return self.name == _WORDS

    @property
    def body(self) -> Rect:
        """All rows together."""
        first, last = self.rows[0].whole, self.rows[-1].whole
        return Rect(first.x, first.y, first.width, last.bottom - first.y)

    def comb_area_mm2(self, width_mm: float, height_mm: float) -> float:
        """How large a comb of this proportion is printed."""
        return self.rows[0].a.comb_place(width_mm, height_mm).area_mm2


@dataclass(frozen=True)
class _Measures:
    """What differs between A4 and Letter."""

    paper: Paper
    first_number: int
    margin: float
    letter: float
    below_rows: int

    @property
    def width(self) -> float:
        return self.paper.width_mm

    @property
    def body(self) -> float:
        return self.paper.height_mm - _TOP - _FOOT


_A4: Final = _Measures(Paper.A4, 1, margin=6.0, letter=3.2, below_rows=6)
_LETTER: Final = _Measures(Paper.LETTER, 5, margin=5.6, letter=3.1, below_rows=5)
_BAR_TO_COMB: Final = 1.4
_COMB: Final = (56.1, 31.1)
"""A Langstroth deep (2.09 : 1) and a Dadant-Blatt (1.56 : 1) both keep 1,500 mm² in it; a British deep is
55 × 31."""


@cache
def forms(paper: Paper) -> tuple[Form, ...]:
    """The forms of a paper, most frames a page first."""
    if paper is Paper.A5:
        return _pocket(4), _pocket(3)
    measures = _A4 if paper is Paper.A4 else _LETTER
    return (
        _beside(measures, 0, frames=6),
        _below(measures, 1, frames=measures.below_rows),
        _beside(measures, 2, frames=4),
        _below(measures, 3, frames=4),
    )


def form_for(paper: Paper, width_mm: float, height_mm: float) -> Form:
    """The form with most frames a page that still prints such a comb at 1,500 mm² or more.

    Where none does, the one that prints it largest; on A5 the first that reaches two thirds of that.
    Errors: ValueError if a length is not positive.
    """
    return _chosen(paper, [(width_mm, height_mm)])


def form_for_all(paper: Paper, combs: Sequence[Lattice]) -> Form:
    """The form for all combs of a box: of the largest that is printed smallest, as form_for."""
    return _chosen(paper, [(comb.width_mm, comb.height_mm) for comb in combs])


def _chosen(paper: Paper, sizes: Sequence[tuple[float, float]]) -> Form:
    least = LEAST_COMB_MM2 if paper is not Paper.A5 else LEAST_COMB_MM2 * 2 / 3

    def smallest(form: Form) -> float:
        return min((form.comb_area_mm2(*size) for size in sizes), default=LEAST_COMB_MM2)

    every = forms(paper)
    for form in every:
        if smallest(form) >= least:
            return form
    return max(every, key=smallest)


def field_form(paper: Paper) -> Form:
    """The form that has room for the fields of the Page in place of a frame."""
    return forms(paper)[0]


def words_form(paper: Paper) -> Form:
    """The form of a page of words alone: nothing on it is read back, so it has no markers and no codes."""
    return replace(field_form(paper), number=0, name=_WORDS, markers=(), codes=())


def _beside(measures: _Measures, kind: int, frames: int) -> Form:
    """Bars in the outer columns; with four frames the combs are narrower, to leave the middle free."""
    pitch = measures.body / frames
    half = measures.width / 2
    tall = frames < ROWS - 1
    comb_left = measures.margin + measures.letter + BAR_MM + _BAR_TO_COMB
    width = half - _BAND / 2 - 0.2 - comb_left if tall else _COMB[0]
    room = _BAND if tall or measures.paper is Paper.A4 else pitch - _COMB[1]
    high = pitch - _BAND if tall else _COMB[1]
    inner = half - _BAND / 2 - 0.6 if measures.paper is Paper.A4 else comb_left + width
    rows = []
    for index in range(frames):
        top = _TOP + index * pitch
        comb = Rect(comb_left, top + pitch - high, width, high)
        bars = _stacked_bars(
            measures.margin + measures.letter, top + _BAND + 0.2, min(pitch - _BAND, 31.1) / len(BARS)
        )
        left = SidePlan(
            Face.A,
            comb,
            Rect(comb_left, comb.y - room, inner - comb_left, room),
            _tick_row(measures, top),
            bars,
        )
        rows.append(_row(left, measures, top, pitch))
    seams = [_TOP + _BAND / 2 + index * pitch for index in range(frames + 1)]
    if tall:
        # Two more below the bars of the middle frames, where the outer columns are free.
        seams = sorted([*seams, *(_TOP + index * pitch + _BAND + 31.1 + _BAND / 2 for index in (1, 2))])
    return _form(measures, kind, f"beside {frames}", tuple(rows), seams)


def _stacked_bars(left: float, top: float, pitch: float) -> tuple[Rect, ...]:
    return tuple(Rect(left, top + index * pitch, BAR_MM, pitch - _BAR_GAP) for index in range(len(BARS)))


def _tick_row(measures: _Measures, top: float) -> tuple[Rect, ...]:
    left = measures.margin + MARKER_MM + QUIET_MM + 1.2
    last = measures.margin + measures.letter + BAR_MM - TICK_MM
    step = (last - left) / (len(TICKS) - 1)
    return tuple(Rect(left + index * step, top + 4.0, TICK_MM, TICK_MM) for index in range(len(TICKS)))


_BELOW_WORDS: Final = 4.3
_BELOW_BARS: Final = 4.3
_BELOW_WIDEST: Final = 77.0


def _below(measures: _Measures, kind: int, frames: int) -> Form:
    """A wide comb, its ticks in a column towards the middle, and the bars under it in two columns."""
    pitch = measures.body / frames
    half = measures.width / 2
    left = measures.margin + MARKER_MM + QUIET_MM
    right = half - _BAND / 2
    bars_high = 3 * _BELOW_BARS
    room = right - TICK_MM - SYMBOL_MM - left - ENTRANCE_MM
    wide = min(room, _BELOW_WIDEST)
    spare = room - wide
    rows = []
    for index in range(frames):
        top = _TOP + index * pitch
        high = pitch - _BELOW_WORDS - bars_high - 1.3
        comb = Rect(right - TICK_MM - SYMBOL_MM - spare / 2 - wide, top + _BELOW_WORDS, wide, high)
        step = min((_BELOW_WORDS + high - TICK_MM) / (len(TICKS) - 1), TICK_MM + 3.2)
        ticks = tuple(
            Rect(right - TICK_MM, comb.bottom - TICK_MM - (len(TICKS) - 1 - at) * step, TICK_MM, TICK_MM)
            for at in range(len(TICKS))
        )
        second = right - BAR_MM - 0.2
        bars = tuple(
            Rect(x + shift, comb.bottom + 0.8 + at * _BELOW_BARS, BAR_MM, _BELOW_BARS - 0.5)
            for x, shift in ((left, measures.letter), (second, 0.0))
            for at in range(3)
        )
        side = SidePlan(
            Face.A, comb, Rect(comb.x, top, comb.width - 0.6, _BELOW_WORDS), ticks, bars, symbols_beside=True
        )
        rows.append(_row(side, measures, top, pitch))
    first, last = _TOP + _BAND / 2, _TOP + measures.body + _BAND / 2
    seams = [first + (last - first) * index / (ROWS - 1) for index in range(ROWS)]
    return _form(measures, kind, f"below {frames}", tuple(rows), seams)


def _form(measures: _Measures, kind: int, name: str, rows: tuple[RowPlan, ...], seams: list[float]) -> Form:
    width, height = measures.width, measures.paper.height_mm
    across = (measures.margin + MARKER_MM / 2, width / 2, width - measures.margin - MARKER_MM / 2)
    markers = tuple(
        Rect(x - MARKER_MM / 2, y - MARKER_MM / 2, MARKER_MM, MARKER_MM) for y in seams for x in across
    )
    foot_top = _TOP + measures.body + 0.6
    low_code = Rect(measures.margin + MARKER_MM + 3.0, height - _LOW_MARGIN - CODE_MM, CODE_MM, CODE_MM)
    high_code = Rect(width - measures.margin - CODE_MM, measures.margin, CODE_MM, CODE_MM)
    foot_left = Rect(low_code.right + 2.6, foot_top, width / 2 - _BAND / 2 - low_code.right - 3.2, 18.0)
    foot_x = width / 2 + _BAND / 2 + 0.6
    foot_right = Rect(foot_x, foot_top, width - measures.margin - MARKER_MM - 1.6 - foot_x, 18.0)
    header = Rect(
        measures.margin, measures.margin, high_code.x - 3.0 - measures.margin, _TOP - measures.margin
    )
    return Form(
        measures.first_number + kind,
        name,
        measures.paper,
        measures.margin,
        rows,
        markers,
        (high_code, low_code),
        header,
        (foot_left, foot_right),
    )


_A5: Final = _Measures(Paper.A5, 0, margin=7.0, letter=3.5, below_rows=0)
_A5_TOP: Final = 24.0
_A5_FOOT: Final = 27.0
_A5_STRIP: Final = 10.2


def _pocket(frames: int) -> Form:
    """A5: label, ticks and combs. Nothing of it is read back, so no bars, markers or codes."""
    width, height = Paper.A5.width_mm, Paper.A5.height_mm
    pitch = (height - _A5_TOP - _A5_FOOT) / frames
    half = width / 2
    rows = []
    for index in range(frames):
        top = _A5_TOP + index * pitch
        comb = Rect(_A5.margin, top + _A5_STRIP, half - _A5.margin - 2.0, pitch - _A5_STRIP - 1.2)
        first = comb.x + _A5.letter
        ticks = tuple(Rect(first + at * 10.4, top + 0.6, TICK_MM, TICK_MM) for at in range(len(TICKS)))
        words = Rect(comb.x, top, comb.width, _A5_STRIP)
        side = SidePlan(Face.A, comb, words, ticks, (), symbols_beside=True)
        rows.append(_row(side, _A5, top, pitch))
    foot_top = height - _A5_FOOT + 2.0
    middle = Rect(_A5.margin, foot_top, half - _A5.margin - 2.0, 19.0)
    other = Rect(half + 2.0, foot_top, half - _A5.margin - 2.0, 19.0)
    header = Rect(_A5.margin, 7.0, width - 2 * _A5.margin, _A5_TOP - 7.0)
    return Form(0, f"pocket {frames}", Paper.A5, _A5.margin, tuple(rows), (), (), header, (middle, other))


def _row(side: SidePlan, measures: _Measures, top: float, pitch: float) -> RowPlan:
    whole = Rect(measures.margin, top, measures.width - 2 * measures.margin, pitch)
    return RowPlan(whole, side, _mirrored(side, measures))


def _mirrored(side: SidePlan, measures: _Measures) -> SidePlan:
    """Side B: the same places on the other half of the page, ticks and bars in the same order."""

    def over(place: Rect) -> Rect:
        return Rect(measures.width - place.right, place.y, place.width, place.height)

    in_a_column = len({place.x for place in side.ticks}) == 1
    ticks = (
        tuple(map(over, side.ticks))
        if in_a_column
        else _moved(side.ticks, measures.width, side.symbols_beside * measures.letter)
    )
    return SidePlan(
        Face.B,
        over(side.comb),
        over(side.words),
        ticks,
        _moved(side.bars, measures.width, measures.letter),
        side.symbols_beside,
    )


def _moved(places: tuple[Rect, ...], width: float, letter: float) -> tuple[Rect, ...]:
    """Fields in a row, each with its letter before it, are moved to the other half and not turned."""
    if not places:
        return ()
    left = min(place.x for place in places) - letter
    right = max(place.right for place in places)
    moved = width - right - left
    return tuple(Rect(place.x + moved, place.y, place.width, place.height) for place in places)
