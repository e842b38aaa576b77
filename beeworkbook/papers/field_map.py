"""Where every field of a printed sheet lies, so that a later photograph can be read.

Kept as JSON with each printed sheet. Lengths are rounded to a hundredth of a millimetre, finer than
any printer. Nothing here draws.
"""

import json
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Final

from beeworkbook.papers.rect import Rect

FORMAT: Final = "hive sheet field map"
VERSION: Final = 1
_PLACES: Final = 2


class FieldKind(StrEnum):
    """What the keeper does in a field."""

    TICK = "tick"
    BAR = "bar"
    COMB = "comb"
    DIGIT = "digit"
    WRITE = "write"


class FieldMapError(ValueError):
    """This is not the field map of a sheet."""


@dataclass(frozen=True)
class Field:
    """One field: its name, as "box1.comb4.A.eggs", and where it lies.

    A bar is drawn from its left end; its eighths divide its width evenly. A comb's place is the inside
    of its frame. Units: millimetres from the page's top left corner.
    """

    name: str
    kind: FieldKind
    place: Rect


@dataclass(frozen=True)
class MarkerPlace:
    """One square marker: its number in the family, and where it lies."""

    number: int
    place: Rect


@dataclass(frozen=True)
class PageMap:
    """One page: its size, its layout, what is printed on it to find it by, and its fields.

    `codes` are the places of the square code, without its quiet rim; `plain` is what it says.
    """

    page: int
    width_mm: float
    height_mm: float
    layout: int
    plain: str
    markers: tuple[MarkerPlace, ...]
    codes: tuple[Rect, ...]
    fields: tuple[Field, ...]

    def field(self, name: str) -> Field:
        """The field of this name. Errors: KeyError if the page has none."""
        for found in self.fields:
            if found.name == name:
                return found
        raise KeyError(name)


@dataclass(frozen=True)
class FieldMap:
    """Every page of one printed sheet. `read_back` is false where the paper has no bars and markers."""

    code: str
    revision: int
    paper: str
    read_back: bool
    pages: tuple[PageMap, ...]

    def to_json(self) -> str:
        """The map as one line of JSON, the same letters for the same sheet."""
        held = {
            "format": FORMAT,
            "version": VERSION,
            "code": self.code,
            "revision": self.revision,
            "paper": self.paper,
            "unit": "mm from the top left corner",
            "read_back": self.read_back,
            "pages": [_page_out(page) for page in self.pages],
        }
        return json.dumps(held, ensure_ascii=False, separators=(",", ":"))


def field_map_from_json(text: str) -> FieldMap:
    """The map written by to_json. Errors: FieldMapError if it is none, or of a later version."""
    try:
        held = json.loads(text)
        if held["format"] != FORMAT or held["version"] != VERSION:
            raise FieldMapError("This is not a field map this program can read.")
        pages = tuple(_page_in(page) for page in held["pages"])
        return FieldMap(
            str(held["code"]), int(held["revision"]), str(held["paper"]), bool(held["read_back"]), pages
        )
    except (ValueError, KeyError, TypeError, IndexError) as error:
        if isinstance(error, FieldMapError):
            raise
        raise FieldMapError("This is not the field map of a sheet.") from error


def _place_out(place: Rect) -> list[float]:
    return [round(length, _PLACES) for length in (place.x, place.y, place.width, place.height)]


def _place_in(held: list[Any]) -> Rect:
    x, y, width, height = (float(length) for length in held)
    return Rect(x, y, width, height)


def _page_out(page: PageMap) -> dict[str, Any]:
    return {
        "page": page.page,
        "size": [page.width_mm, page.height_mm],
        "layout": page.layout,
        "plain": page.plain,
        "markers": [[marker.number, *_place_out(marker.place)] for marker in page.markers],
        "codes": [_place_out(place) for place in page.codes],
        "fields": [[found.name, found.kind.value, *_place_out(found.place)] for found in page.fields],
    }


def _page_in(held: dict[str, Any]) -> PageMap:
    width, height = held["size"]
    return PageMap(
        int(held["page"]),
        float(width),
        float(height),
        int(held["layout"]),
        str(held["plain"]),
        tuple(MarkerPlace(int(row[0]), _place_in(row[1:])) for row in held["markers"]),
        tuple(_place_in(row) for row in held["codes"]),
        tuple(Field(str(row[0]), FieldKind(row[1]), _place_in(row[2:])) for row in held["fields"]),
    )
