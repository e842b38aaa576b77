"""Every control of the window can be named, explains itself, shows the keyboard, and is reached by Tab."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QApplication,
    QComboBox,
    QLineEdit,
    QWidget,
)

from beeworkbook.qt.desk import View
from beeworkbook.window.main_window import MainWindow
from tests.window.conftest import press

FACES = frozenset(
    {
        "RoundSheet",
        "ReadBack",
        "RulerView",
        "SideCanvas",
        "RowTable",
        "ChartGlass",
        "StackPicture",
        "DaysView",
    }
)
"""Faces that are looked at and painted on: a tooltip would lie over what is under the hand."""
HANDING_ON = frozenset({"RoundSheet", "ReadBack"})
"""They give the keyboard at once to their field, or to their first word."""
VIEWS = (View.ROUND, View.BOX, View.BENCH, View.STACK, View.YEAR, View.DAYS, View.PAPERS)
TAB = int(Qt.FocusPolicy.TabFocus.value)


def controls(window: MainWindow) -> list[QWidget]:
    """What the keyboard can come to in the room that is shown."""
    return [
        widget
        for widget in window.shell.findChildren(QWidget)
        if widget.isVisible()
        and widget.isEnabled()
        and int(widget.focusPolicy().value) & TAB
        and not (isinstance(widget, QLineEdit) and isinstance(widget.parent(), QComboBox))
    ]


@pytest.mark.parametrize("view", VIEWS)
def test_each_control_has_a_name_and_a_tooltip(window: MainWindow, view: View) -> None:
    window.desk.visit_to_write()
    window.go_to(view)
    QApplication.processEvents()
    nameless, silent = [], []
    for widget in controls(window):
        said = widget.accessibleName() or (widget.text() if isinstance(widget, QAbstractButton) else "")
        if not said.strip():
            nameless.append(repr(widget))
        is_face = type(widget).__name__ in FACES or isinstance(widget, QAbstractScrollArea)
        if not is_face and not widget.toolTip().strip():
            silent.append((repr(widget), said))
    assert nameless == []
    assert silent == []


@pytest.mark.parametrize("view", VIEWS)
def test_tab_comes_to_every_control_and_round_again(window: MainWindow, view: View) -> None:
    window.desk.visit_to_write()
    window.go_to(view)
    QApplication.processEvents()
    wanted = {widget for widget in controls(window) if not _goes_by_arrows(widget)}
    seen: set[QWidget] = set()
    for _ in range(3 * len(wanted) + 200):
        focus = QApplication.focusWidget()
        assert focus is not None
        seen.add(focus)
        if wanted <= seen:
            break
        press(Qt.Key.Key_Tab)
    missing = [repr(widget) for widget in wanted - seen if type(widget).__name__ not in HANDING_ON]
    assert missing == []


def test_tab_follows_the_eye_from_the_stands_to_the_letters(window: MainWindow) -> None:
    window.desk.visit_to_write()
    for view in (View.ROUND, View.STACK, View.BOX):
        window.go_to(view)
    QApplication.processEvents()
    parts = (window.stands, window.ruler, window.box, window.bench, window.key_line, window.page)
    press(Qt.Key.Key_9, Qt.KeyboardModifier.ControlModifier)
    order: list[QWidget] = []
    for _ in range(60):
        focus = QApplication.focusWidget()
        assert focus is not None
        part = next((part for part in (*parts, window.legend) if part.isAncestorOf(focus)), None)
        if part is not None and part not in order:
            order.append(part)
        press(Qt.Key.Key_Tab)
    assert order == [*parts, window.legend]
    press(Qt.Key.Key_9, Qt.KeyboardModifier.ControlModifier)
    names = []
    for _ in range(4):
        focus = QApplication.focusWidget()
        assert focus is not None
        names.append(focus.accessibleName().split(",")[0])
        press(Qt.Key.Key_Tab)
    assert names == ["Pear Tree", "Gate", "Wall", "Elder"]


def _goes_by_arrows(widget: QWidget) -> bool:
    """One of several buttons of which one is on: Tab comes to that one, arrows to the others."""
    group = widget.group() if isinstance(widget, QAbstractButton) else None
    return group is not None and group.exclusive() and not widget.isChecked()  # type: ignore[attr-defined]


def picture(window: MainWindow, widget: QWidget) -> QImage:
    QApplication.processEvents()
    del window
    return widget.grab().toImage()


@pytest.mark.parametrize("view", VIEWS)
def test_the_keyboard_is_seen_where_it_is(window: MainWindow, view: View) -> None:
    window.desk.visit_to_write()
    window.go_to(view)
    QApplication.processEvents()
    unseen = []
    for widget in controls(window):
        elsewhere = window.shell.menuBar()
        elsewhere.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        elsewhere.setFocus()
        without = picture(window, widget)
        widget.setFocus(Qt.FocusReason.TabFocusReason)
        if not widget.hasFocus():
            continue  # it hands the keyboard on to a part of its own
        if picture(window, widget) == without and not isinstance(widget, QAbstractScrollArea):
            unseen.append((repr(widget), widget.accessibleName()))
    assert unseen == []
