from dataclasses import replace

import pytest

from beeworkbook.colony.records import Event, EventId, EventKind, Queen, QueenId
from beeworkbook.workbook.edits import AddEvent, AddStand, ChangeEvent, MoveColony, QueenSpec, RemoveEvent
from beeworkbook.workbook.edits.events import event_words
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, as_int, days_on


def _event(keeping: Keeping, event_id: object) -> Event:
    found = keeping.book.read.get(Event, event_id)
    assert found is not None
    return found


def test_an_event_is_a_dated_line(keeping: Keeping) -> None:
    made = keeping.book.do(
        AddEvent(keeping.colony, LOOK, EventKind.NOTE, "moved the entrance block", keeping.visit)
    )
    event = _event(keeping, made)
    assert (event.day, event.text, event.visit_id) == (LOOK, "moved the entrance block", keeping.visit)
    assert keeping.book.undo_label == "Wall: note"


def test_a_queen_that_came_is_made_and_one_that_was_marked_is_changed(keeping: Keeping) -> None:
    spec = QueenSpec(name="R7", mark_colour="blue", year=2025)
    came = _event(keeping, keeping.book.do(AddEvent(keeping.colony, LOOK, EventKind.QUEEN_CAME, queen=spec)))
    queen = keeping.book.read.get(Queen, came.queen_id)
    assert queen is not None
    assert (queen.name, queen.mark_colour, queen.year, queen.clipped) == ("R7", "blue", 2025, None)
    marked = AddEvent(
        keeping.colony,
        LATER,
        EventKind.QUEEN_MARKED,
        queen_id=queen.id,
        queen=replace(spec, mark_text="41"),
    )
    event = _event(keeping, keeping.book.do(marked))
    assert event.queen_id == queen.id
    again = keeping.book.read.get(Queen, queen.id)
    assert again is not None
    assert again.mark_text == "41"
    assert keeping.book.do(AddEvent(keeping.colony, LATER, EventKind.QUEEN_SEEN, queen_id=queen.id))


def test_a_colony_that_died_stands_there_that_day_and_no_longer(keeping: Keeping) -> None:
    before = keeping.everything()
    made = EventId(as_int(keeping.book.do(AddEvent(keeping.colony, LOOK, EventKind.DIED))))
    assert keeping.book.read.home(keeping.colony, LOOK) is not None
    assert keeping.book.read.home(keeping.colony, days_on(LOOK, 1)) is None
    with pytest.raises(RefusedError, match="no hive"):
        keeping.book.do(AddEvent(keeping.colony, LATER, EventKind.SOLD))
    keeping.book.do(RemoveEvent(made))
    assert keeping.book.read.home(keeping.colony, LATER) is not None
    assert keeping.everything() == before


def test_an_end_taken_back_leaves_earlier_homes_alone(keeping: Keeping) -> None:
    stand = as_int(keeping.book.do(AddStand(keeping.book.read.apiaries()[0].id, "by the wall")))
    keeping.book.do(MoveColony(keeping.colony, stand, LOOK))  # type: ignore[arg-type]
    before = keeping.everything()
    made = EventId(as_int(keeping.book.do(AddEvent(keeping.colony, LATER, EventKind.DIED))))
    keeping.book.do(RemoveEvent(made))
    assert keeping.everything() == before


def test_the_day_of_an_end_can_be_changed(keeping: Keeping) -> None:
    made = keeping.book.do(AddEvent(keeping.colony, LOOK, EventKind.SOLD))
    event = _event(keeping, made)
    keeping.book.do(ChangeEvent(replace(event, day=LATER)))
    home = keeping.book.read.home(keeping.colony, LATER)
    assert home is not None
    assert home.until == days_on(LATER, 1)
    keeping.book.do(ChangeEvent(replace(event, kind=EventKind.NOTE)))
    assert keeping.book.read.home(keeping.colony, days_on(LATER, 5)) is not None
    with pytest.raises(RefusedError):
        keeping.book.do(ChangeEvent(replace(event, day=days_on(CAME, -5))))


def test_an_end_cannot_be_taken_back_once_the_hive_has_new_bees(keeping: Keeping) -> None:
    made = EventId(as_int(keeping.book.do(AddEvent(keeping.colony, LOOK, EventKind.DIED))))
    other = keeping.another()
    old = next(
        home
        for home in keeping.everything()[type(keeping.book.read.home(other, LATER))]  # type: ignore[index]
        if home.colony_id == keeping.colony  # type: ignore[union-attr]
    )
    keeping.book.do(MoveColony(other, old.stand_id, LATER, old.hive_id))  # type: ignore[union-attr]
    with pytest.raises(RefusedError, match="has lived in that hive since"):
        keeping.book.do(RemoveEvent(made))


def test_words_typed_into_an_event_are_one_step(keeping: Keeping) -> None:
    made = keeping.book.do(AddEvent(keeping.colony, LOOK, EventKind.NOTE))
    steps = len(keeping.book._history)
    for text in ("q", "qu", "quiet"):
        keeping.book.do(ChangeEvent(replace(_event(keeping, made), text=text), "text"))
    assert len(keeping.book._history) == steps + 1


def test_every_event_has_a_name() -> None:
    assert len({event_words(kind) for kind in EventKind}) == len(EventKind)
    assert QueenSpec(name="R7").record(QueenId(3)).id == 3
