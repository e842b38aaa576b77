"""One side of a comb on the sheet: its ticks, its bars, the strip of words above it, its frame.

Draws and gives the places of the fields it drew. What fills the frame is in comb_picture.py.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from beeworkbook.colony.records import MarkId, Way
from beeworkbook.colony.sheet_models import SheetComb, SheetSide
from beeworkbook.comb.contents import (
    BEES_LETTER,
    CONTENTS,
    KEY_LETTERS,
    QUEEN_CELL_LETTER,
    QUEEN_LETTER,
    Content,
    Face,
    MarkKind,
    Origin,
)
from beeworkbook.comb.orientation import EntranceMark, entrance_mark, entrance_words
from beeworkbook.papers import symbols
from beeworkbook.papers.comb_forms import BARS, EIGHTHS, TICKS, SidePlan
from beeworkbook.papers.comb_picture import draw_comb
from beeworkbook.papers.field_map import Field, FieldKind
from beeworkbook.papers.fonts import COMB, LOW_COMB, SMALL, SMALL_BOLD, shortened, width_mm
from beeworkbook.papers.mark_words import mark_letters
from beeworkbook.papers.page import BLACK, FIRM_MM, HAIR_MM, POINTS, THIN_MM, Document
from beeworkbook.papers.rect import Rect
from beeworkbook.words import date_words, say

_BAR_CONTENTS: Final = {
    "sealed": Content.SEALED,
    "open": Content.OPEN,
    "drone": Content.DRONE,
    "pollen": Content.POLLEN,
    "stores": Content.STORES,
}
_BAR_LETTERS: Final = {
    "bees": BEES_LETTER,
    **{name: KEY_LETTERS[content] for name, content in _BAR_CONTENTS.items()},
}
_TICK_LETTERS: Final = {
    "eggs": KEY_LETTERS[Content.EGGS],
    "queen": QUEEN_LETTER,
    "queen_cell": QUEEN_CELL_LETTER,
}
_SEEN: Final = frozenset({Origin.PAINTED, Origin.EIGHTHS, Origin.UNCHANGED})
_TOOTH_MM: Final = 0.9
_HALF_TOOTH_MM: Final = 1.6
_LINE_MM: Final = 1.7
_ENTRANCE_MM: Final = 1.1
_LUG_MM: Final = 0.9
_ARROW_MM: Final = 2.6
_LOW_STRIP: Final = 6.0


@dataclass(frozen=True)
class SideTask:
    """What to draw where: the side of a comb, its place on the page, and the name of its fields."""

    comb: SheetComb
    plan: SidePlan
    way: Way
    filled: bool
    name: str
    note_numbers: Mapping[MarkId, int]

    @property
    def side(self) -> SheetSide:
        """The side of the comb this is about."""
        return self.comb.side(self.plan.face)

    @property
    def seen(self) -> bool:
        """Whether it was looked at that day; what is assumed was not."""
        return self.filled and self.side.cells is not None and self.side.origin in _SEEN


def draw_side(document: Document, task: SideTask) -> Iterator[Field]:
    """Draw one side; gives its fields in the order of the keeper's hand."""
    place = task.plan.comb_place(task.comb.lattice.width_mm, task.comb.lattice.height_mm)
    if task.filled and task.side.cells is not None:
        draw_comb(document, place, task.comb.lattice, task.side)
    elif not task.filled:
        _draw_help(document, place)
    _draw_frame(document, place, task)
    _draw_marks(document, place, task)
    _draw_words(document, place, task)
    yield from _draw_ticks(document, task)
    yield from _draw_bars(document, task)
    yield Field(f"{task.name}.comb", FieldKind.COMB, place)


def _draw_ticks(document: Document, task: SideTask) -> Iterator[Field]:
    ticked = _ticked(task)
    outward = -1 if task.plan.face is Face.A or not task.plan.bars else 1
    for name, place in zip(TICKS, task.plan.ticks, strict=True):
        document.box(place, FIRM_MM)
        if ticked[name]:
            symbols.cross(document, place)
        x, y = place.centre
        if task.plan.symbols_beside:
            x += outward * (place.width / 2 + 1.7)
        else:
            y = place.y - 1.75
        if name == "looked":
            symbols.eye(document, (x, y), 2.9)
        else:
            document.text(x, y + SMALL_BOLD.height_mm / 2, _TICK_LETTERS[name], SMALL_BOLD, align="middle")
        yield Field(f"{task.name}.{name}", FieldKind.TICK, place)


def _ticked(task: SideTask) -> dict[str, bool]:
    kinds = {mark.kind for mark in task.side.marks} if task.filled else set()
    eggs = task.seen and bool(np.any(task.side.cells == Content.EGGS))
    return {
        "looked": task.seen,
        "eggs": eggs,
        "queen": MarkKind.QUEEN in kinds,
        "queen_cell": MarkKind.QUEEN_CELL in kinds,
    }


def _draw_bars(document: Document, task: SideTask) -> Iterator[Field]:
    eighths = bar_eighths(task.side) if task.seen else {}
    for name, place in zip(BARS, task.plan.bars, strict=False):
        _draw_bar(document, place, _BAR_LETTERS[name])
        length = min(max(eighths.get(name, 0.0), 0.0), EIGHTHS) / EIGHTHS * place.width
        if length > 0:
            y = place.centre[1]
            document.line((place.x, y), (place.x + length, y), _LINE_MM)
        yield Field(f"{task.name}.bar.{name}", FieldKind.BAR, place)


def _draw_bar(document: Document, place: Rect, letter: str) -> None:
    name = f"bar.{place.height * 100:.0f}"
    document.keep_form(name, place.width, place.height, lambda: _bar_operators(place), rim=1.0)
    document.place_form(name, place.x, place.y)
    baseline = place.centre[1] + SMALL_BOLD.height_mm / 2
    document.text(place.x - 0.8, baseline, letter, SMALL_BOLD, align="right")


def _bar_operators(place: Rect) -> str:
    """Open at its right end; teeth at the eighths, the middle one longer."""
    width, height = place.width * POINTS, place.height * POINTS
    outline = f"{width:.2f} 0 m 0 0 l 0 {height:.2f} l {width:.2f} {height:.2f} l S"
    start = f"{FIRM_MM * POINTS:.2f} w 0 0 m 0 {height:.2f} l S {THIN_MM * POINTS:.2f} w"
    teeth = []
    for eighth in range(1, EIGHTHS + 1):
        x = width * eighth / EIGHTHS
        tooth = (_HALF_TOOTH_MM if eighth % 4 == 0 else _TOOTH_MM) * POINTS
        teeth.append(f"{x:.2f} {height:.2f} m {x:.2f} {height - tooth:.2f} l")
    return f"0 J {HAIR_MM * POINTS:.2f} w 0 0 0 RG {outline} {start} {' '.join(teeth)} S"


def bar_eighths(side: SheetSide) -> dict[str, float]:
    """What the bars of a filled sheet show, in eighths of the side; bees as noted."""
    counts = np.bincount(side.cells, minlength=len(CONTENTS)) if side.cells is not None else np.zeros(12)
    whole = max(int(counts.sum()), 1)
    shown = {name: float(counts[content]) * EIGHTHS / whole for name, content in _BAR_CONTENTS.items()}
    return {"bees": side.bees_eighths or 0.0, **shown}


def _draw_help(document: Document, place: Rect) -> None:
    """Crosses that part the comb into eight equal rectangles: nothing else is in the keeper's way."""
    for column in (1, 2, 3):
        x, y = place.x + place.width * column / 4, place.centre[1]
        document.line((x - 0.5, y), (x + 0.5, y), HAIR_MM, document.rule)
        document.line((x, y - 0.5), (x, y + 0.5), HAIR_MM, document.rule)
        document.line((x, place.y), (x, place.y + 0.9), HAIR_MM, document.rule)
        document.line((x, place.bottom), (x, place.bottom - 0.9), HAIR_MM, document.rule)


def _draw_frame(document: Document, place: Rect, task: SideTask) -> None:
    """The frame round the comb: a top bar with its lugs, and the entrance end or face firm.

    Outside the comb it is thin, since the markers' white rim begins a millimetre away.
    """
    document.box(place, FIRM_MM)
    document.line((place.x - _LUG_MM, place.y), (place.right + _LUG_MM, place.y), FIRM_MM)
    mark = entrance_mark(task.way, task.plan.face)
    half, inset = _ENTRANCE_MM / 2, place.width / 5
    edges = {
        EntranceMark.LEFT: ((place.x - half, place.y), (place.x - half, place.bottom)),
        EntranceMark.RIGHT: ((place.right + half, place.y), (place.right + half, place.bottom)),
        EntranceMark.FACE: (
            (place.x + inset, place.bottom + half),
            (place.right - inset, place.bottom + half),
        ),
    }
    if mark in edges:
        document.line(*edges[mark], _ENTRANCE_MM)


def _draw_marks(document: Document, place: Rect, task: SideTask) -> None:
    """Marks that have a cell; the others are told in words."""
    if not task.filled:
        return
    lattice = task.comb.lattice
    reach = symbols.MARK_RADIUS_MM
    for mark in task.side.marks:
        if mark.cell is None or not 0 <= mark.cell < lattice.cells:
            continue
        x_mm, y_mm = lattice.centres[mark.cell]
        x = place.x + float(x_mm) / lattice.width_mm * place.width
        y = place.y + float(y_mm) / lattice.height_mm * place.height
        # A mark at the edge is kept whole on the comb.
        x = min(max(x, place.x + reach), place.right - reach)
        y = min(max(y, place.y + reach), place.bottom - reach)
        symbols.lettered(document, (x, y), mark_letters(mark, task.note_numbers))


def origin_word(side: SheetSide, *, short: bool = False) -> str:
    """How the side came to be, as a word beside its figures."""
    if side.cells is None:
        return say("not looked at")
    if side.origin is Origin.ASSUMED:
        return say("assumed") if short else say("assumed, not looked at")
    if side.origin is Origin.UNCHANGED:
        return say("unchanged") if short else say("looked at, unchanged")
    return say("painted") if side.origin is Origin.PAINTED else say("laid out")


def _draw_words(document: Document, place: Rect, task: SideTask) -> None:
    """The label and the entrance at the outer end, the small figures at the inner one."""
    strip, outer_is_left = task.plan.words, task.plan.face is Face.A
    low = place.y - 1.6
    style = COMB if task.plan.bars and strip.height >= _LOW_STRIP else LOW_COMB
    label = f"{task.comb.place}{task.plan.face.value}"
    edge = place.x if outer_is_left else place.right
    label_width = document.text(edge, low, label, style, align="left" if outer_is_left else "right")
    used = label_width + 1.6
    used += _draw_entrance(document, edge, low, used, task) + 2.0
    inner = strip.right if outer_is_left else strip.x
    reach = abs(inner - edge)
    first, second = _small_words(task)
    lines = _in_lines(first, second, reach - used, reach - label_width - 2.0)
    rooms = (reach - label_width - 2.0, reach - used)
    baselines = (low - SMALL.leading_mm, low)
    if not task.plan.bars:
        # A5: the ticks stand above, the day or the word beside them.
        rooms = (strip.width - (task.plan.ticks[-1].right - task.plan.ticks[0].x) - 6.0, reach - used)
        lines, baselines = [first, second], (task.plan.ticks[0].centre[1] + SMALL.height_mm / 2, low)
    elif strip.height < _LOW_STRIP:
        lines = ["", " ".join(part for part in (first, second) if part)]
    for line, baseline, room in zip(lines, baselines, rooms, strict=True):
        document.text(
            inner,
            baseline,
            shortened(line, SMALL, room),
            SMALL,
            align="right" if outer_is_left else "left",
            ink=document.second if not task.filled else BLACK,
        )


def _draw_entrance(document: Document, edge: float, low: float, used: float, task: SideTask) -> float:
    """The words and the arrow for the entrance; gives the width they took."""
    mark, words = entrance_mark(task.way, task.plan.face), entrance_words(task.way, task.plan.face)
    middle = low - SMALL.height_mm / 2
    if mark is EntranceMark.LEFT:
        symbols.arrow(document, (edge + used, middle), "left")
        return _ARROW_MM + document.text(edge + used + _ARROW_MM, low, words, SMALL)
    if mark is EntranceMark.RIGHT:
        symbols.arrow(document, (edge - used, middle), "right")
        return _ARROW_MM + document.text(edge - used - _ARROW_MM, low, words, SMALL, align="right")
    if mark is EntranceMark.FACE:
        symbols.arrow(document, (edge + used + 1.0, low), "down")
        return _ARROW_MM + document.text(edge + used + _ARROW_MM, low, words, SMALL)
    return 0.0


def _small_words(task: SideTask) -> tuple[str, str]:
    side = task.side
    if task.filled:
        return origin_word(side, short=not task.plan.bars), " ".join(
            [side.figures, *_placeless(task)]
        ).strip()
    if not side.last:
        return "", ""
    return date_words(side.last_day) if side.last_day else "", side.last


def _placeless(task: SideTask) -> list[str]:
    """Marks of the side that nobody saw a place for."""
    return [
        mark_letters(mark, task.note_numbers)
        for mark in task.side.marks
        if mark.cell is None and mark.kind is not MarkKind.NOTE
    ]


def _in_lines(first: str, second: str, low_room: float, high_room: float) -> list[str]:
    """Two lines: figures that are too long for the lower one begin in the upper."""
    if width_mm(second, SMALL) <= low_room:
        return [first, second]
    upper = first
    rest = second.split(" ")
    while rest and width_mm(f"{upper} {rest[0]}", SMALL) <= high_room:
        upper = f"{upper} {rest.pop(0)}"
    return [upper.strip(), " ".join(rest)]
