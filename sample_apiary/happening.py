"""What happens to a colony on a day of the sample: supers, feed, swarms, queens, a box outgrown, the end."""

from collections.abc import Callable
from datetime import date
from typing import TYPE_CHECKING, Any, Final

from beeworkbook.colony.feeding import taken
from beeworkbook.colony.plans import feed_look
from beeworkbook.colony.records import EventKind, Feed, FeedKind, FrameId, PartId, PartKind
from beeworkbook.colony.syrup import sugar_kg
from beeworkbook.workbook.edits.dues import AddDue, DropDue
from beeworkbook.workbook.edits.events import AddEvent, QueenSpec
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft
from beeworkbook.workbook.edits.frames import AddFrame, MoveFrame
from beeworkbook.workbook.edits.hive import AddPart, MoveColony, TakePart
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from sample_apiary.colony_in_hand import InHand
from sample_apiary.season import STAY

if TYPE_CHECKING:
    from sample_apiary.keeper import Keeper

_STORES_OF_SUGAR: Final = 1.1
"""Stores from a kilogram of sugar. Source: common practice, no source (1.075 is published)."""
_FULL_PLACES: Final = 11


def happen(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    """Let one thing happen."""
    _DEEDS[told["what"]](keeper, colony, told)


def _super(keeper: "Keeper", colony: InHand, _told: dict[str, Any]) -> None:
    day = keeper.clock.day
    if colony.excluder is None:
        colony.excluder = keeper.do(AddPart(colony.hive_id, PartKind.EXCLUDER, day))
    frame, places = colony.told["super_frame"], int(colony.told["super_places"])
    made: PartId = keeper.do(AddPart(colony.hive_id, PartKind.SUPER, day, frame_type=frame, places=places))
    # Hung one by one, since nothing is noted of a super that has only been put on.
    keeper.do(Together(tuple(AddFrame(made, place, day) for place in range(1, places + 1)), "super"))
    colony.supers.append(made)
    colony.bees.super_kg.append(0.0)
    colony.bees.super_dm2 = colony.super_dm2


def _take_supers(keeper: "Keeper", colony: InHand, _told: dict[str, Any]) -> None:
    day = keeper.clock.day
    for part_id in reversed(colony.supers):
        keeper.do(TakePart(part_id, day))
    for also in (colony.clearer, colony.excluder):
        if also is not None:
            keeper.do(TakePart(also, day))
    colony.supers.clear()
    colony.bees.super_kg.clear()
    colony.excluder = colony.clearer = None


def _clear(keeper: "Keeper", colony: InHand, _told: dict[str, Any]) -> None:
    """A clearer board under the supers, so that the bees are out of them a day later."""
    stack = keeper.hive(colony.colony_id).stack
    level = next(number for number, part in enumerate(stack) if part.part.id == colony.supers[0])
    colony.clearer = keeper.do(AddPart(colony.hive_id, PartKind.CLEARER_BOARD, keeper.clock.day, level=level))


def _feed(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    day, visit_id = keeper.clock.day, keeper.visit_id(colony)
    if colony.feeder is None:
        colony.feeder = keeper.do(AddPart(colony.hive_id, PartKind.FEEDER, day))
    colony.feed_id = keeper.do(GiveFeed(colony.colony_id, day, told["typed"], visit_id))
    remember_feed(keeper, colony)
    due = feed_look(day, told["typed"])
    keeper.do(AddDue(due.kind, due.day, due.reason, colony.colony_id, until=due.until, visit_id=visit_id))


def remember_feed(keeper: "Keeper", colony: InHand) -> None:
    """The last feed of a colony is in the feeder, and its bees take it in the days that follow."""
    feed = max(keeper.book.read.feeds(colony.colony_id), key=lambda feed: feed.id)
    colony.feed_id = feed.id
    sugar = _sugar(feed)
    colony.bees.fed_kg += sugar * _STORES_OF_SUGAR


def _sugar(feed: Feed) -> float:
    if feed.kind is FeedKind.FONDANT:
        return (feed.given_kg or 0.0) * 0.8
    return sugar_kg(feed) or 0.0


def _left(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    if colony.feed_id is None:
        raise LookupError(f"{colony.key} was not fed before {told['day']}")
    keeper.do(SetFeedLeft(colony.feed_id, told["typed"], keeper.clock.day, keeper.visit_id(colony)))
    feed = keeper.book.read.get(Feed, colony.feed_id)
    if feed is None or taken(feed) is None:
        raise LookupError(f"what {colony.key} took was not understood on {told['day']}")


def _feeder_off(keeper: "Keeper", colony: InHand, _told: dict[str, Any]) -> None:
    if colony.feeder is not None:
        keeper.do(TakePart(colony.feeder, keeper.clock.day))
    colony.feeder = None


def _swarm(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    _event(keeper, colony, EventKind.SWARMED, told)
    colony.bees.bees *= STAY
    colony.bees.stores_kg *= 0.8
    colony.virgin_since = keeper.clock.day
    colony.clipped = None


def _queen_out(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    _event(keeper, colony, EventKind.NOTE, {**told, "text": f"queen out of her cage: {told['text']}"})


def _queen_gone(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    _event(keeper, colony, EventKind.QUEEN_GONE, told)
    colony.clipped = None


def _new_queen(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    spec = QueenSpec(**told["queen"])
    visit_id = keeper.visit_id(colony)
    keeper.do(
        AddEvent(colony.colony_id, keeper.clock.day, EventKind.QUEEN_CAME, told["text"], visit_id, queen=spec)
    )
    colony.clipped = spec.clipped
    colony.virgin_since = None


def _mark_queen(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    events = keeper.book.read.events(colony.colony_id)
    came = [event for event in events if event.kind is EventKind.QUEEN_CAME]
    keeper.do(
        AddEvent(
            colony.colony_id,
            keeper.clock.day,
            EventKind.QUEEN_MARKED,
            told["text"],
            keeper.visit_id(colony),
            came[-1].queen_id,
            queen=QueenSpec(**told["queen"]),
        )
    )


def _died(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    _event(keeper, colony, EventKind.DIED, told)
    for due in keeper.book.read.dues(colony_id=colony.colony_id):
        keeper.do(DropDue(due.id))
    colony.gone = True


def _move(keeper: "Keeper", colony: InHand, told: dict[str, Any]) -> None:
    stand_id = keeper.stands[told["apiary"], told["stand"]]
    keeper.do(MoveColony(colony.colony_id, stand_id, keeper.clock.day))


def _into_hive(keeper: "Keeper", colony: InHand, _told: dict[str, Any]) -> None:
    """Out of the nucleus box into a full one: the same order, the same way round, new frames beside them."""
    day = keeper.clock.day
    old = keeper.combs(colony)
    box: PartId = keeper.do(
        AddPart(
            colony.hive_id,
            PartKind.BROOD_BOX,
            day,
            frame_type=colony.told["frame"],
            places=_FULL_PLACES,
        )
    )
    first = (_FULL_PLACES - len(old)) // 2 + 1
    for placed in old:
        if placed.frame is not None:
            keeper.do(MoveFrame(placed.frame.id, box, first + placed.place - 1, day))
    keeper.do(TakePart(colony.box_id, day))
    colony.box_id = box
    colony.bees.places = _FULL_PLACES
    for place in range(1, _FULL_PLACES + 1):
        if not first <= place < first + len(old):
            _hang_foundation(keeper, colony, place)


def _hang_foundation(keeper: "Keeper", colony: InHand, place: int) -> None:
    """A new frame in a free place, noted in today's visit if there is one."""
    frame_id: FrameId = keeper.do(AddFrame(colony.box_id, place, keeper.clock.day))
    visit_id = keeper.visit_id(colony)
    if visit_id is not None:
        keeper.do(LayOutComb(visit_id, frame_id, "F"))
        colony.seen[frame_id] = "F"


def split_off(keeper: "Keeper", mother: InHand, daughter: InHand) -> None:
    """Three combs with bees, brood and cells go from one hive to the other; new frames take their places."""
    day = keeper.clock.day
    combs = {placed.place: placed.frame for placed in keeper.combs(mother)}
    places = [int(place) for place in daughter.told["split_places"]]
    for at, place in enumerate(places):
        frame = combs[place]
        if frame is not None:
            keeper.do(MoveFrame(frame.id, daughter.box_id, at + 4, day))
    for place in range(1, daughter.bees.places + 1):
        if not 4 <= place < 4 + len(places):
            keeper.do(AddFrame(daughter.box_id, place, day))
    for place in places:
        keeper.do(AddFrame(mother.box_id, place, day))
    share = 0.36
    daughter.bees.worker = [cohort * share for cohort in mother.bees.worker]
    daughter.bees.drone = [cohort * share for cohort in mother.bees.drone]
    mother.bees.worker = [cohort * (1 - share) for cohort in mother.bees.worker]
    mother.bees.drone = [cohort * (1 - share) for cohort in mother.bees.drone]
    mother.bees.bees -= daughter.bees.bees
    mother.bees.stores_kg = max(2.0, mother.bees.stores_kg - daughter.bees.stores_kg)
    mother.bees.drawn -= len(places)
    keeper.do(
        AddEvent(
            mother.colony_id,
            day,
            EventKind.SPLIT,
            f"three combs with two charged cells made {daughter.told['name']}",
            keeper.visit_id(mother),
            other_colony_id=daughter.colony_id,
        )
    )


def _event(keeper: "Keeper", colony: InHand, kind: EventKind, told: dict[str, Any]) -> None:
    day = date.fromisoformat(told["day"])
    keeper.do(AddEvent(colony.colony_id, day, kind, told.get("text", ""), keeper.visit_id(colony)))


_DEEDS: Final[dict[str, Callable[["Keeper", InHand, dict[str, Any]], None]]] = {
    "super": _super,
    "clear": _clear,
    "take_supers": _take_supers,
    "feed": _feed,
    "left": _left,
    "feeder_off": _feeder_off,
    "swarm": _swarm,
    "queen_out": _queen_out,
    "queen_gone": _queen_gone,
    "new_queen": _new_queen,
    "mark": _mark_queen,
    "died": _died,
    "move": _move,
    "into_hive": _into_hive,
}
