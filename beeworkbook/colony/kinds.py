"""The words a record may hold where only some will do: kinds, states, questions.

Their values are written into every workbook and are fixed for ever. Use them from records.py, beside
the records they belong to.
"""

from enum import StrEnum


class Way(StrEnum):
    """How the combs stand to the entrance."""

    COLD = "cold"
    WARM = "warm"


class PartKind(StrEnum):
    """The parts a hive is stacked from, in their usual order from the ground up."""

    STAND = "stand"
    FLOOR = "floor"
    NUCLEUS_BOX = "nucleus_box"
    BROOD_BOX = "brood_box"
    EXCLUDER = "excluder"
    SUPER = "super"
    CLEARER_BOARD = "clearer_board"
    CROWN_BOARD = "crown_board"
    FEEDER = "feeder"
    LIFT = "lift"
    ROOF = "roof"


BOXES = frozenset({PartKind.NUCLEUS_BOX, PartKind.BROOD_BOX, PartKind.SUPER})
"""The parts that hold frames."""


class FrameMake(StrEnum):
    """What hangs in a frame place."""

    FRAME = "frame"
    DUMMY = "dummy"


class Arrival(StrEnum):
    """How a colony came."""

    NUCLEUS = "nucleus"
    PACKAGE = "package"
    SWARM = "swarm"
    BOUGHT = "bought"
    SPLIT = "split"
    UNKNOWN = "unknown"


class Level(StrEnum):
    """How far the look went."""

    NOT_OPENED = "not_opened"
    ONE_LINE = "one_line"
    BY_COMB = "by_comb"
    BY_SIDE = "by_side"
    PAINTED = "painted"
    PASSED_OVER = "passed_over"


class Reply(StrEnum):
    """A reply to a question. Blank is a fourth thing: no answer record at all, or reply None."""

    YES = "yes"
    NO = "no"
    NOT_LOOKED = "not_looked"


class Question(StrEnum):
    """The columns of a round, in the order they are asked and printed."""

    OPENED = "opened"
    EGGS = "eggs"
    YOUNG = "young"
    BROOD = "brood"
    POLLEN = "pollen"
    SEAMS = "seams"
    STORES = "stores"
    CELLS = "cells"
    QUEEN = "queen"
    TEMPER = "temper"
    ROOM = "room"
    DRAWN = "drawn"
    SIGNS = "signs"


class EventKind(StrEnum):
    """What happened to a colony on a day."""

    ARRIVED = "arrived"
    QUEEN_CAME = "queen_came"
    QUEEN_SEEN = "queen_seen"
    QUEEN_MARKED = "queen_marked"
    QUEEN_GONE = "queen_gone"
    SWARMED = "swarmed"
    SPLIT = "split"
    UNITED = "united"
    DIED = "died"
    SOLD = "sold"
    HEFT = "heft"
    MOVED = "moved"
    NOTE = "note"


ENDINGS = frozenset({EventKind.UNITED, EventKind.DIED, EventKind.SOLD})
"""The events after which a colony no longer stands."""


class FeedKind(StrEnum):
    """What was fed."""

    SYRUP = "syrup"
    FONDANT = "fondant"
    DRY_SUGAR = "dry_sugar"
    POLLEN = "pollen"
    OTHER = "other"


class DueKind(StrEnum):
    """What is due on a day."""

    LOOK = "look"
    FEED_LOOK = "feed_look"
    FIRST_LOOK = "first_look"
    QUEEN_CAGE = "queen_cage"
    LEAVE_SHUT = "leave_shut"
    BRING = "bring"
    OTHER = "other"


class DueState(StrEnum):
    """What became of a due."""

    OPEN = "open"
    DONE = "done"
    DROPPED = "dropped"
