"""Where the data files lie that ship with the program: fonts, icons, help, schema, the sample apiary.

They lie beside the package in a checkout and inside it once installed. Nothing here reads a file.
"""

from functools import cache
from pathlib import Path
from typing import Final

_PACKAGE: Final = Path(__file__).resolve().parent


class MissingResourceError(FileNotFoundError):
    """A file that belongs to the program is not there: the installation is incomplete."""


def resource(*parts: str) -> Path:
    """The path of a file or folder of `resources/`, named by its parts.

    Errors: MissingResourceError if it is not there.
    """
    path = _folder("_resources", "resources").joinpath(*parts)
    if not path.exists():
        raise MissingResourceError(f"{path} is missing, so this installation is incomplete.")
    return path


def sample_folder() -> Path:
    """The folder of the sample apiary.

    Errors: MissingResourceError if it is not there.
    """
    path = _folder("_sample", "sample_apiary")
    if not path.is_dir():
        raise MissingResourceError(f"{path} is missing, so this installation is incomplete.")
    return path


@cache
def _folder(installed: str, in_checkout: str) -> Path:
    inside = _PACKAGE / installed
    return inside if inside.is_dir() else _PACKAGE.parent / in_checkout
