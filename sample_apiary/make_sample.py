"""Make the sample again from its parameters: `python -m sample_apiary.make_sample`.

The workbook is kept by the program's own edits, then written in the exchange format. The same
parameters give the same bytes, since neither the clock nor the machine has a say.
"""

import sys
import tempfile
from datetime import date
from pathlib import Path

from beeworkbook.workbook.exchange import write_document
from beeworkbook.workbook.workbook import Workbook
from sample_apiary.keeper import Clock, Keeper
from sample_apiary.parameters import load_parameters

SAMPLE = Path(__file__).with_name("sample.json")


def keep_sample(path: Path) -> Workbook:
    """The sample as a workbook at a place where nothing is yet, open."""
    parameters = load_parameters()
    clock = Clock(date.fromisoformat(parameters["first_day"]))
    book = Workbook.create(path, parameters["title"], today=clock.today, now=clock.now)
    Keeper(book, parameters, clock).keep()
    return book


def main(argv: list[str]) -> int:
    """Write sample.json, or the workbook itself where a path is given."""
    if argv:
        keep_sample(Path(argv[0])).close()
        return 0
    with tempfile.TemporaryDirectory() as folder:
        book = keep_sample(Path(folder) / "sample.beebook")
        with SAMPLE.open("wb") as stream:
            write_document(book.read, stream)
        book.close()
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
