"""Every control can be reached, says what it is, and asks for what it says."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QCheckBox, QToolButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import ColonyId
from beeworkbook.qt.palette import LIGHT
from beeworkbook.year.choice import Arrangement, Choice, Measure
from beeworkbook.year.controls import Controls
from tests.year.season_book import SeasonBook

ONE = ColonyId(1)


@pytest.fixture
def controls(qtbot: QtBot) -> Controls:
    made = Controls(Choice((ONE,), 2026))
    qtbot.addWidget(made)
    made.show()
    return made


def test_every_control_has_a_name_a_tooltip_and_the_keyboard(controls: Controls) -> None:
    found = [*controls.findChildren(QToolButton), *controls.findChildren(QCheckBox)]
    assert len(found) >= 12
    for control in found:
        assert control.accessibleName(), control
        assert control.toolTip(), control
        assert control.focusPolicy() & Qt.FocusPolicy.TabFocus, control


def test_a_switch_asks_for_what_it_says(controls: Controls, qtbot: QtBot) -> None:
    with qtbot.waitSignal(controls.changed):
        controls.measures[Measure.CELLS].click()
    assert controls.choice.measure is Measure.CELLS
    controls.arrangements[Arrangement.YEARS].click()
    assert controls.choice.arrangement is Arrangement.YEARS
    for name, box in controls.boxes.items():
        before = getattr(controls.choice, name)
        box.click() if box.isEnabled() else box.toggle()
        assert getattr(controls.choice, name) is not before


def test_years_are_stepped(controls: Controls) -> None:
    controls.year_back.click()
    assert controls.choice.year == 2025
    controls.year_on.click()
    assert controls.choice.year == 2026


def test_following_is_not_asking(controls: Controls, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(controls.changed):
        controls.show_choice(Choice((ONE,), 2024, measure=Measure.CELLS, stores=True), (), "2024/25")
    assert controls.measures[Measure.CELLS].isChecked()
    assert controls.boxes["stores"].isChecked()
    assert controls.year_label.text() == "2024/25"


def test_what_makes_no_sense_now_cannot_be_asked(controls: Controls) -> None:
    controls.show_choice(Choice((ONE,), 2026, arrangement=Arrangement.YEARS), ())
    assert not controls.year_back.isEnabled()
    assert not controls.boxes["last_year"].isEnabled()
    assert not controls.colonies.isEnabled()


def test_other_colonies_are_chosen_in_the_menu(controls: Controls, season_book: SeasonBook) -> None:
    pear, gate = season_book.colony(season_book.pear), season_book.colony(season_book.gate)
    controls.show_choice(Choice((pear.id,), 2026), (pear, gate))
    first, second = controls.colonies.menu().actions()
    assert (first.text(), first.isChecked(), first.isEnabled()) == ("Pear", True, False)
    second.trigger()
    assert list(controls.choice.colony_ids) == [pear.id, gate.id]
    controls.show_choice(controls.choice, (pear, gate))
    assert controls.colonies.text() == "2 colonies…"
    controls.colonies.menu().actions()[1].trigger()
    assert list(controls.choice.colony_ids) == [pear.id]


def test_arrows_are_drawn_in_the_themes_ink(controls: Controls) -> None:
    controls.show_palette(LIGHT)
    assert not controls.year_back.icon().isNull()
    assert not controls.year_on.icon().isNull()


def test_in_a_narrow_window_the_switches_take_two_rows(qtbot: QtBot) -> None:
    window, controls = QWidget(), Controls(Choice((ONE,), 2026))
    qtbot.addWidget(window)
    QVBoxLayout(window).addWidget(controls)
    window.show()
    heights = []
    for width in (1400, 500, 1400):
        window.resize(width, 120)
        QApplication.processEvents()
        assert abs(controls.width() - width) < 40
        heights.append(controls.sizeHint().height())
    assert heights[1] > heights[0] * 1.5
    assert heights[2] == heights[0]


def test_choosing_a_colony_lets_its_own_action_live(controls: Controls, season_book: SeasonBook) -> None:
    both = (season_book.colony(season_book.pear), season_book.colony(season_book.gate))
    controls.show_choice(Choice((both[0].id,), 2026), both)
    controls.changed.connect(lambda choice: controls.show_choice(choice, both))
    action = controls.colonies.menu().actions()[1]
    action.trigger()
    assert action.isChecked()
    assert controls.colonies.menu().actions()[1] is action
