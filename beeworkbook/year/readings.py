"""What the chart says of one day in words: every value with its doubt, two significant figures."""

from dataclasses import dataclass

from beeworkbook.colony.figures import Amount, Doubt
from beeworkbook.colony.records import Level
from beeworkbook.colony.sentences import level_words
from beeworkbook.colony.timeline import SeasonPoint
from beeworkbook.colony.worth import worth_words
from beeworkbook.comb.contents import Content
from beeworkbook.comb.names import content_name
from beeworkbook.words import date_words, say, two_figures
from beeworkbook.year.choice import Measure
from beeworkbook.year.panes import Entry, Stop

_SHUT = (Level.NOT_OPENED, Level.PASSED_OVER)


@dataclass(frozen=True)
class ReadRow:
    """One line of the reading: what, how much; with the content or the curve's style it is drawn in."""

    label: str
    value: str
    content: Content | None = None
    style: int | None = None


@dataclass(frozen=True)
class DayReading:
    """All that is read at a stop."""

    heading: str
    rows: tuple[ReadRow, ...]
    remarks: tuple[str, ...]

    @property
    def text(self) -> str:
        """The reading as one text, for a screen reader and a tooltip."""
        lines = [self.heading, *(f"{row.label} {row.value}" for row in self.rows), *self.remarks]
        return "\n".join(lines)


def read_stop(stop: Stop, measure: Measure, *, stacked: bool) -> DayReading:
    """The reading of a stop: in full for one colony and year, else a line for each of those compared."""
    first = stop.entries[0]
    heading = date_words(stop.day, "weekday_year")
    if stacked:
        return DayReading(heading, _rows(first, measure), (*_remarks(first), *stop.marks))
    rows = tuple(_compared(entry, stop, measure) for entry in stop.entries)
    return DayReading(heading, rows, (*_remarks(first), *stop.marks))


def point_words(point: SeasonPoint, measure: Measure) -> str:
    """The brood of a point in a few words: "about 42 dm²", "at least 12 dm²", "no figure for brood"."""
    if point.worker is None:
        return say("no figure for brood")
    amount = two_figures(measure.of(point.worker))
    if point.at_least:
        return say("at least {amount} {unit}", amount=amount, unit=measure.unit)
    return say("about {amount} {unit}", amount=amount, unit=measure.unit)


def _rows(entry: Entry, measure: Measure) -> tuple[ReadRow, ...]:
    point = entry.point
    made = [ReadRow(say("worker brood"), _with_band(point, measure))] if point.worker is not None else []
    for content, amount in (
        (Content.SEALED, point.sealed),
        (Content.OPEN, point.open),
        (Content.EGGS, point.eggs),
        (Content.BROOD, point.brood),
        (Content.DRONE, point.drone),
    ):
        if amount is not None and (amount.cells or content is not Content.BROOD):
            made.append(ReadRow(content_name(content), _amount(amount, measure), content))
    return tuple(made) + _rest(entry)


def _rest(entry: Entry) -> tuple[ReadRow, ...]:
    point, made = entry.point, []
    if point.combs is not None:
        worth = say("worth {worth}", worth=worth_words(point.worth)) if point.worth is not None else ""
        made.append(ReadRow(say("combs with brood"), ", ".join(filter(None, (f"{point.combs}", worth)))))
    if point.stores_kg is not None:
        value = say("{kg} kg", kg=_at_least(point.stores_kg, point.stores_doubt))
        made.append(ReadRow(say("stores"), value, Content.STORES))
    if point.bees is not None:
        made.append(ReadRow(say("bees"), _at_least(point.bees, point.bees_doubt)))
    return tuple(made)


def _remarks(entry: Entry) -> tuple[str, ...]:
    point, figures = entry.point, entry.figures
    made = []
    if point.level in _SHUT:
        made.append(level_words(point.level))
    elif point.worker is None:
        made.append(say("no figure for brood was noted"))
    if point.coarse:
        made.append(say("said in one line"))
    if point.at_least:
        made.append(
            say("{seen} of {all} combs, so at least", seen=figures.combs_seen, all=figures.combs_in_hive)
        )
    return tuple(made)


def _compared(entry: Entry, stop: Stop, measure: Measure) -> ReadRow:
    point = entry.point
    made = [point_words(point, measure)]
    if point.stores_kg is not None:
        made.append(say("{kg} kg", kg=_at_least(point.stores_kg, point.stores_doubt)))
    if point.bees is not None:
        made.append(say("{bees} bees", bees=_at_least(point.bees, point.bees_doubt)))
    if point.day != stop.day:
        made.append(date_words(point.day))
    return ReadRow(entry.name, ", ".join(made), style=entry.style)


def _with_band(point: SeasonPoint, measure: Measure) -> str:
    words = point_words(point, measure)
    cells = measure is Measure.CELLS
    low = point.low_cells if cells else point.low_dm2
    high = point.high_cells if cells else point.high_dm2
    if low is None or high is None or point.worker is None or high <= low:
        return words
    return say("{value} ({low} to {high})", value=words, low=two_figures(low), high=two_figures(high))


def _amount(amount: Amount, measure: Measure) -> str:
    return f"{two_figures(measure.of(amount))} {measure.unit}"


def _at_least(value: float, doubt: Doubt | None) -> str:
    words = two_figures(value)
    return say("at least {amount}", amount=words) if doubt is not None and doubt.at_least else words
