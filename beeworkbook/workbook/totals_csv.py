"""The totals as CSV, one line a visit or one line a side, in full figures.

What nobody looked at is blank, never nought; so is what nobody named on a side that was noted in part.
No cell can be taken for a formula by a spreadsheet.
Numbers have a decimal point and columns a comma, whatever the language, so that programs agree.
"""

import csv
import io
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date
from typing import Final, TextIO

from beeworkbook.colony.figures import VisitFigures, visit_figures
from beeworkbook.colony.records import Colony, ColonyId, PartKind, Question
from beeworkbook.colony.totals import SideTotals, VisitTotals
from beeworkbook.comb.contents import ALL_BROOD, Content
from beeworkbook.comb.frames import FrameType
from beeworkbook.store.reader import Reader

Value = str | int | float | None

_PLACES: Final = 6
_RISKY: Final = ("=", "+", "-", "@", "\t", "\r", "\n")
_COUNTED: Final = tuple(content for content in Content if content not in {Content.NOT_RECORDED, Content.GAP})

SIDE_COLUMNS: Final = (
    "day",
    "colony",
    "visit",
    "box",
    "box_number",
    "comb",
    "side",
    "frame_type",
    "origin",
    "grain",
    "bees_eighths",
    "side_dm2",
    *(f"{content.name.lower()}_{unit}" for content in _COUNTED for unit in ("cells", "dm2")),
)

VISIT_COLUMNS: Final = (
    "day",
    "colony",
    "visit",
    "level",
    "combs_in_hive",
    "combs_seen",
    "brood_combs",
    "brood_worth",
    *(f"{content.name.lower()}_{unit}" for content in ALL_BROOD for unit in ("cells", "dm2")),
    "worker_brood_dm2",
    "worker_brood_low_dm2",
    "worker_brood_high_dm2",
    "brood_coarse",
    "brood_at_least",
    "stores_kg",
    "bees",
    "pollen_dm2",
    "eggs_seen",
    "young_seen",
    *(f"typed_{question.value}" for question in Question),
    "next_day",
    "note",
)


def write_sides(
    read: Reader, colony_ids: Iterable[ColonyId], since: date, until: date, stream: TextIO
) -> int:
    """Write a line a side of these colonies' visits, from `since` on and before `until`; gives how many."""
    return _write(stream, SIDE_COLUMNS, _side_lines(read, colony_ids, since, until))


def write_visits(
    read: Reader, colony_ids: Iterable[ColonyId], since: date, until: date, stream: TextIO
) -> int:
    """Write a line a visit of these colonies, from `since` on and before `until`; gives how many."""
    return _write(stream, VISIT_COLUMNS, _visit_lines(read, colony_ids, since, until))


def all_colonies(read: Reader) -> tuple[ColonyId, ...]:
    """Every colony of the workbook."""
    return tuple(colony.id for colony in read.find(Colony))


def csv_text(write: Callable[[TextIO], int]) -> str:
    """What a writer writes, as one text."""
    stream = io.StringIO(newline="")
    write(stream)
    return stream.getvalue()


def safe_cell(value: Value) -> str:
    """A value as a cell that no spreadsheet takes for a formula; None is blank.

    A text beginning with one of = + - @, a tab or a line end gets an apostrophe before it. A number has
    six places after the point at most: full figures, without what adding in binary leaves behind them.
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return repr(round(value, _PLACES))
    return f"'{value}" if value.startswith(_RISKY) else value


def _write(stream: TextIO, columns: Sequence[str], lines: Iterable[Sequence[Value]]) -> int:
    writer = csv.writer(stream)
    writer.writerow(columns)
    number = 0
    for number, line in enumerate(lines, start=1):  # noqa: B007 - the last number is how many there were
        writer.writerow([safe_cell(value) for value in line])
    return number


def _side_lines(
    read: Reader, colony_ids: Iterable[ColonyId], since: date, until: date
) -> Iterator[list[Value]]:
    names = {colony.id: colony.name for colony in read.find(Colony)}
    for totals in read.season(tuple(colony_ids), since, until):
        visit = totals.visit
        for side in totals.sides:
            head: list[Value] = [visit.day.isoformat(), names[visit.colony_id], int(visit.id)]
            yield [*head, *_side_line(side)]


def _side_line(side: SideTotals) -> list[Value]:
    seen = side.counted and sum(side.area_dm2) > 0
    whole = seen and not side.unrecorded_dm2
    figures = (
        value if whole or side.area_dm2[content] else None
        for content in _COUNTED
        for value in (side.cells[content], side.area_dm2[content])
    )
    return [
        side.part_kind.value,
        int(side.part_id),
        side.place,
        side.face.value,
        side.frame_type,
        side.origin.value,
        side.grain.value,
        side.covered if side.counted else None,
        side.side_dm2 if seen else None,
        *figures,
    ]


def _visit_lines(
    read: Reader, colony_ids: Iterable[ColonyId], since: date, until: date
) -> Iterator[list[Value]]:
    names = {colony.id: colony.name for colony in read.find(Colony)}
    for totals in read.season(tuple(colony_ids), since, until):
        visit = totals.visit
        figures = visit_figures(totals, _brood_frame(read, totals))
        head: list[Value] = [visit.day.isoformat(), names[visit.colony_id], int(visit.id)]
        yield [*head, visit.level.value, *_figures_line(figures), *_words(totals)]


def _brood_frame(read: Reader, totals: VisitTotals) -> FrameType | None:
    """The frame of the colony's brood box that day, so that what a line named becomes an area."""
    hive = read.hive_day(totals.visit.colony_id, totals.visit.day)
    boxes = hive.brood_boxes if hive else ()
    brood = next((box for box in boxes if box.part.kind is not PartKind.SUPER), None)
    return read.frame_type(brood.part.frame_type) if brood else None


def _figures_line(figures: VisitFigures) -> list[Value]:
    brood = figures.brood
    stages = brood.stages if brood else {}
    doubt = brood.doubt if brood else None
    return [
        figures.combs_in_hive or None,
        figures.combs_seen or None,
        brood.combs if brood else None,
        brood.worth if brood else None,
        *(
            value
            for content in ALL_BROOD
            for value in ((stages[content].cells, stages[content].dm2) if content in stages else (None, None))
        ),
        brood.amount.dm2 if brood and brood.amount else None,
        doubt.low if doubt else None,
        # What is at least so much has no upper end.
        doubt.high if doubt and not doubt.at_least else None,
        doubt.coarse if doubt else None,
        doubt.at_least if doubt else None,
        figures.stores.kg if figures.stores else None,
        figures.bees.bees if figures.bees else None,
        figures.pollen_dm2,
        figures.eggs_seen,
        figures.young_seen,
    ]


def _words(totals: VisitTotals) -> list[Value]:
    answers = (totals.answers.get(question) for question in Question)
    visit = totals.visit
    return [
        *(answer.typed if answer else None for answer in answers),
        visit.next_day.isoformat() if visit.next_day else None,
        visit.note or None,
    ]
