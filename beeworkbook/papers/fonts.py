"""The two type families of the papers, registered once, and text measured and broken in them.

Names and notes are set in Gentium Book Plus, the rest in Lato. A letter one family lacks is taken from
the other; what neither has is printed as a small box, never left out. Nothing here draws.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from threading import Lock
from typing import Any, Final

from beeworkbook.resources import resource

LEAST_POINT: Final = 7.5
"""No text on paper is smaller (the design's own rule)."""
_POINT_MM: Final = 25.4 / 72
_FILES: Final = {
    "Gentium": "GentiumBookPlus-Regular.ttf",
    "Gentium-Bold": "GentiumBookPlus-Bold.ttf",
    "Lato": "Lato-Regular.ttf",
    "Lato-Bold": "Lato-Bold.ttf",
}
_STANDS_IN: Final = {
    "Gentium": "Lato",
    "Gentium-Bold": "Lato-Bold",
    "Lato": "Gentium",
    "Lato-Bold": "Gentium-Bold",
}
_MISSING: Final = "\u25a1"
_INVISIBLE: Final = frozenset(map(chr, range(32))) | {"\u200b", "\ufeff", "\u200e", "\u200f", "\u00ad"}


@dataclass(frozen=True)
class Style:
    """A font and its size. Units: points; leading is from line to line."""

    font: str
    size: float
    leading: float

    @property
    def leading_mm(self) -> float:
        """From line to line on paper."""
        return self.leading * _POINT_MM

    @property
    def height_mm(self) -> float:
        """About the height of its capitals; 0.72 em is common to both families."""
        return 0.72 * self.size * _POINT_MM


_LOADING: Final = Lock()
_loaded: Final[dict[str, Any]] = {}

NAME: Final = Style("Gentium-Bold", 16, 18)
COMB: Final = Style("Gentium-Bold", 12, 14)
LOW_COMB: Final = Style("Gentium-Bold", 10, 12)
TITLE: Final = Style("Gentium-Bold", 11, 13)
NOTE: Final = Style("Gentium", 9.5, 11.2)
BODY: Final = Style("Lato", 9.5, 12)
LABEL: Final = Style("Lato-Bold", 8, 9.6)
SMALL: Final = Style("Lato", 7.5, 9)
SMALL_BOLD: Final = Style("Lato-Bold", 7.5, 9)


def registered(font: str) -> Any:
    """The font, known to the PDF library from now on."""
    if font not in _loaded:
        with _LOADING:  # two sheets may be made beside one another, and one font takes megabytes
            if font not in _loaded:
                _loaded[font] = _load(font)
    return _loaded[font]


def _load(font: str) -> Any:
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    made = TTFont(font, str(resource("fonts", _FILES[font])), asciiReadable=False)
    # The font's names and licence text ship beside it; a subset in a document does without their 17 kB.
    made.face.table.pop("name", None)
    made.face.glyphToChar.clear()  # asked for in shaping alone, which no letter here needs
    pdfmetrics.registerFont(made)
    return made


@lru_cache(maxsize=4096)
def runs(text: str, font: str) -> tuple[tuple[str, str], ...]:
    """The text as (font, piece): each piece can be set in its font."""
    pieces: list[tuple[str, str]] = []
    for letter in text:
        if letter in _INVISIBLE and letter != "\t":
            continue
        chosen, shown = _set_in(letter, font)
        if pieces and pieces[-1][0] == chosen:
            pieces[-1] = (chosen, pieces[-1][1] + shown)
        else:
            pieces.append((chosen, shown))
    return tuple(pieces)


@cache
def _set_in(letter: str, font: str) -> tuple[str, str]:
    letter = " " if letter == "\t" else letter
    for candidate in (font, _STANDS_IN[font]):
        if _has(candidate, letter):
            return candidate, letter
    missing = _MISSING if _has(font, _MISSING) else "?"
    return font, missing


def _has(font: str, letter: str) -> bool:
    # Glyph 0 is the font's own sign for a letter it lacks.
    return bool(registered(font).face.charToGlyph.get(ord(letter), 0))


@lru_cache(maxsize=4096)
def width_mm(text: str, style: Style) -> float:
    """How wide the text is on paper."""
    widths = (registered(font).stringWidth(piece, style.size) for font, piece in runs(text, style.font))
    return float(sum(widths)) * _POINT_MM


def shortened(text: str, style: Style, room_mm: float) -> str:
    """The text, cut with an ellipsis where it is wider than the room."""
    if width_mm(text, style) <= room_mm:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if width_mm(text[:middle].rstrip() + "…", style) <= room_mm:
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip() + "…"


def wrapped(text: str, style: Style, room_mm: float) -> list[str]:
    """The text broken into lines; a word wider than the room is broken where it must be.

    Line ends in the text are kept; an empty text is no line.
    """
    if not text.strip():
        return []
    return [line for paragraph in text.splitlines() for line in _broken(paragraph, style, room_mm)]


def _broken(paragraph: str, style: Style, room_mm: float) -> Iterator[str]:
    line = ""
    for word in paragraph.split(" "):
        joined = f"{line} {word}" if line else word
        if width_mm(joined, style) <= room_mm:
            line = joined
            continue
        if line:
            yield line
        *full, line = _cut(word, style, room_mm)
        yield from full
    yield line


def _cut(word: str, style: Style, room_mm: float) -> list[str]:
    """A word in pieces that fit; the rule is a piece of one letter at least."""
    pieces, piece = [], ""
    for letter in word:
        if piece and width_mm(piece + letter, style) > room_mm:
            pieces.append(piece)
            piece = ""
        piece += letter
    return [*pieces, piece]
