"""The PDF library's canvas, with the two things it does not hand out: letters of a font, forms in use.

Everything printed goes through here, so the page description is written directly: the library's own
drawing calls format every number anew and take four fifths of the time of a filled sheet.
"""

import zlib
from functools import lru_cache
from typing import BinaryIO, Final

from reportlab import rl_config
from reportlab.pdfbase.pdfdoc import PDFObject
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
        self._doc.addForm(name, _ReadyForm(_form_bytes(box, operators, steps)))


class _ReadyForm(PDFObject):  # type: ignore[misc]  # the library has no types
    """A form whose every byte is known."""

    __RefOnly__ = 1

    def __init__(self, said: bytes) -> None:
        self._said = said

    def format(self, _document: object) -> bytes:
        """What the library puts between the object's number and its end."""
        return self._said


@lru_cache(maxsize=128)
def _form_bytes(box: tuple[float, float, float, float], operators: bytes, steps: int) -> bytes:
    """A form, packed; kept, as the patterns are the same on every sheet."""
    packed = zlib.compress(operators)
    said = (
        f"<< /Type /XObject /Subtype /Form /BBox [ {' '.join(f'{edge:g}' for edge in box)} ]"
        f" /Matrix [ {steps} 0 0 {steps} 0 0 ] /Resources << >> /Filter /FlateDecode /Length {len(packed)} >>"
    )
    return said.encode("ascii") + b"\nstream\n" + packed + b"\nendstream\n"
