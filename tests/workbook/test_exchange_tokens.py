import io
import json
import math
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from beeworkbook.workbook.exchange_tokens import MOST_DIGITS, MOST_LETTERS, TokenError, Tokens

VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**30), 10**30)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner, max_size=4),
    max_leaves=20,
)


class _Dripping(io.RawIOBase):
    """A stream that gives only a few bytes at a time, so that every value is cut somewhere."""

    def __init__(self, data: bytes, size: int) -> None:
        super().__init__()
        self._data = io.BytesIO(data)
        self._size = size

    def read(self, _size: int = -1) -> bytes:
        return self._data.read(self._size)


def _events(data: bytes, size: int = 1 << 16) -> list[Any]:
    return list(Tokens(_Dripping(data, size), lambda _read: None).events())  # type: ignore[arg-type]


def _built(events: list[Any]) -> object:
    """The value that these events tell."""
    position = 0

    def value() -> object:
        nonlocal position
        event, held = events[position]
        position += 1
        if event == "value":
            return held
        if event == "start_array":
            items = []
            while events[position][0] != "end_array":
                items.append(value())
            position += 1
            return items
        assert event == "start_map"
        found = {}
        while events[position][0] != "end_map":
            key = events[position][1]
            position += 1
            found[key] = value()
        position += 1
        return found

    return value()


@given(VALUES, st.integers(1, 7), st.booleans(), st.sampled_from([None, 2]))
def test_it_reads_what_the_standard_library_writes(
    value: object, size: int, ascii_only: bool, indent: int | None
) -> None:
    data = json.dumps(value, ensure_ascii=ascii_only, indent=indent).encode()
    assume(_depth(value) < 8)
    found = _built(_events(data, size))
    assert found == value
    assert type(found) is type(value)


def _depth(value: object) -> int:
    inner = value if isinstance(value, list) else list(value.values()) if isinstance(value, dict) else None
    return 0 if inner is None else 1 + max(map(_depth, inner), default=0)


@given(
    st.binary(max_size=60)
    | st.text(alphabet='{}[],:"0123456789.eE+-truefalsn \\u', max_size=40).map(str.encode)
)
def test_whatever_the_standard_library_refuses_is_refused(data: bytes) -> None:
    try:
        wanted = json.loads(data.decode("utf-8"), parse_constant=lambda _name: pytest.fail("not JSON"))
    except (ValueError, pytest.fail.Exception):
        with pytest.raises(TokenError):
            _events(data, 3)
    else:
        found = _built(_events(data, 3))
        assert found == wanted or (isinstance(found, float) and math.isinf(found))


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ('{"a"', "breaks off"),
        ('{"a" 1}', "where ':' has to be"),
        ('{"a": 1 "b": 2}', "where ',' has to be"),
        ("[1 2]", "where ',' has to be"),
        ("{1: 2}", "a name has to be a text"),
        (r'"\x"', "an escape that is none"),
        (r'"\u12"', "an escape that is none"),
        ('"a\nb"', "holds what none may hold"),
        ('"a', "does not end"),
        ("[1,]", "no value begins like that"),
        ("nul", "is no value"),
        ("01", "is no value"),
        ("+1", "is no value"),
        ("1.", "is no value"),
        ("NaN", "is no value"),
        ("-Infinity", "is no value"),
        ("1 1", "something follows"),
        ("", "breaks off"),
    ],
)
def test_a_slip_is_told_in_words(text: str, reason: str) -> None:
    with pytest.raises(TokenError, match=reason):
        _events(text.encode())


def test_limits_are_on_one_value_and_on_depth() -> None:
    assert _events(b"1" * MOST_DIGITS)[0][1] == int("1" * MOST_DIGITS)
    for text in (b"1" * (MOST_DIGITS + 1), b"1" * 100_000, b"1." + b"1" * 100_000):
        with pytest.raises(TokenError, match="number there is too long"):
            _events(text)
    assert len(_events(b"[" * 8 + b"]" * 8)) == 16
    for text in (b"[" * 9, b"[" * 1_000_000, b'{"a":' * 100_000):
        with pytest.raises(TokenError, match="too deep"):
            _events(text)
    whole = b'"' + b"x" * 1_000_000 + b'"'
    assert len(_events(whole)[0][1]) == 1_000_000


def test_an_endless_text_is_left_before_long() -> None:
    class Endless(io.RawIOBase):
        given = 0

        def read(self, size: int = -1) -> bytes:
            self.given += size
            return b'"' + b"x" * (size - 1) if self.given == size else b"x" * size

    stream = Endless()
    with pytest.raises(TokenError, match="too long"):
        list(Tokens(stream, lambda _read: None).events())  # type: ignore[arg-type]
    assert stream.given < 3 * MOST_LETTERS


def test_space_may_be_as_long_as_it_likes_and_progress_is_told() -> None:
    told: list[int] = []
    data = b" " * 500_000 + b"[1]" + b"\n" * 500_000
    assert len(list(Tokens(io.BytesIO(data), told.append).events())) == 3
    assert told[-1] == len(data)


def test_stopping_from_within_the_progress_stops_at_once() -> None:
    def stop(_read: int) -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        list(Tokens(io.BytesIO(b"[1]"), stop).events())
