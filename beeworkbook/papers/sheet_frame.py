"""What stands round the combs of a comb sheet: head, codes and markers, legend and cautions.

The head keeps what is written at the hive out from under a clip: in the top 12 mm stands only what
nobody needs there.
"""

from collections.abc import Iterator
from datetime import date
from typing import Final

from beeworkbook.colony.records import Way
from beeworkbook.colony.sheet_models import CombSheetModel
from beeworkbook.comb.contents import KEY_LETTERS, Content
from beeworkbook.comb.key_letters import KeyLetters, installed_letters
from beeworkbook.comb.names import content_short
from beeworkbook.papers import symbols
from beeworkbook.papers.cautions import cautions
from beeworkbook.papers.comb_forms import Form
from beeworkbook.papers.comb_picture import content_fill, pattern_form
from beeworkbook.papers.field_map import Field, FieldKind, MarkerPlace
from beeworkbook.papers.fonts import (
    BODY,
    COMB,
    LABEL,
    NAME,
    SMALL,
    SMALL_BOLD,
    shortened,
    width_mm,
    wrapped,
)
from beeworkbook.papers.markers import code_runs, marker_number, marker_runs, runs_page_description
from beeworkbook.papers.options import Paper
from beeworkbook.papers.page import FIRM_MM, HAIR_MM, Document
from beeworkbook.papers.rect import Rect
from beeworkbook.words import say

_DIGIT: Final = (6.0, 7.8)
_DIGIT_GAP: Final = 0.5
_PAIR_GAP: Final = 2.0
_DATE_NAMES: Final = ("day1", "day2", "month1", "month2", "year1", "year2")
_SWATCH: Final = (5.2, 2.5)
_MARKER_SQUARES: Final = 8
_FOOT_LEADING: Final = 3.0
_LEGEND_LEADING: Final = 3.45


def draw_markers(document: Document, form: Form, page: int) -> tuple[MarkerPlace, ...]:
    """The square markers of a page; gives their numbers and places."""
    drawn = []
    for place, rect in enumerate(form.markers):
        number = marker_number(place, form.number, page)
        runs = marker_runs(number)
        document.describe(runs_page_description(runs, _MARKER_SQUARES, rect, document.height_mm))
        drawn.append(MarkerPlace(number, rect))
    return tuple(drawn)


def draw_codes(document: Document, form: Form, plain: str) -> None:
    """The square code in two opposite corners."""
    if not form.codes:
        return
    runs, squares = code_runs(plain)
    for place in form.codes:
        document.describe(runs_page_description(runs, squares, place, document.height_mm))


def draw_head(
    document: Document, form: Form, model: CombSheetModel, about: tuple[str, str], plain: str
) -> Iterator[Field]:
    """Name, where it stands, what this page holds, and the date in single digits.

    about: what this page holds, and what else there is to say of it. On a sheet that is read back the top
    says how it is filled in; else the second part stands there, since narrow paper has no room for both.
    """
    head = form.header
    top = head.y + SMALL.height_mm
    code_width = document.text(head.right - width_mm(plain, SMALL_BOLD), top, plain, SMALL_BOLD)
    holds, more = about
    how = _how(model) if form.markers else more
    if form.markers:
        holds = " ".join(filter(None, about))
    document.text(
        head.x, top, shortened(how, SMALL, head.width - code_width - 4.0), SMALL, ink=document.second
    )
    digits = _digit_boxes(head)
    room = digits[0].x - head.x - 3.0
    name = head.bottom - 10.2
    document.text(head.x, name, shortened(model.colony_name, NAME, room), NAME)
    document.text(head.x, name + 4.8, shortened(_standing(document, model), BODY, room), BODY)
    document.text(head.x, name + 8.6, shortened(holds, SMALL, room), SMALL)
    yield from _draw_date(document, digits, model.visit.day if model.visit else None)


def _how(model: CombSheetModel) -> str:
    """How the sheet is filled in, or how a filled one is read."""
    if model.visit is None:
        return say(
            "Box: a stroke or cross. Bar: one line from its left end, a tooth an eighth."
            " Comb: sketch if you like, write the other letters in."
        )
    return say(
        "Full outlines were painted. Broken ones were laid out from eighths: their place is a guess."
        " Dotted ones are only assumed."
    )


def _standing(document: Document, model: CombSheetModel) -> str:
    """Where the colony stands and what it lives in, place names only where they are wanted."""
    where = [model.apiary_name] if document.options.place_names and model.apiary_name else []
    if model.stand_name:
        where.append(say("stand {name}", name=model.stand_name))
    said = ", ".join(where)
    said = said[:1].upper() + said[1:]
    parts = [f"{said}." if said else "", f"{model.hive_name}." if model.hive_name else ""]
    parts.append(say("Queen: {queen}.", queen=model.queen) if model.queen else "")
    return " ".join(part for part in parts if part)


def way_words(way: Way) -> str:
    """How the combs hang, in words."""
    return say("cold way") if way is Way.COLD else say("warm way")


def _digit_boxes(head: Rect) -> list[Rect]:
    width, height = _DIGIT
    whole = 6 * width + 3 * _DIGIT_GAP + 2 * _PAIR_GAP
    x, y, boxes = head.right - whole, head.bottom - height - 2.2, []
    for index in range(6):
        boxes.append(Rect(x, y, width, height))
        x += width + (_PAIR_GAP if index % 2 else _DIGIT_GAP)
    return boxes


def _draw_date(document: Document, boxes: list[Rect], day: date | None) -> Iterator[Field]:
    above = boxes[0].y - 1.0
    width = document.text(boxes[0].x, above, say("Date"), LABEL)
    document.text(boxes[0].x + width + 1.5, above, say("day, month, year"), SMALL)
    digits = f"{day:%d%m%y}" if day else " " * 6
    for name, place, digit in zip(_DATE_NAMES, boxes, digits, strict=True):
        document.box(place, FIRM_MM)
        document.text(place.centre[0], place.bottom - 2.3, digit, COMB, align="middle")
        yield Field(f"date.{name}", FieldKind.DIGIT, place)


def draw_foot(document: Document, form: Form, model: CombSheetModel) -> None:
    """The legend with letters and patterns, and the cautions."""
    left, right = form.foot
    columns = 3
    if form.paper is Paper.A5:
        left = Rect(left.x, left.y, right.right - left.x, left.height)
        right = Rect(left.x, left.y + 3 * _LEGEND_LEADING + 0.6, left.width, 0.0)
        columns = 6
    if not form.is_of_words:
        for content, place in _swatches(left, columns):
            draw_swatch(document, place, content)
        document.repeat((left, "legend"), lambda: _draw_letters(document, left, columns))
    document.repeat((right, model.map_reference), lambda: _draw_cautions(document, right, model))


def _swatches(place: Rect, columns: int) -> Iterator[tuple[Content, Rect]]:
    """Every content of the legend with the place of its swatch."""
    for index, content in enumerate(KEY_LETTERS):
        x = place.x + index % columns * _column(place, columns, index)
        low = place.y + 3.0 + index // columns * _LEGEND_LEADING
        yield content, Rect(x, low - _SWATCH[1] + 0.3, *_SWATCH)


def _column(place: Rect, columns: int, index: int) -> float:
    """How wide an entry's column is; of three columns the last row has but two entries, with long names."""
    return place.width / (2 if columns == 3 and index >= 9 else columns)


def _draw_letters(document: Document, place: Rect, columns: int) -> None:
    low, letters = place.y, installed_letters()
    for index, (content, swatch) in enumerate(_swatches(place, columns)):
        low, x = swatch.bottom - 0.3, swatch.right + 1.0
        x += document.text(x, low, letters.contents[content], SMALL_BOLD) + 0.8
        room = swatch.x + _column(place, columns, index) - x - 0.6
        document.text(x, low, shortened(content_short(content), SMALL, room), SMALL)
    _draw_other_letters(document, letters, place.x, low + _LEGEND_LEADING)


def _draw_other_letters(document: Document, letters: KeyLetters, x: float, low: float) -> None:
    """What is no content: looked at, bees, queen, queen cell."""
    symbols.eye(document, (x + 1.4, low - SMALL.height_mm / 2), 2.8)
    x += 3.6 + document.text(x + 3.6, low, say("looked at"), SMALL) + 2.4
    others = (
        (letters.bees, say("bees")),
        (letters.queen, say("queen")),
        (letters.queen_cell, say("queen cell")),
    )
    for letter, word in others:
        x += document.text(x, low, letter, SMALL_BOLD) + 1.0
        x += document.text(x, low, word, SMALL) + 2.4


def draw_swatch(document: Document, place: Rect, content: Content) -> None:
    """A small field with a content's colour and pattern."""
    form = pattern_form(document, content, place.width, place.height)
    if document.options.colour:
        document.box(place, 0.0, fill=content_fill(content))
    document.place_form(form, place.x, place.y)
    document.box(place, HAIR_MM)


def _draw_cautions(document: Document, place: Rect, model: CombSheetModel) -> None:
    """One running text, since five sentences of their own would need more lines than the foot has."""
    texts = list(cautions())
    if document.options.place_names and model.map_reference:
        texts.insert(0, say("You are at {reference}.", reference=model.map_reference))
    for index, line in enumerate(wrapped(" ".join(texts), SMALL, place.width)):
        document.text(place.x, place.y + 2.7 + index * _FOOT_LEADING, line, SMALL)
