"""What the window remembers survives a start; a bad file is an empty one."""

from pathlib import Path

from beeworkbook.qt.memory import Memory


def test_a_value_is_there_at_the_next_start(tmp_path: Path) -> None:
    Memory(tmp_path / "kept" / "settings.json").put("dark", True)
    assert Memory(tmp_path / "kept" / "settings.json").get("dark") is True


def test_what_was_never_kept_is_the_default(tmp_path: Path) -> None:
    assert Memory(tmp_path / "settings.json").get("view", "round") == "round"


def test_a_damaged_file_is_an_empty_memory(tmp_path: Path) -> None:
    path = tmp_path / "settings.json"
    path.write_text("{ not json", encoding="utf-8")
    memory = Memory(path)
    assert memory.get("dark") is None
    memory.put("dark", False)
    assert Memory(path).get("dark") is False


def test_a_list_in_the_file_is_an_empty_memory(tmp_path: Path) -> None:
    path = tmp_path / "settings.json"
    path.write_text("[1]", encoding="utf-8")
    assert Memory(path).get("dark") is None


def test_a_folder_that_cannot_be_made_does_not_stop_the_work(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    memory = Memory(tmp_path / "file" / "settings.json")
    memory.put("dark", True)
    assert memory.get("dark") is True
