"""From a bare checkout to the program or its tests, with one command and only the standard library.

    python3 -m beeworkbook.start            sets up what is missing and opens the program
    python3 -m beeworkbook.start test       sets up and runs the tests (more words go to pytest)
    python3 -m beeworkbook.start measure    sets up and runs the benchmarks
    python3 -m beeworkbook.start setup      sets up for tests and does no more

Anything else is handed to the program, e.g. a workbook to open.
"""

from __future__ import annotations

import os
import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must be told, in a sentence
    sys.exit(
        "beeworkbook needs Python 3.11 or later, and this is Python {}.{}.".format(*sys.version_info[:2])
    )

import subprocess
from collections.abc import Sequence
from pathlib import Path

from beeworkbook.setup.environment import Environment, SetupError

CHECKOUT = Path(__file__).resolve().parent.parent
_HAS_EXEC = os.name != "nt"  # Windows has one that gives the prompt back while the program still runs


def main(argv: Sequence[str] | None = None) -> int:
    """The exit code of what was asked for; 1 if it could not be set up."""
    words = list(sys.argv[1:] if argv is None else argv)
    task = words[0] if words and words[0] in TASKS else ""
    environment = Environment(CHECKOUT)
    try:
        _prepare(environment, "test" if task else "run")
    except SetupError as error:
        print(error, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("\nStopped. Start again, and it goes on from here.", file=sys.stderr)
        return 130
    return TASKS[task](environment, words[1:] if task else words)


def _prepare(environment: Environment, lock: str) -> None:
    if not environment.is_ready(lock):
        from beeworkbook.setup.steps import set_up

        set_up(environment, lock)
    if sys.platform == "linux" and not environment.has_libraries:
        from beeworkbook.setup.steps import see_to_libraries

        see_to_libraries(environment)


def _open(environment: Environment, words: list[str]) -> int:
    return _become(environment, ["-m", "beeworkbook", *words])


def _test(environment: Environment, words: list[str]) -> int:
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    chosen = any(word.startswith(("-n", "--numprocesses", "--benchmark-enable", "--pdb")) for word in words)
    spread = [] if chosen else ["-n", str(_cores()), "--dist", "worksteal"]
    return _become(environment, ["-m", "pytest", *spread, *words])


def _measure(environment: Environment, words: list[str]) -> int:
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    asked = ["-p", "no:xdist", "-s", "-o", "python_files=bench_*.py", "--benchmark-enable"]
    return _become(environment, ["-m", "pytest", *asked, *(words or ["tests/benchmarks"])])


def _nothing_more(_environment: Environment, _words: list[str]) -> int:
    return 0


TASKS = {"": _open, "test": _test, "measure": _measure, "setup": _nothing_more}


def _cores() -> int:
    if sys.platform == "linux":
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _become(environment: Environment, words: list[str]) -> int:
    """Go on as the environment's Python, in the folder the person is in, with this checkout's package."""
    paths = [str(CHECKOUT), *filter(None, [os.environ.get("PYTHONPATH")])]
    variables = {**os.environ, "PYTHONPATH": os.pathsep.join(paths)}
    command = [str(environment.python), *words]
    sys.stdout.flush()
    if _HAS_EXEC:
        os.execve(command[0], command, variables)
    return subprocess.call(command, env=variables)


if __name__ == "__main__":
    sys.exit(main())
