import pytest

from beeworkbook.colony.records import Way
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.papers.comb_forms import field_form
from beeworkbook.papers.options import Paper
from beeworkbook.papers.side_task import SideTask
from tests.papers import invented


def task(origin: Origin, *, filled: bool = True) -> SideTask:
    comb = invented.box(places=3, origins={2: origin}).combs[1]
    return SideTask(comb, field_form(Paper.A4).rows[0].b, Way.COLD, filled, "box1.comb2.B", {})


def test_the_side_is_the_one_of_its_place() -> None:
    assert task(Origin.EIGHTHS).side.face is Face.B


@pytest.mark.parametrize(
    ("origin", "seen"),
    [(Origin.PAINTED, True), (Origin.EIGHTHS, True), (Origin.UNCHANGED, True), (Origin.ASSUMED, False)],
)
def test_what_is_assumed_was_not_seen(origin: Origin, *, seen: bool) -> None:
    assert task(origin).seen == seen


def test_on_a_blank_sheet_nothing_was_seen_yet() -> None:
    assert not task(Origin.PAINTED, filled=False).seen
