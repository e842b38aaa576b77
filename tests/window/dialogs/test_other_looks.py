"""The looks a comb can be copied from: of other visits, by somebody's eyes, lettered as it hangs now."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from beeworkbook.comb.contents import Face
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.other_looks import look_words, other_looks
from beeworkbook.workbook.edits import BeginVisit, LayOutComb, TurnFrame
from tests.workbook.keeping import LATER, Keeping


@pytest.fixture
def kept(tmp_path: Path) -> Iterator[Keeping]:
    """Comb 5 was drawn a week ago and hangs the other way round since; comb 6 is only assumed."""
    with Keeping(tmp_path / "looks.beebook") as made:
        made.book.do(LayOutComb(made.visit, made.frame(5), "E8 / S4H4"))
        made.book.do(LayOutComb(made.visit, made.frame(6), "S8"))
        yield made


@pytest.fixture
def desk(kept: Keeping, qtbot: QtBot) -> Desk:
    del qtbot  # the desk needs a program to live in
    made = Desk(kept.book)
    made.go(colony_id=kept.colony, day=LATER)
    return made


def test_a_look_is_told_by_its_day_and_its_combs(kept: Keeping, desk: Desk) -> None:
    looks = other_looks(desk, kept.frame(5))
    assert [look.visit.id for look in looks] == [kept.visit]
    assert look_words(desk, looks[0]) == "8 May 2026: E / S4 H4"


def test_a_comb_turned_round_since_has_its_sides_by_their_letters_of_today(kept: Keeping, desk: Desk) -> None:
    kept.book.do(TurnFrame(kept.frame(5), LATER))
    look = other_looks(desk, kept.frame(5))[0]
    assert look.sides[Face.A].face is Face.B
    assert look_words(desk, look) == "8 May 2026: S4 H4 / E"


def test_neither_the_open_visit_nor_what_was_only_assumed_is_a_look(kept: Keeping, desk: Desk) -> None:
    later = kept.book.do(BeginVisit(kept.colony, LATER))
    kept.book.do(LayOutComb(later, kept.frame(6), "?"))  # type: ignore[arg-type]  # the id of the visit
    desk.go(visit_id=later)
    assert [look.visit.id for look in other_looks(desk, kept.frame(6))] == [kept.visit]
    desk.go(visit_id=kept.visit)
    assert other_looks(desk, kept.frame(6)) == ()


def test_a_look_in_another_colony_names_it(kept: Keeping, desk: Desk) -> None:
    gate = kept.another()
    desk.go(colony_id=gate, day=LATER)
    look = other_looks(desk, kept.frame(5))[0]
    assert look_words(desk, look).startswith("8 May 2026 in Wall:")
