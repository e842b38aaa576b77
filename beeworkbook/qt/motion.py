"""Whether anything may move: not where the system asks for stillness, and not where nobody sees it.

Qt tells what the style was told; the system's own wish is asked once, beside the window, since asking
may take a while. Until it has answered nothing moves.
"""

import os
import sys
import threading
from typing import Final

from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QStyle

STILL_VARIABLE: Final = "BEEWORKBOOK_STILL"
"""Set in the environment to anything, it keeps everything still."""
_UNSEEN: Final = frozenset({"offscreen", "minimal", "vnc"})
_ASK: Final[dict[str, tuple[tuple[str, ...], str]]] = {
    "linux": (("gsettings", "get", "org.gnome.desktop.interface", "enable-animations"), "false"),
    "darwin": (("defaults", "read", "com.apple.universalaccess", "reduceMotion"), "1"),
}
"""What to ask a system, and the answer that means it wants stillness."""
_WAIT_SECONDS: Final = 2.0
_CLIENT_AREA_ANIMATION: Final = 0x1042
"""SPI_GETCLIENTAREAANIMATION, from the documentation of SystemParametersInfo."""


class Motion:
    """The wish of the system, asked once."""

    def __init__(self) -> None:
        """Nothing is known yet."""
        self._system_allows: bool | None = None
        self._asking: threading.Thread | None = None

    def allowed(self) -> bool:
        """Whether something may move now. Asked for the first time it says no, and asks the system."""
        if os.environ.get(STILL_VARIABLE) or QGuiApplication.platformName() in _UNSEEN:
            return False
        if not QApplication.style().styleHint(QStyle.StyleHint.SH_Widget_Animation_Duration):
            return False
        if self._asking is None:
            self._asking = threading.Thread(target=self._ask, daemon=True)
            self._asking.start()
        return bool(self._system_allows)

    def _ask(self) -> None:
        self._system_allows = not wants_stillness(sys.platform)


def wants_stillness(platform: str) -> bool:
    """Whether the system was told to keep things still; no where it cannot be asked."""
    if sys.platform == "win32":
        return not _windows_animates()
    import shutil
    import subprocess  # late: no start needs it

    command, still = _ASK.get(platform, ((), ""))
    found = shutil.which(command[0]) if command else None
    if found is None:
        return False
    try:
        told = subprocess.run(  # noqa: S603  # words of our own, none of anybody else's
            [found, *command[1:]], capture_output=True, text=True, timeout=_WAIT_SECONDS, check=False
        )
    except (OSError, subprocess.TimeoutExpired):
        return False
    return told.stdout.strip() == still


def _windows_animates() -> bool:
    if sys.platform != "win32":
        return True
    import ctypes

    animates = ctypes.c_int(1)
    ctypes.windll.user32.SystemParametersInfoW(_CLIENT_AREA_ANIMATION, 0, ctypes.byref(animates), 0)
    return bool(animates.value)
