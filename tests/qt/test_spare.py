import ctypes
import sys

import pytest

from beeworkbook.qt.spare import give_back


@pytest.mark.parametrize("system", ["linux", "win32", "darwin"])
def test_memory_is_given_back_where_it_can_be(system: str, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[int] = []

    class Library:
        def __init__(self, name: None) -> None:
            assert name is None

        @staticmethod
        def malloc_trim(keep: int) -> None:
            asked.append(keep)

    monkeypatch.setattr(sys, "platform", system)
    monkeypatch.setattr(ctypes, "CDLL", Library)
    give_back()
    assert asked == ([0] if system == "linux" else [])


def test_another_c_library_is_left_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr(ctypes, "CDLL", lambda _name: object())
    give_back()
