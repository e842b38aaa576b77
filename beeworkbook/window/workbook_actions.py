"""Opening, copying, exchanging and checking workbooks: what the Workbook menu does."""

from datetime import date
from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QFileDialog

from beeworkbook.places import user_data_folder
from beeworkbook.window.dialogs.form import Choice, Form
from beeworkbook.window.dialogs.told import show_sentence
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.work import run_with_progress
from beeworkbook.words import date_words, say
from beeworkbook.workbook.workbook import Copy

ENDING: Final = ".beebook"


def new_workbook(window: MainWindow) -> None:
    """Ask where and what name, and open an empty workbook there."""
    from beeworkbook.window.dialogs.form import TextLine

    form = Form(
        window,
        say("New workbook"),
        say("Choose where…"),
        say("A workbook is one file. Keep it where you keep your papers."),
    )
    name = form.add(TextLine(say("Name"), say("My bees"), needed=True))
    if not form.ask():
        return
    path = _ask_save(
        window, say("Where to keep it"), f"{name.text}{ENDING}", say("Workbook (*{ending})", ending=ENDING)
    )
    if path is not None:
        window.opener.create(path.with_suffix(ENDING), name.text)


def open_workbook(window: MainWindow) -> None:
    """Open another workbook in this window."""
    chosen, _kind = QFileDialog.getOpenFileName(
        window.shell,
        say("Open a workbook"),
        str(window.desk.book.path.parent),
        say("Workbook (*{ending})", ending=ENDING),
    )
    if chosen:
        window.opener.open(Path(chosen))


def open_sample(window: MainWindow) -> None:
    """Open the keeper's own copy of the sample apiary."""
    window.opener.open_sample()


def save_copy(window: MainWindow) -> None:
    """Write a copy; this workbook stays open."""
    name = f"{window.desk.book.path.stem} {window.desk.today.isoformat()}{ENDING}"
    path = _ask_save(window, say("Save a copy"), name, say("Workbook (*{ending})", ending=ENDING))
    if path is not None and window.attempt(lambda: window.desk.book.save_copy(path)):
        window.tell(say("A copy lies at {place}.", place=path))


def restore_copy(window: MainWindow) -> None:
    """Go back to a kept copy; the present file is itself kept as a copy first."""
    copies = window.desk.book.copies()
    if not copies:
        window.tell(say("No copy is kept yet: one is made at the first change of a day."))
        return
    form = Form(
        window,
        say("Restore a copy"),
        say("Restore it"),
        say("The workbook as it is now is kept as a copy first, so this too can be taken back."),
    )
    options: list[tuple[str, object]] = [(copy_words(copy), copy) for copy in copies]
    chosen = form.add(Choice(say("Copy"), options))
    if form.ask() and chosen.value is not None:
        window.opener.restore(chosen.value)


def copy_words(copy: Copy) -> str:
    """A kept copy in words: of which day, or before what it was made."""
    size = say("{size} kB", size=max(1, round(copy.size_bytes / 1000)))
    if copy.day is not None:
        words = say("of {day}, at the first change", day=date_words(copy.day, "weekday_year"))
    elif copy.form is not None:
        words = say("before the file was brought up from form {form}", form=copy.form)
    else:
        words = say("before another copy was restored")
    return f"{words}, {size}"


def export_book(window: MainWindow) -> None:
    """Write the whole workbook in the exchange format."""
    from beeworkbook.workbook.exchange import export_book as export

    name = f"{window.desk.book.path.stem}.json"
    path = _ask_save(window, say("Export everything"), name, say("Exchange format (*.json)"))
    if path is None:
        return
    book = window.desk.book
    done = run_with_progress(
        window,
        say("Writing {name}", name=path.name),
        lambda tell, stop: export(book.read, path, progress=tell, cancelled=stop),
    )
    if done:
        window.tell(say("Everything is written to {place}.", place=path))


def import_book(window: MainWindow) -> None:
    """Read an exchange file into a new workbook and open that."""
    from beeworkbook.workbook.exchange import import_book as read

    chosen, _kind = QFileDialog.getOpenFileName(
        window.shell, say("Import a workbook"), str(Path.home()), say("Exchange format (*.json)")
    )
    if not chosen:
        return
    source = Path(chosen)
    target = _ask_save(
        window,
        say("Where to keep the new workbook"),
        f"{source.stem}{ENDING}",
        say("Workbook (*{ending})", ending=ENDING),
    )
    if target is None:
        return
    done = run_with_progress(
        window,
        say("Reading {name}", name=source.name),
        lambda tell, stop: read(source, target, progress=tell, cancelled=stop),
    )
    if done:
        window.opener.open(target)


def export_totals(window: MainWindow) -> None:
    """Write the totals of every visit as a table."""
    from beeworkbook.workbook.totals_csv import all_colonies, write_visits

    path = _ask_save(
        window, say("Totals as a table"), f"{window.desk.book.path.stem} totals.csv", say("Table (*.csv)")
    )
    if path is None:
        return

    read = window.desk.book.read

    def write() -> None:
        with path.open("w", encoding="utf-8", newline="") as stream:
            write_visits(read, all_colonies(read), date.min, date.max, stream)

    if window.attempt(write):
        window.tell(say("The totals lie at {place}.", place=path))


def check_book(window: MainWindow) -> None:
    """Recount the totals and look for damage."""
    found: list[str] = []
    book = window.desk.book
    done = run_with_progress(
        window, say("Checking the workbook"), lambda _tell, _stop: found.extend(map(str, book.check()))
    )
    if not done:
        return
    if found:
        show_sentence(window.shell, say("The check found something"), "\n".join(found[:50]))
    else:
        window.tell(say("The check found nothing wrong."))


def settings(window: MainWindow) -> None:
    """Title, hemisphere, own frames, looks."""
    from beeworkbook.window.dialogs.settings import ask_settings

    ask_settings(window)


def quit(window: MainWindow) -> None:  # noqa: A001  # the action's name; nothing here calls the built-in
    """Close the window; everything is already kept."""
    window.shell.close()


def _ask_save(window: MainWindow, title: str, name: str, kinds: str) -> Path | None:
    folder = window.desk.book.path.parent
    if not folder.is_dir():
        folder = user_data_folder()
    chosen, _kind = QFileDialog.getSaveFileName(window.shell, title, str(folder / name), kinds)
    return Path(chosen) if chosen else None
