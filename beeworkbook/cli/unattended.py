"""What the program does where there is no screen: the window, the combs, the sheets and the charts, as files.

Everything goes into one folder, which is said at the end. The workbook is only looked at.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from beeworkbook.cli.asking import opened
from beeworkbook.cli.command import DONE, CommandError, Today
from beeworkbook.cli.sheets import blank_model, filled_model, print_combs, print_round
from beeworkbook.cli.visits import drawn_visit, shown_visit
from beeworkbook.cli.writing import new_file
from beeworkbook.colony.records import Colony, Visit
from beeworkbook.places import user_data_folder
from beeworkbook.words import say, say_count

if TYPE_CHECKING:
    from beeworkbook.workbook.workbook import Workbook

FOLDER = "pictures"


def do_unattended(path: Path | None, today: Today) -> int:
    """Write all that can be seen of a workbook, or of the sample, into a folder; gives the exit code.

    Errors: CommandError, StoreError, RefusedError.
    """
    from beeworkbook.workbook.sample_copy import sample_copy

    home = user_data_folder()
    try:
        source = path if path is not None else sample_copy(home)
        folder = home / FOLDER / source.stem
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = error.strerror or str(error)
        raise CommandError(
            say("The folder {path} cannot be used: {reason}.", path=home, reason=reason)
        ) from error
    with opened(source, today) as book:
        written = [*_papers(book, folder), *_pictures(book, folder, today)]
    many = say_count(len(written), "Wrote one file to {folder}", "Wrote {n} files to {folder}", folder=folder)
    print(many)
    return DONE


def _papers(book: "Workbook", folder: Path) -> Iterator[Path]:
    """The sheets, blank and filled, and each apiary's round sheet."""
    from beeworkbook.papers.options import PaperOptions

    options = PaperOptions()
    colonies = book.read.find(Colony)
    blank = tuple(filter(None, (blank_model(book, colony, book.today) for colony in colonies)))
    filled = tuple(filter(None, (filled_model(book, colony, book.today) for colony in colonies)))
    for name, models in ((say("blank sheets"), blank), (say("filled sheets"), filled)):
        if models:
            target = folder / f"{name}.pdf"
            with new_file(target, replace=True) as stream:
                print_combs(models, options, stream)
            yield _told(target)
    for apiary in book.read.apiaries():
        target = folder / f"{say('round sheet')} {apiary.id}.pdf"
        with new_file(target, replace=True) as stream:
            print_round(book, apiary.id, book.today, options, stream)
        yield _told(target)


def _pictures(book: "Workbook", folder: Path, today: Today) -> Iterator[Path]:
    """Every comb of each colony's last drawn visit, its chart, and the window."""
    from beeworkbook.cli.chart import Shown, draw_chart
    from beeworkbook.window.pictures import begin_pictures, write_combs, write_window

    app = begin_pictures()
    try:
        for colony in book.read.find(Colony):
            visit = drawn_visit(book, colony.id, book.today)
            for ending in (".png", ".svg"):
                target = folder / f"{say('chart')} {colony.id}{ending}"
                with new_file(target, replace=True) as stream:
                    stream.write(
                        draw_chart(book, (colony.id,), _year_of(visit, book), ending, Shown(stores=True))
                    )
                yield _told(target)
            if visit is not None:
                combs = write_combs(book, visit, folder)
                yield from combs
                print(say("{n} combs of {colony}", n=len(combs), colony=colony.name))
        window = folder / f"{say('window')}.png"
        write_window(app, book.path, today, shown_visit(book, book.today), window)
        yield _told(window)
    except OSError as error:
        raise CommandError(say("The pictures could not be written: {reason}.", reason=error)) from error


def _year_of(visit: Visit | None, book: "Workbook") -> int:
    """The year worth a chart: that of the last combs, else this one."""
    return visit.day.year if visit is not None else book.today.year


def _told(path: Path) -> Path:
    print(path)
    return path
