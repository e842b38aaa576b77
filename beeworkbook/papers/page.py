"""A document drawn in millimetres from the top left corner of each page, y down.

Output is the same bytes for the same sheet: no clock, no random names. What is on a page is decided
elsewhere.
"""

from collections.abc import Callable, Hashable, Iterable, Sequence
from functools import lru_cache
from typing import BinaryIO, Final, Literal

from beeworkbook.papers import fonts
from beeworkbook.papers.canvas import SheetCanvas
from beeworkbook.papers.fonts import Style
from beeworkbook.papers.options import PaperOptions
from beeworkbook.papers.rect import Rect

POINTS: Final = 72 / 25.4
HAIR_MM: Final = 0.15
THIN_MM: Final = 0.22
FIRM_MM: Final = 0.35

Ink = tuple[float, float, float]
Align = Literal["left", "right", "middle"]
BLACK: Final[Ink] = (0.0, 0.0, 0.0)
WHITE: Final[Ink] = (1.0, 1.0, 1.0)
_SECOND_INK: Final[Ink] = (0x46 / 255, 0x56 / 255, 0x5A / 255)
_RULE: Final[Ink] = (0x6F / 255, 0x7D / 255, 0x79 / 255)
_ROUND: Final = 0.5523
"""How far a curve's handles reach for a quarter of a circle, in radii. Source: 4/3·(√2 - 1)."""


@lru_cache(maxsize=256)
def rgb(ink: Ink) -> str:
    """An ink as the three numbers of a page description."""
    return " ".join(f"{part:.3f}".rstrip("0").rstrip(".") for part in ink)


class Document:
    """Pages of one size, written to a stream when closed."""

    def __init__(
        self, stream: BinaryIO, options: PaperOptions, title: str, *, landscape: bool = False
    ) -> None:
        size = (options.paper.width_mm, options.paper.height_mm)
        self.width_mm, self.height_mm = (size[1], size[0]) if landscape else size
        self.options = options
        self._canvas = SheetCanvas(stream, self.width_mm * POINTS, self.height_mm * POINTS, title)
        self._described: list[str] = []
        self._kept: set[str] = set()
        self._repeated: dict[Hashable, list[str]] = {}
        self._set: dict[tuple[str, Style], tuple[float, str]] = {}
        self._pen: tuple[float, Ink] | None = None
        self._fill: Ink | None = None

    @property
    def second(self) -> Ink:
        """The ink of what is small: last time's figures. Black only prints all in black."""
        return _SECOND_INK if self.options.colour else BLACK

    @property
    def rule(self) -> Ink:
        """The ink of rules to write on."""
        return _RULE if self.options.colour else BLACK

    def next_page(self) -> None:
        """End this page and begin another."""
        self._canvas.addLiteral("\n".join(self._described))
        self._canvas.showPage()
        self._described, self._pen, self._fill = [], None, None

    def close(self) -> None:
        """End the last page and write the document."""
        self.next_page()
        self._canvas.save()

    def text(
        self, x: float, y: float, text: str, style: Style, *, align: Align = "left", ink: Ink = BLACK
    ) -> float:
        """Set one line with its baseline at y; gives its width. x is its left, right or middle."""
        found = self._set.get((text, style))
        if found is None:  # most words stand at every comb
            found = self._set[text, style] = fonts.width_mm(text, style), self._letters(text, style)
        width, letters = found
        left = x - {"left": 0.0, "right": width, "middle": width / 2}[align]
        self._filled(ink)
        self._described.append(f"BT {self._point(left, y)} Td {letters}ET")
        return width

    def line(
        self, start: tuple[float, float], end: tuple[float, float], width: float, ink: Ink = BLACK
    ) -> None:
        """A straight line with square ends."""
        self.lines(((start, end),), width, ink)

    def lines(
        self,
        ends: Iterable[tuple[tuple[float, float], tuple[float, float]]],
        width: float,
        ink: Ink = BLACK,
    ) -> None:
        """Several straight lines of one kind."""
        drawn = " ".join(f"{self._point(*start)} m {self._point(*end)} l" for start, end in ends)
        if drawn:
            self._stroked(width, ink)
            self._described.append(f"{drawn} S")

    def box(self, place: Rect, width: float = THIN_MM, ink: Ink = BLACK, fill: Ink | None = None) -> None:
        """An outlined rectangle, the line's middle on its edge; width 0 draws the fill alone."""
        size = f"{place.width * POINTS:.2f} {place.height * POINTS:.2f}"
        self._painted(f"{self._point(place.x, place.bottom)} {size} re", width, ink, fill)

    def shape(
        self,
        points: Sequence[tuple[float, float]],
        width: float = 0.0,
        ink: Ink = BLACK,
        fill: Ink | None = None,
        *,
        closed: bool = True,
    ) -> None:
        """A line through the points, outlined where it has a width, filled where it has a fill."""
        first, *others = (self._point(x, y) for x, y in points)
        path = f"{first} m " + " ".join(f"{point} l" for point in others)
        self._painted(f"{path} h" if closed else path, width, ink, fill)

    def disc(
        self,
        centre: tuple[float, float],
        radius: float,
        width: float = 0.0,
        ink: Ink = BLACK,
        fill: Ink | None = None,
    ) -> None:
        """A circle."""
        x, y = centre
        near, far = radius * _ROUND, radius
        quarters = (
            ((far, near), (near, far), (0.0, far)),
            ((-near, far), (-far, near), (-far, 0.0)),
            ((-far, -near), (-near, -far), (0.0, -far)),
            ((near, -far), (far, -near), (far, 0.0)),
        )
        curves = (" ".join(self._point(x + dx, y + dy) for dx, dy in quarter) + " c" for quarter in quarters)
        self._painted(f"{self._point(x + far, y)} m {' '.join(curves)} h", width, ink, fill)

    def describe(self, operators: str) -> None:
        """Ready page description in points from the lower left; it leaves pen and fill as they were."""
        self._described.append(operators)

    def keep_form(
        self,
        name: str,
        width: float,
        height: float,
        made: Callable[[], bytes],
        *,
        steps: int = 1,
        rim: float = 0.0,
    ) -> None:
        """Keep a drawing under a name, unless it is there, to be shown often; steps is its scale.

        The drawing is in points from its top left corner, y down, and is cut at its edges, or so far
        outside them as the rim is wide. Units: millimetres.
        """
        if name in self._kept:
            return
        self._kept.add(name)
        low, right, bottom = (round(mm * POINTS, 2) for mm in (-rim, width + rim, height + rim))
        self._canvas.keep(name, (low, low, right, bottom), made(), steps)

    def show_form(self, name: str) -> str:
        """The words that show a kept drawing where a page description stands."""
        return self._canvas.form_operator(name)

    def place_form(self, name: str, x: float, y: float) -> None:
        """Show a kept drawing with its top left corner here."""
        self._described.append(f"q 1 0 0 -1 {self._point(x, y)} cm {self._canvas.form_operator(name)} Q")

    def repeat(self, key: Hashable, draw: Callable[[], object]) -> None:
        """Draw what is the same on many pages: made the first time, and the same words ever after.

        What is drawn may not show forms, since a page has to note those it uses.
        """
        self._pen = self._fill = None
        if key in self._repeated:
            self._described += self._repeated[key]
            return
        start = len(self._described)
        draw()
        self._repeated[key] = self._described[start:]
        self._pen = self._fill = None

    def _letters(self, text: str, style: Style) -> str:
        return "".join(
            f"{name} {style.size:g} Tf <{letters}> Tj "
            for font, piece in fonts.runs(text, style.font)
            for name, letters in self._canvas.letters(font, piece)
        )

    def _point(self, x: float, y: float) -> str:
        return f"{x * POINTS:.2f} {(self.height_mm - y) * POINTS:.2f}"

    def _painted(self, path: str, width: float, ink: Ink, fill: Ink | None) -> None:
        if width > 0:
            self._stroked(width, ink)
        if fill is not None:
            self._filled(fill)
        paint = {(True, True): "B", (True, False): "S", (False, True): "f", (False, False): "n"}
        self._described.append(f"{path} {paint[width > 0, fill is not None]}")

    def _stroked(self, width: float, ink: Ink) -> None:
        if self._pen != (width, ink):
            self._pen = (width, ink)
            self._described.append(f"{width * POINTS:.2f} w {rgb(ink)} RG")

    def _filled(self, ink: Ink) -> None:
        if self._fill != ink:
            self._fill = ink
            self._described.append(f"{rgb(ink)} rg")
