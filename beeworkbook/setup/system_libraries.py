"""The system's own libraries that the window needs on Linux, which no Python package brings.

Source of the list: the sonames that the Qt 6.11 files of PySide6-Essentials link to (ldd), less what
every system has; package names are Debian's.
"""

import ctypes
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Final

from beeworkbook.setup.progress import Progress
from beeworkbook.words import say

LIBRARIES: Final[Mapping[str, str]] = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libX11.so.6": "libx11-6",
    "libX11-xcb.so.1": "libx11-xcb1",
    "libcups.so.2": "libcups2",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgssapi_krb5.so.2": "libgssapi-krb5-2",
    "libwayland-client.so.0": "libwayland-client0",
    "libwayland-cursor.so.0": "libwayland-cursor0",
    "libwayland-egl.so.1": "libwayland-egl1",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxcb.so.1": "libxcb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxkbcommon.so.0": "libxkbcommon0",
}
_DEBIAN: Final = Path("/etc/debian_version")


def missing_libraries(load: Callable[[str], object] = ctypes.CDLL) -> list[str]:
    """Names of the libraries that this system lacks; always none but on Linux."""
    return [name for name in LIBRARIES if not _loads(name, load)] if sys.platform == "linux" else []


def _loads(name: str, load: Callable[[str], object]) -> bool:
    try:
        load(name)
    except OSError:
        return False
    return True


def provide(missing: Sequence[str], log: Path) -> bool:
    """Install the libraries where we may, else say what to install. Whether they are there now."""
    packages = sorted({LIBRARIES[name] for name in missing})
    if not (_DEBIAN.exists() and shutil.which("apt-get")):
        print(
            say(
                "This system lacks libraries the window needs: {names}. Install the packages that hold them.",
                names=", ".join(missing),
            )
        )
        return False
    if os.geteuid() == 0 and _apt(packages, log):
        return True
    print(
        say(
            "The window needs libraries that this system lacks. Install them with:\n  {line}",
            line="sudo apt-get install " + " ".join(packages),
        )
    )
    return False


def _apt(packages: Sequence[str], log: Path) -> bool:
    """Whether Debian's package tool installed them."""
    asked = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    steps = (
        ["apt-get", "update", "-q"],
        ["apt-get", "install", "-q", "-y", "--no-install-recommends", *packages],
    )
    with Progress(say("Installing {n} system libraries", n=len(packages))), log.open("a") as written:
        codes = [
            subprocess.run(
                step,
                env=asked,
                check=False,
                stdin=subprocess.DEVNULL,
                stdout=written,
                stderr=subprocess.STDOUT,
            ).returncode
            for step in steps
        ]
    if codes[-1] == 0:
        return True
    print(say("They could not be installed; what was tried is in {log}.", log=log))
    return False
