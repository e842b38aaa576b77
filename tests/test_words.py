"""The one translation call."""

import json
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.words import (
    Catalogue,
    CatalogueError,
    NumberError,
    date_words,
    installed_catalogue,
    load_catalogue,
    month_name,
    number,
    parse_number,
    say,
    say_count,
    say_in,
    two_figures,
    use_catalogue,
    weekday_name,
)

NNBSP = "\u202f"
SATURDAY = date(2026, 5, 16)


@pytest.fixture(autouse=True)
def english() -> Iterator[None]:
    """Every test starts and ends in English."""
    use_catalogue({})
    yield
    use_catalogue({})


def test_english_text_is_said_with_its_values() -> None:
    assert say("brood on {combs} combs, worth {worth}", combs=7, worth="4.2") == "brood on 7 combs, worth 4.2"


def test_text_without_values_may_hold_braces() -> None:
    assert say("a {brace}") == "a {brace}"


def test_a_pseudo_catalogue_translates() -> None:
    use_catalogue({"eggs on {first} to {last}": "[{last} bis {first}: Stifte]", "Round": "[Runde]"})
    assert say("eggs on {first} to {last}", first=4, last=6) == "[6 bis 4: Stifte]"
    assert say("Round") == "[Runde]"
    assert say("Bench") == "Bench"


@pytest.mark.parametrize("broken", ["[{nobody}]", "[{", "[{0}]", "[{first.x}]"])
def test_a_broken_translation_falls_back_to_english(broken: str) -> None:
    use_catalogue({"eggs on {first}": broken})
    assert say("eggs on {first}", first=4) == "eggs on 4"


def test_counts_take_one_or_many() -> None:
    assert say_count(1, "{n} comb", "{n} combs") == "1 comb"
    assert say_count(0, "{n} comb", "{n} combs") == "0 combs"
    assert say_count(4816, "{n} cell", "{n} cells") == f"4{NNBSP}816 cells"
    assert say_count(1.5, "{n} box of {what}", "{n} boxes of {what}", what="brood") == "1.5 boxes of brood"


@pytest.mark.parametrize(
    ("rule", "forms", "expected"),
    [
        (
            "polish",
            ["ramka", "ramki", "ramek"],
            {1: "ramka", 3: "ramki", 13: "ramek", 22: "ramki"},
        ),
        ("russian", ["a", "b", "c"], {1: "a", 21: "a", 11: "c", 4: "b", 14: "c", 20: "c"}),
        ("czech", ["a", "b", "c"], {1: "a", 4: "b", 5: "c", 22: "c"}),
        ("french", ["a", "b"], {0: "a", 1: "a", 2: "b"}),
        ("single", ["a"], {1: "a", 7: "a"}),
        ("polish", ["only"], {1: "only", 5: "only"}),
    ],
)
def test_plural_rules_choose_the_form(rule: str, forms: list[str], expected: dict[int, str]) -> None:
    use_catalogue(Catalogue({"{n} combs": forms}, plural=rule))
    assert {n: say_count(n, "{n} comb", "{n} combs") for n in expected} == expected


def test_a_plural_with_one_text_only_is_still_translated() -> None:
    use_catalogue({"{n} combs": "{n} Waben", "{n} comb": "{n} Wabe"})
    assert say_count(1, "{n} comb", "{n} combs") == "1 Wabe"
    assert say_count(2, "{n} comb", "{n} combs") == "2 Waben"


def test_a_list_of_forms_said_without_a_count_gives_the_first() -> None:
    use_catalogue({"comb": ["Wabe", "Waben"], "short: comb": ["W", "Ws"]})
    assert say("comb") == "Wabe"
    assert say_in("short", "comb") == "W"


@pytest.mark.parametrize(
    ("style", "words"),
    [
        ("long", "Saturday 16 May"),
        ("long_year", "Saturday 16 May 2026"),
        ("weekday", "Sat 16 May"),
        ("weekday_year", "Sat 16 May 2026"),
        ("day", "16 May"),
        ("day_year", "16 May 2026"),
        ("short", "16 May"),
    ],
)
def test_dates_in_words(style: str, words: str) -> None:
    assert date_words(SATURDAY, style) == words  # type: ignore[arg-type]


def test_a_short_date_has_a_short_month() -> None:
    assert date_words(date(2026, 9, 3), "short") == "3 Sep"


def test_dates_are_translated_in_name_and_order() -> None:
    use_catalogue(
        {
            "month: May": "Mai",
            "short month: May": "Mai.",
            "weekday: Saturday": "Samstag",
            "short weekday: Sat": "Sa",
            "{day} {month}": "{day}. {month}",
            "{weekday} {day} {month}": "{weekday}, {day}. {month}",
        }
    )
    assert date_words(SATURDAY) == "16. Mai"
    assert date_words(SATURDAY, "long") == "Samstag, 16. Mai"
    assert date_words(SATURDAY, "weekday") == "Sa, 16. Mai"
    assert date_words(SATURDAY, "short") == "16. Mai."
    assert month_name(5, short=True) == "Mai."
    assert weekday_name(5, short=True) == "Sa"


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (4816, f"4{NNBSP}800"),
        (20123, f"20{NNBSP}000"),
        (4.17, "4.2"),
        (0, "0"),
        (8.0, "8"),
        (7.96, "8"),
        (99.6, "100"),
        (4850, f"4{NNBSP}900"),
        (0.0417, "0.042"),
        (-0.26, "\u22120.26"),
        (1234567, f"1{NNBSP}200{NNBSP}000"),
    ],
)
def test_two_significant_figures(value: float, words: str) -> None:
    assert two_figures(value) == words


@given(st.floats(min_value=1e-6, max_value=1e9))
def test_two_figures_stay_within_half_a_figure(value: float) -> None:
    assert parse_number(two_figures(value)) == pytest.approx(value, rel=0.0501)


def test_numbers_with_places_and_without() -> None:
    assert number(4.25, 1) == "4.3"
    assert number(4, 2) == "4.00"
    assert number(12345.5) == f"12{NNBSP}345.5"
    assert number(-3) == "\u22123"
    use_catalogue(Catalogue(decimal_sign=","))
    assert number(4.5, 1) == "4,5"
    assert two_figures(4.17) == "4,2"


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_numbers_that_are_none_are_not_written(value: float) -> None:
    with pytest.raises(ValueError, match="finite"):
        number(value)
    with pytest.raises(ValueError, match="finite"):
        two_figures(value)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2.5", 2.5),
        ("2,5", 2.5),
        (" 14 ", 14.0),
        (f"4{NNBSP}800", 4800.0),
        ("4 800,5", 4800.5),
        ("\u22123", -3.0),
        ("+1.", 1.0),
        (",5", 0.5),
        ("0,250", 0.25),
        ("1.250", 1.25),
    ],
)
def test_comma_and_point_are_both_read(text: str, value: float) -> None:
    assert parse_number(text) == value


@pytest.mark.parametrize("text", ["", "two", "1,000.5", "1e9", "nan", "-", ".", "1" * 60, "\u0663"])
def test_what_is_no_number_is_refused_in_words(text: str) -> None:
    with pytest.raises(NumberError, match="not a number"):
        parse_number(text)


def test_a_number_of_two_readings_is_asked_again() -> None:
    with pytest.raises(NumberError, match=r"two ways: write 20000 or 20\.000"):
        parse_number("20,000")
    use_catalogue(Catalogue(decimal_sign=","))
    assert parse_number("20,000") == 20.0
    with pytest.raises(NumberError, match="two ways"):
        parse_number("20.000")


@given(st.decimals(min_value=-99999, max_value=99999, places=3))
def test_a_written_number_is_read_back(value: object) -> None:
    assert parse_number(number(float(str(value)))) == float(str(value))


def test_a_catalogue_is_loaded_from_json(tmp_path: Path) -> None:
    held = {
        "language": "de",
        "decimal_sign": ",",
        "texts": {"Round": "Runde", "{n} combs": ["{n} Wabe", "{n} Waben"]},
    }
    path = tmp_path / "de.json"
    path.write_text(json.dumps(held), encoding="utf-8")
    use_catalogue(load_catalogue(path))
    assert say("Round") == "Runde"
    assert say_count(2, "{n} comb", "{n} combs") == "2 Waben"
    assert installed_catalogue().language == "de"


@pytest.mark.parametrize(
    "held",
    [
        "{",
        "[]",
        '{"texts": 3}',
        '{"texts": {"a": 3}}',
        '{"texts": {"a": []}}',
        '{"texts": {"a": [3]}}',
        '{"texts": {}, "plural": "odd"}',
        '{"texts": {}, "decimal_sign": ";"}',
    ],
)
def test_what_is_no_catalogue_is_refused(held: str, tmp_path: Path) -> None:
    path = tmp_path / "bad.json"
    path.write_text(held, encoding="utf-8")
    with pytest.raises(CatalogueError, match="catalogue"):
        load_catalogue(path)
