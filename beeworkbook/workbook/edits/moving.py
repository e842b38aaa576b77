"""All that was noted in a visit, brought to another colony or day."""

from dataclasses import replace
from datetime import date
from typing import Final

from beeworkbook.colony.records import (
    Answer,
    ColonyId,
    Due,
    DueState,
    Event,
    Feed,
    Frame,
    FrameId,
    FrameStay,
    Level,
    Mark,
    PartId,
    RoundId,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.edits.exchanging import move_combs
from beeworkbook.workbook.edits.looking import raise_level
from beeworkbook.workbook.edits.sides import other_frames
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import boxes_of, frame_in, place_of_comb, stay_of_frame, the

_Comb = tuple[FrameId, PartId, int]
_OWN_FIELDS: Final = ("note", "next_day", "next_reason")


def combs_of(tx: Transaction, visit: Visit) -> set[tuple[FrameId, PartId]]:
    """The combs something was noted of in a visit, and the boxes they hung in."""
    sides, marks = tx.find(Side, visit_id=visit.id), tx.find(Mark, visit_id=visit.id)
    frames = {side.frame_id for side in sides} | {mark.frame_id for mark in marks if mark.frame_id}
    return {(frame_id, place_of_comb(tx, visit, frame_id)[0]) for frame_id in frames}


def reopen_dues(tx: Transaction, visit: Visit) -> None:
    """What this visit had done is due again."""
    for due in tx.find(Due, done_visit_id=visit.id):
        if due.state is DueState.DONE:
            tx.put(replace(due, state=DueState.OPEN, done_visit_id=None))


def bring(tx: Transaction, visit: Visit, colony_id: ColonyId, day: date, round_id: RoundId | None) -> Visit:
    """The visit as it is at another colony or day; one that is there is added to.

    Errors: RefusedError if both speak of the same, or a comb has no counterpart.
    """
    target = next(iter(tx.find(Visit, colony_id=colony_id, day=day)), None)
    combs = {
        frame_id: _counterpart(tx, visit, frame_id, colony_id, day)
        for frame_id, _ in sorted(combs_of(tx, visit))
    }
    if target is None:
        target = replace(visit, colony_id=colony_id, day=day, round_id=round_id)
        tx.put(target)
    else:
        target = _joined(tx, visit, target, combs)
    for frame_id, (to_frame, to_part, to_place) in combs.items():
        _bring_comb(tx, visit.id, frame_id, target.id, (to_frame, to_part, to_place))
    _bring_facts(tx, visit, target)
    if target.id != visit.id:
        tx.remove(Visit, visit.id)
    return target


def _counterpart(tx: Transaction, visit: Visit, frame_id: FrameId, colony_id: ColonyId, day: date) -> _Comb:
    """The comb that is meant: the same one on another day, or the one in the same place of the other hive."""
    part_id, place = place_of_comb(tx, visit, frame_id)
    if colony_id == visit.colony_id:
        stay = stay_of_frame(tx, frame_id, day)
        return (frame_id, stay.part_id, stay.place) if stay else (frame_id, part_id, place)
    boxes = [part.id for part in boxes_of(tx, visit.colony_id, visit.day)]
    others = boxes_of(tx, colony_id, day)
    number = boxes.index(part_id) if part_id in boxes else 0
    found: FrameStay | None = None
    if number < len(others):
        found = frame_in(tx, others[number].id, place, day)
    if found is None:
        raise RefusedError(say("The other hive has no comb in place {place}.", place=place))
    one, other = the(tx, Frame, frame_id), the(tx, Frame, found.frame_id)
    if one.frame_type != other.frame_type:
        raise RefusedError(other_frames(tx, one.frame_type, other.frame_type))
    return found.frame_id, found.part_id, found.place


def _bring_comb(tx: Transaction, visit_id: VisitId, frame_id: FrameId, to_visit: VisitId, to: _Comb) -> None:
    to_frame, to_part, to_place = to
    if (visit_id, frame_id) != (to_visit, to_frame):
        move_combs(tx, visit_id, frame_id, to_visit, to_frame, to_part=to_part, to_place=to_place)
        return
    for side in tx.find(Side, visit_id=visit_id, frame_id=frame_id):
        tx.put(replace(side, part_id=to_part, place=to_place))


def _bring_facts(tx: Transaction, visit: Visit, target: Visit) -> None:
    for event in tx.find(Event, visit_id=visit.id):
        tx.put(replace(event, visit_id=target.id, colony_id=target.colony_id, day=target.day))
    for feed in tx.find(Feed, visit_id=visit.id):
        tx.put(replace(feed, visit_id=target.id, colony_id=target.colony_id, day=target.day))
    for feed in tx.find(Feed, left_visit_id=visit.id):
        tx.put(replace(feed, left_visit_id=target.id, left_day=target.day))
    for due in tx.find(Due, visit_id=visit.id):
        tx.put(replace(due, visit_id=target.id, colony_id=target.colony_id))
    if target.id == visit.id:
        return
    for answer in tx.find(Answer, visit_id=visit.id):
        tx.put(replace(answer, visit_id=target.id))
    for mark in tx.find(Mark, visit_id=visit.id):
        tx.put(replace(mark, visit_id=target.id))


def _joined(tx: Transaction, visit: Visit, target: Visit, combs: dict[FrameId, _Comb]) -> Visit:
    """The visit that is there with what the other adds. Errors: RefusedError if both say the same thing."""
    asked = {answer.question for answer in tx.find(Answer, visit_id=target.id)}
    clash = any(answer.question in asked for answer in tx.find(Answer, visit_id=visit.id))
    noted = {frame_id for frame_id, _ in combs_of(tx, target)}
    clash = clash or any(to_frame in noted for to_frame, _, _ in combs.values())
    clash = clash or any(getattr(visit, name) and getattr(target, name) for name in _OWN_FIELDS)
    clash = clash or bool(tx.find(Feed, visit_id=visit.id) and tx.find(Feed, visit_id=target.id))
    if clash:
        raise RefusedError(
            say("That colony has a visit on that day which speaks of the same. Clear one of them first.")
        )
    level = visit.level if visit.level is not Level.PASSED_OVER else target.level
    joined = replace(
        target,
        **{name: getattr(target, name) or getattr(visit, name) for name in (*_OWN_FIELDS, "at", "who")},
    )
    if joined != target:
        tx.put(joined)
    return raise_level(tx, joined, level)
