"""The PDF library's canvas, with the two things it does not hand out: letters of a font, forms in use.

Everything printed goes through here, so the page description is written directly: the library's own
drawing calls format every number anew and take four fifths of the time of a filled sheet.
"""

import zlib
from functools import lru_cache
from typing import BinaryIO, Final

from reportlab import rl_config
from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFFormXObject, PDFName, PDFStream
from reportlab.pdfgen.canvas import Canvas

from beeworkbook.papers import fonts

# Binary streams: every reader takes them, and they are a fifth smaller than ASCII85.
rl_config.useA85 = 0

_FONTS: Final = ("Gentium", "Gentium-Bold", "Lato", "Lato-Bold")


class SheetCanvas(Canvas):  # type: ignore[misc]  # the library has no types
    """A canvas that writes the same bytes for the same sheet, and takes ready page description."""

    def __init__(self, stream: BinaryIO, width_pt: float, height_pt: float, title: str) -> None:
        for font in _FONTS:
            fonts.registered(font)
        super().__init__(
            stream,
            pagesize=(width_pt, height_pt),
            pageCompression=1,
            invariant=1,
            initialFontName="Lato",
            initialFontSize=fonts.LEAST_POINT,
        )
        self.setTitle(title)
        self.setAuthor("")
        self.setCreator("beeworkbook")
        self.setViewerPreference("PrintScaling", "None")
        self._letters: dict[tuple[str, str], tuple[tuple[str, str], ...]] = {}

    def letters(self, font: str, piece: str) -> tuple[tuple[str, str], ...]:
        """A piece of text as (font's name in the document, letters as hexadecimal), subset by subset."""
        found = self._letters.get((font, piece))
        if found is None:
            face = fonts.registered(font)
            found = tuple(
                (face.getSubsetInternalName(subset, self._doc), codes.hex())
                for subset, codes in face.splitString(piece, self._doc)
            )
            self._letters[font, piece] = found
        return found

    def form_operator(self, name: str) -> str:
        """The operator that shows a form on this page, which is noted as using it."""
        if name not in self._formsinuse:
            self._formsinuse.append(name)
        return f"/{self._doc.getXObjectName(name)} Do"

    def keep(self, name: str, box: tuple[float, float, float, float], operators: bytes, steps: int) -> None:
        """Keep a form that uses no fonts; steps is the scale it is shown at."""
        packed = PDFDictionary({"Filter": PDFArray([PDFName("FlateDecode")])})
        form = PDFFormXObject(*box)
        form.Contents = PDFStream(packed, content=_packed(operators))
        form.Matrix = PDFArray([steps, 0, 0, steps, 0, 0])
        form.Resources = PDFDictionary({})
        self._doc.addForm(name, form)


@lru_cache(maxsize=128)
def _packed(operators: bytes) -> bytes:
    """Forms packed; kept, as the patterns are the same on every sheet."""
    return zlib.compress(operators)
