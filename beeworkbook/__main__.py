"""`python -m beeworkbook` and the command `beeworkbook`: hand the words typed to the command line."""

import sys
from collections.abc import Sequence


def main(argv: Sequence[str] | None = None) -> int:
    """The exit code of what was asked for: 0 done, 1 not possible, 2 not understood."""
    from beeworkbook.cli.main import main as run

    return run(list(sys.argv[1:] if argv is None else argv))


if __name__ == "__main__":
    sys.exit(main())
