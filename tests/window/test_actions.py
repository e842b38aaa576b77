"""Every action has its words, its keys and something that does it; no key is a content or a digit alone."""

from importlib import import_module

from PySide6.QtGui import QKeySequence

from beeworkbook.comb.contents import KEY_LETTERS
from beeworkbook.window.actions import ACTIONS, MENUS, by_name
from beeworkbook.window.commands import HANDLED


def test_every_action_has_a_menu_a_text_a_key_and_a_tip() -> None:
    for spec in ACTIONS:
        assert spec.menu in MENUS
        assert spec.text
        assert spec.keys
        assert len(spec.tip) > 8


def test_no_two_actions_share_a_key_or_a_name() -> None:
    keys = [QKeySequence(spec.keys).toString() for spec in ACTIONS]
    assert all(keys)
    assert len(set(keys)) == len(keys)
    assert len({spec.name for spec in ACTIONS}) == len(ACTIONS)


def test_no_action_takes_a_letter_or_a_digit_alone() -> None:
    alone = {*KEY_LETTERS.values(), "W", "Q", "K", *"0123456789"}
    assert not {spec.keys for spec in ACTIONS} & alone


def test_every_action_is_done_by_a_function_of_its_module() -> None:
    assert set(HANDLED) == {spec.name for spec in ACTIONS}
    for name, module in HANDLED.items():
        assert callable(getattr(import_module(f"beeworkbook.window.{module}"), name))


def test_an_action_is_found_by_its_name() -> None:
    assert by_name("undo").keys == "Ctrl+Z"
