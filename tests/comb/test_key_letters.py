"""The letters a keeper types, and what a language may do to them."""

from collections.abc import Iterator

import pytest

from beeworkbook.comb.contents import KEY_LETTERS, CellKind, Content
from beeworkbook.comb.key_letters import ENGLISH_LETTERS, KeyLetters, KeyLettersError, installed_letters
from beeworkbook.words import use_catalogue


@pytest.fixture(autouse=True)
def english() -> Iterator[None]:
    use_catalogue({})
    yield
    use_catalogue({})


def test_every_content_but_not_recorded_has_a_letter() -> None:
    assert set(ENGLISH_LETTERS.contents) == set(Content) - {Content.NOT_RECORDED}
    assert ENGLISH_LETTERS.content_of["H"] is Content.STORES
    assert ENGLISH_LETTERS.kind_of["C"] is CellKind.CHARGED


def test_a_language_replaces_letters() -> None:
    use_catalogue({"key letter: E": "Ä", "cell letter: U": "N"})
    letters = installed_letters()
    assert letters.content_of["Ä"] is Content.EGGS
    assert letters.kind_of["N"] is CellKind.PLAY_CUP
    assert letters.queen == "Q"


def test_a_set_that_cannot_be_told_apart_is_not_used() -> None:
    use_catalogue({"key letter: E": "S"})
    assert installed_letters() == ENGLISH_LETTERS


@pytest.mark.parametrize("letter", ["S", "EE", "e", "1", "", "Q"])
def test_letters_are_single_capitals_and_differ(letter: str) -> None:
    with pytest.raises(KeyLettersError, match="one capital letter"):
        KeyLetters(contents={**KEY_LETTERS, Content.EGGS: letter})
