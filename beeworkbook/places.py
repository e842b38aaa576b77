"""Where the program keeps what is the keeper's own: workbooks, settings, the log.

One folder, so that one setting moves it all. Nothing here reads or makes a file.
"""

import os
from pathlib import Path
from typing import Final

HOME_VARIABLE: Final = "BEEWORKBOOK_HOME"
"""Set in the environment, it names the folder to use in place of the system's usual one."""


def user_data_folder() -> Path:
    """The folder for workbooks, settings and the log. It may not exist yet."""
    chosen = os.environ.get(HOME_VARIABLE)
    if chosen:
        return Path(chosen).expanduser().absolute()
    from platformdirs import user_data_path  # late: start.py has only the standard library

    return user_data_path("beeworkbook", appauthor=False)


def settings_path() -> Path:
    """The file of what the window remembers: language, theme, where the keeper was."""
    return user_data_folder() / "settings.json"


def log_path() -> Path:
    """The log that an error message points to. It never leaves this computer."""
    return user_data_folder() / "beeworkbook.log"
