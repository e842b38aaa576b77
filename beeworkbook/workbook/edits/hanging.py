"""Frames in their places through the years: stays changed or ended from a day on, no two in one place."""

from dataclasses import replace
from datetime import date

from beeworkbook.colony.hive import overlap
from beeworkbook.colony.records import FrameId, FrameStay, FrameStayId, Part, PartId
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import date_words, say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import frame_in, stay_of_frame


def change_from(
    tx: Transaction,
    stay: FrameStay,
    day: date,
    *,
    part_id: PartId | None = None,
    place: int | None = None,
    turned: bool | None = None,
) -> FrameStay:
    """The stay as it is from this day on, the days before left as they were.

    Changed on its first day it is changed as a whole, and joined to the one before if that is now
    the same, so that no stay is empty.
    """
    changed = replace(
        stay,
        part_id=stay.part_id if part_id is None else part_id,
        place=stay.place if place is None else place,
        turned=stay.turned if turned is None else turned,
    )
    if changed == stay:
        return stay
    if stay.since < day:
        tx.put(replace(stay, until=day))
        return tx.add(replace(changed, id=FrameStayId(0), since=day))
    before = _just_before(tx, changed)
    if before is not None:
        tx.remove(FrameStay, stay.id)
        changed = replace(before, until=changed.until)
    tx.put(changed)
    return changed


def _just_before(tx: Transaction, stay: FrameStay) -> FrameStay | None:
    """The stay that ends where this one begins, in the same place and the same way round."""
    return next(
        (
            other
            for other in tx.find(FrameStay, frame_id=stay.frame_id)
            if other.until == stay.since
            and (other.part_id, other.place, other.turned) == (stay.part_id, stay.place, stay.turned)
        ),
        None,
    )


def end_on(tx: Transaction, stay: FrameStay, day: date) -> None:
    """The stay no longer holds on this day; one that would be empty goes."""
    if stay.since >= day:
        tx.remove(FrameStay, stay.id)
    else:
        tx.put(replace(stay, until=day))


def hang(
    tx: Transaction, frame_id: FrameId, part_id: PartId, place: int, day: date, *, turned: bool = False
) -> FrameStay:
    """Hang a frame that hangs nowhere on this day, until it is known to hang elsewhere."""
    later = [stay.since for stay in tx.find(FrameStay, frame_id=frame_id) if stay.since > day]
    until = min(later, default=None)
    return tx.add(FrameStay(FrameStayId(0), frame_id, part_id, place, day, until, turned))


def put_in(tx: Transaction, frame_id: FrameId, part: Part, place: int, day: date) -> None:
    """A frame hangs in this place from a day on; one that hung there changes places with it.

    Errors: RefusedError if there is no such place, or none to change with, or a later stay clashes.
    """
    check_place(part, place)
    mine = stay_of_frame(tx, frame_id, day)
    other = frame_in(tx, part.id, place, day)
    if other is not None and other.frame_id == frame_id:
        return
    if other is not None and mine is None:
        raise RefusedError(say("Place {place} is taken by another frame.", place=place))
    touched: list[FrameStay] = []
    if mine is None:
        touched.append(hang(tx, frame_id, part.id, place, day))
    else:
        touched.append(change_from(tx, mine, day, part_id=part.id, place=place))
        if other is not None:
            touched.append(change_from(tx, other, day, part_id=mine.part_id, place=mine.place))
    for stay in touched:
        check_alone(tx, stay)


def check_place(part: Part, place: int) -> None:
    """Errors: RefusedError if this part has no such place."""
    if not 1 <= place <= part.places:
        raise RefusedError(
            say("This box has places 1 to {places}, and no place {place}.", places=part.places, place=place)
        )


def check_alone(tx: Transaction, stay: FrameStay) -> None:
    """Errors: RefusedError if another frame hangs in the same place on one of its days."""
    for other in tx.find(FrameStay, part_id=stay.part_id, place=stay.place):
        if other.id == stay.id or other.frame_id == stay.frame_id:
            continue
        if overlap(stay, other):
            first = max(stay.since, other.since)
            text = "Another frame hangs in place {place} from {day} on. Change that later day first."
            raise RefusedError(say(text, place=stay.place, day=date_words(first, "day_year")))
