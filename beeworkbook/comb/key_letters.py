"""The letters a keeper types, in English or as a translation sets them.

The letters of the text notation in files are not these: they are fixed for ever and stay in
contents.py. A language gives its own in its catalogue, as "key letter: E" and "cell letter: U".
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Final

from beeworkbook.comb.contents import (
    BEES_LETTER,
    CELL_KIND_LETTERS,
    KEY_LETTERS,
    QUEEN_CELL_LETTER,
    QUEEN_LETTER,
    CellKind,
    Content,
)
from beeworkbook.words import say, say_in


class KeyLettersError(ValueError):
    """Every key letter has to be one letter, and no two may be the same."""


@dataclass(frozen=True)
class KeyLetters:
    """One letter a content, a mark and a kind of queen cell, in capitals.

    Errors: KeyLettersError if one is not a single letter or stands twice.
    """

    contents: Mapping[Content, str] = field(default_factory=lambda: KEY_LETTERS)
    bees: str = BEES_LETTER
    queen: str = QUEEN_LETTER
    queen_cell: str = QUEEN_CELL_LETTER
    cell_kinds: Mapping[CellKind, str] = field(default_factory=lambda: CELL_KIND_LETTERS)

    def __post_init__(self) -> None:
        on_comb = [*self.contents.values(), self.bees, self.queen, self.queen_cell]
        for letters in (on_comb, list(self.cell_kinds.values())):
            single = all(
                len(letter) == 1 and letter.isalpha() and letter == letter.upper() for letter in letters
            )
            if not single or len(set(letters)) < len(letters):
                raise KeyLettersError(
                    say("Every key letter has to be one capital letter, and no two may be the same.")
                )

    @cached_property
    def content_of(self) -> Mapping[str, Content]:
        """The content of a letter."""
        return {letter: content for content, letter in self.contents.items()}

    @cached_property
    def kind_of(self) -> Mapping[str, CellKind]:
        """The kind of queen cell of the letter that follows the queen cell's own."""
        return {letter: kind for kind, letter in self.cell_kinds.items()}


ENGLISH_LETTERS: Final = KeyLetters()


def installed_letters() -> KeyLetters:
    """The letters of the installed language, the English ones if its set cannot be used."""
    try:
        return KeyLetters(
            contents={content: say_in("key letter", letter) for content, letter in KEY_LETTERS.items()},
            bees=say_in("key letter", BEES_LETTER),
            queen=say_in("key letter", QUEEN_LETTER),
            queen_cell=say_in("key letter", QUEEN_CELL_LETTER),
            cell_kinds={kind: say_in("cell letter", letter) for kind, letter in CELL_KIND_LETTERS.items()},
        )
    except KeyLettersError:
        return ENGLISH_LETTERS
