"""Sheets and charts: what the Papers and the Year menus do."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog

from beeworkbook.qt.desk import View
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.papers_view import PapersView, SheetKind
from beeworkbook.words import say

if TYPE_CHECKING:
    from beeworkbook.year.year_view import YearView


def paper_blank(window: MainWindow) -> None:
    """The blank comb sheet of this colony."""
    _show(window, SheetKind.BLANK)


def paper_filled(window: MainWindow) -> None:
    """The filled comb sheet of this visit."""
    _show(window, SheetKind.FILLED)


def paper_round(window: MainWindow) -> None:
    """The round sheet of this apiary."""
    _show(window, SheetKind.ROUND)


def print_paper(window: MainWindow) -> None:
    """Print the sheet shown; the first time it is shown first."""
    if window.desk.spot.view is not View.PAPERS:
        window.go_to(View.PAPERS)
        return
    _papers(window).print()


def chart_picture(window: MainWindow) -> None:
    """Save the chart as PNG or SVG."""
    kinds = say("Picture (*.png);;Drawing (*.svg)")
    path = _ask(window, say("Save the chart as a picture"), "png", kinds)
    if path is not None and window.attempt(lambda: _year(window).save_picture(path)):
        window.tell(say("The chart lies at {place}.", place=path))


def chart_table(window: MainWindow) -> None:
    """Save the chart's figures as CSV."""
    path = _ask(window, say("Save the chart's figures"), "csv", say("Table (*.csv)"))
    if path is not None and window.attempt(lambda: _year(window).save_table(path)):
        window.tell(say("The figures lie at {place}.", place=path))


def _show(window: MainWindow, kind: SheetKind) -> None:
    window.go_to(View.PAPERS)
    _papers(window).choose_kind(kind)


def _papers(window: MainWindow) -> PapersView:
    face = window.face(View.PAPERS)
    assert isinstance(face, PapersView)  # noqa: S101  # the table of faces says so
    return face


def _year(window: MainWindow) -> "YearView":
    from beeworkbook.year.year_view import YearView  # late: charts cost half a second

    face = window.face(View.YEAR)
    assert isinstance(face, YearView)  # noqa: S101  # the table of faces says so
    return face


def _ask(window: MainWindow, title: str, ending: str, kinds: str) -> Path | None:
    book = window.desk.book
    name = f"{book.path.stem} {window.desk.spot.day.year}.{ending}"
    chosen, _kind = QFileDialog.getSaveFileName(window.shell, title, str(book.path.parent / name), kinds)
    return Path(chosen) if chosen else None
