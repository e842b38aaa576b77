import argparse
from datetime import date
from pathlib import Path

import pytest

from beeworkbook.cli.asking import apiary_named, colonies_named, day, frame, opened
from beeworkbook.cli.command import CommandError
from beeworkbook.colony.records import Colony
from beeworkbook.workbook.edits.place import AddApiary, RenameRecord
from beeworkbook.workbook.errors import ReadOnlyError
from beeworkbook.workbook.workbook import Workbook

TODAY = date(2026, 11, 25)


def test_a_day_and_a_frame_are_read() -> None:
    assert day("2026-05-16") == date(2026, 5, 16)
    assert frame("Zander").id == "zander"


@pytest.mark.parametrize("typed", ["", "16.5.2026", "2026-13-01", "9" * 50])
def test_what_is_no_day_is_said(typed: str) -> None:
    with pytest.raises(argparse.ArgumentTypeError, match="is not a day"):
        day(typed)


def test_what_is_no_frame_is_said() -> None:
    with pytest.raises(argparse.ArgumentTypeError, match="beeworkbook frames"):
        frame("shed")


def test_colonies_are_found_by_name_in_the_order_said(sample: Path) -> None:
    with opened(sample, lambda: TODAY) as book:
        found = colonies_named(book, [" rook ", "Larch"])
        assert [colony.name for colony in found] == ["Rook", "Larch"]
        assert len(colonies_named(book, [])) == len(book.read.find(Colony))


def test_a_name_that_is_not_there_or_there_twice_is_said(sample: Path) -> None:
    with opened(sample, lambda: TODAY, for_looking=False) as book:
        with pytest.raises(CommandError, match="no colony of the name Nobody; there are: Bramble"):
            colonies_named(book, ["Nobody"])
        (rook,) = colonies_named(book, ["Rook"])
        book.do(RenameRecord(Colony, rook.id, "Larch"))
        with pytest.raises(CommandError, match="two of the name larch"):
            colonies_named(book, ["larch"])


def test_an_apiary_is_the_only_one_or_must_be_named(sample: Path, tmp_path: Path) -> None:
    with opened(sample, lambda: TODAY) as book:
        assert apiary_named(book, "upper leat").name == "Upper Leat"
        with pytest.raises(CommandError, match="Kiln Field, Upper Leat"):
            apiary_named(book, None)
    with Workbook.create(tmp_path / "bare.beebook", "bare", today=TODAY) as book:
        with pytest.raises(CommandError, match="no apiary in this workbook"):
            apiary_named(book, None)
        with pytest.raises(CommandError, match="there are: none"):
            apiary_named(book, "Hill")
        book.do(AddApiary("Hill"))
        assert apiary_named(book, None).name == "Hill"


def test_a_workbook_is_opened_for_looking_and_closed(sample: Path) -> None:
    with opened(sample, lambda: TODAY) as book, pytest.raises(ReadOnlyError):
        book.do(AddApiary("Hill"))
    with opened(sample, lambda: TODAY, for_looking=False) as book:
        book.do(AddApiary("Hill"))
