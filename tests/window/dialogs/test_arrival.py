"""Bees have come: the form filled by keys, what it enters, what it foretells, what it refuses."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from beeworkbook.colony.records import (
    Arrival,
    Colony,
    ColonyId,
    Due,
    Event,
    EventKind,
    Feed,
    PartKind,
    Queen,
    Way,
)
from beeworkbook.comb.contents import Content, Face
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.arrival import ArrivalForm
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.place import RemoveRecord
from tests.rounds.orchard import DAY
from tests.window.conftest import CTRL, Answerer, hand, press, write


def the_new(window: MainWindow) -> Colony:
    return max(window.desk.book.read.find(Colony), key=lambda colony: colony.id)


def test_a_nucleus_is_entered_by_keys_and_its_combs_are_typed_at_once(
    window: MainWindow, answer: Answerer
) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        form.feed.line.setFocus()
        write("2L 1:1")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_N, CTRL)
    desk = window.desk
    colony = the_new(window)
    assert (colony.name, colony.arrival, colony.came_on) == ("Reed", Arrival.NUCLEUS, DAY)
    assert (desk.spot.colony_id, desk.spot.view, desk.spot.day) == (colony.id, View.BOX, DAY)
    assert hand() is window.key_line.field
    box = desk.box()
    assert box is not None
    places = {place.frame.id: place.place for place in box.frames if place.frame}
    assert places[desk.spot.frame_id] == 4  # type: ignore[index]
    for text in ("S4H4", "E1O2S4H1", "E2O2S3H1", "S4H4", "H8"):
        write(text)
        press(Qt.Key.Key_Return)
    assert desk.spot.visit_id is not None
    sides = {(places[side.frame_id], side.face): side for side in desk.book.read.sides(desk.spot.visit_id)}
    assert sides[5, Face.A].typed == "E1O2S4H1"
    assert sides[8, Face.B].typed == "H"
    assert {place for place, _face in sides} == set(range(1, 12))
    assert len(desk.book.read.dues(colony_id=colony.id)) == 2
    assert [feed.typed for feed in desk.book.read.feeds(colony.id)] == ["2L 1:1"]


def test_one_undo_takes_the_whole_arrival_back(window: MainWindow, answer: Answerer) -> None:
    before = len(window.desk.book.read.find(Colony))
    answer(lambda _form: (write("Reed"), press(Qt.Key.Key_Return)))
    press(Qt.Key.Key_N, CTRL)
    press(Qt.Key.Key_Escape)
    assert len(window.desk.book.read.find(Colony)) == before + 1
    press(Qt.Key.Key_Z, CTRL)
    assert len(window.desk.book.read.find(Colony)) == before


def test_a_swarm_has_no_combs_and_a_plan_by_its_kind(window: MainWindow, answer: Answerer) -> None:
    plans: list[str] = []

    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        form.what.choose(Arrival.SWARM)
        assert not form.combs.widget.isVisible()
        assert form.swarm.widget.isVisible()
        for cast in (False, True):
            form.swarm.choose(cast)
            plans.append(form.plan.text())
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_N, CTRL)
    assert plans[0] != plans[1]
    colony = the_new(window)
    assert colony.arrival is Arrival.SWARM
    dues = window.desk.book.read.dues(colony_id=colony.id)
    assert [due.reason for due in dues] == [line.split(": ", 1)[1] for line in plans[1].splitlines()]
    assert window.desk.spot.view is View.BOX
    assert hand() is not window.key_line.field


def test_a_package_in_a_warm_way_hive_with_its_queen(window: MainWindow, answer: Answerer) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        form.what.choose(Arrival.PACKAGE)
        form.hive.choose("zander")
        assert form.frame_type.value == "zander"
        form.way.choose(Way.WARM)
        form.flank.choose(Content.EMPTY)
        form.mark.choose("blue")
        assert "2025" in form.mark_hint.text()  # type: ignore[attr-defined]
        form.year.line.setText("2025")
        form.clipped.choose(True)
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_N, CTRL)
    colony = the_new(window)
    hive = window.desk.book.read.hive_day(colony.id, DAY)
    assert hive is not None
    assert hive.hive.way is Way.WARM
    came = next(event for event in window.desk.book.read.events(colony.id) if event.queen_id)
    assert came.kind is EventKind.QUEEN_CAME
    queen = window.desk.book.read.get(Queen, came.queen_id)
    assert queen is not None
    assert (queen.mark_colour, queen.year, queen.clipped) == ("blue", 2025, True)


def test_a_super_and_an_excluder_on_a_fed_nucleus_are_spoken_of_and_not_refused(
    window: MainWindow, answer: Answerer
) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        assert not form.notes.isVisible()
        form.supers.line.setText("1")
        form.excluder.box.setChecked(True)
        form.feed.line.setText("2L 1:1")
        assert "A super is on this young nucleus while it is fed." in form.notes.text()
        assert "Why: " in form.notes.text()
        assert "An excluder and a super" in form.notes.text()
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_N, CTRL)
    hive = window.desk.book.read.hive_day(the_new(window).id, DAY)
    assert hive is not None
    kinds = [part.part.kind for part in hive.stack]
    assert PartKind.SUPER in kinds
    assert PartKind.EXCLUDER in kinds


def test_a_bought_hive_fills_its_box_and_an_earlier_day_is_taken(
    window: MainWindow, answer: Answerer
) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        form.what.choose(Arrival.BOUGHT)
        assert form.combs.whole == form.places.whole == 11
        form.draw_now.box.setChecked(False)
        form.day.line.setText("2 5")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_N, CTRL)
    colony = the_new(window)
    assert colony.came_on == date(2026, 5, 2)
    hive = window.desk.book.read.hive_day(colony.id, colony.came_on)
    assert hive is not None
    assert all(place.frame is not None for place in hive.boxes[0].frames)


@pytest.mark.parametrize(
    ("spoil", "sentence", "where"),
    [
        (lambda form: form.combs.line.setText("14"), "11 places", "combs"),
        (lambda form: form.places.line.setText("0"), "between 1 and 40", "places"),
        (lambda form: form.feed.line.setText("lots"), "", "feed"),
        (lambda form: form.supers.line.setText("9"), "between 0 and 6", "supers"),
        (lambda form: form.year.line.setText("26262"), "four digits", "year"),
        (lambda form: form.name.line.clear(), "is wanted", "name"),
        (lambda form: form.day.line.setText("31 2"), "Came on", "day"),
    ],
)
def test_what_cannot_be_is_said_in_the_form_and_nothing_is_lost(
    window: MainWindow, answer: Answerer, spoil: object, sentence: str, where: str
) -> None:
    before = len(window.desk.book.read.find(Colony))

    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        spoil(form)  # type: ignore[operator]
        press(Qt.Key.Key_Return)
        assert form.isVisible()
        assert sentence in form.wrong.text()
        assert form.wrong.text()
        assert QApplication.focusWidget() is getattr(form, where).line
        press(Qt.Key.Key_Escape)

    answer(fill)
    press(Qt.Key.Key_N, CTRL)
    assert len(window.desk.book.read.find(Colony)) == before


@pytest.mark.usefixtures("window")
def test_the_form_fits_a_small_screen(answer: Answerer) -> None:
    def look(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        for arrival in Arrival:
            form.what.choose(arrival)
            form.supers.line.setText("1")
            form.feed.line.setText("2L 1:1")
            QApplication.processEvents()
            assert form.width() <= 1280
            assert form.height() <= 720

    answer(look)
    press(Qt.Key.Key_N, CTRL)


def test_a_free_stand_is_offered_and_kept(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    gate = next(colony for colony in desk.book.read.find(Colony) if colony.name == "Gate")
    home = desk.book.read.home(gate.id, DAY)
    assert home is not None
    desk.do(RemoveRecord(Colony, gate.id))

    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        form.stand.choose(home.stand_id)
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_N, CTRL)
    new_home = desk.book.read.home(ColonyId(the_new(window).id), DAY)
    assert new_home is not None
    assert new_home.stand_id == home.stand_id
    assert desk.book.read.find(Due, colony_id=the_new(window).id)
    assert desk.book.read.find(Event, colony_id=the_new(window).id)
    assert not desk.book.read.find(Feed, colony_id=the_new(window).id)
