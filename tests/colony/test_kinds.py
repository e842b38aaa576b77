"""The words a record may hold are in every workbook: they may grow, and none may change or go."""

from beeworkbook.colony.kinds import (
    BOXES,
    ENDINGS,
    Arrival,
    DueKind,
    DueState,
    EventKind,
    FeedKind,
    FrameMake,
    Level,
    PartKind,
    Question,
    Reply,
    Way,
)

KEPT = {
    Way: "cold warm",
    PartKind: "stand floor nucleus_box brood_box excluder super clearer_board crown_board feeder lift roof",
    FrameMake: "frame dummy",
    Arrival: "nucleus package swarm bought split unknown",
    Level: "not_opened one_line by_comb by_side painted passed_over",
    Reply: "yes no not_looked",
    Question: "opened eggs young brood pollen seams stores cells queen temper room drawn signs",
    EventKind: "arrived queen_came queen_seen queen_marked queen_gone "
    "swarmed split united died sold heft moved note",
    FeedKind: "syrup fondant dry_sugar pollen other",
    DueKind: "look feed_look first_look queen_cage leave_shut bring other",
    DueState: "open done dropped",
}


def test_the_words_in_every_file_stay_as_they_are() -> None:
    for kind, words in KEPT.items():
        assert [member.value for member in kind] == words.split()


def test_only_boxes_hold_frames() -> None:
    assert {PartKind.NUCLEUS_BOX, PartKind.BROOD_BOX, PartKind.SUPER} == BOXES


def test_a_colony_ends_by_death_sale_or_uniting() -> None:
    assert {EventKind.DIED, EventKind.SOLD, EventKind.UNITED} == ENDINGS
