"""The patterns of a chart in a vector picture, so that it stays sharp and small at any size.

Qt writes a plain stand-in for each fill; here each of those is made the pattern of its content.
"""

from collections.abc import Iterable, Iterator

from beeworkbook.comb.legend import LEGEND
from beeworkbook.comb.patterns import Marks, tile
from beeworkbook.qt.comb_inks import SCREEN_PX_PER_MM
from beeworkbook.year.inks import Fill

_DEFS = "</defs>"


def with_patterns(svg: str, fills: Iterable[Fill]) -> str:
    """The picture with the patterns of these fills in the place of their stand-ins."""
    held = [(f"fill{at}", fill) for at, fill in enumerate(dict.fromkeys(fills))]
    for name, fill in held:
        svg = svg.replace(f'fill="{fill.stand_in.name()}"', f'fill="url(#{name})"')
    head, defs, tail = svg.partition(_DEFS)
    if not defs:
        raise ValueError("this is not a picture with definitions")
    return head + "".join(_pattern(name, fill) for name, fill in held) + defs + tail


def _pattern(name: str, fill: Fill) -> str:
    ground, ink = fill.colours
    found = tile(LEGEND[fill.content].pattern, LEGEND[fill.content].pattern.strip_mm)
    width, height = found.width_mm * SCREEN_PX_PER_MM, found.height_mm * SCREEN_PX_PER_MM
    marks = "".join(_marks(found.marks, ink.name()))
    return (
        f'<pattern id="{name}" patternUnits="userSpaceOnUse" width="{width:.3f}" height="{height:.3f}" '
        f'viewBox="0 0 {found.width_mm:.4f} {found.height_mm:.4f}">'
        f'<rect width="{found.width_mm:.4f}" height="{found.height_mm:.4f}" fill="{ground.name()}"/>'
        f'<g opacity="{ink.alphaF():.3f}" stroke="{ink.name()}" fill="none" '
        f'stroke-width="{found.marks.line_mm:.4f}" stroke-linecap="butt">{marks}</g></pattern>\n'
    )


def _marks(marks: Marks, ink: str) -> Iterator[str]:
    for x1, y1, x2, y2 in marks.lines.tolist():
        yield f'<path d="M{x1:.3f} {y1:.3f}L{x2:.3f} {y2:.3f}"/>'
    for x, y, radius in marks.rings.tolist():
        yield f'<circle cx="{x:.3f}" cy="{y:.3f}" r="{radius:.3f}"/>'
    for x, y, radius in marks.discs.tolist():
        yield f'<circle cx="{x:.3f}" cy="{y:.3f}" r="{radius:.3f}" fill="{ink}" stroke="none"/>'
    for corners in marks.flecks.tolist():
        points = " ".join(f"{x:.3f},{y:.3f}" for x, y in corners)
        yield f'<polygon points="{points}" fill="{ink}" stroke="none"/>'
