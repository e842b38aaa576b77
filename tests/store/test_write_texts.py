from pathlib import Path

import pytest

from beeworkbook.store import write_texts
from beeworkbook.store.texts import TEXTS_FILE


def test_the_kept_texts_are_what_the_statements_say() -> None:
    """If this fails: python -m beeworkbook.store.write_texts."""
    assert TEXTS_FILE.read_text(encoding="utf-8") == write_texts.written()


def test_the_texts_are_written_anew(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(write_texts, "TEXTS_FILE", tmp_path / "texts.json")
    write_texts.main()
    assert (tmp_path / "texts.json").read_bytes() == TEXTS_FILE.read_bytes()
