"""The keys of the bench: letters are contents, the free letters are tools, three letters want a second.

A reader is fed what was typed and says what is meant; it knows no widget. No tool has a letter that is
a content, and where a language moves the contents' letters, the contents win.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.contents import CellKind, Content
from beeworkbook.comb.key_letters import KeyLetters, installed_letters
from beeworkbook.words import say


class Meaning(StrEnum):
    """What a key on the bench means."""

    CONTENT = "content"
    TOOL = "tool"
    QUEEN = "queen"
    QUEEN_CELL = "queen_cell"
    BEES = "bees"
    ONLY = "only"
    REPLACE = "replace"
    AS_LAST_TIME = "as_last_time"
    SHINE = "shine"
    BRUSH = "brush"
    ZOOM = "zoom"
    WHOLE = "whole"
    TYPE = "type"
    WAIT = "wait"
    NOTHING = "nothing"


@dataclass(frozen=True)
class Deed:
    """A meaning and what goes with it: a content, a tool, a kind of queen cell, eighths, a step, a text."""

    meaning: Meaning
    content: Content | None = None
    tool: ToolName | None = None
    cell_kind: CellKind | None = None
    number: float = 0.0
    text: str = ""


class Waiting(StrEnum):
    """What the reader waits for."""

    ANYTHING = "anything"
    QUEEN_CELL = "queen_cell"
    BEES = "bees"
    ONLY = "only"


TOOL_KEYS: Final[dict[str, ToolName]] = {
    "V": ToolName.BRUSH,
    "R": ToolName.ELLIPSE,
    "L": ToolName.OUTLINE,
    "A": ToolName.BAND,
    "I": ToolName.FILL,
    "T": ToolName.PICK,
    "X": ToolName.ERASE,
}
"""Round, line, along an edge, fill in, take up, cross out; a brush held point down looks like a V."""
ONLY_KEY: Final = "M"
REPLACE_KEY: Final = "J"
SHINE_KEY: Final = "Y"
WHOLE_KEY: Final = "Z"

_SIGNS: Final[dict[str, Deed]] = {
    ONLY_KEY: Deed(Meaning.WAIT),
    REPLACE_KEY: Deed(Meaning.REPLACE),
    SHINE_KEY: Deed(Meaning.SHINE),
    WHOLE_KEY: Deed(Meaning.WHOLE),
    "[": Deed(Meaning.BRUSH, number=-1.0),
    "]": Deed(Meaning.BRUSH, number=1.0),
    "+": Deed(Meaning.ZOOM, number=1.0),
    "-": Deed(Meaning.ZOOM, number=-1.0),
    "=": Deed(Meaning.AS_LAST_TIME),
}
_SHORT_KINDS: Final[dict[CellKind, str]] = {
    CellKind.PLAY_CUP: "cup",
    CellKind.WITH_EGG: "egg",
    CellKind.CHARGED: "charged",
    CellKind.SEALED: "sealed",
    CellKind.EMERGED: "emerged",
    CellKind.TORN_DOWN: "torn",
}
"""The kinds of queen cell in a word each: all six stand in one line over a side."""
_NOTHING: Final = Deed(Meaning.NOTHING)


class KeyReader:
    """Reads one typed sign after another. `waiting` is what a letter before this one asked for."""

    def __init__(self) -> None:
        """A reader that waits for anything."""
        self.waiting = Waiting.ANYTHING
        self._last: Content | None = None

    @property
    def asks(self) -> str:
        """What it waits for, in words; empty when anything may come."""
        if self.waiting is Waiting.QUEEN_CELL:
            letters = installed_letters().cell_kinds
            kinds = " · ".join(f"{letter} {say(_SHORT_KINDS[kind])}" for kind, letter in letters.items())
            return say("cell: {kinds}", kinds=kinds)
        if self.waiting is Waiting.BEES:
            return say("bees cover how many eighths? 0 to 8")
        if self.waiting is Waiting.ONLY:
            return say("paint only over which content? X not recorded, {key} again: over all", key=ONLY_KEY)
        return ""

    def forget(self) -> bool:
        """Wait for nothing in particular again; whether it did wait."""
        waited = self.waiting is not Waiting.ANYTHING
        self.waiting = Waiting.ANYTHING
        return waited

    def read(self, sign: str) -> Deed:
        """What this sign means after those before it; NOTHING if it means nothing here."""
        letter, letters = sign.upper(), installed_letters()
        waiting, self.waiting = self.waiting, Waiting.ANYTHING
        if waiting is Waiting.QUEEN_CELL:
            if letter == letters.queen_cell and letter not in letters.kind_of:
                self.waiting = waiting  # pressed twice, it still asks
                return Deed(Meaning.WAIT)
            return _queen_cell(letter, letters)
        if waiting is Waiting.BEES:
            return _bees(sign)
        if waiting is Waiting.ONLY:
            return _only(letter, letters)
        return self._plain(sign, letter, letters)

    def _plain(self, sign: str, letter: str, letters: KeyLetters) -> Deed:
        if letter in letters.content_of:
            return Deed(Meaning.CONTENT, content=letters.content_of[letter])
        if letter == letters.queen:
            return Deed(Meaning.QUEEN)
        for prefix, waiting in (
            (letters.queen_cell, Waiting.QUEEN_CELL),
            (letters.bees, Waiting.BEES),
            (ONLY_KEY, Waiting.ONLY),
        ):
            if letter == prefix:
                self.waiting = waiting
                return Deed(Meaning.WAIT)
        if letter in TOOL_KEYS:
            return Deed(Meaning.TOOL, tool=TOOL_KEYS[letter])
        if sign.isascii() and sign.isdigit():
            return Deed(Meaning.TYPE, text=sign)
        return _SIGNS.get(letter, _NOTHING)


def _queen_cell(letter: str, letters: KeyLetters) -> Deed:
    kind = letters.kind_of.get(letter)
    return _NOTHING if kind is None else Deed(Meaning.QUEEN_CELL, cell_kind=kind)


def _bees(sign: str) -> Deed:
    return Deed(Meaning.BEES, number=float(sign)) if sign in set("012345678") else _NOTHING


def _only(letter: str, letters: KeyLetters) -> Deed:
    if letter == ONLY_KEY:
        return Deed(Meaning.ONLY)
    content = letters.content_of.get(letter)
    if content is None and TOOL_KEYS.get(letter) is ToolName.ERASE:
        content = Content.NOT_RECORDED  # what the eraser leaves
    return _NOTHING if content is None else Deed(Meaning.ONLY, content=content)


@dataclass(frozen=True)
class KeyHelp:
    """A key and what it does, for the help's page of keys."""

    keys: str
    does: str


def key_help() -> tuple[KeyHelp, ...]:
    """Every key of the bench in words, the contents' letters apart."""
    letters = installed_letters()
    pairs = (
        ("Arrows", say("move the cell cursor; with Ctrl ten cells")),
        ("Space", say("paint under the brush; for other tools, begin and end")),
        ("Shift+arrows", say("paint a stroke with the cursor; letting Shift go ends it")),
        (letters.queen, say("the queen was seen on this cell")),
        (letters.queen_cell, say("a queen cell on this cell, followed by its kind")),
        (letters.bees, say("bees covering this side, followed by eighths")),
        ("Del", say("take the mark away, or erase under the brush")),
        ("Menu", say("what can be done here; also Shift+F10 and the right mouse button")),
        *((key, say("tool: {tool}", tool=tool.value)) for key, tool in TOOL_KEYS.items()),
        (ONLY_KEY, say("paint only over the content whose letter follows; X: over what is not recorded")),
        (REPLACE_KEY, say("change the content under the cursor, all over the side, to the one held")),
        ("=", say("this side looks as it did last time")),
        (SHINE_KEY, say("the last visit shines through, or not")),
        ("[ ]", say("smaller and larger brush; the wheel does the same")),
        ("+ -", say("nearer and farther; Ctrl and the wheel do the same")),
        (WHOLE_KEY, say("the whole side again")),
        ("1-8", say("type the comb in eighths, beginning with the content held")),
        ("Tab", say("the other side")),
        ("Enter", say("the next comb")),
        ("Esc", say("let go of the stroke in hand without a trace; else empty the hand")),
    )
    return tuple(KeyHelp(keys, does) for keys, does in pairs)
