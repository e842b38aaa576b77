"""How the boxes of a hive are told apart where a sentence names a comb: comb 4 alone may be two combs."""

from collections.abc import Mapping

from beeworkbook.colony.hive import HiveDay, PartDay
from beeworkbook.colony.records import FrameId, PartId, PartKind
from beeworkbook.words import say


def box_title(hive: HiveDay, part_id: PartId) -> str:
    """A box by the name it has in this hive: "brood box", "upper brood box", "super 2", or its own.

    Errors: KeyError if it does not stand here.
    """
    part = {box.part.id: box.part for box in hive.boxes}[part_id]
    if part.name:
        return part.name
    brood = [box.part.id for box in hive.brood_boxes]
    kinds = brood if part_id in brood else [box.part.id for box in hive.boxes if box.part.id not in brood]
    at = kinds.index(part_id)
    if len(kinds) == 1:
        return kind_words(part.kind)
    if part.kind is PartKind.BROOD_BOX and len(kinds) == 2:
        return say("upper brood box") if at else say("lower brood box")
    return say("{box} {number}", box=kind_words(part.kind), number=at + 1)


def kind_words(kind: PartKind) -> str:
    """What a kind of box is called: "brood box"."""
    if kind is PartKind.SUPER:
        return say("super")
    return say("nucleus box") if kind is PartKind.NUCLEUS_BOX else say("brood box")


def box_of_frames(hive: HiveDay | None) -> Mapping[FrameId, str]:
    """For every frame in a box that has to be named, what is said behind its number: "in the upper box".

    A brood box that stands alone needs no name.
    """
    if hive is None:
        return {}
    brood = hive.brood_boxes
    supers = tuple(box for box in hive.boxes if box.part.kind is PartKind.SUPER)
    words = {box.part.id: _brood_words(brood, at) for at, box in enumerate(brood)}
    words |= {box.part.id: _super_words(supers, at) for at, box in enumerate(supers)}
    return {
        placed.frame.id: words[box.part.id]
        for box in hive.boxes
        for placed in box.frames
        if words[box.part.id] and placed.frame is not None
    }


def _brood_words(boxes: tuple[PartDay, ...], at: int) -> str:
    """One of the brood boxes, counted from the ground."""
    if len(boxes) == 1:
        return ""
    if boxes[at].part.name:
        return say("in {box}", box=boxes[at].part.name)
    if len(boxes) == 2:  # as people say it, and as they lift them off
        return say("in the upper box") if at else say("in the lower box")
    return say("in box {number}", number=at + 1)


def _super_words(boxes: tuple[PartDay, ...], at: int) -> str:
    """One of the supers, counted from the ground."""
    if boxes[at].part.name:
        return say("in {box}", box=boxes[at].part.name)
    return say("in the super") if len(boxes) == 1 else say("in super {number}", number=at + 1)
