"""Frame types to choose from: the shipped ones and the keeper's own."""

from beeworkbook.colony.records import OwnFrame
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.words import number, say
from beeworkbook.workbook.workbook import Workbook


def frame_options(book: Workbook) -> list[tuple[str, object]]:
    """Every frame type in words with its inside size, the keeper's own ones first."""
    own = [
        (own.name, own.inside_width_mm, own.inside_height_mm, own.id)
        for own in sorted(book.read.find(OwnFrame), key=lambda own: own.name)
    ]
    shipped = [
        (say(kind.name), kind.inside_width_mm, kind.inside_height_mm, kind.id)
        for kind in FRAME_TYPES.values()
    ]
    return [
        (
            say(
                "{name}, {width} × {height} mm inside",
                name=name,
                width=number(width, 0),
                height=number(height, 0),
            ),
            frame_id,
        )
        for name, width, height, frame_id in (*own, *shipped)
    ]
