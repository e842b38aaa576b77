from beeworkbook.colony.records import ApiaryId, ColonyId, Question
from beeworkbook.rounds.untaken import Untaken
from beeworkbook.rounds.walk import Spot
from tests.rounds.orchard import DAY


def test_two_texts_of_one_field_are_told_apart() -> None:
    spot = Spot(ColonyId(1), Question.EGGS)
    one = Untaken(ApiaryId(1), DAY, spot, "4-x", "That is no comb.")
    assert one == Untaken(ApiaryId(1), DAY, spot, "4-x", "That is no comb.")
    assert one != Untaken(ApiaryId(1), DAY, spot, "4-y", "That is no comb.")
