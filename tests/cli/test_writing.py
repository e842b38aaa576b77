from pathlib import Path

import pytest

from beeworkbook.cli.command import CommandError
from beeworkbook.cli.writing import new_file, new_text


def test_a_file_gets_its_name_when_it_is_whole(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    with new_file(path) as stream:
        stream.write(b"all of it")
        assert not path.exists()
    assert path.read_bytes() == b"all of it"


def test_a_file_that_is_there_is_left_unless_asked(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    path.write_bytes(b"old")
    with pytest.raises(CommandError, match="already a file"), new_file(path):
        pass
    assert path.read_bytes() == b"old"
    with new_file(path, replace=True) as stream:
        stream.write(b"new")
    assert path.read_bytes() == b"new"


def test_a_folder_is_never_written_over(tmp_path: Path) -> None:
    with pytest.raises(CommandError, match="already"), new_file(tmp_path, replace=True):
        pass


def test_what_fails_half_way_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(ZeroDivisionError), new_file(tmp_path / "a.txt") as stream:
        stream.write(b"half" * (1 // 0))
    assert list(tmp_path.iterdir()) == []


def test_where_nothing_can_be_written_it_is_said(tmp_path: Path) -> None:
    with pytest.raises(CommandError, match="could not be written"), new_file(tmp_path / "no" / "a.txt"):
        pass


def test_a_full_disk_is_said_and_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(CommandError, match="No space left"), new_file(tmp_path / "a.txt"):
        raise OSError(28, "No space left on device")
    assert list(tmp_path.iterdir()) == []


def test_text_is_kept_as_it_is_and_shown_with_a_dash(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with new_text(str(tmp_path / "a.csv")) as stream:
        stream.write("ęść\r\n")
    assert (tmp_path / "a.csv").read_bytes() == "ęść\r\n".encode()
    with new_text("-") as stream:
        stream.write("shown")
    assert capsys.readouterr().out == "shown"
