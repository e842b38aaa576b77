"""Pictures of what the window shows, made without a screen: the window itself, and every comb of a visit.

For a start where nothing can be shown, and for documents. The workbook is only looked at.
"""

import os
import sys
import tempfile
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen
from PySide6.QtWidgets import QApplication

from beeworkbook.colony.hive import PartDay, PlacedFrame
from beeworkbook.colony.records import Colony, FrameMake, Mark, Side, Visit
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import Face, MarkKind, Origin
from beeworkbook.comb.eighths import read_back, whole_eighths
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.lattice import Lattice
from beeworkbook.comb.orientation import entrance_words, faces
from beeworkbook.comb.typed import TypedSide, write_side
from beeworkbook.qt import theme
from beeworkbook.qt.comb_painter import paint_bare, paint_of, side_image
from beeworkbook.qt.marks import paint_mark
from beeworkbook.qt.palette import LIGHT, Palette
from beeworkbook.words import date_words, say
from beeworkbook.workbook.workbook import Workbook

WINDOW: Final = QSize(1366, 740)
_SIDE_PX: Final = 640
_GAP: Final = 24
_HEAD: Final = 64
_FOOT: Final = 30


def begin_pictures() -> QApplication:
    """The program's fonts and colours, with no screen. Kept by the caller as long as pictures are made."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)  # noqa: S101  # there is no other kind here
    theme.load_fonts()
    theme.apply_theme(app, LIGHT)
    return app


def write_window(
    app: QApplication, path: Path, today: Callable[[], date], visit: Visit | None, target: Path
) -> None:
    """A picture of the window on a workbook, at a visit if there is one.

    Errors: OSError if it cannot be written.
    """
    from beeworkbook.qt.desk import View
    from beeworkbook.qt.memory import Memory
    from beeworkbook.window.main_window import MainWindow
    from beeworkbook.window.opening import Opener
    from beeworkbook.window.shell import Shell

    with tempfile.TemporaryDirectory() as folder:
        # A memory of its own, so that the keeper's window is left where it was.
        memory = Memory(Path(folder) / "memory.json")
        shell = Shell(memory)
        opener = Opener(shell, memory, today)
        book = Workbook.open(path, today=today, read_only=True)
        window = MainWindow(shell, book, memory, opener)
        shell.setWindowState(Qt.WindowState.WindowNoState)
        shell.resize(WINDOW)
        shell.show()
        if visit is not None:
            window.desk.go(colony_id=visit.colony_id, day=visit.day, visit_id=visit.id)
            window.desk.go(view=View.BENCH, **_comb_shown(book, visit))
        for _ in range(5):
            app.processEvents()
        picture = shell.grab()
        window.put_away()  # and with it the workbook
        shell.on_close = None
        shell.close()
        _save(picture.toImage(), target)
        shell.deleteLater()


def _comb_shown(book: Workbook, visit: Visit) -> dict[str, object]:
    """The comb to lift out: one with the queen marked, else a painted one, else any that was noted."""
    queens = {mark.frame_id for mark in book.read.marks(visit.id) if mark.kind is MarkKind.QUEEN}
    sides = sorted(
        book.read.sides(visit.id),
        key=lambda side: (side.frame_id not in queens, side.origin is not Origin.PAINTED),
    )
    return {"part_id": sides[0].part_id, "frame_id": sides[0].frame_id} if sides else {}


def write_combs(book: Workbook, visit: Visit, folder: Path) -> tuple[Path, ...]:
    """A picture of every comb of a visit, both sides beside one another, in hive order.

    Errors: OSError if one cannot be written.
    """
    hive = book.read.hive_day(visit.colony_id, visit.day)
    colony = book.read.get(Colony, visit.colony_id)
    if hive is None or colony is None:
        return ()
    written = []
    marks = book.read.marks(visit.id)
    noted = {side.frame_id for side in book.read.sides(visit.id)}
    for number, box in enumerate(hive.boxes, 1):
        for placed in box.frames:
            if (
                placed.frame is None
                or placed.frame.make is not FrameMake.FRAME
                or placed.frame.id not in noted
            ):
                continue
            here = tuple(mark for mark in marks if mark.frame_id == placed.frame.id)
            title = say(
                "{colony}, box {box}, comb {comb}, {day}",
                colony=colony.name,
                box=number,
                comb=placed.place,
                day=date_words(visit.day, "day_year"),
            )
            target = folder / f"{_plain(colony.name)}-{visit.day}-{number}-{placed.place:02}.png"
            _save(_comb(book, visit, box, placed, here, (title, hive.hive.way.value)), target)
            written.append(target)
    return tuple(written)


def _plain(name: str) -> str:
    """A name as part of a file's name on any system."""
    return "".join(letter if letter.isalnum() else "_" for letter in name)[:60] or "_"


def _comb(
    book: Workbook,
    visit: Visit,
    box: PartDay,
    placed: PlacedFrame,
    marks: tuple[Mark, ...],
    words: tuple[str, str],
) -> QImage:
    assert placed.frame is not None  # noqa: S101  # only combs come here
    title, way = words
    lattice = book.read.frame_type(placed.frame.frame_type).lattice
    height = round(_SIDE_PX * lattice.height_mm / lattice.width_mm)
    image = QImage(2 * _SIDE_PX + 3 * _GAP, _HEAD + height + _FOOT + _GAP, QImage.Format.Format_RGB32)
    image.fill(QColor(LIGHT.board))
    painter = QPainter(image)
    _write(painter, LIGHT, _GAP, 30, title, serif=True)
    sides = book.read.find(Side, visit_id=visit.id, frame_id=placed.frame.id)
    for number, face in enumerate(Face):
        place = QRectF(_GAP + number * (_SIDE_PX + _GAP), _HEAD, _SIDE_PX, height)
        side = next((each for each in sides if each.face is face), None)
        said = faces(placed.place, len(box.frames), face)
        entrance = entrance_words(way, face)
        _write(
            painter,
            LIGHT,
            place.x(),
            54,
            say("side {face}, ", face=face) + said + (f" ({entrance})" if entrance else ""),
        )
        _draw_side(painter, place, lattice, side, tuple(mark for mark in marks if mark.face is face))
        if side is not None:
            _write(painter, LIGHT, place.x(), place.bottom() + 22, _caption(book, side))
    painter.end()
    return image


def _caption(book: Workbook, side: Side) -> str:
    """How the side came to be, and its eighths in letters; an assumed one has no figures."""
    if side.origin is Origin.ASSUMED:
        return say("assumed, as last time")
    frame = book.read.frame_type(side.frame_type)
    eighths = whole_eighths(read_back(frame, unpack(side.cells, cells=frame.lattice.cells)))
    held = {content: float(amount) for content, amount in eighths.items() if amount}
    letters = write_side(TypedSide(eighths=held), installed_letters(), gap=" ")
    words = {
        Origin.PAINTED: say("painted"),
        Origin.EIGHTHS: say("laid out from eighths"),
        Origin.UNCHANGED: say("looked at, unchanged"),
    }
    return f"{words[side.origin]}: {letters}"


def _draw_side(
    painter: QPainter, place: QRectF, lattice: Lattice, side: Side | None, marks: tuple[Mark, ...]
) -> None:
    if side is None:
        paint_bare(painter, place, LIGHT)
    else:
        look = Origin.ASSUMED if side.origin is Origin.ASSUMED else side.grain
        cells = unpack(side.cells, cells=lattice.cells)
        painter.drawImage(place.topLeft(), side_image(lattice, cells, paint_of(LIGHT, look), _SIDE_PX))
        painter.setPen(QPen(QColor(LIGHT.edge), 1))
        painter.drawRect(place)
    scale = _SIDE_PX / lattice.width_mm
    for mark in marks:
        if mark.cell is not None:
            x, y = lattice.centres[mark.cell]
            centre = QPointF(place.x() + x * scale, place.y() + y * scale)
            paint_mark(painter, centre, mark.kind, mark.cell_kind)


def _write(
    painter: QPainter, palette: Palette, x: float, y: float, text: str, *, serif: bool = False
) -> None:
    painter.setPen(QColor(palette.ink))
    painter.setFont(theme.serif(19, bold=True) if serif else theme.sans(14))
    painter.drawText(QPointF(x, y), text)


def _save(image: QImage, target: Path) -> None:
    if not image.save(str(target)):
        raise OSError(say("the picture could not be written"))
