"""The hand goes along the line and down the stands, past what is not asked."""

from collections.abc import Mapping
from datetime import date

from beeworkbook.colony.records import (
    Answer,
    AnswerId,
    Arrival,
    Colony,
    ColonyId,
    Feed,
    FeedId,
    FeedKind,
    Question,
    Reply,
    Stand,
    StandId,
    VisitId,
)
from beeworkbook.colony.sentences import Field
from beeworkbook.rounds.field import TARGETS
from beeworkbook.rounds.row import Noted, Row
from beeworkbook.rounds.walk import Spot, Step, first_spot, nearest_spot, step_from

DAY = date(2026, 5, 16)
ONE, TWO, THREE = ColonyId(1), ColonyId(2), ColonyId(3)


def _row(colony_id: ColonyId, answers: Mapping[Question, Answer] | None = None, *, fed: bool = False) -> Row:
    colony = Colony(colony_id, "Wall", Arrival.SWARM, DAY)
    feed = Feed(FeedId(1), colony_id, DAY, FeedKind.SYRUP) if fed else None
    stand = Stand(StandId(1), None, "1")  # type: ignore[arg-type] # no apiary is asked for here
    return Row(colony, stand, DAY, Noted(answers=answers or {}), feed_before=feed)


SHUT = {Question.OPENED: Answer(AnswerId(1), VisitId(1), Question.OPENED, "n", Reply.NO)}
ROWS = (_row(ONE), _row(TWO, SHUT), _row(THREE, fed=True))


def test_on_goes_through_every_field_of_every_line_and_back_again() -> None:
    spot: Spot | None = first_spot(ROWS[0], TARGETS)
    walked = []
    while spot is not None:
        walked.append(spot)
        spot = step_from(ROWS, TARGETS, spot, Step.ON)
    assert [spot.target for spot in walked if spot.colony_id == ONE] == [
        target for target in TARGETS if target is not Field.LEFT
    ]
    assert Spot(TWO, Question.EGGS) not in walked
    assert Spot(THREE, Field.LEFT) in walked
    back: list[Spot] = []
    spot = walked[-1]
    while spot is not None:
        back.append(spot)
        spot = step_from(ROWS, TARGETS, spot, Step.BACK)
    assert back == walked[::-1]


def test_enter_goes_to_the_first_field_of_the_next_colony() -> None:
    assert step_from(ROWS, TARGETS, Spot(ONE, Question.TEMPER), Step.NEXT_COLONY) == Spot(
        TWO, Question.OPENED
    )
    assert step_from(ROWS, TARGETS, Spot(THREE, Question.OPENED), Step.NEXT_COLONY) is None


def test_up_and_down_keep_the_column_where_it_is_asked() -> None:
    assert step_from(ROWS, TARGETS, Spot(ONE, Question.EGGS), Step.DOWN) == Spot(TWO, Question.OPENED)
    assert step_from(ROWS, TARGETS, Spot(ONE, Question.STORES), Step.DOWN) == Spot(TWO, Question.STORES)
    assert step_from(ROWS, TARGETS, Spot(THREE, Field.NEXT), Step.UP) == Spot(TWO, Field.NEXT)
    assert step_from(ROWS, TARGETS, Spot(ONE, Field.NEXT), Step.UP) is None


def test_a_column_left_out_is_stepped_over() -> None:
    columns = tuple(target for target in TARGETS if target is not Question.EGGS)
    assert step_from(ROWS, columns, Spot(ONE, Question.OPENED), Step.ON) == Spot(ONE, Question.YOUNG)
    assert nearest_spot(ROWS[0], columns, Question.EGGS) == Spot(ONE, Question.OPENED)
    later = columns[1:]
    assert nearest_spot(ROWS[0], later, Question.OPENED) == Spot(ONE, Question.YOUNG)
    assert nearest_spot(ROWS[0], (), Question.OPENED) is None


def test_a_colony_that_is_not_here_leads_nowhere() -> None:
    assert step_from(ROWS, TARGETS, Spot(ColonyId(9), Question.EGGS), Step.ON) is None
