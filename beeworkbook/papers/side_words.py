"""The strip of words above a comb: its label, where the entrance is, and the small figures.

Label and entrance stand at the outer end, figures at the inner one, so that both hands of the page
mirror each other. A blank sheet says last time, a filled one how the side came to be.
"""

from typing import Final

from beeworkbook.colony.sheet_models import SheetSide
from beeworkbook.comb.contents import Face, MarkKind, Origin
from beeworkbook.comb.orientation import EntranceMark, entrance_mark, entrance_words
from beeworkbook.papers import symbols
from beeworkbook.papers.fonts import COMB, LOW_COMB, SMALL, shortened, width_mm
from beeworkbook.papers.mark_words import mark_letters
from beeworkbook.papers.page import BLACK, Document
from beeworkbook.papers.rect import Rect
from beeworkbook.papers.side_task import SideTask
from beeworkbook.words import date_words, say

_ARROW_MM: Final = 2.6
_LOW_STRIP: Final = 6.0


def origin_word(side: SheetSide, *, short: bool = False) -> str:
    """How the side came to be, as a word beside its figures."""
    if side.cells is None:
        return say("not looked at")
    if side.origin is Origin.ASSUMED:
        return say("assumed") if short else say("assumed, not looked at")
    if side.origin is Origin.UNCHANGED:
        return say("unchanged") if short else say("looked at, unchanged")
    return say("painted") if side.origin is Origin.PAINTED else say("laid out")


def draw_words(document: Document, place: Rect, task: SideTask) -> None:
    """The label and the entrance at the outer end, the small figures at the inner one."""
    strip, outer_is_left = task.plan.words, task.plan.face is Face.A
    low = place.y - 1.3
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
