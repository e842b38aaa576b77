"""What each action does: its name leads to a function of an `*_actions` module, loaded when first used."""

from collections.abc import Callable
from importlib import import_module
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from beeworkbook.window.main_window import MainWindow

_MODULES: Final[dict[str, tuple[str, ...]]] = {
    "workbook_actions": (
        "new_workbook", "open_workbook", "open_sample", "save_copy", "restore_copy", "export_book",
        "import_book", "export_totals", "check_book", "settings", "quit",
    ),
    "edit_actions": ("undo", "redo", "rename"),
    "visit_actions": (
        "begin_round", "visit_on", "visit_earlier", "visit_later", "add_event", "happened",
        "give_feed", "add_due", "move_visit", "remove_visit",
    ),
    "comb_actions": (
        "swap_sides", "move_drawing", "clear_side", "turn_comb", "move_comb", "take_comb", "add_comb",
        "drone_comb", "shine_through",
    ),
    "copy_actions": ("mirror_side", "copy_side"),
    "hive_actions": (
        "add_colony", "add_apiary", "change_apiary", "go_apiary", "go_colony", "move_colony",
        "stand_earlier", "stand_later", "other_end", "take_out",
    ),
    "paper_actions": (
        "chart_picture", "chart_table", "paper_blank", "paper_filled", "paper_round", "print_paper",
    ),
    "view_actions": (
        "view_round", "view_box", "view_bench", "view_page", "view_stack", "view_year", "view_days",
        "view_papers", "view_stands", "deeper", "higher", "colony_before", "colony_after", "dark",
    ),
    "help_actions": ("help", "help_keys", "help_cautions", "about"),
}  # fmt: skip

HANDLED: Final = {name: module for module, names in _MODULES.items() for name in names}
"""Which module does which action."""


class Commands:
    """The actions of one window."""

    def __init__(self, window: "MainWindow") -> None:
        """The actions of `window`."""
        self.window = window

    def handler(self, name: str) -> Callable[..., None]:
        """What to call when the action `name` is asked for.

        Errors: KeyError if no module does it.
        """
        module = HANDLED[name]

        def act(*_checked: Any) -> None:
            self.run(module, name)

        return act

    def do(self, name: str) -> None:
        """Do the action `name` now."""
        self.run(HANDLED[name], name)

    def run(self, module: str, name: str) -> None:
        """Load the module of an action and do it."""
        getattr(import_module(f"beeworkbook.window.{module}"), name)(self.window)
