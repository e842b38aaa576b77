"""A document drawn in millimetres from the top left corner of each page, y down.

The only module that knows the PDF library's canvas. Output is the same bytes for the same sheet: no
clock, no random names. What is on a page is decided elsewhere.
"""

from collections.abc import Callable, Sequence
from typing import BinaryIO, Final, Literal

from reportlab import rl_config
from reportlab.lib.colors import Color
from reportlab.pdfbase.pdfdoc import PDFArray
from reportlab.pdfgen.canvas import Canvas

from beeworkbook.papers import fonts
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

# Binary streams: every reader takes them, and they are a fifth smaller than ASCII85.
rl_config.useA85 = 0


class Document:
    """Pages of one size, written to a stream when closed."""

    def __init__(
        self, stream: BinaryIO, options: PaperOptions, title: str, *, landscape: bool = False
    ) -> None:
        size = (options.paper.width_mm, options.paper.height_mm)
        self.width_mm, self.height_mm = (size[1], size[0]) if landscape else size
        self.options = options
        for font in ("Gentium", "Gentium-Bold", "Lato", "Lato-Bold"):
            fonts.registered(font)
        self.canvas = Canvas(
            stream,
            pagesize=(self.width_mm * POINTS, self.height_mm * POINTS),
            pageCompression=1,
            invariant=1,
            initialFontName="Lato",
            initialFontSize=fonts.LEAST_POINT,
        )
        self.canvas.setTitle(title)
        self.canvas.setAuthor("")
        self.canvas.setCreator("beeworkbook")
        self.canvas.setViewerPreference("PrintScaling", "None")

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
        self.canvas.showPage()

    def close(self) -> None:
        """End the last page and write the document."""
        self.canvas.showPage()
        self.canvas.save()

    def text(
        self, x: float, y: float, text: str, style: Style, *, align: Align = "left", ink: Ink = BLACK
    ) -> float:
        """Set one line with its baseline at y; gives its width. x is its left, right or middle."""
        width = fonts.width_mm(text, style)
        left = x - {"left": 0.0, "right": width, "middle": width / 2}[align]
        line = self.canvas.beginText(left * POINTS, (self.height_mm - y) * POINTS)
        line.setFillColorRGB(*ink)
        for font, piece in fonts.runs(text, style.font):
            line.setFont(font, style.size)
            line.textOut(piece)
        self.canvas.drawText(line)
        return width

    def line(
        self, start: tuple[float, float], end: tuple[float, float], width: float, ink: Ink = BLACK
    ) -> None:
        """A straight line with square ends."""
        self._stroke(width, ink)
        self.canvas.line(
            start[0] * POINTS,
            (self.height_mm - start[1]) * POINTS,
            end[0] * POINTS,
            (self.height_mm - end[1]) * POINTS,
        )

    def box(self, place: Rect, width: float = THIN_MM, ink: Ink = BLACK, fill: Ink | None = None) -> None:
        """An outlined rectangle, the line's middle on its edge; width 0 draws the fill alone."""
        self._stroke(width, ink)
        if fill is not None:
            self.canvas.setFillColor(Color(*fill))
        self.canvas.rect(
            place.x * POINTS,
            (self.height_mm - place.bottom) * POINTS,
            place.width * POINTS,
            place.height * POINTS,
            stroke=int(width > 0),
            fill=int(fill is not None),
        )

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
        path = self.canvas.beginPath()
        path.moveTo(points[0][0] * POINTS, (self.height_mm - points[0][1]) * POINTS)
        for x, y in points[1:]:
            path.lineTo(x * POINTS, (self.height_mm - y) * POINTS)
        if closed:
            path.close()
        self._stroke(width, ink)
        if fill is not None:
            self.canvas.setFillColor(Color(*fill))
        self.canvas.drawPath(path, stroke=int(width > 0), fill=int(fill is not None))

    def disc(
        self,
        centre: tuple[float, float],
        radius: float,
        width: float = 0.0,
        ink: Ink = BLACK,
        fill: Ink | None = None,
    ) -> None:
        """A circle."""
        self._stroke(width, ink)
        if fill is not None:
            self.canvas.setFillColor(Color(*fill))
        self.canvas.circle(
            centre[0] * POINTS,
            (self.height_mm - centre[1]) * POINTS,
            radius * POINTS,
            stroke=int(width > 0),
            fill=int(fill is not None),
        )

    def describe(self, operators: str) -> None:
        """Ready page description in points from the lower left corner."""
        self.canvas.addLiteral(operators)

    def keep_form(
        self,
        name: str,
        width: float,
        height: float,
        made: Callable[[], str],
        *,
        steps: int = 1,
        rim: float = 0.0,
    ) -> None:
        """Keep a drawing under a name, unless it is there, to be shown often; steps is its scale.

        The drawing is in points from its top left corner, y down, and is cut at its edges, or so far
        outside them as the rim is wide. Units: millimetres.
        """
        if self.canvas.hasForm(name):
            return
        low, right, bottom = (round(mm * POINTS, 2) for mm in (-rim, width + rim, height + rim))
        self.canvas.beginForm(name, low, low, right, bottom)
        self.canvas.addLiteral(made())
        self.canvas.endForm(Matrix=PDFArray([steps, 0, 0, steps, 0, 0]))

    def show_form(self, name: str) -> None:
        """Show a kept drawing where the page description stands now."""
        self.canvas.doForm(name)

    def place_form(self, name: str, x: float, y: float) -> None:
        """Show a kept drawing with its top left corner here."""
        self.canvas.addLiteral(f"q 1 0 0 -1 {x * POINTS:.2f} {(self.height_mm - y) * POINTS:.2f} cm")
        self.canvas.doForm(name)
        self.canvas.addLiteral("Q")

    def _stroke(self, width: float, ink: Ink) -> None:
        if width > 0:
            self.canvas.setLineWidth(width * POINTS)
            self.canvas.setStrokeColor(Color(*ink))
