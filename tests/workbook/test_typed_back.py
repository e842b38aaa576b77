import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.comb.contents import Face, MarkKind
from beeworkbook.comb.key_letters import ENGLISH_LETTERS
from beeworkbook.workbook.edits import AddMark, BeginVisit, LayOutComb
from beeworkbook.workbook.typed_back import comb_text
from tests.workbook.keeping import LATER, Keeping, as_int


def _text(keeping: Keeping, place: int, visit: int | None = None) -> str:
    frame = keeping.frame(place)
    visit_id = visit or keeping.visit
    sides = [side for side in keeping.book.read.sides(visit_id) if side.frame_id == frame]  # type: ignore[arg-type]
    marks = [mark for mark in keeping.book.read.marks(visit_id) if mark.frame_id == frame]  # type: ignore[arg-type]
    return comb_text(sides, marks, ENGLISH_LETTERS)


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("e1 o2 s4 h1", "E1O2S4H1"),
        ("S4/S2O2", "S4 / S2O2"),
        ("F", "F"),
        ("S6.", "S6."),
        ("S4W5Q", "S4W5Q"),
        ("S4Q / S2KC", "S4Q / S2KC"),
        ("S4 /", "S4 /"),
        ("/ S4", "/ S4"),
        ("Q", "Q"),
        ("", ""),
    ],
)
def test_what_was_typed_stands_in_the_field_again(keeping: Keeping, typed: str, shown: str) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), typed))
    assert _text(keeping, 5) == shown


CONTENTS = st.sampled_from("EOSBDPNHCFG")
SIDES = st.dictionaries(CONTENTS, st.integers(1, 2), max_size=4).map(
    lambda said: "".join(f"{letter}{amount}" for letter, amount in said.items())
)


@settings(max_examples=15)
@given(SIDES, SIDES, st.sampled_from(["", "Q", "KC", "W3"]))
def test_typing_the_shown_text_again_changes_nothing(a: str, b: str, more: str) -> None:
    with tempfile.TemporaryDirectory() as folder, Keeping(Path(folder) / "trial.beebook") as kept:
        kept.book.do(LayOutComb(kept.visit, kept.frame(5), f"{a}{more}/{b}"))
        before = kept.everything()
        kept.book.do(LayOutComb(kept.visit, kept.frame(5), _text(kept, 5)))
        assert kept.everything() == before


def test_a_painted_side_has_no_text_and_marks_on_cells_were_not_typed(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4 / H8"))
    keeping.paint(5, Face.A)
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, keeping.frame(5), Face.A, 3))
    keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, keeping.frame(5), Face.A, text="x"))
    assert _text(keeping, 5) == "/ H"


def test_signs_are_shown_as_signs(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4"))
    later = as_int(keeping.book.do(BeginVisit(keeping.colony, LATER)))
    keeping.book.do(LayOutComb(later, keeping.frame(5), "= / ?"))  # type: ignore[arg-type]
    assert _text(keeping, 5, later) == "= / ?"
