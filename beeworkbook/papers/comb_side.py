"""One side of a comb on the sheet: its ticks, its bars, its frame and the marks on it.

Draws and gives the places of the fields it drew. What fills the frame is in comb_picture.py, the words
above it in side_words.py.
"""

from collections.abc import Iterator, Sequence
from typing import Final

import numpy as np

from beeworkbook.colony.sheet_models import SheetSide
from beeworkbook.comb.contents import CONTENTS, Content, Face, MarkKind
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.orientation import EntranceMark, entrance_mark
from beeworkbook.papers import symbols
from beeworkbook.papers.comb_forms import BARS, EIGHTHS, ENTRANCE_MM, SYMBOL_MM, TICKS, SidePlan
from beeworkbook.papers.comb_picture import draw_comb
from beeworkbook.papers.field_map import Field, FieldKind
from beeworkbook.papers.fonts import SMALL_BOLD
from beeworkbook.papers.mark_words import mark_letters
from beeworkbook.papers.page import FIRM_MM, HAIR_MM, POINTS, THIN_MM, Document
from beeworkbook.papers.rect import Rect
from beeworkbook.papers.side_task import SideTask
from beeworkbook.papers.side_words import draw_words

_BAR_CONTENTS: Final = {
    "sealed": Content.SEALED,
    "open": Content.OPEN,
    "drone": Content.DRONE,
    "pollen": Content.POLLEN,
    "stores": Content.STORES,
}
_TOOTH_MM: Final = 0.9
_HALF_TOOTH_MM: Final = 1.6
_LINE_MM: Final = 1.7
_LUG_MM: Final = 0.9


def draw_side(document: Document, task: SideTask) -> Iterator[Field]:
    """Draw one side; gives its fields in the order of the keeper's hand."""
    place = task.plan.comb_place(task.comb.lattice.width_mm, task.comb.lattice.height_mm)
    if task.side in task.drawn:
        draw_comb(document, place, task.comb.lattice, task.side, task.drawn[task.side])
    elif not task.filled:
        _draw_help(document, place)
    _draw_frame(document, place, task)
    _draw_marks(document, place, task)
    draw_words(document, place, task)
    document.repeat(task.plan, lambda: _draw_empty(document, task.plan))
    _draw_bars(document, task.plan)
    if task.filled:
        _fill_in(document, task)
    for name, tick in zip(TICKS, task.plan.ticks, strict=True):
        yield Field(f"{task.name}.{name}", FieldKind.TICK, tick)
    for name, bar in zip(BARS, task.plan.bars, strict=False):
        yield Field(f"{task.name}.bar.{name}", FieldKind.BAR, bar)
    yield Field(f"{task.name}.comb", FieldKind.COMB, place)


def _draw_empty(document: Document, plan: SidePlan) -> None:
    """Boxes and letters of a side: the same in this place of every page."""
    for place in plan.ticks:
        document.box(place, FIRM_MM)
    letters = installed_letters()
    signs = ("", letters.contents[Content.EGGS], letters.queen, letters.queen_cell)
    for sign, place in zip(signs, plan.ticks, strict=True):
        _draw_sign(document, plan, sign, place)
    for name, place in zip(BARS, plan.bars, strict=False):
        letter = letters.contents[_BAR_CONTENTS[name]] if name in _BAR_CONTENTS else letters.bees
        baseline = place.centre[1] + SMALL_BOLD.height_mm / 2
        document.text(place.x - 0.8, baseline, letter, SMALL_BOLD, align="right")


def _draw_sign(document: Document, plan: SidePlan, letter: str, tick: Rect) -> None:
    """What a box is for, above it or beside it: its letter, or an eye for looked at."""
    x, y = tick.centre
    if plan.symbols_beside:
        outward = -1 if plan.face is Face.A or not plan.bars else 1
        x += outward * (tick.width / 2 + SYMBOL_MM * 0.54)
    else:
        y = tick.y - 1.75
    if letter:
        document.text(x, y + SMALL_BOLD.height_mm / 2, letter, SMALL_BOLD, align="middle")
    else:
        symbols.eye(document, (x, y), 2.3 if plan.symbols_beside else 2.9)


def _fill_in(document: Document, task: SideTask) -> None:
    """Tick the boxes and draw the bars of what was noted."""
    counts = _counts(task.side) if task.seen else [0] * len(CONTENTS)
    kinds = {mark.kind for mark in task.side.marks}
    ticked = {
        "looked": task.seen,
        "eggs": counts[Content.EGGS] > 0,
        "queen": MarkKind.QUEEN in kinds,
        "queen_cell": MarkKind.QUEEN_CELL in kinds,
    }
    for name, place in zip(TICKS, task.plan.ticks, strict=True):
        if ticked[name]:
            symbols.cross(document, place)
    if not task.seen:
        return
    eighths = bar_eighths(task.side, counts)
    lengths = [
        (place, min(max(eighths[name], 0.0), EIGHTHS) / EIGHTHS * place.width)
        for name, place in zip(BARS, task.plan.bars, strict=False)
    ]
    lines = [
        ((place.x, place.y + place.height / 2), (place.x + length, place.y + place.height / 2))
        for place, length in lengths
        if length > 0
    ]
    document.lines(lines, _LINE_MM)


def _counts(side: SheetSide) -> Sequence[int]:
    """How many cells of each content there are, by its code."""
    if side.cells is None:
        return [0] * len(CONTENTS)
    counts: list[int] = np.bincount(side.cells, minlength=len(CONTENTS)).tolist()
    return counts


def _draw_bars(document: Document, plan: SidePlan) -> None:
    """All bars of a side, kept as one drawing: it is the same for every side of a form."""
    if not plan.bars:
        return
    left, top = min(bar.x for bar in plan.bars), min(bar.y for bar in plan.bars)
    width, height = max(bar.right for bar in plan.bars) - left, max(bar.bottom for bar in plan.bars) - top
    name = f"bars.{width * 100:.0f}.{height * 100:.0f}"
    document.keep_form(
        name,
        width,
        height,
        lambda: b" ".join(_bar_operators(bar, bar.x - left, bar.y - top) for bar in plan.bars),
        rim=1.0,
    )
    document.place_form(name, left, top)


def _bar_operators(place: Rect, x_mm: float, y_mm: float) -> bytes:
    """Open at its right end; teeth at the eighths, the middle one longer. In points, y down."""
    left, top, right, bottom = (
        f"{edge * POINTS:.2f}" for edge in (x_mm, y_mm, x_mm + place.width, y_mm + place.height)
    )
    outline = f"{right} {top} m {left} {top} l {left} {bottom} l {right} {bottom} l S"
    start = f"{FIRM_MM * POINTS:.2f} w {left} {top} m {left} {bottom} l S {THIN_MM * POINTS:.2f} w"
    teeth = []
    for eighth in range(1, EIGHTHS + 1):
        x = f"{(x_mm + place.width * eighth / EIGHTHS) * POINTS:.2f}"
        tooth = _HALF_TOOTH_MM if eighth % 4 == 0 else _TOOTH_MM
        teeth.append(f"{x} {bottom} m {x} {(y_mm + place.height - tooth) * POINTS:.2f} l")
    return f"0 J {HAIR_MM * POINTS:.2f} w 0 G {outline} {start} {' '.join(teeth)} S".encode("ascii")


def bar_eighths(side: SheetSide, counts: Sequence[int] | None = None) -> dict[str, float]:
    """What the bars of a filled sheet show, in eighths of the side; bees as noted.

    counts, if they are known already, are the cells of each content, by its code.
    """
    counted = _counts(side) if counts is None else counts
    whole = max(sum(counted), 1)
    shown = {name: counted[content] * EIGHTHS / whole for name, content in _BAR_CONTENTS.items()}
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
    if not task.plan.symbols_beside:
        document.line((place.x - _LUG_MM, place.y), (place.right + _LUG_MM, place.y), FIRM_MM)
    mark = entrance_mark(task.way, task.plan.face)
    half, inset = ENTRANCE_MM / 2, place.width / 5
    edges = {
        EntranceMark.LEFT: ((place.x - half, place.y), (place.x - half, place.bottom)),
        EntranceMark.RIGHT: ((place.right + half, place.y), (place.right + half, place.bottom)),
        EntranceMark.FACE: (
            (place.x + inset, place.bottom + half),
            (place.right - inset, place.bottom + half),
        ),
    }
    if mark in edges:
        document.line(*edges[mark], ENTRANCE_MM)


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
