"""What comes after the last comb of a box: the box above it, or the line of the round.

Only says where it leads and goes there; when that is asked is the key line's and the box's.
"""

from dataclasses import dataclass

from beeworkbook.colony.records import FrameId, PartId
from beeworkbook.qt.desk import Desk, View
from beeworkbook.words import say


@dataclass(frozen=True)
class Beyond:
    """Where Enter leads past the last comb; part_id None is the line of the round."""

    part_id: PartId | None
    frame_id: FrameId | None = None

    @property
    def words(self) -> str:
        """What it is, to be told before the keeper goes there."""
        if self.part_id is None:
            return say("That was the last comb. Enter again goes back to the line.")
        return say("That was the last comb of this box. Enter again goes to the box above.")


def beyond_last_comb(desk: Desk) -> Beyond | None:
    """Where Enter leads from the comb in hand; None if it is not the last one, or nothing comes after it."""
    hive, box, spot = desk.hive_day(), desk.box(), desk.spot
    frames = [placed.frame.id for placed in box.frames if placed.frame is not None] if box else []
    if hive is None or box is None or not frames or spot.frame_id != frames[-1]:
        return None
    boxes = [held.part.id for held in hive.brood_boxes]
    above = boxes.index(box.part.id) + 1 if box.part.id in boxes else len(boxes)
    for held in hive.brood_boxes[above:]:
        first = next((placed.frame.id for placed in held.frames if placed.frame is not None), None)
        if first is not None:
            return Beyond(held.part.id, first)
    rounds = desk.book.read.rounds(spot.apiary_id) if spot.apiary_id is not None else ()
    return Beyond(None) if any(held.day == spot.day for held in rounds) else None


def go_beyond(desk: Desk) -> bool:
    """Go past the last comb; whether there was somewhere to go."""
    leads = beyond_last_comb(desk)
    if leads is None:
        return False
    if leads.part_id is None:
        desk.go(view=View.ROUND)
    else:
        desk.go(part_id=leads.part_id, frame_id=leads.frame_id)
    return True
