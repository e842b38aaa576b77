"""Keeps the sample: day after day through the seasons, every record by the workbook's own edits."""

import random
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from beeworkbook.colony.hive import HiveDay, PlacedFrame
from beeworkbook.colony.records import (
    ApiaryId,
    Arrival,
    ColonyId,
    DueKind,
    PartKind,
    RoundId,
    StandId,
    Visit,
    VisitId,
    Way,
)
from beeworkbook.comb.contents import Content
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony, ArrivingComb, nucleus_combs
from beeworkbook.workbook.edits.dues import AddDue, DoDue
from beeworkbook.workbook.edits.events import QueenSpec
from beeworkbook.workbook.edits.place import AddApiary, AddStand, SetSetting
from beeworkbook.workbook.edits.visit import BeginRound
from beeworkbook.workbook.place import Edit
from beeworkbook.workbook.workbook import Workbook
from sample_apiary.colony_in_hand import InHand, first_bees
from sample_apiary.happening import happen, remember_feed, split_off
from sample_apiary.looking import look
from sample_apiary.nest import spread, typed_comb
from sample_apiary.season import Year


class Clock:
    """The day it is while the sample is being made; saved in the evening."""

    def __init__(self, day: date) -> None:
        self.day = day

    def today(self) -> date:
        """The day."""
        return self.day

    def now(self) -> datetime:
        """The hour at which everything of a day is saved."""
        return datetime.combine(self.day, time(19, 30), UTC)


class Keeper:
    """The keeper of the sample, who writes everything down."""

    def __init__(self, book: Workbook, parameters: dict[str, Any], clock: Clock) -> None:
        self.book = book
        self.told = parameters
        self.clock = clock
        self.year = Year(parameters["curves"])
        self.colonies: dict[str, InHand] = {}
        self.apiaries: dict[str, ApiaryId] = {}
        self.stands: dict[tuple[str, str], StandId] = {}

    def keep(self) -> None:
        """Both seasons, a day at a time."""
        self._lay_out_places()
        day = date.fromisoformat(self.told["first_day"])
        last = date.fromisoformat(self.told["last_day"])
        while day <= last:
            self.clock.day = day
            self._one_day(day)
            day += timedelta(days=1)
        self._put_down_dues()

    def chance(self, *names: object) -> random.Random:
        """Chance for one purpose on one day, so that a change elsewhere leaves it as it was."""
        return random.Random(" ".join(map(str, (self.told["seed"], self.clock.day, *names))))  # noqa: S311

    def do(self, edit: Edit) -> Any:
        """Do one edit."""
        return self.book.do(edit)

    # --- the places -------------------------------------------------------------------------------

    def _lay_out_places(self) -> None:
        self.do(SetSetting("hemisphere", self.told["hemisphere"]))
        self.do(SetSetting("sample", "yes"))
        for told in self.told["apiaries"]:
            apiary_id = self.do(AddApiary(told["name"], told["place"], "", told["note"]))
            self.apiaries[told["key"]] = apiary_id
            for name in told["stands"]:
                self.stands[told["key"], name] = self.do(AddStand(apiary_id, name))

    # --- a day ------------------------------------------------------------------------------------

    def _one_day(self, day: date) -> None:
        for colony in self.colonies.values():
            if not colony.gone:
                colony.bees.live(day, self.year)
        for told in self.told["colonies"]:
            if told["came_on"] == day.isoformat() and "from" not in told:
                self._arrive(told)
        for told in self.told["rounds"]:
            if told["day"] == day.isoformat():
                self._round(told)
        for told in self.told["happenings"]:
            if told["day"] == day.isoformat():
                happen(self, self.colonies[told["colony"]], told)

    def _arrive(self, told: dict[str, Any]) -> None:
        bees = first_bees(told, self.year)
        queen = told.get("queen")
        places = int(told["places"])
        combs = self._arriving_combs(told, places)
        super_places = int(told["super_places"])
        spec = ArrivalSpec(
            name=told["name"],
            arrival=Arrival(told["arrival"]),
            came_on=self.clock.day,
            stand_id=self.stands[told["apiary"], told["stand"]],
            hive_name=told["hive"],
            hive_kind=told["hive_kind"],
            way=Way(told["way"]),
            box_kind=PartKind(told.get("box", "brood_box")),
            frame_type=told["frame"],
            places=places,
            combs=combs,
            flank={"empty": None}.get(told.get("flank", ""), Content.FOUNDATION),
            super_places=super_places,
            queen=QueenSpec(**queen) if queen else None,
            queenless=bool(told.get("queenless")),
            cast=told.get("cast"),
            fed=told.get("fed", ""),
            came_from=told["came_from"],
        )
        colony_id: ColonyId = self.do(ArriveColony(spec))
        hive = self.hive(colony_id)
        boxes = hive.brood_boxes
        colony = InHand(
            told["key"], told, bees, FRAME_TYPES[told["frame"]], colony_id, hive.hive.id, boxes[0].part.id
        )
        colony.super_dm2 = FRAME_TYPES[told["super_frame"]].area_dm2 * super_places * 2
        colony.clipped = (queen or {}).get("clipped")
        since = told.get("virgin_since")
        colony.virgin_since = date.fromisoformat(since) if since else None
        feeder = next((part for part in hive.stack if part.part.kind is PartKind.FEEDER), None)
        colony.feeder = feeder.part.id if feeder else None
        self.colonies[told["key"]] = colony
        if told.get("fed"):
            remember_feed(self, colony)

    def _arriving_combs(self, told: dict[str, Any], places: int) -> tuple[ArrivingComb, ...]:
        """The combs that came with the bees, typed at once."""
        number = int(told.get("combs", places))
        if not number:
            return ()
        hung = nucleus_combs(places, number, 1 if number < places else None)
        bees = first_bees(told, self.year)
        nest = spread(
            bees,
            FRAME_TYPES[told["frame"]],
            [comb.place for comb in hung],
            float(told.get("lean", 0.0)),
            nectar=self.nectar(),
        )
        chance = self.chance("arrival", told["key"])
        return tuple(
            ArrivingComb(comb.place, typed_comb(nest, comb.place, by_side=False, chance=chance))
            for comb in hung
        )

    # --- what others ask of the keeper ------------------------------------------------------------

    def nectar(self) -> float:
        """The share of the stores that is thin today."""
        return min(0.55, self.year.flow_kg.on(self.clock.day) * 0.6)

    def hive(self, colony_id: ColonyId) -> HiveDay:
        """The hive of a colony as it stands today."""
        hive = self.book.read.hive_day(colony_id, self.clock.day)
        if hive is None:
            raise LookupError(f"colony {colony_id} lives in no hive on {self.clock.day}")
        return hive

    def combs(self, colony: InHand) -> list[PlacedFrame]:
        """The combs of the brood box."""
        return [
            placed
            for placed in self.hive(colony.colony_id).frames_of(colony.box_id)
            if placed.frame is not None
        ]

    def visit(self, colony: InHand) -> Visit | None:
        """Today's visit, if there was one."""
        return next(
            (visit for visit in self.book.read.visits(colony.colony_id) if visit.day == self.clock.day), None
        )

    def visit_id(self, colony: InHand) -> VisitId | None:
        """The id of today's visit, if there was one."""
        visit = self.visit(colony)
        return visit.id if visit else None

    def settle(self, colony: InHand) -> None:
        """What was due by today besides looks has been done."""
        for due in self.book.read.dues(colony_id=colony.colony_id):
            if due.kind is not DueKind.LOOK and (due.until or due.day) <= self.clock.day:
                self.do(DoDue(due.id))

    # --- rounds -----------------------------------------------------------------------------------

    def _round(self, told: dict[str, Any]) -> None:
        hour, minute = map(int, told["at"].split(":"))
        round_id: RoundId = self.do(
            BeginRound(
                self.apiaries[told["apiary"]],
                self.clock.day,
                time(hour, minute),
                told["weather"],
                float(told["t"]),
                told.get("who", ""),
                told["flowering"],
            )
        )
        for colony in self._standing(told["apiary"]):
            look(self, colony, round_id, told)
        for arriving in self.told["colonies"]:
            if (
                arriving["came_on"] == told["day"]
                and "from" in arriving
                and arriving["apiary"] == told["apiary"]
            ):
                self._split_off(arriving)
                look(self, self.colonies[arriving["key"]], round_id, told)

    def _standing(self, apiary: str) -> list[InHand]:
        """The colonies of an apiary in stand order."""
        by_id = {colony.colony_id: colony for colony in self.colonies.values() if not colony.gone}
        standing = self.book.read.standing(self.apiaries[apiary], self.clock.day)
        return [by_id[place.colony.id] for place in standing if place.colony and place.colony.id in by_id]

    def _split_off(self, told: dict[str, Any]) -> None:
        self._arrive(told)
        split_off(self, self.colonies[told["from"]], self.colonies[told["key"]])

    # --- the end ----------------------------------------------------------------------------------

    def _put_down_dues(self) -> None:
        for told in self.told["dues"]:
            colony = self.colonies.get(told.get("colony", ""))
            self.do(
                AddDue(
                    DueKind(told["kind"]),
                    date.fromisoformat(told["day"]),
                    told["reason"],
                    colony.colony_id if colony else None,
                    self.apiaries[told["apiary"]] if "apiary" in told else None,
                    date.fromisoformat(told["until"]) if "until" in told else None,
                )
            )
