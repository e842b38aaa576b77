import time
from concurrent.futures import ThreadPoolExecutor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.papers import fonts
from beeworkbook.papers.fonts import BODY, LEAST_POINT, NOTE, SMALL, runs, shortened, width_mm, wrapped

words = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]), min_size=1, max_size=12)


@pytest.mark.parametrize("text", ["Zażółć gęślą jaźń", "Μέλισσα", "Пчёлка", "20\u202f000", "½ ⅛ 18 °C −3"])
def test_both_families_have_these_letters(text: str) -> None:
    for font in ("Lato", "Gentium"):
        assert list(runs(text, font)) == [(font, text)]


def test_a_letter_one_family_lacks_is_taken_from_the_other() -> None:
    assert list(runs("a♀b", "Lato")) == [("Lato", "a"), ("Gentium", "♀"), ("Lato", "b")]
    assert list(runs("●", "Gentium")) == [("Lato", "●")]


def test_a_letter_neither_has_is_shown_as_missing_and_not_left_out() -> None:
    shown = "".join(piece for _, piece in runs("蜂x", "Lato"))
    assert len(shown) == 2
    assert shown[0] in "\u25a1?"


def test_control_letters_are_not_printed() -> None:
    assert "".join(piece for _, piece in runs("a\u200b\x07b\tc", "Lato")) == "ab c"
    assert list(runs("\x07", "Lato")) == []


@given(st.lists(words, min_size=1, max_size=30), st.floats(12, 90))
def test_wrapped_lines_fit_and_lose_no_letter(text: list[str], room: float) -> None:
    lines = wrapped(" ".join(text), NOTE, room)
    assert all(width_mm(line, NOTE) <= room + 1e-6 or len(line) == 1 for line in lines)
    assert "".join(lines).replace(" ", "") == "".join(text)


def test_line_ends_are_kept_and_an_empty_text_is_no_line() -> None:
    assert wrapped("one\n\ntwo", BODY, 50) == ["one", "", "two"]
    assert wrapped("  ", BODY, 50) == []


@given(words, st.floats(3, 60))
def test_a_shortened_text_fits_its_room(text: str, room: float) -> None:
    shown = shortened(text, SMALL, room)
    assert width_mm(shown, SMALL) <= room + 1e-6 or shown == "…"
    assert shown == text or shown.endswith("…")


def test_a_style_knows_its_leading_in_millimetres() -> None:
    assert SMALL.size == LEAST_POINT
    assert NOTE.leading_mm == pytest.approx(NOTE.leading / 72 * 25.4)
    assert 0 < SMALL.height_mm < SMALL.leading_mm


def test_threads_that_ask_for_a_font_at_once_get_one(monkeypatch: pytest.MonkeyPatch) -> None:
    loaded: list[str] = []
    monkeypatch.setattr(fonts, "_loaded", {})

    def slowly(font: str) -> object:
        loaded.append(font)
        time.sleep(0.02)
        return object()

    monkeypatch.setattr(fonts, "_load", slowly)
    with ThreadPoolExecutor(4) as threads:
        found = set(threads.map(fonts.registered, ["Lato"] * 4))
    assert len(found) == 1
    assert loaded == ["Lato"]
