"""JSON from a stream, a value at a time, for documents nobody vouches for.

No value and no number may be endless, and nesting has an end; the size of the whole has none. Our
own, because of the two readers of the usual library the compiled one crashed the program on a number
of five thousand digits and the other left errors behind when it was stopped (measured, ijson 3.6.0).
What the values mean is in exchange_read.py.
"""

import codecs
import json
import re
from collections.abc import Callable, Iterator
from typing import BinaryIO, Final

from beeworkbook.words import say

Event = tuple[str, object]
"""start_map, map_key, end_map, start_array, end_array, or value, with the key or the value."""

MOST_LETTERS: Final = 6_000_100
"""Letters of one text as written: a million characters, each perhaps as an escape of six."""
MOST_DIGITS: Final = 40
"""Letters of one number; the longest that a number of the workbook needs is 24."""
MOST_DEEP: Final = 8
_CHUNK: Final = 1 << 16
_SPACE: Final = re.compile(r"[ \t\n\r]*+")
_TEXT: Final = re.compile(r'"(?:[^"\\\x00-\x1f]++|\\[^\x00-\x1f])*+"')
_WORD: Final = re.compile(r"[A-Za-z0-9+.\-]++")
_NUMBER: Final = re.compile(r"-?(?:0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?")
_LITERALS: Final = {"true": True, "false": False, "null": None}


class TokenError(ValueError):
    """This is not JSON, or goes beyond what is read, and why."""


class Tokens:
    """The events of one JSON document."""

    def __init__(self, stream: BinaryIO, progress: Callable[[int], None]) -> None:
        self._stream = stream
        self._progress = progress
        self._decode = codecs.getincrementaldecoder("utf-8")()
        self._text = ""
        self._at = 0
        self._read = 0
        self._over = False

    def events(self) -> Iterator[Event]:
        """The events in their order, and nothing after the document.

        Errors: TokenError.
        """
        yield from self._value(0)
        if self._peek():
            raise TokenError(say("something follows the end"))

    def _value(self, depth: int) -> Iterator[Event]:
        sign = self._peek()
        if sign in {"{", "["} and depth >= MOST_DEEP:
            raise TokenError(say("it is nested too deep"))
        if sign == "{":
            yield from self._object(depth + 1)
        elif sign == "[":
            yield from self._list(depth + 1)
        elif sign == '"':
            yield "value", self._string()
        else:
            yield "value", self._word()

    def _object(self, depth: int) -> Iterator[Event]:
        self._at += 1
        yield "start_map", None
        if self._peek() != "}":
            while True:
                if self._peek() != '"':
                    raise TokenError(say("a name has to be a text"))
                yield "map_key", self._string()
                self._take(":")
                yield from self._value(depth)
                if self._peek() == "}":
                    break
                self._take(",")
        self._at += 1
        yield "end_map", None

    def _list(self, depth: int) -> Iterator[Event]:
        self._at += 1
        yield "start_array", None
        if self._peek() != "]":
            while True:
                yield from self._value(depth)
                if self._peek() == "]":
                    break
                self._take(",")
        self._at += 1
        yield "end_array", None

    def _peek(self) -> str:
        """The next letter that is no space, an empty text at the end."""
        while True:
            found = _SPACE.match(self._text, self._at)
            self._at = found.end() if found else self._at
            if self._at < len(self._text):
                return self._text[self._at]
            if not self._more():
                return ""

    def _take(self, sign: str) -> None:
        found = self._peek()
        if not found:
            raise TokenError(say("it breaks off"))
        if found != sign:
            raise TokenError(
                say("there is {found} where {sign} has to be", found=repr(found), sign=repr(sign))
            )
        self._at += 1

    def _string(self) -> str:
        while (found := _TEXT.match(self._text, self._at)) is None:
            if len(self._text) - self._at > MOST_LETTERS:
                raise TokenError(say("a text there is too long"))
            if not self._more():
                raise TokenError(say("a text there does not end, or holds what none may hold"))
        self._at = found.end()
        try:
            text: str = json.loads(found[0])
        except ValueError as error:
            raise TokenError(say("a text there holds an escape that is none")) from error
        return text

    def _word(self) -> object:
        while True:
            found = _WORD.match(self._text, self._at)
            end = found.end() if found else self._at
            if end < len(self._text) or end - self._at > MOST_DIGITS or not self._more():
                break
        word = self._text[self._at : end]
        if len(word) > MOST_DIGITS:
            raise TokenError(say("a number there is too long"))
        if not word:
            raise TokenError(say("it breaks off") if self._over else say("no value begins like that"))
        self._at = end
        return _literal(word)

    def _more(self) -> bool:
        """Read on; False at the end. What was taken is let go of."""
        if self._over:
            return False
        # As much again as is waiting, so that a long text is not looked through over and over.
        piece = self._stream.read(max(_CHUNK, len(self._text) - self._at))
        self._read += len(piece)
        self._progress(self._read)
        self._over = not piece
        try:
            fresh = self._decode.decode(piece, final=self._over)
        except UnicodeDecodeError as error:
            raise TokenError(say("it holds bytes that are no UTF-8")) from error
        self._text = self._text[self._at :] + fresh
        self._at = 0
        return not self._over


def _literal(word: str) -> object:
    if word in _LITERALS:
        return _LITERALS[word]
    found = _NUMBER.fullmatch(word)
    if found is None:
        raise TokenError(say("{word} is no value", word=repr(word)))
    return float(word) if found[1] or found[2] else int(word)
