"""Columns fit the window they are in, and never lie over one another."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import Question
from beeworkbook.colony.sentences import Field
from beeworkbook.rounds.columns import MARGIN, Columns, lay_columns
from beeworkbook.rounds.field import TARGETS

LEAST = 40


def test_all_columns_fit_beside_the_page_of_a_small_screen() -> None:
    assert lay_columns(TARGETS, 1366 - 276).width == 1366 - 276
    assert lay_columns(TARGETS, 1280 - 277).width == 1280 - 277


@given(st.floats(500, 3000), st.sets(st.sampled_from(list(Question))))
def test_columns_stand_in_order_side_by_side(room: float, left_out: set[Question]) -> None:
    targets = tuple(target for target in TARGETS if target not in left_out)
    laid = lay_columns(targets, room)
    assert tuple(column.target for column in laid.columns) == targets
    edges = [laid.frozen, *(column.right for column in laid.columns)]
    assert edges == sorted(edges)
    assert [column.left for column in laid.columns] == pytest.approx(edges[:-1])
    assert laid.width >= edges[-1] + MARGIN - 1e-6


def test_a_window_too_narrow_is_scrolled_not_crammed() -> None:
    laid = lay_columns(TARGETS, 700)
    assert laid.width > 700
    assert min(column.width for column in laid.columns) >= 36


def test_the_note_takes_what_is_left() -> None:
    small, large = (_note(lay_columns(TARGETS, room)) for room in (1090, 1600))
    assert large > small + 0.3 * (1600 - 1090)
    few = lay_columns(tuple(t for t in TARGETS if t not in {Question.SIGNS, Question.DRAWN}), 1090)
    assert _note(few) > small


def test_a_place_across_the_line_is_a_field_or_none() -> None:
    laid = lay_columns(TARGETS, 1090)
    stores = laid.of(Question.STORES)
    assert stores is not None
    assert laid.at(stores.left + 1) is Question.STORES
    assert laid.at(LEAST) is None
    assert lay_columns((Field.NOTE,), 1090).of(Question.STORES) is None


def _note(laid: Columns) -> float:
    column = laid.of(Field.NOTE)
    assert column is not None
    return column.width
