"""What the keeper holds: a tool, a content, a size of brush, and what may be painted over.

One hand serves both sides of the bench and the legend, so that they never disagree. It is empty until a
content or a tool is taken, and then a click paints nothing: no cell is coloured by a stray one.
"""

from typing import Final

from PySide6.QtCore import QObject, Signal

from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.contents import Content
from beeworkbook.comb.names import content_name
from beeworkbook.words import number, say

FIRST_CONTENT: Final = Content.SEALED
"""What a tool paints that is taken before any content: sealed brood is most often what there is."""
LEAST_MM: Final = 2.0
MOST_MM: Final = 60.0
STEP: Final = 1.25
"""One notch of the wheel makes the brush a quarter larger."""

_TOOL_WORDS: Final[dict[ToolName, str]] = {
    ToolName.BRUSH: "brush",
    ToolName.ELLIPSE: "ellipse",
    ToolName.OUTLINE: "outline",
    ToolName.BAND: "band from an edge",
    ToolName.FILL: "fill",
    ToolName.PICK: "pick up a content",
    ToolName.ERASE: "erase",
}


def tool_name(tool: ToolName) -> str:
    """What a tool is called."""
    return say(_TOOL_WORDS[tool])


class Hand(QObject):
    """What is held; `changed` after each change, `content_changed` when it is another content, or None."""

    changed = Signal()
    content_changed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        """An empty hand, its brush 24 mm wide."""
        super().__init__(parent)
        self.is_empty = True
        self.content = FIRST_CONTENT
        self.radius_mm = 12.0
        self.tool = ToolName.BRUSH
        self.only: Content | None = None

    @property
    def mask(self) -> frozenset[Content] | None:
        """What may be painted over; None is everything."""
        return None if self.only is None else frozenset({self.only})

    def take_content(self, content: Content) -> None:
        """Hold another content; a tool that paints none gives way to the brush."""
        if self.tool in {ToolName.ERASE, ToolName.PICK}:
            self.tool = ToolName.BRUSH
        self._take(content)

    def take_tool(self, tool: ToolName) -> None:
        """Hold another tool; it paints the content that was held last."""
        self.tool = tool
        self._take(self.content)

    def put_down(self) -> None:
        """Hold nothing. Tool, content and brush are remembered for when a tool is taken again."""
        if not self.is_empty:
            self.is_empty = True
            self.content_changed.emit(None)
            self.changed.emit()

    def _take(self, content: Content) -> None:
        is_other = self.is_empty or content != self.content
        self.is_empty, self.content = False, content
        if is_other:
            self.content_changed.emit(content)
        self.changed.emit()

    def paint_only_over(self, content: Content | None) -> None:
        """Leave all cells alone that do not hold this; None paints over everything again."""
        self.only = content
        self.changed.emit()

    def resize(self, notches: float) -> None:
        """A larger brush, or with fewer than no notches a smaller one."""
        self.radius_mm = max(LEAST_MM, min(MOST_MM, self.radius_mm * STEP**notches))
        self.changed.emit()

    @property
    def words(self) -> str:
        """What it would do, for the line above the comb: "painting sealed brood, brush 24 mm"."""
        if self.is_empty:
            return say("hand empty: choose a content to paint")
        size = number(round(2 * self.radius_mm))
        if self.tool is ToolName.ERASE:
            text = say("erasing, brush {size} mm", size=size)
        elif self.tool is ToolName.PICK:
            text = say("picking up a content")
        elif self.tool is ToolName.BRUSH:
            text = say("painting {content}, brush {size} mm", content=content_name(self.content), size=size)
        else:
            tool = tool_name(self.tool)
            text = say("painting {content}, {tool}", content=content_name(self.content), tool=tool)
        if self.only is None:
            return text
        return say("{text}, only over {content}", text=text, content=content_name(self.only))
