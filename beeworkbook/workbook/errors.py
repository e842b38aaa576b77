"""What a workbook refuses, in sentences for the person. After any of them all is as it was before."""

from beeworkbook.store.errors import AlreadyOpenError, StoreError
from beeworkbook.words import say

__all__ = [
    "AlreadyOpenError",
    "GoneError",
    "NotKeptError",
    "NotReadableError",
    "ReadOnlyError",
    "RefusedError",
    "StaleStepError",
    "StoreError",
]


class RefusedError(Exception):
    """What was asked cannot be done; the text is what the person reads."""


class ReadOnlyError(RefusedError):
    """This workbook is open for looking only."""

    def __init__(self) -> None:
        super().__init__(say("This workbook is open for looking only, so nothing can be changed in it."))


class NotReadableError(RefusedError):
    """What was typed cannot be read; `position` is the letter, counted from 0, where it is known."""

    def __init__(self, message: str, position: int | None = None) -> None:
        super().__init__(message)
        self.position = position


class GoneError(RefusedError):
    """What an edit speaks of is no longer in the workbook."""

    def __init__(self, what: str) -> None:
        super().__init__(say("{what} is no longer in this workbook.", what=what))


class StaleStepError(RefusedError):
    """A step can no longer be undone or done again, since the workbook has changed under it."""

    def __init__(self, label: str) -> None:
        super().__init__(
            say("“{step}” cannot be undone or done again: the workbook has changed since.", step=label)
        )


class NotKeptError(RefusedError):
    """The store could not keep the change (disk full, file locked, damaged); nothing was changed."""
