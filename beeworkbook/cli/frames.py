"""`beeworkbook frames`: every frame type that is shipped, with its lattice of cells and its source."""

import argparse
import json
from typing import Any

from beeworkbook.cli.command import DONE, Command, Parser, Today
from beeworkbook.cli.table import table
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.words import number, say


def _words(parser: Parser) -> None:
    parser.add_argument("--json", action="store_true", help=say("as JSON, with all figures and sources"))


def _run(asked: argparse.Namespace, _today: Today) -> int:
    if asked.json:
        held = [_plain(frame) for frame in FRAME_TYPES.values()]
        print(json.dumps(held, ensure_ascii=False, indent=1))
        return DONE
    headings = (
        say("id"),
        say("frame"),
        say("inside mm"),
        say("dm² a side"),
        say("rows"),
        say("cells a row"),
        say("cells"),
        say("shown"),
        say("pitch mm"),
        say("sizes are"),
    )
    print(table(headings, map(_row, FRAME_TYPES.values()), right=(3, 4, 6, 7)))
    return DONE


def _row(frame: FrameType) -> tuple[str, ...]:
    lattice = frame.lattice
    return (
        frame.id,
        frame.name,
        f"{number(frame.inside_width_mm)} × {number(frame.inside_height_mm)}",
        number(frame.area_dm2, 2),
        str(lattice.rows),
        f"{lattice.first_row}/{lattice.second_row}",
        number(lattice.cells),
        number(frame.side_cells, 0),
        number(lattice.pitch_x_mm, 3),
        say(frame.confidence.value),
    )


def _plain(frame: FrameType) -> dict[str, Any]:
    lattice = frame.lattice
    return {
        "id": frame.id,
        "name": frame.name,
        "inside_width_mm": frame.inside_width_mm,
        "inside_height_mm": frame.inside_height_mm,
        "outer_width_mm": frame.outer_width_mm,
        "outer_height_mm": frame.outer_height_mm,
        "top_bar_mm": frame.top_bar_mm,
        "area_dm2": frame.area_dm2,
        "cells_per_dm2": frame.cells_per_dm2,
        "drone_cells_per_dm2": frame.drone_cells_per_dm2,
        "side_cells": frame.side_cells,
        "rows": lattice.rows,
        "first_row": lattice.first_row,
        "second_row": lattice.second_row,
        "lattice_cells": lattice.cells,
        "pitch_x_mm": lattice.pitch_x_mm,
        "pitch_y_mm": lattice.pitch_y_mm,
        "confidence": frame.confidence.value,
        "source": frame.source,
    }


COMMAND = Command(
    "frames",
    "List the frame types with their inside size and their lattice of cells.",
    "beeworkbook frames",
    _words,
    _run,
)
