"""The other visits at which a comb was looked at, to copy a side from."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from beeworkbook.bench.on_show import last_text
from beeworkbook.colony.hive import holds_on
from beeworkbook.colony.records import Colony, FrameId, FrameStay, Side, Visit
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.qt.desk import Desk
from beeworkbook.words import date_words, say


@dataclass(frozen=True, eq=False)
class OtherLook:
    """A visit at which the comb was looked at. Its sides bear the letters the comb has on the desk's day."""

    visit: Visit
    sides: Mapping[Face, Side]


def other_looks(desk: Desk, frame_id: FrameId) -> tuple[OtherLook, ...]:
    """The visits but the one that lies open at which somebody looked at this comb, the latest first."""
    read, spot = desk.book.read, desk.spot
    stays = read.find(FrameStay, frame_id=frame_id)
    turned_now = _turned(stays, spot.day)
    found: dict[Visit, dict[Face, Side]] = {}
    for side in read.find(Side, frame_id=frame_id):
        visit = read.get(Visit, side.visit_id)
        if visit is None or visit.id == spot.visit_id or side.origin is Origin.ASSUMED:
            continue
        face = side.face if _turned(stays, visit.day) == turned_now else side.face.other
        found.setdefault(visit, {})[face] = side
    looks = [OtherLook(visit, sides) for visit, sides in found.items()]
    return tuple(sorted(looks, key=lambda look: (look.visit.day, look.visit.id), reverse=True))


def look_words(desk: Desk, look: OtherLook) -> str:
    """When it was and what it showed: "9 May 2026: E1 O2 S3 H1 / S4 H2"."""
    day = date_words(look.visit.day, "day_year")
    if look.visit.colony_id != desk.spot.colony_id:
        colony = desk.book.read.get(Colony, look.visit.colony_id)
        day = say("{day} in {colony}", day=day, colony=colony.name if colony else "")
    frame_type = desk.book.read.frame_type(next(iter(look.sides.values())).frame_type)
    shown = last_text(look.sides, frame_type) or say("nothing recorded")
    return say("{day}: {comb}", day=day, comb=shown)


def _turned(stays: tuple[FrameStay, ...], day: date) -> bool:
    return any(stay.turned for stay in stays if holds_on(stay, day))
