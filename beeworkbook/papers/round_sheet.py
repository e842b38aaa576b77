"""The round sheet: a row a colony in stand order, last time in small print under every field.

Held across. The heading is repeated on every page; the cautions stand at the foot. It is read by eye
and typed in, so it has no markers and no field map.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import BinaryIO, Final

from beeworkbook.colony.records import Question
from beeworkbook.colony.sheet_models import RoundSheetModel, RoundSheetRow
from beeworkbook.papers.answer_words import brackets_words
from beeworkbook.papers.cautions import cautions
from beeworkbook.papers.fonts import LABEL, NAME, SMALL, SMALL_BOLD, TITLE, shortened, width_mm, wrapped
from beeworkbook.papers.options import PaperOptions
from beeworkbook.papers.page import FIRM_MM, HAIR_MM, THIN_MM, Document, Ink
from beeworkbook.papers.rect import Rect
from beeworkbook.papers.round_columns import TICK_MM, Column, last_words, strips
from beeworkbook.words import date_words, say

ROW_MM: Final = 13.4
_SECOND_ROW_MM: Final = 11.0
_MARGIN: Final = 8.0
_CLIP: Final = 14.0
"""Left white above the heading, where the clip of a board holds the sheet."""
_HEAD_MM: Final = 13.0
_COLUMN_HEAD_MM: Final = 4.6
_FOOT_LEADING: Final = 3.0
_NAME_MM: Final = 24.4
_WIDE_NAME_MM: Final = 31.4
_WIDE_MM: Final = 270.0
_STAND_MM: Final = 9.6
_WIDEST_STAND_MM: Final = 19.0
_GAP: Final = 1.2
_MOST_STRETCH: Final = 1.25
_PROPOLIS: Final[Ink] = (0x7C / 255, 0x2D / 255, 0x1E / 255)


def round_sheet(model: RoundSheetModel, options: PaperOptions, stream: BinaryIO) -> None:
    """Print an apiary's round sheet as PDF."""
    document = Document(stream, options, _title(model, options), landscape=True)
    foot = wrapped(_foot_text(model, options), SMALL, document.width_mm - 2 * _MARGIN)
    grid = _grid(document, model, len(foot))
    pages = _shares(model.rows, grid.rows)
    for number, rows in enumerate(pages, 1):
        if number > 1:
            document.next_page()
        top = _draw_headings(document, grid, _draw_head(document, model, number, len(pages)))
        for row in rows:
            _draw_row(document, grid, row, top)
            top += grid.row_height
        _draw_foot(document, foot)
    document.close()


def _title(model: RoundSheetModel, options: PaperOptions) -> str:
    name = model.apiary_name if options.place_names else ""
    return say("Round sheet {name} {day}", name=name, day=date_words(model.day, "day_year")).replace(
        "  ", " "
    )


@dataclass(frozen=True)
class _Grid:
    """How the rows of this sheet lie: the colony's width, the strips of columns, heights, rows a page."""

    stand: float
    colony: float
    strips: tuple[tuple[Column, ...], ...]
    heights: tuple[float, ...]
    rows: int

    @property
    def row_height(self) -> float:
        return sum(self.heights)

    @property
    def headings(self) -> float:
        return _headings_height(len(self.strips))


def _grid(document: Document, model: RoundSheetModel, foot_lines: int) -> _Grid:
    """As many rows as fit, and higher ones where there are few: pencils like room."""
    width = document.width_mm - 2 * _MARGIN
    names = [width_mm(row.stand_name, TITLE) + 2.4 for row in model.rows]
    stand = min(max(names, default=0.0), _WIDEST_STAND_MM)
    stand = max(stand, _STAND_MM)
    colony = stand + (_WIDE_NAME_MM if width > _WIDE_MM else _NAME_MM)
    columns = strips(model, document.options.paper, width - colony)
    least = ROW_MM + _SECOND_ROW_MM * (len(columns) - 1)
    above = _CLIP + _HEAD_MM + _headings_height(len(columns))
    room = document.height_mm - above - foot_lines * _FOOT_LEADING - _MARGIN - 2.5
    rows = max(int(room // least), 1)
    stretch = min(room / min(max(len(model.rows), 1), rows) / least, _MOST_STRETCH)
    heights = (ROW_MM * stretch, *(_SECOND_ROW_MM * stretch for _ in columns[1:]))
    return _Grid(stand, colony, columns, heights, rows)


def _headings_height(strips_a_row: int) -> float:
    return _COLUMN_HEAD_MM + 3.4 * (strips_a_row - 1)


def _shares(rows: tuple[RoundSheetRow, ...], most: int) -> list[tuple[RoundSheetRow, ...]]:
    """The rows of every page; a sheet without a colony still has its page."""
    return [rows[start : start + most] for start in range(0, len(rows), most)] or [()]


def _draw_head(document: Document, model: RoundSheetModel, number: int, count: int) -> float:
    """Whose round, when, and what is asked once; gives where the columns begin."""
    y = _CLIP
    name = model.apiary_name if document.options.place_names and model.apiary_name else say("Round")
    room = document.width_mm * 0.36
    document.text(_MARGIN, y + 4.4, shortened(name, NAME, room), NAME)
    when = date_words(model.day, "long_year")
    page = say("page {page} of {pages}", page=number, pages=count)
    bring = say("Bring: {what}.", what=", ".join(model.bring)) if model.bring else ""
    document.text(
        _MARGIN, y + 8.8, shortened(" · ".join(filter(None, (when, page, bring))), SMALL, room + 8), SMALL
    )
    left = _MARGIN + room + 10.0
    labels = (say("Weather"), say("°C"), say("Who"), say("In flower"))
    shares = (0.3, 0.12, 0.26, 0.32)
    whole = document.width_mm - _MARGIN - left
    for label, share in zip(labels, shares, strict=True):
        width = whole * share
        _draw_once(document, left, y + 8.8, width, label)
        left += width
    return y + _HEAD_MM


def _draw_once(document: Document, x: float, y: float, width: float, label: str) -> None:
    used = document.text(x, y - 0.3, label, LABEL)
    document.line((x + used + 1.2, y), (x + width - 2.0, y), HAIR_MM, document.rule)


def _draw_headings(document: Document, grid: _Grid, top: float) -> float:
    """The names of the columns, a line a strip, and a rule under them."""
    low = top + 3.0
    document.text(_MARGIN, low, say("stand"), SMALL_BOLD)
    document.text(_MARGIN + grid.stand, low, say("colony"), SMALL_BOLD)
    for strip in grid.strips:
        x = _MARGIN + grid.colony
        for column in strip:
            if column.ticked:
                document.text(x + column.width / 2, low, column.heading, SMALL_BOLD, align="middle")
            else:
                document.text(x + _GAP, low, column.heading, SMALL_BOLD)
            x += column.width
        low += 3.4
    bottom = top + grid.headings
    document.line((_MARGIN, bottom - 0.4), (document.width_mm - _MARGIN, bottom - 0.4), FIRM_MM)
    return bottom


def _draw_row(document: Document, grid: _Grid, row: RoundSheetRow, top: float) -> None:
    _draw_colony(document, row, top, grid)
    for strip, height in zip(grid.strips, grid.heights, strict=True):
        x = _MARGIN + grid.colony
        for column in strip:
            _draw_cell(document, column, row, Rect(x, top, column.width, height))
            x += column.width
        top += height
    document.line((_MARGIN, top), (document.width_mm - _MARGIN, top), THIN_MM, document.rule)


def _draw_colony(document: Document, row: RoundSheetRow, top: float, grid: _Grid) -> None:
    """Stand and name, the hive, what is due, and when last time was."""
    x, room = _MARGIN + grid.stand, grid.colony - grid.stand - 1.5
    low = top + 4.5
    document.text(_MARGIN, low, shortened(row.stand_name, TITLE, grid.stand - 1.0), TITLE)
    document.text(x, low, shortened(row.colony_name, TITLE, room), TITLE)
    lines = [(row.hive, SMALL, document.second), (row.due, SMALL_BOLD, _due_ink(document))]
    if row.last is not None:
        lines.append((say("last time {day}", day=date_words(row.last.day, "short")), SMALL, document.second))
    low += 0.4
    for text, style, ink in lines:
        if text:
            low += 2.7
            document.text(x, low, shortened(text, style, room), style, ink=ink)


def _due_ink(document: Document) -> Ink:
    return _PROPOLIS if document.options.colour else (0.0, 0.0, 0.0)


def _draw_cell(document: Document, column: Column, row: RoundSheetRow, place: Rect) -> None:
    """A box or a line, and last time small under it; what to bring is print alone."""
    small = last_words(column, row)
    low = place.bottom - 1.2
    if column.ticked:
        middle = place.centre[0]
        box = Rect(middle - TICK_MM / 2, (place.y + low - 2.4 - TICK_MM) / 2, TICK_MM, TICK_MM)
        document.box(box, THIN_MM)
        small = shortened(small, SMALL, place.width)
        document.text(middle, low, small, SMALL, align="middle", ink=document.second)
        return
    left, room = place.x + _GAP, place.width - 1.4 * _GAP
    if column.printed:
        for index, words in enumerate(wrapped(small, SMALL, room)[: int(place.height // 2.9)]):
            document.text(left, place.y + 3.4 + index * 2.9, words, SMALL)
        return
    document.line((left, low - 2.9), (left + room, low - 2.9), HAIR_MM, document.rule)
    document.text(left, low, shortened(small, SMALL, room), SMALL, ink=document.second)


def _foot_text(model: RoundSheetModel, options: PaperOptions) -> str:
    where = (
        [say("You are at {reference}.", reference=model.map_reference)]
        if options.place_names and model.map_reference
        else []
    )
    how = say(
        "Box: a tick for yes, a cross for no, a dash for not looked; leave empty what nobody looked for."
        " Brood: combs with brood, and how many full ones they are worth."
    )
    questions = frozenset(Question) - model.left_out
    brackets = brackets_words((row.last for row in model.rows), questions)
    return " ".join(filter(None, (how, brackets, *where, *cautions())))


def _draw_foot(document: Document, lines: Sequence[str]) -> None:
    top = document.height_mm - _MARGIN - (len(lines) - 1) * _FOOT_LEADING
    for index, line in enumerate(lines):
        document.text(_MARGIN, top + index * _FOOT_LEADING, line, SMALL)
