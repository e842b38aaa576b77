"""A table as text: columns as wide as what stands in them, numbers to the right."""

from collections.abc import Iterable, Sequence

_GAP = "  "


def table(headings: Sequence[str], rows: Iterable[Sequence[str]], right: Sequence[int] = ()) -> str:
    """The table under its headings. `right` are the columns set to the right, counted from 0."""
    lines = [tuple(headings), *(tuple(row) for row in rows)]
    widths = [max(map(len, column)) for column in zip(*lines, strict=True)]
    return "\n".join(
        _GAP.join(
            cell.rjust(width) if number in right else cell.ljust(width)
            for number, (cell, width) in enumerate(zip(line, widths, strict=True))
        ).rstrip()
        for line in lines
    )
