"""`python -m beeworkbook` and the installed command hand what was typed to the command line."""

import sys

import pytest

import beeworkbook.cli.main as command_line
from beeworkbook.__main__ import main


@pytest.mark.parametrize("typed", [["a.bees"], []])
def test_what_was_typed_is_handed_on_and_the_code_comes_back(
    typed: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(command_line, "main", lambda words: {0: 3, 1: 4}[len(words)])
    monkeypatch.setattr(sys, "argv", ["beeworkbook", *typed])
    assert main() == 3 + len(typed)
    assert main(typed) == 3 + len(typed)
