"""How a workbook file is told from any other: its ending, its number, and the number of its form.

Nothing but constants, so that asking for them costs nothing.
"""

from typing import Final

FILE_ENDING: Final = ".beebook"
APPLICATION_ID: Final = 0x42574B31
"""Four bytes of our own ("BWK1") in the header of the file."""
SCHEMA_VERSION: Final = 1
"""The form this program writes: the number of the last revision in migrations/versions."""
