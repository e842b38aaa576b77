"""Write the full workbook of today's form that is kept for good: python -m tests.store.keep_form.

Run once when a form is released; a kept file is never written again.
"""

from pathlib import Path

from beeworkbook.store.database import create
from beeworkbook.store.form import FILE_ENDING, SCHEMA_VERSION
from tests.store.small_apiary import fill

FOLDER = Path(__file__).parents[1] / "data" / "workbooks"


def main() -> None:
    FOLDER.mkdir(parents=True, exist_ok=True)
    with create(FOLDER / f"form_{SCHEMA_VERSION}{FILE_ENDING}") as database:
        fill(database)


if __name__ == "__main__":
    main()
