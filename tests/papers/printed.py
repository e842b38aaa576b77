"""Reads printed sheets back with libraries that had no part in making them: text, boxes, pixels."""

import io
from collections.abc import Sequence

import numpy as np
import numpy.typing as npt
import pypdf
import pypdfium2

from beeworkbook.colony.sheet_models import CombSheetModel, RoundSheetModel
from beeworkbook.papers.comb_sheet import comb_sheets
from beeworkbook.papers.field_map import FieldMap
from beeworkbook.papers.options import PaperOptions
from beeworkbook.papers.rect import Rect
from beeworkbook.papers.round_sheet import round_sheet

Picture = npt.NDArray[np.uint8]
DPI = 150


class Printed:
    """One printed document."""

    def __init__(self, written: bytes, maps: tuple[FieldMap, ...] = ()) -> None:
        self.written = written
        self.maps = maps
        self.reader = pypdf.PdfReader(io.BytesIO(written))

    @property
    def pages(self) -> int:
        return len(self.reader.pages)

    def text(self, page: int = 0) -> str:
        return self.reader.pages[page].extract_text()

    @property
    def whole_text(self) -> str:
        return " ".join(" ".join(page.extract_text().split()) for page in self.reader.pages)

    def size_mm(self, page: int = 0) -> tuple[float, float]:
        box = self.reader.pages[page].mediabox
        return float(box.width) / 72 * 25.4, float(box.height) / 72 * 25.4

    def least_text_pt(self) -> float:
        sizes: list[float] = []

        def see(
            text: str, current: Sequence[float], matrix: Sequence[float], _font: object, size: float
        ) -> None:
            if text.strip():
                sizes.append(size * abs(matrix[3]) * abs(current[3]))

        for page in self.reader.pages:
            page.extract_text(visitor_text=see)
        return min(sizes)

    def picture(self, page: int = 0, dpi: int = DPI) -> Picture:
        """The page as red, green and blue. Shapes: (height, width, 3)."""
        document = pypdfium2.PdfDocument(self.written)
        try:
            drawn = document[page].render(scale=dpi / 72).to_numpy()[:, :, :3]
            return np.ascontiguousarray(drawn[:, :, ::-1])
        finally:
            document.close()


def print_combs(*models: CombSheetModel, options: PaperOptions | None = None) -> Printed:
    stream = io.BytesIO()
    maps = comb_sheets(models, options or PaperOptions(), stream)
    return Printed(stream.getvalue(), maps)


def print_round(model: RoundSheetModel, options: PaperOptions | None = None) -> Printed:
    stream = io.BytesIO()
    round_sheet(model, options or PaperOptions(), stream)
    return Printed(stream.getvalue())


def cut(picture: Picture, place: Rect, dpi: float = DPI) -> Picture:
    """The part of a picture at a place given in millimetres."""
    scale = dpi / 25.4
    top, bottom = round(place.y * scale), round(place.bottom * scale)
    left, right = round(place.x * scale), round(place.right * scale)
    return picture[max(top, 0) : bottom, max(left, 0) : right]


def darkness(picture: Picture) -> float:
    """How dark a part is, 0 white to 1 black."""
    return 1.0 - float(picture.mean()) / 255
