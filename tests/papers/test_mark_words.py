import pytest

from beeworkbook.comb.contents import CellFate, CellKind, MarkKind
from beeworkbook.papers.mark_words import mark_letters, mark_texts, note_numbers
from tests.papers import invented


@pytest.mark.parametrize(
    ("kind", "cell_kind", "letters"),
    [
        (MarkKind.QUEEN, None, "Q"),
        (MarkKind.QUEEN_CELL, CellKind.CHARGED, "KC"),
        (MarkKind.QUEEN_CELL, CellKind.EMERGED, "KM"),
        (MarkKind.QUEEN_CELL, None, "K"),
        (MarkKind.NOTE, None, ""),
    ],
)
def test_marks_have_the_letters_of_the_legend(
    kind: MarkKind, cell_kind: CellKind | None, letters: str
) -> None:
    assert mark_letters(invented.mark(9, kind, cell_kind=cell_kind), {}) == letters


def test_notes_are_numbered_through_the_sheet() -> None:
    first, second = (invented.mark(number, MarkKind.NOTE, text=f"note {number}") for number in (7, 8))
    model = invented.model(invented.box(places=2), filled=True, visit=invented.visit(marks=(first, second)))
    assert note_numbers(model) == {7: 1, 8: 2}
    assert mark_letters(second, note_numbers(model)) == "2"
    assert mark_texts(model) == ["note 1: note 7", "note 2: note 8"]


def test_a_mark_is_told_with_where_it_is_and_no_more() -> None:
    from dataclasses import replace

    box = invented.box(places=2)
    cell = invented.mark(
        1, MarkKind.QUEEN_CELL, cell_kind=CellKind.SEALED, fate=CellFate.LEFT, text="low down"
    )
    unkind = invented.mark(3, MarkKind.QUEEN_CELL)
    combs = (box.combs[0], replace(box.combs[1], marks=(cell, unkind)))
    queen = invented.mark(2, MarkKind.QUEEN)
    model = invented.model(replace(box, combs=combs), filled=True, visit=invented.visit(marks=(queen,)))
    assert mark_texts(model) == [
        "comb 2: sealed queen cell, left. low down",
        "comb 2: queen cell",
        "queen seen",
    ]


def test_with_several_boxes_the_box_is_named() -> None:
    boxes = (invented.marked_box(), invented.box(places=2, name="Super"))
    assert any(text.startswith("Brood box 6B: ") for text in mark_texts(invented.model(*boxes, filled=True)))


def test_a_blank_sheet_has_no_marks_of_a_visit() -> None:
    assert mark_texts(invented.model()) == []
