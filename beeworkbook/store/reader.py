"""Every read the faces need, as frozen records. Neither rows nor the connection leave the room."""

from typing import Any

from beeworkbook.comb.frames import FrameType
from beeworkbook.store.errors import NoSuchRecordError
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import find, find_one, frame_type
from beeworkbook.store.rows import R


class Reader:
    """The workbook for looking: values only, each call one consistent state of the book."""

    def __init__(self, link: Link) -> None:
        self._link = link

    def get(self, cls: type[R], its_id: Any) -> R:
        """The record with this id. Errors: NoSuchRecordError if there is none."""
        found = self.find_one(cls, its_id)
        if found is None:
            raise NoSuchRecordError(cls, its_id)
        return found

    def find_one(self, cls: type[R], its_id: Any) -> R | None:
        """The record with this id, or None."""
        return find_one(self._link, cls, its_id)

    def find(self, cls: type[R], **equals: object) -> tuple[R, ...]:
        """The records whose fields have these values, by id; None asks for a blank.

        Errors: KeyError if there is no such field.
        """
        return find(self._link, cls, equals)

    def frame_type(self, its_id: str) -> FrameType:
        """A shipped frame type or one of the keeper's own. Errors: NoSuchRecordError if it is neither."""
        return frame_type(self._link, its_id)
