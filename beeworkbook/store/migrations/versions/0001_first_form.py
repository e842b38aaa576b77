"""The first form of a workbook. Frozen: what has been released is changed by a later revision only."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

_CONTENTS = (
    "not_recorded",
    "gap",
    "foundation",
    "empty",
    "eggs",
    "open",
    "sealed",
    "brood",
    "drone",
    "pollen",
    "nectar",
    "stores",
)
_NO_COMB = _CONTENTS[:2]


def upgrade() -> None:
    """Make every table, each after those it refers to, and the view for other tools."""
    _apiary()
    _colony()
    _frame()
    _hive()
    _own_frame()
    _part()
    _queen()
    _setting()
    _frame_stay()
    _part_stay()
    _round()
    _stand()
    _housing()
    _visit()
    _answer()
    _due()
    _event()
    _feed()
    _mark()
    _sheet()
    _side()
    _comb()
    _tally()
    op.execute(sa.text(_totals_view()))


def _totals_view() -> str:
    """Cells and area of each content of a side, for any tool that reads tables: share x area x density."""
    return f"CREATE VIEW totals AS {' UNION ALL '.join(map(_one_content, range(len(_CONTENTS))))}"


def _one_content(code: int) -> str:
    name = _CONTENTS[code]
    whole = " + ".join(f"{content}_cells" for content in _CONTENTS)
    density = "drone_cells_per_dm2" if name == "drone" else "cells_per_dm2"
    area = "0.0" if name in _NO_COMB else f"{name}_cells * area_dm2 / ({whole})"
    shown = name.replace("_", " ")
    return (
        f"SELECT side_id, {code} AS code, '{shown}' AS content, {name}_cells AS counted, "  # noqa: S608 - our own names
        f"{area} AS area_dm2, {area} * {density} AS cells FROM tally WHERE {name}_cells > 0"
    )


def _numbered(name: str, *columns: sa.schema.SchemaItem) -> None:
    key = sa.PrimaryKeyConstraint("id", name=f"pk_{name}")
    op.create_table(name, _whole("id"), *columns, key, sqlite_autoincrement=True)


def _text(name: str, *, blank: bool = False) -> sa.Column[str]:
    return sa.Column(name, sa.Text(), nullable=blank)


def _whole(name: str, *, blank: bool = False) -> sa.Column[int]:
    return sa.Column(name, sa.Integer(), nullable=blank)


def _number(name: str, *, blank: bool = False) -> sa.Column[float]:
    return sa.Column(name, sa.Float(), nullable=blank)


def _refers(name: str, column: str, table: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint([column], [f"{table}.id"], name=name, ondelete="RESTRICT")


def _apiary() -> None:
    _numbered(
        "apiary", _text("name"), _whole("position"), _text("place"), _text("map_reference"), _text("note")
    )


def _colony() -> None:
    _numbered(
        "colony",
        _text("name"),
        _text("arrival"),
        _text("came_on"),
        _text("came_from"),
        _whole("mother_id", blank=True),
        _text("note"),
        _refers("fk_colony_mother_id", "mother_id", "colony"),
    )


def _frame() -> None:
    _numbered(
        "frame",
        _text("frame_type"),
        _text("make"),
        _text("name"),
        _whole("drone_cells"),
        _text("since", blank=True),
        _text("note"),
    )


def _hive() -> None:
    _numbered("hive", _text("name"), _text("way"), _text("hive_kind"), _text("note"))


def _own_frame() -> None:
    op.create_table(
        "own_frame",
        _text("id"),
        _text("name"),
        _number("inside_width_mm"),
        _number("inside_height_mm"),
        _number("cells_per_dm2"),
        _number("drone_cells_per_dm2"),
        sa.PrimaryKeyConstraint("id", name="pk_own_frame"),
    )


def _part() -> None:
    _numbered("part", _text("kind"), _text("name"), _text("frame_type"), _whole("places"), _text("note"))


def _queen() -> None:
    _numbered(
        "queen",
        _text("name"),
        _text("mark_colour"),
        _text("mark_text"),
        _whole("year", blank=True),
        _whole("clipped", blank=True),
        _text("note"),
    )


def _setting() -> None:
    op.create_table("setting", _text("id"), _text("value"), sa.PrimaryKeyConstraint("id", name="pk_setting"))


def _frame_stay() -> None:
    _numbered(
        "frame_stay",
        _whole("frame_id"),
        _whole("part_id"),
        _whole("place"),
        _text("since"),
        _text("until", blank=True),
        _whole("turned"),
        _refers("fk_frame_stay_frame_id", "frame_id", "frame"),
        _refers("fk_frame_stay_part_id", "part_id", "part"),
    )
    op.create_index("ix_frame_stay_frame_id", "frame_stay", ["frame_id"])
    op.create_index("ix_frame_stay_part_id", "frame_stay", ["part_id"])


def _part_stay() -> None:
    _numbered(
        "part_stay",
        _whole("part_id"),
        _whole("hive_id"),
        _whole("level"),
        _text("since"),
        _text("until", blank=True),
        _refers("fk_part_stay_hive_id", "hive_id", "hive"),
        _refers("fk_part_stay_part_id", "part_id", "part"),
    )
    op.create_index("ix_part_stay_hive_id", "part_stay", ["hive_id"])
    op.create_index("ix_part_stay_part_id", "part_stay", ["part_id"])


def _round() -> None:
    _numbered(
        "round",
        _whole("apiary_id"),
        _text("day"),
        _text("at", blank=True),
        _text("weather"),
        _number("temperature_c", blank=True),
        _text("who"),
        _text("flowering"),
        _text("note"),
        _text("left_out"),
        _refers("fk_round_apiary_id", "apiary_id", "apiary"),
    )
    op.create_index("ix_round_apiary_id_day", "round", ["apiary_id", "day"])


def _stand() -> None:
    _numbered(
        "stand",
        _whole("apiary_id"),
        _text("name"),
        _whole("position"),
        _text("note"),
        _refers("fk_stand_apiary_id", "apiary_id", "apiary"),
    )
    op.create_index("ix_stand_apiary_id", "stand", ["apiary_id"])


def _housing() -> None:
    _numbered(
        "housing",
        _whole("colony_id"),
        _whole("hive_id"),
        _whole("stand_id"),
        _text("since"),
        _text("until", blank=True),
        _refers("fk_housing_colony_id", "colony_id", "colony"),
        _refers("fk_housing_hive_id", "hive_id", "hive"),
        _refers("fk_housing_stand_id", "stand_id", "stand"),
    )
    op.create_index("ix_housing_colony_id", "housing", ["colony_id"])
    op.create_index("ix_housing_hive_id", "housing", ["hive_id"])
    op.create_index("ix_housing_stand_id", "housing", ["stand_id"])


def _visit() -> None:
    _numbered(
        "visit",
        _whole("colony_id"),
        _text("day"),
        _text("level"),
        _whole("round_id", blank=True),
        _text("at", blank=True),
        _text("who"),
        _text("note"),
        _text("next_day", blank=True),
        _text("next_reason"),
        _text("saved_utc", blank=True),
        _refers("fk_visit_colony_id", "colony_id", "colony"),
        _refers("fk_visit_round_id", "round_id", "round"),
    )
    op.create_index("ix_visit_colony_id_day", "visit", ["colony_id", "day"])
    op.create_index("ix_visit_day", "visit", ["day"])


def _answer() -> None:
    _numbered(
        "answer",
        _whole("visit_id"),
        _text("question"),
        _text("typed"),
        _text("reply", blank=True),
        _number("number", blank=True),
        _number("second", blank=True),
        _refers("fk_answer_visit_id", "visit_id", "visit"),
        sa.UniqueConstraint("visit_id", "question", name="uq_answer_visit_id_question"),
    )


def _due() -> None:
    _numbered(
        "due",
        _text("kind"),
        _text("day"),
        _text("reason"),
        _whole("colony_id", blank=True),
        _whole("apiary_id", blank=True),
        _text("until", blank=True),
        _whole("visit_id", blank=True),
        _text("state"),
        _whole("done_visit_id", blank=True),
        _refers("fk_due_apiary_id", "apiary_id", "apiary"),
        _refers("fk_due_colony_id", "colony_id", "colony"),
        _refers("fk_due_done_visit_id", "done_visit_id", "visit"),
        _refers("fk_due_visit_id", "visit_id", "visit"),
    )
    op.create_index("ix_due_colony_id", "due", ["colony_id"])
    op.create_index("ix_due_state_day", "due", ["state", "day"])


def _event() -> None:
    _numbered(
        "event",
        _whole("colony_id"),
        _text("day"),
        _text("kind"),
        _text("text"),
        _whole("visit_id", blank=True),
        _whole("queen_id", blank=True),
        _whole("other_colony_id", blank=True),
        _number("left_kg", blank=True),
        _number("right_kg", blank=True),
        _refers("fk_event_colony_id", "colony_id", "colony"),
        _refers("fk_event_other_colony_id", "other_colony_id", "colony"),
        _refers("fk_event_queen_id", "queen_id", "queen"),
        _refers("fk_event_visit_id", "visit_id", "visit"),
    )
    op.create_index("ix_event_colony_id_day", "event", ["colony_id", "day"])
    op.create_index("ix_event_visit_id", "event", ["visit_id"], sqlite_where=sa.text("visit_id IS NOT NULL"))


def _feed() -> None:
    _numbered(
        "feed",
        _whole("colony_id"),
        _text("day"),
        _text("kind"),
        _whole("visit_id", blank=True),
        _number("given_litres", blank=True),
        _number("given_kg", blank=True),
        _number("sugar_parts", blank=True),
        _number("water_parts", blank=True),
        _number("left_litres", blank=True),
        _number("left_kg", blank=True),
        _text("left_day", blank=True),
        _whole("left_visit_id", blank=True),
        _text("typed"),
        _refers("fk_feed_colony_id", "colony_id", "colony"),
        _refers("fk_feed_left_visit_id", "left_visit_id", "visit"),
        _refers("fk_feed_visit_id", "visit_id", "visit"),
    )
    op.create_index("ix_feed_colony_id_day", "feed", ["colony_id", "day"])
    op.create_index("ix_feed_visit_id", "feed", ["visit_id"], sqlite_where=sa.text("visit_id IS NOT NULL"))


def _mark() -> None:
    _numbered(
        "mark",
        _whole("visit_id"),
        _text("kind"),
        _whole("frame_id", blank=True),
        _text("face", blank=True),
        _whole("cell", blank=True),
        _text("cell_kind", blank=True),
        _text("fate", blank=True),
        _text("text"),
        _refers("fk_mark_frame_id", "frame_id", "frame"),
        _refers("fk_mark_visit_id", "visit_id", "visit"),
    )
    op.create_index("ix_mark_visit_id", "mark", ["visit_id"])


def _sheet() -> None:
    _numbered(
        "sheet",
        _text("code"),
        _whole("colony_id"),
        _text("day"),
        _whole("revision"),
        _whole("pages"),
        _text("paper"),
        _whole("visit_id", blank=True),
        _text("field_map"),
        _text("printed_utc", blank=True),
        _refers("fk_sheet_colony_id", "colony_id", "colony"),
        _refers("fk_sheet_visit_id", "visit_id", "visit"),
    )
    op.create_index("ix_sheet_colony_id", "sheet", ["colony_id"])


def _side() -> None:
    _numbered(
        "side",
        _whole("visit_id"),
        _whole("frame_id"),
        _whole("part_id"),
        _whole("place"),
        _text("face"),
        _text("frame_type"),
        _text("origin"),
        _text("grain"),
        _whole("drone_cells"),
        _number("covered", blank=True),
        _text("typed"),
        _whole("copied_from", blank=True),
        _refers("fk_side_copied_from", "copied_from", "side"),
        _refers("fk_side_frame_id", "frame_id", "frame"),
        _refers("fk_side_part_id", "part_id", "part"),
        _refers("fk_side_visit_id", "visit_id", "visit"),
    )
    op.create_index(
        "ix_side_copied_from", "side", ["copied_from"], sqlite_where=sa.text("copied_from IS NOT NULL")
    )
    op.create_index("ix_side_frame_id", "side", ["frame_id"])
    op.create_index("ix_side_visit_id", "side", ["visit_id"])


def _comb() -> None:
    op.create_table(
        "comb",
        _whole("side_id"),
        sa.Column("cells", sa.LargeBinary(), nullable=False),
        _refers("fk_comb_side_id", "side_id", "side"),
        sa.PrimaryKeyConstraint("side_id", name="pk_comb"),
    )


def _tally() -> None:
    op.create_table(
        "tally",
        _whole("side_id"),
        _number("area_dm2"),
        _number("cells_per_dm2"),
        _number("drone_cells_per_dm2"),
        _whole("not_recorded_cells"),
        _whole("gap_cells"),
        _whole("foundation_cells"),
        _whole("empty_cells"),
        _whole("eggs_cells"),
        _whole("open_cells"),
        _whole("sealed_cells"),
        _whole("brood_cells"),
        _whole("drone_cells"),
        _whole("pollen_cells"),
        _whole("nectar_cells"),
        _whole("stores_cells"),
        _refers("fk_tally_side_id", "side_id", "side"),
        sa.PrimaryKeyConstraint("side_id", name="pk_tally"),
    )
