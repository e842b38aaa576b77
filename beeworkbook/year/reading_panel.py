"""The small panel in which the chart says all values of one day; made once a stop and kept as a picture."""

from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPixmap

from beeworkbook.qt import theme
from beeworkbook.year.inks import Inks
from beeworkbook.year.readings import DayReading, ReadRow

_PAD: Final = 10.0
_ROW: Final = 19.0
_HEAD: Final = 24.0
_SWATCH: Final = 20.0
_BETWEEN: Final = 16.0
_WIDEST: Final = 380.0


def panel_picture(reading: DayReading, inks: Inks) -> QPixmap:
    """The reading as a picture, in the chart's own look."""
    size = _size(reading)
    made = QPixmap(round(size.width() * inks.px_per_px), round(size.height() * inks.px_per_px))
    made.setDevicePixelRatio(inks.px_per_px)
    painter = QPainter(made)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    chrome = inks.chrome
    whole = QRectF(QPointF(0, 0), size)
    painter.fillRect(whole, QColor(chrome.board))
    painter.setPen(QPen(QColor(chrome.edge), 1))
    painter.drawRect(whole.adjusted(0.5, 0.5, -0.5, -0.5))
    painter.setFont(theme.serif(theme.NOTE_PX, bold=True))
    painter.setPen(QColor(chrome.ink))
    painter.drawText(QPointF(_PAD, _PAD + 12), reading.heading)
    y = _HEAD + _PAD / 2
    for row in reading.rows:
        _paint_row(painter, row, QRectF(_PAD, y, size.width() - 2 * _PAD, _ROW), inks)
        y += _ROW
    painter.setFont(theme.sans(theme.LABEL_PX, italic=True))
    painter.setPen(QColor(chrome.second_ink))
    for remark in reading.remarks:
        text = painter.fontMetrics().elidedText(remark, Qt.TextElideMode.ElideRight, int(_WIDEST))
        painter.drawText(QRectF(_PAD, y, size.width(), _ROW), Qt.AlignmentFlag.AlignVCenter, text)
        y += _ROW
    painter.end()
    return made


def _paint_row(painter: QPainter, row: ReadRow, room: QRectF, inks: Inks) -> None:
    swatch = QRectF(room.left(), room.center().y() - 5.5, 13, 11)
    if row.content is not None:
        painter.setPen(inks.outline)
        painter.setBrush(inks.brush(row.content))
        painter.drawRect(swatch)
    elif row.style is not None:
        painter.setPen(inks.line(row.style))
        painter.drawLine(
            QPointF(swatch.left(), swatch.center().y()), QPointF(swatch.right() + 2, swatch.center().y())
        )
    painter.setFont(theme.sans(13))
    painter.setPen(QColor(inks.chrome.second_ink))
    words = room.adjusted(_SWATCH, 0, 0, 0)
    painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, row.label)
    painter.setPen(QColor(inks.chrome.ink))
    painter.drawText(words, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight, row.value)


def _size(reading: DayReading) -> QSizeF:
    body = QFontMetricsF(theme.sans(13))
    small = QFontMetricsF(theme.sans(theme.LABEL_PX, italic=True))
    head = QFontMetricsF(theme.serif(theme.NOTE_PX, bold=True))
    widths = [
        head.horizontalAdvance(reading.heading),
        *(
            body.horizontalAdvance(row.label) + body.horizontalAdvance(row.value) + _BETWEEN + _SWATCH
            for row in reading.rows
        ),
        *(min(_WIDEST, small.horizontalAdvance(remark)) for remark in reading.remarks),
    ]
    rows = len(reading.rows) + len(reading.remarks)
    return QSizeF(round(max(widths) + 2 * _PAD), round(_HEAD + _PAD + rows * _ROW + _PAD / 2))
