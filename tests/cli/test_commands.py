"""No command without its page: name, example and every command of the page are held to each other."""

import re

import pytest

from beeworkbook.cli.commands import COMMANDS
from beeworkbook.resources import resource

PAGE = resource("help", "commands.md").read_text(encoding="utf-8")
PARTS = dict(re.findall(r"^## (\S+)\n(.*?)(?=^## |\Z)", PAGE, re.MULTILINE | re.DOTALL))


def test_every_command_is_documented_and_every_documented_one_is_there() -> None:
    assert list(PARTS) == list(COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_the_page_has_the_example_of_the_help(name: str) -> None:
    assert f"    {COMMANDS[name].example}\n" in PARTS[name]


@pytest.mark.parametrize("name", COMMANDS)
def test_an_example_is_of_its_own_command(name: str) -> None:
    assert COMMANDS[name].example.startswith(f"beeworkbook {name}")
