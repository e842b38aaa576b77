"""Memory that was used for a while, handed back to the system.

Pictures of pages and charts come and go in pieces of some megabytes; a C library keeps the room they
leave for the next ones, and on a small machine other programs have to do without it.
"""

import sys


def give_back() -> None:
    """Let the system have what nothing here uses now. It takes some milliseconds."""
    if sys.platform != "linux":
        return  # the other systems' libraries do so themselves
    import ctypes

    trim = getattr(ctypes.CDLL(None), "malloc_trim", None)  # GNU's C library has it
    if trim is not None:
        trim(0)
