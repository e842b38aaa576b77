from collections.abc import Iterator

import pytest

from beeworkbook.bench.bench_keys import (
    ONLY_KEY,
    REPLACE_KEY,
    SHINE_KEY,
    TOOL_KEYS,
    WHOLE_KEY,
    Deed,
    KeyReader,
    Meaning,
    Waiting,
    key_help,
)
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.contents import (
    BEES_LETTER,
    CELL_KIND_LETTERS,
    KEY_LETTERS,
    QUEEN_CELL_LETTER,
    QUEEN_LETTER,
    CellKind,
    Content,
)
from beeworkbook.words import Catalogue, use_catalogue


@pytest.fixture
def english() -> Iterator[None]:
    yield
    use_catalogue({})


def read(text: str) -> list[Deed]:
    reader = KeyReader()
    return [reader.read(sign) for sign in text]


def test_no_tool_takes_a_letter_that_is_a_content_or_a_mark() -> None:
    taken = {*KEY_LETTERS.values(), BEES_LETTER, QUEEN_LETTER, QUEEN_CELL_LETTER}
    mine = [*TOOL_KEYS, ONLY_KEY, REPLACE_KEY, SHINE_KEY, WHOLE_KEY]
    assert not taken & set(mine)
    assert len(set(mine)) == len(mine)
    assert set(TOOL_KEYS.values()) == set(ToolName)


@pytest.mark.parametrize("content", KEY_LETTERS)
def test_a_letter_is_its_content_whatever_its_case(content: Content) -> None:
    for letter in (KEY_LETTERS[content], KEY_LETTERS[content].lower()):
        assert read(letter) == [Deed(Meaning.CONTENT, content=content)]


@pytest.mark.parametrize("kind", CELL_KIND_LETTERS)
def test_a_queen_cell_takes_one_more_letter(kind: object) -> None:
    letter = CELL_KIND_LETTERS[kind]  # type: ignore[index]
    first, second = read("k" + letter.lower())
    assert first.meaning is Meaning.WAIT
    assert (second.meaning, second.cell_kind) == (Meaning.QUEEN_CELL, kind)


def test_the_question_for_a_queen_cell_is_short_and_a_second_letter_keeps_it() -> None:
    reader = KeyReader()
    reader.read("K")
    short = "cell: U cup · E egg · C charged · S sealed · M emerged · T torn"
    assert reader.asks == short
    assert reader.read("k") == Deed(Meaning.WAIT)
    assert reader.asks == short
    assert reader.read("c").cell_kind is CellKind.CHARGED
    assert reader.asks == ""


@pytest.mark.usefixtures("english")
def test_the_short_words_of_the_question_are_translated() -> None:
    use_catalogue(Catalogue({"torn": "rissig", "cell: {kinds}": "Zelle: {kinds}"}))
    reader = KeyReader()
    reader.read("K")
    assert reader.asks.startswith("Zelle: U cup")
    assert reader.asks.endswith("T rissig")


def test_bees_take_a_number_of_eighths() -> None:
    assert read("W5")[1] == Deed(Meaning.BEES, number=5.0)
    assert read("W9")[1].meaning is Meaning.NOTHING
    # The wrong sign ends the waiting: the next letter is a content again.
    assert read("W9E")[2].content is Content.EGGS


def test_a_mask_takes_a_content_or_itself() -> None:
    assert read("MC")[1] == Deed(Meaning.ONLY, content=Content.EMPTY)
    assert read("MM")[1] == Deed(Meaning.ONLY)
    assert read("MX")[1] == Deed(Meaning.ONLY, content=Content.NOT_RECORDED)
    assert read("MR")[1].meaning is Meaning.NOTHING


def test_the_other_signs() -> None:
    meanings = [deed.meaning for deed in read("QVJYZ[]+-=4")]
    assert meanings == [
        Meaning.QUEEN,
        Meaning.TOOL,
        Meaning.REPLACE,
        Meaning.SHINE,
        Meaning.WHOLE,
        Meaning.BRUSH,
        Meaning.BRUSH,
        Meaning.ZOOM,
        Meaning.ZOOM,
        Meaning.AS_LAST_TIME,
        Meaning.TYPE,
    ]
    assert read("§")[0].meaning is Meaning.NOTHING


def test_it_asks_while_it_waits_and_can_forget() -> None:
    reader = KeyReader()
    assert reader.asks == ""
    assert not reader.forget()
    for letter, word in (("K", "U cup"), ("W", "eighths"), ("M", "only over")):
        reader.read(letter)
        assert word in reader.asks
        assert reader.forget()
        assert reader.waiting is Waiting.ANYTHING


@pytest.mark.usefixtures("english")
def test_a_language_that_moves_the_letters_keeps_its_contents() -> None:
    use_catalogue(Catalogue({"key letter: E": "V"}))
    assert read("V") == [Deed(Meaning.CONTENT, content=Content.EGGS)]
    assert read("E")[0].meaning is Meaning.NOTHING


def test_the_help_names_every_key_once() -> None:
    keys = [line.keys for line in key_help()]
    assert len(set(keys)) == len(keys)
    assert set(TOOL_KEYS) <= set(keys)
    assert all(line.does for line in key_help())
