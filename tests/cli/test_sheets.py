import json
from datetime import date
from pathlib import Path

import pytest
from pypdf import PdfReader

from beeworkbook.colony.records import Sheet
from beeworkbook.colony.sheet_models import LOOSE_CODE, is_sheet_code
from beeworkbook.workbook.workbook import Workbook
from tests.cli.conftest import Typed

MM = 72 / 25.4


def text_of(path: Path) -> str:
    return "\n".join(page.extract_text() for page in PdfReader(path).pages)


def kept(path: Path) -> tuple[Sheet, ...]:
    with Workbook.open(path, today=date(2026, 11, 25)) as book:
        return book.read.find(Sheet)


def test_the_example_prints_a_blank_sheet_and_keeps_where_its_fields_lie(
    typed: Typed, sample: Path, tmp_path: Path
) -> None:
    target = tmp_path / "blank.pdf"
    told = typed("sheets", "blank", sample, target, "--colony", "Larch", "--paper", "A4", "--black")
    assert (told.code, told.err) == (0, "")
    assert "one colony" in told.out
    assert "Larch" in text_of(target)
    (sheet,) = kept(sample)
    assert json.loads(sheet.field_map)
    assert sheet.code in text_of(target)


def test_a_filled_sheet_is_of_the_last_visit_with_combs(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target, maps = tmp_path / "filled.pdf", tmp_path / "maps"
    maps.mkdir()
    words = ("--colony", "Bramble", "--day", "2025-07-01", "--field-maps", maps)
    told = typed("sheets", "filled", sample, target, *words)
    assert told.code == 0
    assert "Comb 6 is the finest" in text_of(target).replace("\n", " ")
    assert json.loads((maps / "field-map-1.json").read_bytes())


def test_several_colonies_or_a_whole_apiary_go_into_one_file(
    typed: Typed, sample: Path, tmp_path: Path
) -> None:
    target = tmp_path / "apiary.pdf"
    words = ("--apiary", "upper leat", "--paper", "letter", "--no-places", "--day", "2026-06-20")
    told = typed("sheets", "blank", sample, target, *words)
    assert "3 colonies" in told.out
    text = text_of(target)
    assert all(name in text for name in ("Heron", "Fennel", "Tansy"))
    assert "Upper Leat" not in text
    box = PdfReader(target).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((612, 792), abs=0.1)


def test_supers_are_printed_only_where_they_are_asked_for(typed: Typed, sample: Path, tmp_path: Path) -> None:
    words = ("--colony", "Bramble", "--day", "2026-06-20")
    without, with_them = tmp_path / "without.pdf", tmp_path / "with.pdf"
    assert typed("sheets", "blank", sample, without, *words).code == 0
    assert typed("sheets", "blank", sample, with_them, *words, "--supers").code == 0
    assert "Super" not in text_of(without)
    assert "Super" in text_of(with_them)


def test_all_apiaries_if_none_is_named(typed: Typed, sample: Path, tmp_path: Path) -> None:
    assert "6 colonies" in typed("sheets", "blank", sample, tmp_path / "all.pdf").out


def test_a_round_sheet_has_the_colonies_in_stand_order(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "round.pdf"
    told = typed("sheets", "round", sample, target, "--apiary", "Kiln Field", "--paper", "A5")
    assert told.code == 0
    text = text_of(target)
    places = [text.index(name) for name in ("Bramble", "Tansy", "Larch", "Rook")]
    assert places == sorted(places)
    assert kept(sample) == ()


@pytest.mark.parametrize(
    ("words", "code", "part"),
    [
        (["--paper", "A3"], 2, "A3"),
        (["--day", "tomorrow"], 2, "is not a day"),
        (["--colony", "Nobody"], 1, "no colony"),
        (["--colony", "Teasel"], 1, "nothing to print of Teasel"),
        (["--apiary", "Nowhere"], 1, "no apiary"),
        (["--day", "2020-01-01"], 1, "no colony to print"),
    ],
)
def test_what_cannot_be_printed_leaves_no_file(
    typed: Typed, sample: Path, tmp_path: Path, words: list[str], code: int, part: str
) -> None:
    told = typed("sheets", "blank", sample, tmp_path / "x.pdf", *words)
    assert told.code == code
    assert part in told.err
    assert not (tmp_path / "x.pdf").exists()


def test_a_round_sheet_must_know_its_apiary(typed: Typed, sample: Path, tmp_path: Path) -> None:
    told = typed("sheets", "round", sample, tmp_path / "x.pdf")
    assert told.code == 1
    assert "--apiary" in told.err
    assert not (tmp_path / "x.pdf").exists()


def test_a_sheet_that_is_there_is_left_and_none_is_kept(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "blank.pdf"
    target.write_bytes(b"mine")
    assert typed("sheets", "blank", sample, target, "--colony", "Larch").code == 1
    assert target.read_bytes() == b"mine"
    assert kept(sample) == ()
    assert typed("sheets", "blank", sample, target, "--colony", "Larch", "--replace").code == 0
    assert target.read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize("kind", ["blank", "filled"])
def test_a_loose_sheet_is_printed_while_a_window_has_the_workbook_open(
    typed: Typed, sample: Path, tmp_path: Path, kind: str
) -> None:
    maps = tmp_path / "maps"
    maps.mkdir()
    words = ("--colony", "Bramble", "--day", "2025-07-01")
    with Workbook.open(sample, today=date(2026, 11, 25)):
        refused = typed("sheets", kind, sample, tmp_path / "kept.pdf", *words)
        told = typed("sheets", kind, sample, tmp_path / "loose.pdf", *words, "--loose", "--field-maps", maps)
    assert refused.code == 1
    assert "open in another window" in refused.err
    assert "--loose" in refused.err
    assert not (tmp_path / "kept.pdf").exists()
    assert (told.code, told.err) == (0, "")
    assert "Bramble" in text_of(tmp_path / "loose.pdf")
    assert LOOSE_CODE in text_of(tmp_path / "loose.pdf")
    assert json.loads((maps / "field-map-1.json").read_bytes())["code"] == LOOSE_CODE
    assert kept(sample) == ()


def test_a_loose_sheet_never_bears_a_code_of_the_workbook(typed: Typed, sample: Path, tmp_path: Path) -> None:
    words = ("--colony", "Larch", "--paper", "A4")
    assert typed("sheets", "blank", sample, tmp_path / "loose.pdf", *words, "--loose").code == 0
    assert typed("sheets", "blank", sample, tmp_path / "kept.pdf", *words).code == 0
    (sheet,) = kept(sample)
    assert sheet.code not in text_of(tmp_path / "loose.pdf")
    assert is_sheet_code(sheet.code)
    assert not is_sheet_code(LOOSE_CODE)
