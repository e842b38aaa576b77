"""Going about: the rooms of the book, a depth down or up, the colony before and after, light and dark."""

from beeworkbook.qt.desk import View
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.main_window import MainWindow


def view_round(window: MainWindow) -> None:
    """Show the Round."""
    window.go_to(View.ROUND)


def view_box(window: MainWindow) -> None:
    """Show the Box."""
    window.go_to(View.BOX)


def view_bench(window: MainWindow) -> None:
    """Show the Bench."""
    window.go_to(View.BENCH)


def view_page(window: MainWindow) -> None:
    """Put the keyboard on the Page."""
    window.page.take_focus()


def view_stack(window: MainWindow) -> None:
    """Show the Stack."""
    window.go_to(View.STACK)


def view_year(window: MainWindow) -> None:
    """Show the Year."""
    window.go_to(View.YEAR)


def view_days(window: MainWindow) -> None:
    """Show the Days."""
    window.go_to(View.DAYS)


def view_papers(window: MainWindow) -> None:
    """Show the Papers."""
    window.go_to(View.PAPERS)


def view_stands(window: MainWindow) -> None:
    """Put the keyboard on the Stands."""
    window.stands.focus_colony(window.desk.spot.colony_id)


def deeper(window: MainWindow) -> None:
    """From the round into the box, from the box to the bench."""
    window.go_depth(1)


def higher(window: MainWindow) -> None:
    """From the bench to the box, from the box to the round."""
    window.go_depth(-1)


def colony_before(window: MainWindow) -> None:
    """The colony on the stand before."""
    window.stands.step(-1)


def colony_after(window: MainWindow) -> None:
    """The colony on the next stand."""
    window.stands.step(1)


def dark(window: MainWindow) -> None:
    """Light or dark."""
    window.desk.set_palette(LIGHT if window.desk.palette == DARK else DARK)
