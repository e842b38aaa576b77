"""The sample is made again to the byte, opens whole, and has in it all the program is to be shown with."""

import json
from collections import Counter
from collections.abc import Iterator
from datetime import date
from io import BytesIO
from pathlib import Path
from typing import Final

import pytest

from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.hive import HiveDay
from beeworkbook.colony.records import (
    Arrival,
    Colony,
    DueState,
    Event,
    EventKind,
    Feed,
    Level,
    Mark,
    Part,
    PartKind,
    Round,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import MarkKind, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.workbook.exchange import import_book, write_document
from beeworkbook.workbook.workbook import Workbook
from sample_apiary.make_sample import SAMPLE, keep_sample
from sample_apiary.parameters import load_parameters

TODAY: Final = date(2026, 11, 25)
MOST_BYTES: Final = 3_000_000


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workbook]:
    path = tmp_path_factory.mktemp("sample") / "sample.beebook"
    import_book(SAMPLE, path)
    book = Workbook.open(path, today=TODAY)
    yield book
    book.close()


def colony(book: Workbook, name: str) -> Colony:
    (found,) = book.read.find(Colony, name=name)
    return found


def visit_on(book: Workbook, name: str, day: str) -> Visit:
    visits = book.read.visits(colony(book, name).id)
    return next(visit for visit in visits if visit.day == date.fromisoformat(day))


def hive_on(book: Workbook, name: str, day: str) -> HiveDay:
    hive = book.read.hive_day(colony(book, name).id, date.fromisoformat(day))
    assert hive is not None
    return hive


def worth(book: Workbook, visit_id: VisitId, frame: str) -> float:
    figures = visit_figures(book.read.visit_totals(visit_id), FRAME_TYPES[frame])
    assert figures.brood is not None
    assert figures.brood.worth is not None
    return figures.brood.worth


def test_it_is_made_again_to_the_byte(tmp_path: Path) -> None:
    made = keep_sample(tmp_path / "again.beebook")
    written = BytesIO()
    write_document(made.read, written)
    made.close()
    assert written.getvalue() == SAMPLE.read_bytes()


def test_it_is_named_a_sample_and_invented(book: Workbook) -> None:
    assert book.is_sample
    assert book.title == "Sample apiary (invented)"
    assert "invented" in load_parameters()["about"]
    assert SAMPLE.stat().st_size <= MOST_BYTES


def test_two_apiaries_two_standards_and_two_seasons(book: Workbook) -> None:
    assert len(book.read.apiaries()) == 2
    assert len(book.read.find(Colony)) >= 4
    brood_boxes = [part for part in book.read.find(Part) if part.kind is PartKind.BROOD_BOX]
    assert {part.frame_type for part in brood_boxes} == {"bs_deep", "zander"}
    by_year = Counter(each.day.year for each in book.read.find(Round))
    assert by_year[2025] > 20 < by_year[2026]
    assert max(each.day for each in book.read.find(Round)) < TODAY


def test_all_levels_of_looking(book: Workbook) -> None:
    levels = Counter(visit.level for visit in book.read.find(Visit))
    assert set(levels) == set(Level)
    assert levels[Level.PAINTED] >= 5


def test_every_way_a_side_comes_to_be(book: Workbook) -> None:
    assert {side.origin for side in book.read.find(Side)} == set(Origin)


def test_painted_combs_are_not_what_was_laid_out(book: Workbook) -> None:
    sides = book.read.find(Side, origin=Origin.PAINTED)
    assert len(sides) >= 20
    for side in sides:
        cells = unpack(side.cells, cells=FRAME_TYPES[side.frame_type].lattice.cells)
        assert len(set(cells.tolist())) >= 5


def test_the_nest_grows_and_shrinks(book: Workbook) -> None:
    spring, summer, autumn = (
        worth(book, visit_on(book, "Bramble", day).id, "bs_deep")
        for day in ("2025-04-05", "2025-06-28", "2025-09-06")
    )
    assert summer > 2 * spring
    assert summer > 1.8 * autumn


def test_a_nucleus_moves_into_a_hive_with_its_combs_in_order(book: Workbook) -> None:
    before, after = hive_on(book, "Larch", "2025-05-17"), hive_on(book, "Larch", "2025-05-24")
    assert [part.part.kind for part in before.boxes] == [PartKind.NUCLEUS_BOX]
    assert [part.part.kind for part in after.boxes] == [PartKind.BROOD_BOX]
    came = [placed.frame.id for placed in before.boxes[0].frames if placed.frame]
    hung = [placed.frame.id for placed in after.boxes[0].frames if placed.frame]
    start = hung.index(came[0])
    assert hung[start : start + len(came)] == came
    assert len(hung) == 11


def test_what_happens_to_colonies(book: Workbook) -> None:
    kinds = {event.kind for event in book.read.find(Event)}
    assert kinds >= {
        EventKind.ARRIVED,
        EventKind.SWARMED,
        EventKind.SPLIT,
        EventKind.QUEEN_CAME,
        EventKind.QUEEN_MARKED,
        EventKind.QUEEN_GONE,
        EventKind.DIED,
        EventKind.HEFT,
        EventKind.MOVED,
    }
    assert {each.arrival for each in book.read.find(Colony)} == set(Arrival) - {Arrival.UNKNOWN}


def test_the_dead_colony_stands_no_more_and_is_due_for_nothing(book: Workbook) -> None:
    dead = colony(book, "Teasel")
    assert book.read.home(dead.id, date(2026, 2, 14)) is not None
    assert book.read.home(dead.id, date(2026, 2, 15)) is None
    assert book.read.dues(colony_id=dead.id) == ()


def test_feed_is_given_and_looked_at(book: Workbook) -> None:
    feeds = book.read.find(Feed)
    assert len(feeds) > 10
    assert all(feed.left_day is not None for feed in feeds if feed.day < date(2026, 9, 1))


def test_marks_have_places_or_none(book: Workbook) -> None:
    marks = book.read.find(Mark)
    assert {mark.kind for mark in marks} == set(MarkKind)
    assert {mark.cell is None for mark in marks} == {True, False}
    assert any(mark.face is None for mark in marks)


def test_something_is_due_now_and_something_in_spring(book: Workbook) -> None:
    dues = book.read.dues(state=DueState.OPEN)
    ahead = [(due.day - TODAY).days for due in dues]
    assert min(ahead) > -7
    assert sum(day <= 30 for day in ahead) >= 5
    assert max(ahead) > 100


def test_no_word_of_the_sketches_is_used() -> None:
    names = {told["name"] for told in load_parameters()["colonies"]}
    assert not names & {"Pear Tree", "Gate", "Wall", "Nuc 2", "Elder", "Orchard"}
    assert json.loads(SAMPLE.read_text(encoding="utf-8"))["format"]
