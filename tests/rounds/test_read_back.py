"""The read-back says what was noted, a sentence a colony, and every piece leads to its field."""

from PySide6.QtCore import Qt, QUrl
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import ColonyId, Question
from beeworkbook.colony.sentences import Field
from beeworkbook.rounds.read_back import ReadBack, link_to, spot_of
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.rounds.walk import Spot
from tests.rounds.conftest import Keys


def _lines(told: ReadBack) -> list[str]:
    return told.toPlainText().split("\n")


def test_nothing_is_said_of_what_nobody_noted(view: RoundView) -> None:
    assert _lines(view.read_back)[0] == "Pear Tree: nothing noted yet."


def test_what_was_noted_is_said_in_one_sentence(view: RoundView, keys: Keys) -> None:
    keys.type("y4-6\t-7/3.2\t\n")
    said = _lines(view.read_back)
    assert said[0] == ("Pear Tree: eggs on 4 to 6, open brood not looked for, brood on 7 combs worth 3.2.")
    assert said[1].startswith("Gate: nothing noted yet")
    assert len(said) == len(view.rows)


def test_a_piece_leads_to_its_field(view: RoundView, keys: Keys) -> None:
    keys.type("y4-6\t\n")
    spot = Spot(view.rows[0].colony.id, Question.EGGS)
    view.read_back.anchorClicked.emit(QUrl(link_to(spot)))
    assert view.sheet.spot == spot
    assert view.sheet.editor.text() == "4-6"


def test_heft_leads_to_where_it_was_typed(view: RoundView, keys: Keys) -> None:
    keys.type("n-14+15\t\n")
    view.read_back.anchorClicked.emit(QUrl(link_to(Spot(view.rows[0].colony.id, Question.STORES))))
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.STORES)
    assert view.sheet.editor.text() == "14+15"


def test_tab_goes_from_piece_to_piece(view: RoundView, keys: Keys, qtbot: QtBot) -> None:
    keys.type("y4-6\t-\n")
    told = view.read_back
    told.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(told.hasFocus)
    assert told.textCursor().selectedText() == "eggs on 4 to 6"
    QTest.keyClick(told, Qt.Key.Key_Tab)
    assert told.textCursor().selectedText() == "open brood not looked for"
    QTest.keyClick(told, Qt.Key.Key_Return)
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.YOUNG)


def test_escape_goes_back_to_the_field_in_hand(view: RoundView, keys: Keys, qtbot: QtBot) -> None:
    keys.type("y")
    view.read_back.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.keyClick(view.read_back, Qt.Key.Key_Escape)
    qtbot.waitUntil(view.sheet.editor.hasFocus)
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.EGGS)


def test_the_line_in_hand_is_brought_into_sight(view: RoundView, keys: Keys) -> None:
    for _ in view.rows:
        keys.type("yyy7/4.2\ty8\t8\tnyqynn\n")
    view.resize(700, 420)
    view.sheet.go(Spot(view.rows[-1].colony.id, Question.EGGS))
    bar = view.read_back.verticalScrollBar()
    assert bar.maximum() > 0
    assert bar.value() > 0
    view.resize(700, 400)
    assert bar.value() >= bar.maximum() - 26  # the last sentence is in sight, give or take a line
    view.sheet.go(Spot(view.rows[0].colony.id, Question.EGGS))
    assert bar.value() == 0


def test_links_are_read_and_others_are_not() -> None:
    for spot in (Spot(ColonyId(3), Question.EGGS), Spot(ColonyId(12), Field.NEXT)):
        assert spot_of(link_to(spot)) == spot
    for other in ("field:3/honey", "field:x/eggs", "https:", ""):
        assert spot_of(other) is None
