"""Tab goes through the window as the eye does: stands, ruler, box, bench, key line, page, letters.

Qt goes by when a widget was made, and here much is made late.
"""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget


def order_tabs(parts: Iterable[QWidget]) -> None:
    """Let Tab go through these parts in this order; within each as it did."""
    chain = [widget for part in parts for widget in _within(part)]
    for one, following in pairwise(chain):
        QWidget.setTabOrder(one, following)


def _within(part: QWidget) -> Iterator[QWidget]:
    """What the keyboard can come to in a part, in the order it was put together.

    Qt's own chain is not asked: its steps tie Python's hold on one widget to the next, and what lets go of
    one then lets go of all (PySide 6.11).
    """
    window = part.window()
    held = (part, *part.findChildren(QWidget))
    return (widget for widget in held if _is_stop(widget) and widget.window() is window)


def _is_stop(widget: QWidget) -> bool:
    tab = Qt.FocusPolicy.TabFocus
    return bool(widget.focusPolicy().value & tab.value) and widget.focusProxy() is None
