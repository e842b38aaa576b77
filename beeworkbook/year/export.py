"""The chart as a file, PNG or SVG: for the window, and without a window for the command line."""

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from PySide6.QtCore import QBuffer, QIODevice, QRect, QSize
from PySide6.QtGui import QGuiApplication, QImage, QPainter
from PySide6.QtSvg import QSvgGenerator
from PySide6.QtWidgets import QApplication

from beeworkbook.qt import theme
from beeworkbook.qt.palette import LIGHT, Palette
from beeworkbook.words import say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.workbook import Workbook
from beeworkbook.year.chart import Chart, ChartSize
from beeworkbook.year.chart_model import build
from beeworkbook.year.choice import Choice
from beeworkbook.year.inks import Fill, Inks
from beeworkbook.year.panes import ChartModel
from beeworkbook.year.vector import with_patterns

WIDTH: Final = 1120
HEIGHT: Final = 640
_SHARPNESS: Final = 2.0
_SUFFIXES: Final = (".png", ".svg")


class PictureError(RefusedError):
    """This picture cannot be written."""


def write_picture(
    model: ChartModel,
    path: Path,
    palette: Palette = LIGHT,
    *,
    colour: bool = True,
    size: tuple[int, int] = (WIDTH, HEIGHT),
) -> None:
    """Write a chart as PNG (twice as sharp as its size in pixels) or SVG, by the ending of the path.

    colour False: black ink on white, contents by pattern alone.
    Errors: PictureError for another ending; OSError if the file cannot be written.
    """
    if path.suffix.lower() not in _SUFFIXES:
        raise PictureError(say("A chart is saved as .png or .svg."))
    if path.suffix.lower() == ".svg":
        path.write_text(svg_text(model, palette, colour=colour, size=size), encoding="utf-8")
    else:
        path.write_bytes(png_bytes(model, palette, colour=colour, size=size))


def chart_picture(
    book: Workbook, choice: Choice, path: Path, palette: Palette = LIGHT, *, colour: bool = True
) -> bool:
    """Write the chart of a choice without a window; whether there was a colony to draw.

    Errors: as write_picture.
    """
    start_without_window()
    model = build(book, choice)
    if model is None:
        return False
    write_picture(model, path, palette, colour=colour)
    return True


def start_without_window() -> None:
    """Be able to draw where no window is open: Qt off screen, with the shipped fonts."""
    if QGuiApplication.instance() is None:
        _kept.append(QApplication([sys.argv[0], "-platform", "offscreen"]))
        theme.load_fonts()


_kept: list[QApplication] = []
"""Qt ends when its application is let go."""


def png_bytes(model: ChartModel, palette: Palette, *, colour: bool, size: tuple[int, int]) -> bytes:
    """The chart as a PNG file."""
    width, height = size
    image = QImage(round(width * _SHARPNESS), round(height * _SHARPNESS), QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(_SHARPNESS)
    painter = QPainter(image)
    Chart(model, Inks(palette, _SHARPNESS, colour), _titled(size)).paint(painter)
    painter.end()
    # 96 dots an inch at its size: a text that takes the picture in shows it as large as the window did.
    # Said only now, since what was recorded for another density would be drawn larger.
    image.setDotsPerMeterX(round(96 * _SHARPNESS / 0.0254))
    image.setDotsPerMeterY(round(96 * _SHARPNESS / 0.0254))
    held = QBuffer()
    held.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(held, "PNG")  # type: ignore[call-overload] # the stubs want bytes for the format
    return bytes(held.data().data())


def svg_text(model: ChartModel, palette: Palette, *, colour: bool, size: tuple[int, int]) -> str:
    """The chart as an SVG file, its patterns as patterns."""
    width, height = size
    held = QBuffer()
    generator = QSvgGenerator()
    generator.setOutputDevice(held)
    generator.setResolution(96)
    generator.setSize(QSize(width, height))
    generator.setViewBox(QRect(0, 0, width, height))
    generator.setTitle(f"{model.title}: {model.subtitle}")
    generator.setDescription(_description(model))
    painter = QPainter(generator)
    inks = Inks(palette, 1.0, colour, plain=True)
    Chart(model, inks, _titled(size)).paint(painter)
    painter.end()
    return with_patterns(bytes(held.data().data()).decode("utf-8"), _fills(model, inks))


def _fills(model: ChartModel, inks: Inks) -> Iterable[Fill]:
    """The fills that occur, each once."""
    return {
        Fill(band.content, inks.chrome.board, inks.colour, band.assumed): None
        for pane in model.panes
        for band in pane.bands
    }


def _titled(size: tuple[int, int]) -> ChartSize:
    return ChartSize(size[0], size[1], titled=True, margin=16.0)


def _description(model: ChartModel) -> str:
    return ", ".join(pane.name for pane in model.panes)
