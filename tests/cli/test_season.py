import json
from pathlib import Path

from tests.cli.conftest import Typed


def test_a_line_a_visit_and_blank_where_nothing_was_looked_at(typed: Typed, sample: Path) -> None:
    told = typed("season", sample, "larch", "--since", "2026-03-01")
    assert told.code == 0
    heading, *held, note = told.out.splitlines()
    assert heading.split()[:4] == ["day", "looked", "eggs", "open"]
    assert "blank is not looked at" in note
    shut = next(line for line in held if "not opened" in line)
    assert shut.split() == ["2026-03-14", "not", "opened"]
    lines = [line for line in held if "one line" in line]
    assert any("~ " in line for line in lines)
    assert not any("~ " in line for line in held if line not in lines)


def test_combs_missing_are_told(typed: Typed, sample: Path) -> None:
    held = json.loads(typed("season", sample, "Bramble", "--json").out)["visits"]
    missing = next(visit for visit in held if visit["at_least"])
    told = typed("season", sample, "Bramble", "--since", missing["day"], "--until", missing["day"])
    assert "≥ " in told.out


def test_json_has_full_figures_and_null_for_not_looked(typed: Typed, sample: Path) -> None:
    held = json.loads(typed("season", sample, "Larch", "--json", "--until", "2025-12-31").out)
    assert held["colony"] == "Larch"
    days = [visit["day"] for visit in held["visits"]]
    assert days == sorted(days)
    assert days[0] == "2025-05-10"
    for visit in held["visits"]:
        if visit["level"] == "not_opened":
            assert visit["worker_brood_cells"] is None
        if visit["level"] == "by_side":
            stages = sum(visit[f"{stage}_cells"] for stage in ("eggs", "open", "sealed", "brood_no_age"))
            assert abs(stages - visit["worker_brood_cells"]) < 1


def test_a_colony_that_is_not_there_is_said_with_those_that_are(typed: Typed, sample: Path) -> None:
    told = typed("season", sample, "Nobody")
    assert (told.code, told.out) == (1, "")
    assert "Bramble" in told.err
