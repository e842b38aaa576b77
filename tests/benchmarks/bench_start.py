"""A start and the memory of the program beside a bare Qt window, each in processes of their own, by turns.

Run with: python -m pytest tests/benchmarks/bench_start.py --benchmark-enable -s
The workbook holds the sample and a colony whose box has 22 sides painted through; it was left at the box.
Off screen the window is 1366 × 740 on a screen of its size. A first start that is not counted leaves
everything as a second start finds it.
"""

import json
import os
import statistics
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from time import monotonic_ns
from typing import Final

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from tests.benchmarks.full_book import COMBS, keep_full_book
from tests.benchmarks.turns import Turns
from tests.benchmarks.window_alone import TODAY

CHECKOUT: Final = Path(__file__).resolve().parents[2]
WINDOW: Final = Path(__file__).with_name("window_alone.py")
STARTS: Final = 15
LOOKS: Final = 3
Print = Callable[[str], None]
Start = Callable[[str], dict[str, int]]


@pytest.fixture
def show(benchmark: BenchmarkFixture, capsys: pytest.CaptureFixture[str]) -> Print:
    """Prints a line where benchmarks are on; the benchmark is skipped where they are off."""
    if benchmark.disabled:  # type: ignore[no-untyped-call, unused-ignore]
        pytest.skip("benchmarks are off")

    def line(text: str) -> None:
        with capsys.disabled():
            print(f"\n  {text}", end="")

    return line


@pytest.fixture
def start(show: Print, tmp_path: Path) -> Start:
    """Starts a window in a process of its own; gives what it tells."""
    del show  # asked for, so that nothing is made where benchmarks are off
    keep_full_book(tmp_path, TODAY)
    screen = {"name": "one", "width": 1366, "height": 768, "logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1}
    (tmp_path / "screen.json").write_text(json.dumps({"screens": [screen | {"x": 0, "y": 0}]}))
    platform = os.environ.get("QT_QPA_PLATFORM", "offscreen")
    if platform == "offscreen":
        platform = f"offscreen:configfile={tmp_path / 'screen.json'}"
    variables = {
        **os.environ,
        "BEEWORKBOOK_HOME": str(tmp_path),
        "PYTHONPATH": str(CHECKOUT),
        "PYTHONPYCACHEPREFIX": str(tmp_path / "compiled"),
        "QT_QPA_PLATFORM": platform,
    }
    variables.pop("PYTHONDONTWRITEBYTECODE", None)  # on every machine but this one a second start is compiled

    def run(what: str) -> dict[str, int]:
        command = [sys.executable, str(WINDOW), what]
        begun = monotonic_ns()
        ran = subprocess.run(command, env=variables, capture_output=True, text=True, timeout=300, check=False)
        assert ran.returncode == 0, ran.stderr
        told: dict[str, int] = json.loads(ran.stdout.splitlines()[-1])
        return told | {name: told[name] - begun for name in ("painted", "box") if name in told}

    for what in ("bare", "program"):
        run(what)
    return run


def bench_start(benchmark: BenchmarkFixture, show: Print, start: Start) -> None:
    """From the command to the first painting, and to the painting of the box that lay open last."""
    looked = start("compare")
    assert looked["pictures"] == 2 * COMBS
    assert looked["alike"]
    bare, told = [], []
    for _ in range(STARTS):
        bare.append(start("bare"))
        told.append(start("program"))
    for name, words, must in (("painted", "the first painted window", 1.7), ("box", "the painted box", 3)):
        for kind, clock in (("", "start to {}"), ("_worked", "  the same, the processor's time")):
            times = [each[name + kind] / 1000 for each in told]
            floor = [each["painted" + kind] / 1000 for each in bare]
            show(Turns(times, floor).line(clock.format(words), must))
    benchmark.pedantic(start, ("program",), rounds=3)  # type: ignore[no-untyped-call]


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux tells what memory a process holds")
def bench_memory(benchmark: BenchmarkFixture, show: Print, start: Start) -> None:
    """What a process holds with box, comb and two charts, and once everything was used, libraries and all."""
    bare, charts, everything = [], [], []
    for _ in range(LOOKS):
        bare.append(start("bare_settled")["memory"])
        told = start("charts")
        assert told["panes"] == 2
        charts.append(told["memory"])
        told = start("all")
        assert told["findings"] == 0
        everything.append(told["memory"])
    show(_memory_line("memory with box, one comb, two charts", charts, bare, 3))
    show(_memory_line("memory after everything was used", everything, bare, 3.5))
    benchmark.pedantic(start, ("bare_settled",), rounds=1)  # type: ignore[no-untyped-call]


def _memory_line(name: str, held: list[int], bare: list[int], must: float) -> str:
    thing, floor = statistics.median(held) / 1024, statistics.median(bare) / 1024
    measured = f"median {thing:>6.1f} MB most {max(held) / 1024:>6.1f}   floor {floor:>6.1f} MB"
    return f"{name:<52} {measured}   ratio {thing / floor:>5.2f}   must be at most {must:g}"
