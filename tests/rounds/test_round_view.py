"""A round entered by keys: what it takes, what is kept, and where the hand goes."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import DueKind, PartKind, Question, Round, Visit
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.comb.contents import Content
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.rounds.field import one_keys, shown
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.rounds.row import Row
from beeworkbook.rounds.walk import Spot
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginRound, BeginVisit, SetAnswer
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.conftest import Keys
from tests.rounds.orchard import DAY, LAST, NAMES

FULL_LINE = "yyy7/4.2\ty8\t8\tnyqy\n"
MOST_KEYS = 26


def _shown(row: Row) -> dict[Target, str]:
    return {
        target: shown(row, target)
        for target in (*Question, Field.FEED, Field.NOTE, Field.NEXT)
        if shown(row, target)
    }


def _names(view: RoundView) -> list[str]:
    return [row.colony.name for row in view.rows]


def test_a_full_line_takes_no_more_keys_than_were_promised(view: RoundView, keys: Keys) -> None:
    keys.type(FULL_LINE)
    assert keys.count <= MOST_KEYS
    assert keys.count == 19
    assert _shown(view.rows[0]) == {
        Question.OPENED: "yes", Question.EGGS: "seen", Question.YOUNG: "seen", Question.BROOD: "7/4.2",
        Question.POLLEN: "in", Question.SEAMS: "8", Question.STORES: "8 kg", Question.CELLS: "none",
        Question.QUEEN: "seen", Question.TEMPER: "quiet", Question.ROOM: "enough",
    }  # fmt: skip
    assert view.sheet.spot == Spot(view.rows[1].colony.id, Question.OPENED)


def test_every_question_and_the_next_day_fit_into_the_promise_too(view: RoundView, keys: Keys) -> None:
    keys.type("yyy7/4.2\ty8\t8\tnyqynn\t\t\t.")  # drawn and signs as well; the offered day with its reason
    assert keys.count <= MOST_KEYS
    visit = view.rows[0].now.visit
    assert visit is not None
    assert (visit.next_day, bool(visit.next_reason)) == (date(2026, 5, 23), True)
    assert view.sheet.spot == Spot(view.rows[1].colony.id, Question.OPENED)


def test_the_lines_stand_as_the_colonies_do_and_an_untouched_one_makes_no_visit(
    view: RoundView, keys: Keys, book: Workbook
) -> None:
    assert _names(view) == list(NAMES)
    keys.type("\n\t\t\ny\n")
    assert [row.now.visit is not None for row in view.rows] == [False, False, True, False]
    rounds = [held for held in book.read.find(Round) if held.day == DAY]
    assert len(rounds) == 1
    assert view.rows[2].now.visit is not None
    assert view.rows[2].now.visit.round_id == rounds[0].id


def test_a_round_just_begun_asks_its_weather_and_then_the_first_stand(
    view: RoundView, keys: Keys, desk: Desk, book: Workbook
) -> None:
    desk.go(colony_id=view.rows[2].colony.id)
    assert desk.apiary is not None
    book.do(BeginRound(desk.apiary.id, DAY))
    view.take_focus()
    assert view.head.weather.hasFocus()
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.OPENED)
    for field in ("weather", "warmth", "who", "flowering"):
        assert getattr(view.head, field).hasFocus()
        QTest.keyClick(getattr(view.head, field), Qt.Key.Key_Tab)
    assert view.sheet.editor.hasFocus()
    keys.type("y")
    assert shown(view.rows[0], Question.OPENED) == "yes"
    view.take_focus()
    assert view.sheet.editor.hasFocus()


def test_a_round_that_has_its_weather_is_taken_up_at_its_lines(
    view: RoundView, desk: Desk, book: Workbook
) -> None:
    assert desk.apiary is not None
    book.do(BeginRound(desk.apiary.id, DAY, weather="fine"))
    view.take_focus()
    assert view.sheet.editor.hasFocus()


def test_down_into_the_box_leads_to_its_first_comb_and_back_to_the_one_just_left(
    view: RoundView, keys: Keys, desk: Desk
) -> None:
    first, second = view.rows[0].colony.id, view.rows[1].colony.id
    frames = [placed.frame.id for placed in desk.box().frames if placed.frame]  # type: ignore[union-attr]
    desk.go(frame_id=frames[8])
    keys.press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert (desk.spot.view, desk.spot.frame_id) == (View.BOX, frames[0])
    desk.go(frame_id=frames[3])
    desk.go(view=View.ROUND)
    keys.press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert desk.spot.frame_id == frames[3]
    desk.go(view=View.ROUND)
    desk.go(colony_id=second)
    desk.go(colony_id=first, frame_id=frames[5])
    keys.press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert desk.spot.frame_id == frames[0]


@pytest.mark.usefixtures("view")
def test_it_is_the_lowest_brood_box(keys: Keys, desk: Desk) -> None:
    hive = desk.hive_day()
    assert hive is not None
    for kind in (PartKind.BROOD_BOX, PartKind.SUPER):
        part = AddPart(
            hive.hive.id, kind, DAY, frame_type="bs_deep", places=11, new_frames=Content.FOUNDATION
        )
        desk.do(part)
    desk.go(part_id=desk.hive_day().brood_boxes[1].part.id, frame_id=None)  # type: ignore[union-attr]
    keys.press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert desk.spot.part_id == desk.hive_day().brood_boxes[0].part.id  # type: ignore[union-attr]


def test_every_finished_field_is_kept_at_once(view: RoundView, keys: Keys, book: Workbook) -> None:
    keys.type("y4-6\t")
    visit = view.rows[0].now.visit
    assert visit is not None
    assert {q: a.typed for q, a in book.read.answers(visit.id).items()} == {
        Question.OPENED: "y",
        Question.EGGS: "4-6",
    }
    assert view.head._round is not None


def test_the_whole_row_turns_when_the_hive_was_not_opened(view: RoundView, keys: Keys) -> None:
    keys.type("nn14+15\t2L 1:1\t0\tFlying well\t+9\n")
    row = view.rows[0]
    assert _shown(row) == {
        Question.OPENED: "no", Question.POLLEN: "none", Question.STORES: "14 + 15 kg",
        Field.FEED: "2 L 1:1", Field.NOTE: "Flying well", Field.NEXT: "25 May",
    }  # fmt: skip
    assert row.now.left is not None
    assert row.now.left.left_litres == 0


def test_x_passes_over_and_asks_why(view: RoundView, keys: Keys) -> None:
    keys.type("x")
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Field.NOTE)
    keys.type("rain came\n")
    visit = view.rows[0].now.visit
    assert visit is not None
    assert visit.note == "rain came"
    assert view.rows[0].passed


def test_what_cannot_be_read_stays_with_a_sentence_until_it_is_mended(view: RoundView, keys: Keys) -> None:
    keys.type("yyy9/12\t")
    sheet = view.sheet
    brood = Spot(view.rows[0].colony.id, Question.BROOD)
    assert sheet.spot == brood
    assert sheet.editor.text() == "9/12"
    assert sheet.trouble.isVisible()
    assert "worth" in sheet.trouble.text()
    assert Question.BROOD not in _shown(view.rows[0])
    keys.type("\t")  # nobody is held up: the hand may go on and mend it later
    assert sheet.spot == Spot(brood.colony_id, Question.POLLEN)
    assert not sheet.trouble.isVisible()
    keys.type("y")
    sheet.go(brood)
    assert sheet.editor.text() == "9/12"
    assert sheet.trouble.isVisible()
    sheet.editor.selectAll()
    keys.type("9/4\t")
    assert shown(view.rows[0], Question.BROOD) == "9/4"
    assert not sheet.refused


def test_escape_puts_the_field_back(view: RoundView, keys: Keys) -> None:
    keys.type("y4-6\t")
    view.sheet.go(Spot(view.rows[0].colony.id, Question.EGGS))
    keys.type("99,99,99")
    keys.press(Qt.Key.Key_Escape)
    assert view.sheet.editor.text() == "4-6"
    keys.type("\t")
    assert shown(view.rows[0], Question.EGGS) == "4–6"


def test_escape_takes_a_refusal_back_too(view: RoundView, keys: Keys) -> None:
    keys.type("y4-99999\t")
    assert view.sheet.refused
    keys.press(Qt.Key.Key_Escape)
    assert not view.sheet.refused
    assert (view.sheet.editor.text(), view.sheet.trouble.isVisible()) == ("", False)


def test_equals_dash_and_blank_are_three_things(view: RoundView, keys: Keys) -> None:
    keys.type("y=-\t")
    assert _shown(view.rows[0]) == {
        Question.OPENED: "yes",
        Question.EGGS: "4, 5",
        Question.YOUNG: "not looked",
    }


def test_backspace_goes_back_to_an_answer_that_moved_on_too_soon(view: RoundView, keys: Keys) -> None:
    view.sheet.go(Spot(view.rows[0].colony.id, Question.TEMPER))
    keys.type("q")
    keys.press(Qt.Key.Key_Backspace)
    keys.type("l\t")
    assert shown(view.rows[0], Question.TEMPER) == "quiet, lively"


def test_enter_in_an_empty_next_takes_what_is_offered(view: RoundView, keys: Keys, book: Workbook) -> None:
    keys.type("y")
    view.sheet.go(Spot(view.rows[0].colony.id, Field.FEED))
    keys.type("1L 1:1\t\t\t\n")
    row = view.rows[0]
    assert row.now.visit is not None
    assert row.now.visit.next_day == date(2026, 5, 23)
    kinds = {due.kind for due in book.read.dues(colony_id=row.colony.id) if due.visit_id == row.now.visit.id}
    assert kinds == {DueKind.LOOK, DueKind.FEED_LOOK}
    assert view.sheet.spot == Spot(view.rows[1].colony.id, Question.OPENED)


def test_an_empty_next_of_an_untouched_line_stays_empty(view: RoundView, keys: Keys) -> None:
    view.sheet.go(Spot(view.rows[0].colony.id, Field.NEXT))
    keys.type("\n")
    assert view.rows[0].now.visit is None


def test_control_enter_leads_down_into_the_box_and_the_way_back_is_kept(
    view: RoundView, keys: Keys, desk: Desk
) -> None:
    keys.type("yyy")
    keys.press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    row = view.rows[0]
    assert row.now.visit is not None
    assert (desk.spot.view, desk.spot.colony_id, desk.spot.visit_id) == (
        View.BOX,
        row.colony.id,
        row.now.visit.id,
    )
    view.hide()
    desk.go(view=View.ROUND)
    view.show()
    view.take_focus()
    assert view.sheet.spot == Spot(row.colony.id, Question.BROOD)
    assert view.sheet.editor.isVisible()


def test_a_field_in_hand_is_kept_when_the_keeper_goes_elsewhere(
    view: RoundView, keys: Keys, desk: Desk
) -> None:
    keys.type("y4-6")
    desk.go(view=View.BOX)
    assert shown(view.rows[0], Question.EGGS) == "4–6"


def test_the_desk_goes_with_the_hand_and_the_hand_with_the_desk(
    view: RoundView, keys: Keys, desk: Desk
) -> None:
    keys.type("\n")
    assert desk.spot.colony_id == view.rows[1].colony.id
    keys.type("y")
    assert desk.spot.visit_id == view.rows[1].now.visit.id  # type: ignore[union-attr]
    desk.go(colony_id=view.rows[3].colony.id)
    assert view.sheet.spot == Spot(view.rows[3].colony.id, Question.EGGS)


def test_undo_shows_the_field_it_took_back(view: RoundView, keys: Keys, desk: Desk, qtbot: QtBot) -> None:
    keys.type("yyy")
    qtbot.waitUntil(view.sheet.editor.hasFocus)
    desk.undo()
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.YOUNG)
    assert view.sheet.editor.text() == ""
    assert set(_shown(view.rows[0])) == {Question.OPENED, Question.EGGS}
    desk.redo()
    assert shown(view.rows[0], Question.YOUNG) == "seen"


def test_past_the_last_line_comes_the_read_back(view: RoundView, keys: Keys, qtbot: QtBot) -> None:
    keys.type("y4-6\t")
    view.sheet.go(Spot(view.rows[-1].colony.id, Question.OPENED))
    keys.type("\n")
    qtbot.waitUntil(view.read_back.hasFocus)
    QTest.keyClick(view.read_back, Qt.Key.Key_Return)
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.EGGS)


def test_before_the_first_field_comes_the_head(view: RoundView, keys: Keys, qtbot: QtBot) -> None:
    keys.press(Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
    qtbot.waitUntil(view.head.flowering.hasFocus)
    QTest.keyClick(view.head.flowering, Qt.Key.Key_Tab)
    assert view.sheet.editor.hasFocus()


def test_what_was_noted_elsewhere_comes_to_be_seen(view: RoundView, desk: Desk) -> None:
    colony_id = view.rows[1].colony.id
    visit_id = desk.do(BeginVisit(colony_id, DAY))
    desk.do(SetAnswer(visit_id, Question.EGGS, "3"))  # type: ignore[arg-type]
    assert shown(view.rows[1], Question.EGGS) == "3"
    view.hide()
    desk.do(SetAnswer(visit_id, Question.EGGS, "3-5"))  # type: ignore[arg-type]
    view.show()
    assert shown(view.rows[1], Question.EGGS) == "3–5"


def test_what_was_noted_comb_by_comb_is_read_back_in_the_line(
    view: RoundView, keys: Keys, desk: Desk
) -> None:
    keys.type("y")
    hive = desk.hive_day()
    visit = view.rows[0].now.visit
    assert hive is not None
    assert visit is not None
    for place, typed in ((3, "S4H2."), (4, "E1O2S4H1"), (5, "S4/O4")):
        frame = hive.boxes[0].frames[place].frame
        assert frame is not None
        desk.do(LayOutComb(visit.id, frame.id, typed))
    assert view.rows[0].by_comb
    said = {phrase.target: phrase.text for phrase in view.rows[0].said}
    assert said[Question.EGGS] == "eggs on 5"
    assert "brood on 3 combs or more" in said[Question.BROOD]
    assert "in store" in said[Question.STORES] or "of stores" in said[Question.STORES]
    assert said[Question.BROOD] in view.read_back.toPlainText()


def test_an_earlier_day_shows_its_own_round(view: RoundView, keys: Keys, desk: Desk) -> None:
    keys.type("y4-9999\t")
    desk.go(day=LAST)
    assert shown(view.rows[0], Question.STORES) == "7 kg"
    assert view.head.day.text() == "Saturday 9 May"
    assert not view.sheet.refused
    desk.go(day=DAY)
    assert shown(view.rows[0], Question.OPENED) == "yes"
    assert [held[0] for held in view.sheet.refused.values()] == ["4-9999"]


def test_leafing_to_another_day_keeps_the_hand_in_its_column(
    view: RoundView, keys: Keys, desk: Desk, qtbot: QtBot
) -> None:
    keys.type("yyy5/2")
    qtbot.waitUntil(view.sheet.editor.hasFocus)
    desk.leaf(-1)
    assert desk.spot.day == LAST
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.BROOD)
    assert view.sheet.editor.hasFocus()
    assert view.sheet.editor.text() == "6/2.6"
    desk.leaf(1)
    assert view.sheet.editor.text() == "5/2"


def test_a_column_left_out_is_not_asked(view: RoundView, keys: Keys) -> None:
    view.head.turn_column(Question.EGGS)
    view.head.turn_column(Question.YOUNG)
    keys.type("y")
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.BROOD)
    view.head.turn_column(Question.EGGS)
    assert Question.EGGS in view.targets
    assert Question.YOUNG not in view.targets


def test_an_apiary_where_nobody_stood_says_so(view: RoundView, desk: Desk) -> None:
    desk.go(day=date(2020, 1, 1))
    assert view.rows == ()
    assert view._nobody.isVisible()
    assert not view.sheet.isVisible()
    desk.go(day=DAY)
    assert view.sheet.isVisible()


def test_a_book_open_for_looking_can_be_walked_but_not_written(book: Workbook, qtbot: QtBot) -> None:
    path = book.path
    book.close()
    with Workbook.open(path, today=DAY, read_only=True) as looked_at:
        desk = Desk(looked_at)
        view = RoundView(desk)
        qtbot.addWidget(view)
        view.show()
        view.take_focus()
        QTest.keyClicks(view.sheet.editor, "y")
        QTest.keyClick(view.sheet.editor, Qt.Key.Key_Tab)
        assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.EGGS)
        assert not [visit for visit in looked_at.read.find(Visit) if visit.day == DAY]
        desk.close()


def test_it_goes_dark_with_the_desk(view: RoundView, desk: Desk) -> None:
    desk.set_palette(DARK)
    assert view.sheet._palette == DARK
    assert DARK.board in view.read_back.styleSheet()


def test_finishing_is_what_the_window_asks_before_it_closes(view: RoundView, keys: Keys) -> None:
    keys.type("y4")
    view.finish()
    assert shown(view.rows[0], Question.EGGS) == "4"


@pytest.mark.parametrize(
    ("target", "told"),
    [
        (Question.OPENED, "y n x - ="),
        (Question.BROOD, "y n - ="),
        (Question.SEAMS, "- ="),
        (Question.TEMPER, "q s l r f d - ="),
        (Question.ROOM, "y n s t - ="),
        (Field.FEED, "- ="),
    ],
)
def test_the_hint_names_the_keys_of_this_field_that_move_on(
    view: RoundView, target: Target, told: str, keys: Keys
) -> None:
    spot = Spot(view.rows[0].colony.id, target)
    view.sheet.go(spot)
    assert view._hint.text().startswith(f"{told} move on by themselves; Tab for anything else")
    assert f"{told} move on" in view.sheet.editor.accessibleDescription()
    assert set(told.split()) == one_keys(view.rows[0], target)
    keys.type(told[0])
    assert view.sheet.spot != spot or view.sheet.trouble.isVisible()


def test_where_no_key_moves_on_the_hint_names_none(view: RoundView) -> None:
    view.sheet.go(Spot(view.rows[0].colony.id, Field.NOTE))
    assert "by themselves" not in view._hint.text()


def test_a_tab_pressed_by_habit_after_an_answer_skips_no_field(view: RoundView, keys: Keys) -> None:
    young = Spot(view.rows[0].colony.id, Question.YOUNG)
    keys.type("yy")
    keys.press(Qt.Key.Key_Tab)
    assert view.sheet.spot == young
    keys.press(Qt.Key.Key_Tab)  # the second is meant
    assert view.sheet.spot == Spot(young.colony_id, Question.BROOD)


def test_a_tab_after_something_typed_or_a_pause_is_meant(view: RoundView, keys: Keys) -> None:
    keys.type("y4")
    keys.press(Qt.Key.Key_Tab)
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.YOUNG)
    keys.type("y\t")
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.POLLEN)


def test_a_tab_after_an_answer_that_was_refused_is_meant(view: RoundView, keys: Keys) -> None:
    young = Spot(view.rows[0].colony.id, Question.YOUNG)
    view.sheet.go(young)
    keys.type("=")  # nothing was noted before, so it is refused and stays
    assert view.sheet.trouble.isVisible()
    keys.press(Qt.Key.Key_Tab)
    assert view.sheet.spot == Spot(young.colony_id, Question.BROOD)


def test_a_step_back_right_after_an_answer_is_meant(view: RoundView, keys: Keys) -> None:
    keys.type("y")
    keys.press(Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.OPENED)


def test_another_colony_takes_the_keyboard_from_the_read_back(
    view: RoundView, keys: Keys, desk: Desk, qtbot: QtBot
) -> None:
    keys.type("y4-6\t")
    view.sheet.go(Spot(view.rows[-1].colony.id, Question.OPENED))
    keys.type("\n")
    qtbot.waitUntil(view.read_back.hasFocus)
    desk.go(colony_id=view.rows[2].colony.id)
    assert view.sheet.editor.hasFocus()
    assert view.sheet.spot == Spot(view.rows[2].colony.id, Question.OPENED)
    keys.press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert (desk.spot.view, desk.spot.colony_id) == (View.BOX, view.rows[2].colony.id)
