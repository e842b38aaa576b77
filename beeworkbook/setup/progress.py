"""What a person sees while something long goes on: one line, rewritten, with the time it has taken.

Without a terminal the line is printed again only when it has something new to say.
"""

import shutil
import sys
import threading
import time
from types import TracebackType
from typing import Final, Self, TextIO

_TICK_SECONDS: Final = 0.25
_PRINT_EVERY_SECONDS: Final = 10.0


class Progress:
    """A line of progress, kept moving by a thread of its own so that a long wait is seen to be alive."""

    def __init__(self, text: str, stream: TextIO | None = None) -> None:
        self._stream = sys.stdout if stream is None else stream
        self._live = self._stream.isatty()
        self._text = text
        self._shown = ""
        self._began = self._printed = time.monotonic()
        self._done = threading.Event()
        self._thread = threading.Thread(target=self._run, daemon=True)

    def __enter__(self) -> Self:
        self._show()
        self._thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._done.set()
        self._thread.join()
        self._show(end="\n" if self._live or self._shown != self._text else "")

    def say(self, text: str) -> None:
        """Replace what the line says; the time stays behind it."""
        self._text = text

    def _run(self) -> None:
        while not self._done.wait(_TICK_SECONDS):
            now = time.monotonic()
            if self._live:
                self._show()
            elif self._text != self._shown and now - self._printed >= _PRINT_EVERY_SECONDS:
                self._printed = now
                self._show(end="\n")

    def _show(self, end: str = "") -> None:
        if not self._live and not end and self._shown:
            return
        minutes, seconds = divmod(int(time.monotonic() - self._began), 60)
        line = f"{self._text} · {minutes}:{seconds:02}"
        if self._live:
            width = shutil.get_terminal_size().columns - 1
            self._stream.write(f"\r{line[:width]:<{width}}{end}")
        else:
            self._stream.write(f"{line}{end or chr(10)}")
        self._shown = self._text
        self._stream.flush()
