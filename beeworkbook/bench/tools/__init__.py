"""What paints on a comb: one module a tool, each a few named states, driven by points alone."""

from collections.abc import Mapping
from typing import Final

from beeworkbook.bench.tools.band import BandTool
from beeworkbook.bench.tools.base import Tool, ToolName
from beeworkbook.bench.tools.brush import BrushTool
from beeworkbook.bench.tools.ellipse import EllipseTool
from beeworkbook.bench.tools.erase import EraseTool
from beeworkbook.bench.tools.fill import FillTool
from beeworkbook.bench.tools.outline import OutlineTool
from beeworkbook.bench.tools.pick import PickTool

TOOLS: Final[Mapping[ToolName, type[Tool]]] = {
    tool.name: tool for tool in (BrushTool, EllipseTool, OutlineTool, BandTool, FillTool, PickTool, EraseTool)
}
