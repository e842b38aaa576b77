import argparse

import pytest

from beeworkbook.cli.command import DONE, Command, NotUnderstoodError, Parser, Today


def takes_a_number(parser: Parser) -> None:
    parser.add_argument("--number", type=int)


def nothing(_asked: argparse.Namespace, _today: Today) -> int:
    return DONE


COUNT = Command("count", "Count.", "beeworkbook count --number 3", takes_a_number, nothing)


def test_a_parser_knows_its_command_and_example() -> None:
    told = COUNT.parser().format_help()
    assert "usage: beeworkbook count" in told
    assert "Example:\n  beeworkbook count --number 3" in told


@pytest.mark.parametrize("words", [["--number", "x"], ["--what"], ["--num", "3"]])
def test_what_is_not_understood_is_one_sentence_that_leads_to_the_help(words: list[str]) -> None:
    with pytest.raises(NotUnderstoodError, match=r"^[A-Z].*; see “beeworkbook count --help”\.$"):
        COUNT.parser().parse_args(words)
