"""beeworkbook, a hive inspection workbook for the person who keeps bees.

The rooms and who may import whom are described in DEVELOPERS.md.
"""

__version__ = "0.1.0"
