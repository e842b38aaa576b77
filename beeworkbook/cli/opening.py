"""Without a command: the window, or where there is no screen the pictures and papers it would have shown."""

import sys
from pathlib import Path

from beeworkbook.cli.command import CommandError, Today
from beeworkbook.words import say


def open_window(path: Path | None, today: Today) -> int:
    """Open the window on a workbook, or where it was left; gives the exit code.

    Errors: CommandError if there is no such workbook; StoreError or RefusedError without a screen.
    """
    if path is not None and not path.is_file():
        raise CommandError(say("There is no workbook at {path}.", path=path))
    from beeworkbook.app import has_screen

    if has_screen():
        from beeworkbook.app import run

        return run(path, today)
    from beeworkbook.cli.unattended import do_unattended

    print(say("There is no screen here, so the papers and pictures are written instead."), file=sys.stderr)
    return do_unattended(path, today)
