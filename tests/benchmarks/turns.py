"""Measuring a thing beside its floor: both in the same run, by turns, so that a busy machine slows both.

Printed are the medians, the 95th percentiles and the ratio of the medians. Nothing is asserted of
times; what was measured is asserted to be right by whoever measures.
"""

import gc
import statistics
from collections.abc import Callable
from dataclasses import dataclass
from time import perf_counter_ns

Work = Callable[[], object]


@dataclass(frozen=True)
class Turns:
    """Times of the thing and of its floor, in microseconds, turn by turn."""

    thing: list[float]
    floor: list[float]

    @property
    def ratio(self) -> float:
        """How many times the floor the thing takes, by medians."""
        return statistics.median(self.thing) / statistics.median(self.floor)

    def line(self, name: str, must: float) -> str:
        """One printed line: name, medians and 95th percentiles in microseconds, ratio, what must hold."""
        thing, floor = _middle_and_tail(self.thing), _middle_and_tail(self.floor)
        measured = f"median {thing[0]:>7.1f} p95 {thing[1]:>7.1f}"
        beside = f"floor {floor[0]:>6.1f} p95 {floor[1]:>6.1f}"
        return f"{name:<52} {measured}   {beside}   ratio {self.ratio:>5.2f}   must be at most {must:g}"


def by_turns(thing: Work, floor: Work, *, rounds: int = 200, loops: int = 20) -> Turns:
    """Both timed by turns, `loops` calls a turn, after a few turns that are not kept."""
    times = Turns([], [])
    was_on = gc.isenabled()
    gc.disable()
    try:
        for turn in range(-5, rounds):
            for work, kept in ((thing, times.thing), (floor, times.floor)):
                begun = perf_counter_ns()
                for _ in range(loops):
                    work()
                spent = (perf_counter_ns() - begun) / 1000 / loops
                if turn >= 0:
                    kept.append(spent)
    finally:
        if was_on:
            gc.enable()
    return times


def _middle_and_tail(times: list[float]) -> tuple[float, float]:
    return statistics.median(times), statistics.quantiles(times, n=20)[-1]
