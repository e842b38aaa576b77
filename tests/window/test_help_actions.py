"""Help ships with the program, says every key there is, and the cautions."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from beeworkbook.places import log_path
from beeworkbook.window.actions import ACTIONS
from beeworkbook.window.help_actions import HelpWindow, keys_page
from beeworkbook.window.main_window import MainWindow
from tests.window.conftest import ALT, CTRL, NO_MODIFIER, SHIFT, press


def shown() -> HelpWindow:
    return next(
        window
        for window in QApplication.topLevelWidgets()
        if isinstance(window, HelpWindow) and window.isVisible()
    )


@pytest.mark.parametrize(
    ("key", "modifier", "words"),
    [
        (Qt.Key.Key_F1, NO_MODIFIER, ("comb", "undo")),
        (Qt.Key.Key_F1, CTRL, ("Ctrl+Z", "F6")),
        (Qt.Key.Key_F1, SHIFT, ("sting", "acid", "inspector", "label")),
        (Qt.Key.Key_A, CTRL | ALT, ("Version", "MIT", "Nothing is ever sent", str(log_path().name))),
    ],
)
def test_each_page_opens_and_says_what_it_is_for(
    window: MainWindow, key: Qt.Key, modifier: Qt.KeyboardModifier, words: tuple[str, ...]
) -> None:
    press(key, modifier)
    page = shown()
    text = page.text.toPlainText().casefold()
    for word in words:
        assert word.casefold() in text
    assert not page.isModal()
    page.activateWindow()
    press(Qt.Key.Key_Escape, on=page)
    assert not page.isVisible()
    assert window.desk.colony is not None


def test_every_action_stands_on_the_page_of_keys() -> None:
    page = keys_page()
    for spec in ACTIONS:
        assert f"| {spec.keys} |" in page
        assert spec.tip in page
