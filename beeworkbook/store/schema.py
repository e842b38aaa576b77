"""The tables of a workbook, one a record class of colony/records.py, and what a removal takes along.

A column has the name of the record's field. The packed cells of a side lie in `comb`, the count of
each content in `tally`, so that neither is read where the other is wanted. A reference says in its
`info` whether what refers hangs on what it refers to: then it goes with it; else the reference is
left blank. The migrations never import this file: a test says that both agree.
"""

from collections.abc import Mapping
from typing import Any, Final

from sqlalchemy import (
    Column,
    Float,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    Table,
    Text,
    UniqueConstraint,
)

from beeworkbook.colony import records
from beeworkbook.store.tallies import TALLY_COLUMNS

metadata: Final = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    }
)


def _id() -> Column[int]:
    return Column("id", Integer, primary_key=True)


def _of(name: str, table: str) -> Column[int]:
    """A reference that is always there: this hangs on that."""
    return Column(
        name, Integer, ForeignKey(f"{table}.id", ondelete="RESTRICT"), nullable=False, info={"hangs": True}
    )


def _perhaps(name: str, table: str, *, hangs: bool = False) -> Column[int]:
    """A reference that may be blank, and is left blank when what it refers to goes, unless it hangs."""
    return Column(name, Integer, ForeignKey(f"{table}.id", ondelete="RESTRICT"), info={"hangs": hangs})


def _text(name: str) -> Column[str]:
    return Column(name, Text, nullable=False)


def _text_perhaps(name: str) -> Column[str]:
    return Column(name, Text)


def _whole(name: str) -> Column[int]:
    return Column(name, Integer, nullable=False)


def _whole_perhaps(name: str) -> Column[int]:
    return Column(name, Integer)


def _number(name: str) -> Column[float]:
    return Column(name, Float, nullable=False)


def _number_perhaps(name: str) -> Column[float]:
    return Column(name, Float)


def _table(name: str, *columns: Column[int] | Column[str] | Column[float] | UniqueConstraint) -> Table:
    """A table whose ids are never given twice, so that undo brings back exactly what went."""
    return Table(name, metadata, _id(), *columns, sqlite_autoincrement=True)


setting: Final = Table("setting", metadata, Column("id", Text, primary_key=True), _text("value"))
own_frame: Final = Table(
    "own_frame",
    metadata,
    Column("id", Text, primary_key=True),
    _text("name"),
    _number("inside_width_mm"),
    _number("inside_height_mm"),
    _number("cells_per_dm2"),
    _number("drone_cells_per_dm2"),
)
apiary: Final = _table(
    "apiary", _text("name"), _whole("position"), _text("place"), _text("map_reference"), _text("note")
)
stand: Final = _table("stand", _of("apiary_id", "apiary"), _text("name"), _whole("position"), _text("note"))
colony: Final = _table(
    "colony",
    _text("name"),
    _text("arrival"),
    _text("came_on"),
    _text("came_from"),
    _perhaps("mother_id", "colony"),
    _text("note"),
)
hive: Final = _table("hive", _text("name"), _text("way"), _text("hive_kind"), _text("note"))
part: Final = _table(
    "part", _text("kind"), _text("name"), _text("frame_type"), _whole("places"), _text("note")
)
frame: Final = _table(
    "frame",
    _text("frame_type"),
    _text("make"),
    _text("name"),
    _whole("drone_cells"),
    _text_perhaps("since"),
    _text("note"),
)
queen: Final = _table(
    "queen",
    _text("name"),
    _text("mark_colour"),
    _text("mark_text"),
    _whole_perhaps("year"),
    _whole_perhaps("clipped"),
    _text("note"),
)
housing: Final = _table(
    "housing",
    _of("colony_id", "colony"),
    _of("hive_id", "hive"),
    _of("stand_id", "stand"),
    _text("since"),
    _text_perhaps("until"),
)
part_stay: Final = _table(
    "part_stay",
    _of("part_id", "part"),
    _of("hive_id", "hive"),
    _whole("level"),
    _text("since"),
    _text_perhaps("until"),
)
frame_stay: Final = _table(
    "frame_stay",
    _of("frame_id", "frame"),
    _of("part_id", "part"),
    _whole("place"),
    _text("since"),
    _text_perhaps("until"),
    _whole("turned"),
)
round_: Final = _table(
    "round",
    _of("apiary_id", "apiary"),
    _text("day"),
    _text_perhaps("at"),
    _text("weather"),
    _number_perhaps("temperature_c"),
    _text("who"),
    _text("flowering"),
    _text("note"),
    _text("left_out"),
)
visit: Final = _table(
    "visit",
    _of("colony_id", "colony"),
    _text("day"),
    _text("level"),
    _perhaps("round_id", "round"),
    _text_perhaps("at"),
    _text("who"),
    _text("note"),
    _text_perhaps("next_day"),
    _text("next_reason"),
    _text_perhaps("saved_utc"),
)
answer: Final = _table(
    "answer",
    _of("visit_id", "visit"),
    _text("question"),
    _text("typed"),
    _text_perhaps("reply"),
    _number_perhaps("number"),
    _number_perhaps("second"),
    UniqueConstraint("visit_id", "question"),
)
side: Final = _table(
    "side",
    _of("visit_id", "visit"),
    _of("frame_id", "frame"),
    _of("part_id", "part"),
    _whole("place"),
    _text("face"),
    _text("frame_type"),
    _text("origin"),
    _text("grain"),
    _whole("drone_cells"),
    _number_perhaps("covered"),
    _text("typed"),
    _perhaps("copied_from", "side"),
)
comb: Final = Table(
    "comb",
    metadata,
    Column("side_id", Integer, ForeignKey("side.id", ondelete="RESTRICT"), primary_key=True),
    Column("cells", LargeBinary, nullable=False),
)
"""The drawing of a side, packed by comb/codec.py."""

tally: Final = Table(
    "tally",
    metadata,
    Column("side_id", Integer, ForeignKey("side.id", ondelete="RESTRICT"), primary_key=True),
    _number("area_dm2"),
    _number("cells_per_dm2"),
    _number("drone_cells_per_dm2"),
    *(_whole(name) for name in TALLY_COLUMNS),
)
"""What was counted on a side. What is shown is count ÷ all × area × density: see the view `totals`."""

mark: Final = _table(
    "mark",
    _of("visit_id", "visit"),
    _text("kind"),
    _perhaps("frame_id", "frame", hangs=True),
    _text_perhaps("face"),
    _whole_perhaps("cell"),
    _text_perhaps("cell_kind"),
    _text_perhaps("fate"),
    _text("text"),
)
event: Final = _table(
    "event",
    _of("colony_id", "colony"),
    _text("day"),
    _text("kind"),
    _text("text"),
    _perhaps("visit_id", "visit"),
    _perhaps("queen_id", "queen"),
    _perhaps("other_colony_id", "colony"),
    _number_perhaps("left_kg"),
    _number_perhaps("right_kg"),
)
feed: Final = _table(
    "feed",
    _of("colony_id", "colony"),
    _text("day"),
    _text("kind"),
    _perhaps("visit_id", "visit"),
    _number_perhaps("given_litres"),
    _number_perhaps("given_kg"),
    _number_perhaps("sugar_parts"),
    _number_perhaps("water_parts"),
    _number_perhaps("left_litres"),
    _number_perhaps("left_kg"),
    _text_perhaps("left_day"),
    _perhaps("left_visit_id", "visit"),
    _text("typed"),
)
due: Final = _table(
    "due",
    _text("kind"),
    _text("day"),
    _text("reason"),
    _perhaps("colony_id", "colony", hangs=True),
    _perhaps("apiary_id", "apiary", hangs=True),
    _text_perhaps("until"),
    _perhaps("visit_id", "visit"),
    _text("state"),
    _perhaps("done_visit_id", "visit"),
)
sheet: Final = _table(
    "sheet",
    _text("code"),
    _of("colony_id", "colony"),
    _text("day"),
    _whole("revision"),
    _whole("pages"),
    _text("paper"),
    _perhaps("visit_id", "visit"),
    _text("field_map"),
    _text_perhaps("printed_utc"),
)

Index(None, stand.c.apiary_id)
Index(None, housing.c.colony_id)
Index(None, housing.c.hive_id)
Index(None, housing.c.stand_id)
Index(None, part_stay.c.hive_id)
Index(None, part_stay.c.part_id)
Index(None, frame_stay.c.part_id)
Index(None, frame_stay.c.frame_id)
Index(None, round_.c.apiary_id, round_.c.day)
Index(None, visit.c.colony_id, visit.c.day)
Index(None, visit.c.day)
Index(None, side.c.visit_id)
Index(None, side.c.frame_id)
Index(None, side.c.copied_from, sqlite_where=side.c.copied_from.is_not(None))
Index(None, mark.c.visit_id)
Index(None, event.c.colony_id, event.c.day)
Index(None, event.c.visit_id, sqlite_where=event.c.visit_id.is_not(None))
Index(None, feed.c.colony_id, feed.c.day)
Index(None, feed.c.visit_id, sqlite_where=feed.c.visit_id.is_not(None))
Index(None, due.c.state, due.c.day)
Index(None, due.c.colony_id)
Index(None, sheet.c.colony_id)

TABLES: Final[Mapping[type[Any], Table]] = {
    records.Setting: setting,
    records.OwnFrame: own_frame,
    records.Apiary: apiary,
    records.Stand: stand,
    records.Colony: colony,
    records.Hive: hive,
    records.Part: part,
    records.Frame: frame,
    records.Queen: queen,
    records.Housing: housing,
    records.PartStay: part_stay,
    records.FrameStay: frame_stay,
    records.Round: round_,
    records.Visit: visit,
    records.Answer: answer,
    records.Side: side,
    records.Mark: mark,
    records.Event: event,
    records.Feed: feed,
    records.Due: due,
    records.Sheet: sheet,
}
"""The table of each record class."""
