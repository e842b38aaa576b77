"""What is asked of the tables, written with SQLAlchemy. Not loaded when the program runs.

The texts that are sent lie beside this file in texts.json, so that starting the program does not wait
for SQLAlchemy; `python -m beeworkbook.store.write_texts` writes them anew, and a test says that they
are what is written here. Places to fill in have names; statements of one record have them in the
order of its fields.
"""

from typing import Any, Final

from sqlalchemy import (
    ColumnElement,
    Dialect,
    Executable,
    FromClause,
    Select,
    bindparam,
    case,
    delete,
    func,
    insert,
    literal_column,
    or_,
    select,
    update,
)
from sqlalchemy.dialects.sqlite import dialect as sqlite_dialect

from beeworkbook.colony.records import (
    BOXES,
    Answer,
    Apiary,
    Colony,
    Due,
    Event,
    Feed,
    Frame,
    FrameMake,
    FrameStay,
    Hive,
    Housing,
    Part,
    PartKind,
    PartStay,
    Round,
    Side,
    Stand,
    Visit,
)
from beeworkbook.store import schema
from beeworkbook.store.rows import TABLE_NAMES, form_of
from beeworkbook.store.schema import TABLES
from beeworkbook.store.tallies import COLUMNS as TALLY

_NUMBERED: Final = sqlite_dialect(paramstyle="qmark")
_NAMED: Final = sqlite_dialect(paramstyle="named")

SEASON_SIDE: Final = (
    "id",
    "visit_id",
    "frame_id",
    "part_id",
    "place",
    "face",
    "frame_type",
    "origin",
    "grain",
    "covered",
)
"""The columns of a side that a season needs; behind them come the kind of its part and its tally."""


def in_order(statement: Executable, keys: tuple[str, ...]) -> str:
    """The text of a statement whose places are filled in the order of these keys.

    Errors: ValueError if it would take them in another order.
    """
    compiled = _compiled(statement, _NUMBERED)
    if tuple(compiled.positiontup or ()) != keys:
        raise ValueError((compiled.positiontup, keys))
    return str(compiled)


def _compiled(statement: Any, dialect: Dialect) -> Any:
    return statement.compile(dialect=dialect)


def all_texts() -> dict[str, str]:
    """Every statement by its name."""
    texts: dict[str, str] = {}
    for cls, name in TABLE_NAMES.items():
        texts |= {f"{verb} {name}": text for verb, text in _of_a_record(cls).items()}
    for name, statement in {**_of_places(), **_of_visits(), **_of_totals()}.items():
        texts[name] = str(_compiled(statement, _NAMED))
    return {**texts, **_of_a_side()}


def all_ties() -> dict[str, list[tuple[str, str, bool]]]:
    """By table, every reference to it: the other table, the field, and whether the other hangs on it.

    Those that are left blank come first, so that a copy is let go of before what it was copied from goes.
    """
    names = {
        table.name: name for (name, table) in ((TABLE_NAMES[cls], table) for cls, table in TABLES.items())
    }
    ties: dict[str, list[tuple[str, str, bool]]] = {name: [] for name in names.values()}
    for cls, table in TABLES.items():
        for column in table.columns:
            for key in column.foreign_keys:
                tie = (TABLE_NAMES[cls], column.name, bool(column.info.get("hangs")))
                ties[names[key.column.table.name]].append(tie)
    return {name: sorted(found, key=lambda tie: tie[2]) for name, found in ties.items()}


# --- one record ----------------------------------------------------------------------------------


def chosen(cls: type[Any]) -> Select[Any]:
    """Every field of a record class, in the order of its fields, from wherever they lie."""
    form, table = form_of(cls), TABLES[cls]
    if cls is not Side:
        return select(*(table.c[name] for name in form.names))
    columns = (schema.comb.c.cells if name == form.blob else table.c[name] for name in form.names)
    return select(*columns).join_from(table, schema.comb, schema.comb.c.side_id == table.c.id)


def _of_a_record(cls: type[Any]) -> dict[str, str]:
    table, columns = TABLES[cls], form_of(cls).columns
    but_id = columns[1:]
    here = table.c.id == bindparam("the_id")
    texts = {
        "get": in_order(chosen(cls).where(here), ("the_id",)),
        "all": in_order(chosen(cls), ()),
        "insert": in_order(insert(table).values(_places(columns)), columns),
        "update": in_order(update(table).where(here).values(_places(but_id)), (*but_id, "the_id")),
        "remove": in_order(delete(table).where(here), ("the_id",)),
    }
    if table.c.id.type.python_type is int:  # else its id is a name, and a new one has to bring it
        texts["insert new"] = in_order(insert(table).values(_places(but_id)), but_id)
    return texts


def _of_a_side() -> dict[str, str]:
    """What a side keeps in tables of their own."""
    texts = {}
    for name, table, columns in (("comb", schema.comb, ("cells",)), ("tally", schema.tally, TALLY)):
        here = table.c.side_id == bindparam("the_id")
        texts[f"insert {name}"] = in_order(
            insert(table).values(_places(("side_id", *columns))), ("side_id", *columns)
        )
        texts[f"update {name}"] = in_order(
            update(table).where(here).values(_places(columns)), (*columns, "the_id")
        )
        texts[f"remove {name}"] = in_order(delete(table).where(here), ("the_id",))
    texts["all tally"] = in_order(
        select(schema.tally.c.side_id, *(schema.tally.c[name] for name in TALLY)), ()
    )
    return texts


def _places(columns: tuple[str, ...]) -> dict[Any, Any]:
    return {name: bindparam(name) for name in columns}


# --- who stood where -----------------------------------------------------------------------------


def _holds(stay: FromClause, day: ColumnElement[Any]) -> ColumnElement[bool]:
    """Whether a dated stay holds on a day: from its first day on and no longer on its last."""
    return (stay.c.since <= day) & or_(stay.c.until.is_(None), stay.c.until > day)


def _day() -> ColumnElement[Any]:
    return bindparam("day")


def _columns(*classes: type[Any]) -> list[ColumnElement[Any]]:
    return [TABLES[cls].c[name] for cls in classes for name in form_of(cls).names]


def _of_places() -> dict[str, Select[Any]]:
    apiary, stand, round_, housing = schema.apiary, schema.stand, schema.round_, schema.housing
    here: ColumnElement[Any] = bindparam("apiary_id")
    lives = housing.c.colony_id == bindparam("colony_id")
    return {
        "apiaries": chosen(Apiary).order_by(apiary.c.position, apiary.c.id),
        "stands": chosen(Stand).where(stand.c.apiary_id == here).order_by(stand.c.position, stand.c.id),
        "rounds": chosen(Round).where(round_.c.apiary_id == here).order_by(round_.c.day, round_.c.id),
        "standing": _standing(),
        "home": chosen(Housing)
        .where(lives, _holds(housing, _day()))
        .order_by(housing.c.since.desc(), housing.c.id.desc()),
        "stack": _stack(),
        "hanging": _hanging(),
    }


def _standing() -> Select[Any]:
    """Stands with what stood on them; a stand with two hives comes twice, a free one with blanks."""
    stand, housing, colony, hive = schema.stand, schema.housing, schema.colony, schema.hive
    joined = (
        stand.outerjoin(housing, (housing.c.stand_id == stand.c.id) & _holds(housing, _day()))
        .outerjoin(colony, colony.c.id == housing.c.colony_id)
        .outerjoin(hive, hive.c.id == housing.c.hive_id)
    )
    asked = select(*_columns(Stand, Colony, Hive, Housing)).select_from(joined)
    order = (stand.c.position, stand.c.id, housing.c.since, housing.c.id)
    return asked.where(stand.c.apiary_id == bindparam("apiary_id")).order_by(*order)


def _stack() -> Select[Any]:
    part, stay = schema.part, schema.part_stay
    asked = select(*_columns(Part, PartStay)).join_from(stay, part, part.c.id == stay.c.part_id)
    return asked.where(stay.c.hive_id == bindparam("hive_id"), _holds(stay, _day()))


def _hanging() -> Select[Any]:
    frame, stay, part_stay = schema.frame, schema.frame_stay, schema.part_stay
    joined = part_stay.join(stay, stay.c.part_id == part_stay.c.part_id).join(
        frame, frame.c.id == stay.c.frame_id
    )
    here = part_stay.c.hive_id == bindparam("hive_id")
    asked = select(*_columns(Frame, FrameStay)).select_from(joined)
    return asked.where(here, _holds(part_stay, _day()), _holds(stay, _day()))


# --- what was noted ------------------------------------------------------------------------------


def _of_visits() -> dict[str, Select[Any]]:
    side = schema.side
    in_visit = side.c.visit_id == bindparam("visit_id")
    named = {"visits": Visit, "events": Event, "feeds": Feed}
    return {
        **{name: _of_colony(cls) for name, cls in named.items()},
        "visit before": _visit_before(),
        "visits on": _visits_on(),
        "sides": chosen(Side).where(in_visit).order_by(side.c.part_id, side.c.place, side.c.face, side.c.id),
        "side": chosen(Side)
        .where(in_visit, side.c.frame_id == bindparam("frame_id"), side.c.face == bindparam("face"))
        .order_by(side.c.id),
        "earlier sides": _earlier_sides(),
        **_dues(),
    }


def _of_colony(cls: type[Any]) -> Select[Any]:
    table = TABLES[cls]
    return chosen(cls).where(table.c.colony_id == bindparam("colony_id")).order_by(table.c.day, table.c.id)


def _earlier() -> ColumnElement[bool]:
    """Visits before one, which is given by its day and its id."""
    visit = schema.visit
    same_day = (visit.c.day == _day()) & (visit.c.id < bindparam("id"))
    return or_(visit.c.day < _day(), same_day)


def _visit_before() -> Select[Any]:
    visit = schema.visit
    asked = chosen(Visit).where(visit.c.colony_id == bindparam("colony_id"), _earlier())
    return asked.order_by(visit.c.day.desc(), visit.c.id.desc())


def _visits_on() -> Select[Any]:
    visit, housing, stand, round_ = schema.visit, schema.housing, schema.stand, schema.round_
    joined = (
        visit.outerjoin(housing, (housing.c.colony_id == visit.c.colony_id) & _holds(housing, visit.c.day))
        .outerjoin(stand, stand.c.id == housing.c.stand_id)
        .outerjoin(round_, round_.c.id == visit.c.round_id)
    )
    here = or_(stand.c.apiary_id == bindparam("apiary_id"), round_.c.apiary_id == bindparam("apiary_id"))
    asked = chosen(Visit).select_from(joined).where(visit.c.day == _day(), here)
    return asked.order_by(stand.c.position, visit.c.id)


def _earlier_sides() -> Select[Any]:
    """The sides of a frame before a visit, the latest first, without their drawings."""
    side, visit = schema.side, schema.visit
    asked = select(side.c.id, side.c.face, visit.c.day, side.c.origin).join_from(
        side, visit, visit.c.id == side.c.visit_id
    )
    order = (visit.c.day.desc(), visit.c.id.desc(), side.c.id.desc())
    return asked.where(side.c.frame_id == bindparam("frame_id"), _earlier()).order_by(*order)


def _dues() -> dict[str, Select[Any]]:
    """Dues by every choice of state, apiary and colony: "dues", "dues state", "dues state apiary", ..."""
    due, housing, stand = schema.due, schema.housing, schema.stand
    there = (
        select(housing.c.id)
        .join_from(housing, stand, stand.c.id == housing.c.stand_id)
        .where(
            housing.c.colony_id == due.c.colony_id,
            stand.c.apiary_id == bindparam("apiary_id"),
            _holds(housing, due.c.day),
        )
    )
    tests = {
        "state": due.c.state == bindparam("state"),
        "apiary_id": or_(due.c.apiary_id == bindparam("apiary_id"), there.exists()),
        "colony_id": due.c.colony_id == bindparam("colony_id"),
    }
    asked = {"dues": chosen(Due).order_by(due.c.day, due.c.id)}
    for name, test in tests.items():
        asked |= {f"{before} {name}": statement.where(test) for before, statement in asked.items()}
    return asked


# --- totals of visits ----------------------------------------------------------------------------


def _of_totals() -> dict[str, Select[Any]]:
    visit = schema.visit
    one = (visit.c.id == bindparam("visit_id"),)
    season = (
        visit.c.colony_id == bindparam("colony_id"),
        visit.c.day >= bindparam("since"),
        visit.c.day < bindparam("until"),
    )
    asked = {"visits": _counted_visits, "answers": _answers, "sides": _side_totals, "combs": _combs}
    return {
        f"{scope} {name}": make().where(*tests)
        for scope, tests in (("visit", one), ("season", season))
        for name, make in asked.items()
    }


def _counted_visits() -> Select[Any]:
    return chosen(Visit).order_by(schema.visit.c.day, schema.visit.c.id)


def _answers() -> Select[Any]:
    visit, answer = schema.visit, schema.answer
    return chosen(Answer).join_from(visit, answer, answer.c.visit_id == visit.c.id).order_by(answer.c.id)


def _side_totals() -> Select[Any]:
    """Sides with what was counted, which is blank for an assumed one."""
    visit, side, tally, part = schema.visit, schema.side, schema.tally, schema.part
    columns = (*(side.c[name] for name in SEASON_SIDE), part.c.kind, *(tally.c[name] for name in TALLY))
    joined = (
        visit.join(side, side.c.visit_id == visit.c.id)
        .join(part, part.c.id == side.c.part_id)
        .outerjoin(tally, tally.c.side_id == side.c.id)
    )
    return (
        select(*columns).select_from(joined).order_by(visit.c.id, side.c.part_id, side.c.place, side.c.face)
    )


def _combs() -> Select[Any]:
    """How many frames, dummies apart, hung in the hive that day, and how many of them not in supers."""
    visit, housing, part, frame = schema.visit, schema.housing, schema.part, schema.frame
    part_stay, frame_stay = schema.part_stay, schema.frame_stay
    boxes = [_word(kind) for kind in sorted(BOXES)]
    joined = (
        visit.join(housing, (housing.c.colony_id == visit.c.colony_id) & _holds(housing, visit.c.day))
        .join(part_stay, (part_stay.c.hive_id == housing.c.hive_id) & _holds(part_stay, visit.c.day))
        .join(part, (part.c.id == part_stay.c.part_id) & part.c.kind.in_(boxes))
        .join(frame_stay, (frame_stay.c.part_id == part.c.id) & _holds(frame_stay, visit.c.day))
        .join(frame, (frame.c.id == frame_stay.c.frame_id) & (frame.c.make == _word(FrameMake.FRAME)))
    )
    below = case((part.c.kind != _word(PartKind.SUPER), frame.c.id))
    counted = select(visit.c.id, func.count(frame.c.id.distinct()), func.count(below.distinct()))
    return counted.select_from(joined).group_by(visit.c.id)


def _word(word: str) -> ColumnElement[str]:
    return literal_column(f"'{word}'")
