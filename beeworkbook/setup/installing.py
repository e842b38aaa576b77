"""Making the environment and filling it from a lock, by the installer that lies in the checkout.

Python may have come without an installer of its own (Debian's does), so nothing here asks for one.
Which index the packages come from is the person's own setting; the lock only says which bytes.
"""

import os
import re
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Final

from beeworkbook.setup.environment import Environment, SetupError
from beeworkbook.setup.progress import Progress
from beeworkbook.setup.told import Told
from beeworkbook.words import say

_OURS_TO_SAY: Final = frozenset(
    f"PIP_{name}" for name in ("TARGET", "PREFIX", "ROOT", "USER", "PYTHON", "QUIET", "VERBOSE", "DRY_RUN")
)
"""Settings of the installer that would send the packages elsewhere or hide its progress."""
_OPTIONS: Final = (
    "--require-hashes",
    "--only-binary=:all:",
    "--no-input",
    "--no-warn-script-location",
    "--disable-pip-version-check",
    "--progress-bar=raw",
)
_LAST_LINES: Final = 25


def make_environment(environment: Environment) -> None:
    """An empty environment, or the one that is there if its Python still runs.

    Errors: SetupError if this Python cannot make one.
    """
    if _is_sound(environment):
        return
    try:
        import venv
    except ImportError as error:
        raise SetupError(
            say("This Python came without its module venv. On Debian: sudo apt-get install python3-venv")
        ) from error
    _empty(environment)
    venv.EnvBuilder(symlinks=os.name != "nt", with_pip=False).create(environment.folder)


def _is_sound(environment: Environment) -> bool:
    """Whether the environment's Python starts and is the version that the environment was made with."""
    asked = "import sys; print(*sys.version_info[:2], sep='.')"
    try:
        made = re.search(r"^version\s*=\s*(\d+\.\d+)", _read(environment.folder / "pyvenv.cfg"), re.MULTILINE)
        told = subprocess.run(
            [environment.python, "-I", "-c", asked], check=True, capture_output=True, text=True
        ).stdout.strip()
    except (OSError, subprocess.SubprocessError):
        return False
    return made is not None and told == made[1]


def _read(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def _empty(environment: Environment) -> None:
    for path in environment.folder.iterdir():
        if path == environment.turn:  # held open while we work
            continue
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path)
        else:
            path.unlink()


def install(environment: Environment, lock: Path, held: int | None = None) -> None:
    """Everything the lock lists, fetched and put into the environment, with a line of progress.

    The installer inherits the open file `held`: should we be killed, our turn ends with the installer.

    Errors: SetupError with the end of the installer's own words if it fails.
    """
    drop_half_installed(environment.folder)
    command: list[str | Path] = [
        environment.python,
        "-I",
        installer(environment.checkout),
        "install",
        *_OPTIONS,
        "-r",
        lock,
    ]
    told = Told(total=len(re.findall(r"(?m)^\S+==", _read(lock))))
    with Progress(told.text) as progress:
        code = _run(command, environment.log, lambda line: progress.say(told.hear(line)), held)
        if code == 0:
            progress.say(say("Set up: {n} packages", n=told.seen))
    if code != 0:
        raise SetupError(_why(environment.log))


def installer(checkout: Path) -> str:
    """The installer that lies in the checkout; it runs without being unpacked.

    Errors: SetupError if it is not there.
    """
    found = sorted((checkout / "resources" / "bootstrap").glob("pip-*.whl"))
    if not found:
        raise SetupError(say("This is not a whole checkout: resources/bootstrap has no installer."))
    return str(found[-1] / "pip")


def drop_half_installed(folder: Path) -> None:
    """Forget packages whose files are not all there, so that they are installed again.

    A set-up killed while it unpacked leaves a package that says it is installed and is not whole.
    """
    for described in folder.glob("**/site-packages/*.dist-info"):
        if not _is_whole(described):
            shutil.rmtree(described)


def _is_whole(described: Path) -> bool:
    try:
        # Lines are path,hash,size; a path with a comma in it is quoted, and none of ours has one.
        listed = [line.split(",")[0] for line in _read(described / "RECORD").splitlines()]
    except OSError:
        return False
    return all((described.parent / path).exists() for path in listed if not path.endswith(".pyc"))


def _run(command: list[str | Path], log: Path, hear: Callable[[str], None], held: int | None) -> int:
    """Run the installer, keep its words, and pass each line on. Its exit code."""
    kept = {name: value for name, value in os.environ.items() if name.upper() not in _OURS_TO_SAY}
    with (
        log.open("a", encoding="utf-8", buffering=1) as written,
        subprocess.Popen(
            command,
            env=kept,
            pass_fds=() if held is None or os.name == "nt" else (held,),
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            encoding="utf-8",
            errors="replace",
        ) as process,
    ):
        try:
            for line in process.stdout or ():
                hear(line)
                if not line.startswith("Progress "):
                    written.write(line)
        except BaseException:
            process.kill()
            raise
    return process.returncode


def _why(log: Path) -> str:
    last = "".join(f"  {line}\n" for line in _read(log).splitlines()[-_LAST_LINES:])
    return say(
        "The packages could not be installed. The installer's last words:\n{last}"
        "All of them are in {log}. Start again, and it goes on from here.",
        last=last,
        log=log,
    )
