"""The installer's lines, as it writes them, become a count and a name."""

import pytest

from beeworkbook.setup.told import Told


@pytest.mark.parametrize(
    ("line", "shown"),
    [
        ("Collecting numpy==2.4.6 (from -r locks/run.txt (line 3))", "package 1 of 9 · numpy"),
        ("Collecting pyside6-essentials==6.11.3 (from -r x)", "package 1 of 9 · pyside6-essentials"),
        ("Requirement already satisfied: scipy==1.17 in ./lib", "package 1 of 9 · scipy"),
        (
            "Processing /wheels/pytest_xdist-3.8.0-py3.whl (from -r x)",
            "package 1 of 9 · pytest-xdist",
        ),
        (r"Processing c:\wheels\numpy-2.4.6-cp311.whl (from -r x)", "package 1 of 9 · numpy"),
        ("Ignoring colorama: markers don't match your environment", "package 0 of 8"),
        ("Installing collected packages: numpy, scipy, segno", "unpacking 3 packages"),
        ("WARNING: something of no interest here", "package 0 of 9"),
    ],
)
def test_a_line_becomes_what_a_person_wants_to_know(line: str, shown: str) -> None:
    assert Told(total=9).hear(line) == f"Setting up: {shown}"


def test_how_much_is_fetched_belongs_to_the_package_named_last() -> None:
    told = Told(total=2)
    told.hear("Collecting pyside6-essentials==6.11.3")
    told.hear("  Downloading pyside6_essentials-6.11.3-cp310-abi3-manylinux_2_34_x86_64.whl (80.3 MB)")
    assert told.hear("Progress 38000000 of 80300000").endswith(
        "pyside6-essentials 38 of 80.3 MB".replace("38 ", "38.0 ")
    )
    assert told.hear("Collecting segno==1.6.6").endswith("package 2 of 2 · segno")


def test_fetching_after_all_were_collected_names_what_is_fetched() -> None:
    told = Told(total=1)
    told.hear("Collecting segno==1.6.6")
    told.hear("  Downloading segno-1.6.6-py3-none-any.whl.metadata (7.7 kB)")
    assert told.hear("Downloading numpy-2.4.6-cp311-cp311.whl (16.9 MB)").endswith("package 1 of 1 · numpy")


def test_the_count_never_passes_the_total() -> None:
    told = Told(total=1)
    told.hear("Collecting alpha==1")
    assert told.hear("Collecting beta==1").startswith("Setting up: package 2 of 2")
