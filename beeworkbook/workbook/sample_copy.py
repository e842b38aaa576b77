"""The keeper's copy of the sample apiary: made the first time, never written over."""

from pathlib import Path
from typing import Final

from beeworkbook.resources import sample_folder

SAMPLE_NAME: Final = "Sample apiary.beebook"
SAMPLE_FILE: Final = "sample.json"


def make_sample(path: Path) -> None:
    """Copy the shipped sample to a place where nothing is yet.

    Errors: MissingResourceError if no sample is shipped; ExchangeError; NotKeptError; OSError.
    """
    from beeworkbook.workbook.exchange import import_book  # late: only the first start needs it

    path.parent.mkdir(parents=True, exist_ok=True)
    import_book(sample_folder() / SAMPLE_FILE, path)


def sample_copy(folder: Path) -> Path:
    """The keeper's copy in this folder, made of the shipped sample if it is not there yet.

    Errors: as make_sample.
    """
    path = folder / SAMPLE_NAME
    if not path.exists():
        make_sample(path)
    return path
