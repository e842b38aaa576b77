"""`beeworkbook comb`: a comb as it is typed, laid out cell by cell, and what it adds up to."""

import argparse
import json
from typing import Any

from beeworkbook.cli.asking import frame
from beeworkbook.cli.command import DONE, Command, NotUnderstoodError, Parser, Today
from beeworkbook.cli.table import table
from beeworkbook.comb.contents import CellKind, Content, Face
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.comb.names import cell_kind_name, content_name
from beeworkbook.comb.side import SideTally, tally
from beeworkbook.comb.typed import SideKind, TypedComb, TypingError, parse_comb, write_comb
from beeworkbook.words import number, say, two_figures

_KINDS = {
    SideKind.UNCHANGED: "looked at, unchanged",
    SideKind.ASSUMED: "not looked at, as last time",
    SideKind.NOT_LOOKED: "not looked at",
}


def _words(parser: Parser) -> None:
    parser.add_argument("typed", metavar="COMB", help=say("the comb as typed, in quotes"))
    parser.add_argument(
        "--frame",
        type=frame,
        default=FRAME_TYPES["bs_deep"],
        metavar="ID",
        help=say("the frame type; bs_deep if not said"),
    )
    parser.add_argument("--drone-cells", action="store_true", help=say("the comb is built of drone cells"))
    parser.add_argument("--cells", action="store_true", help=say("show the cells too, a letter each"))
    parser.add_argument("--json", action="store_true", help=say("as JSON, in full figures"))


def _run(asked: argparse.Namespace, _today: Today) -> int:
    try:
        comb = parse_comb(asked.typed)
    except TypingError as error:
        place = error.position + 1
        reason = error.message.rstrip(".")
        raise NotUnderstoodError(say("At letter {place}: {reason}.", place=place, reason=reason)) from error
    if not comb.sides and not comb.queen and not comb.cells:
        raise NotUnderstoodError(say("Nothing is said of the comb: type it as “E1O2S4H1”."))
    sides = {face: _side(comb, face, asked) for face in Face if face in comb.sides}
    if asked.json:
        held = {
            "typed": write_comb(comb),
            "frame": asked.frame.id,
            "queen": comb.queen,
            "queen_cells": [kind.value for kind in comb.cells],
            "sides": sides,
        }
        print(json.dumps(held, indent=1))
        return DONE
    print(f"{write_comb(comb, gap=' ')}   {asked.frame.name}")
    marks = [say("queen seen")] * comb.queen + [cell_kind_name(kind) for kind in comb.cells]
    if marks:
        print(say("on the comb: {marks}", marks=", ".join(marks)))
    for face, side in sides.items():
        print(f"\n{say('side {face}', face=face)}" + _described(side))
    return DONE


def _side(comb: TypedComb, face: Face, asked: argparse.Namespace) -> dict[str, Any]:
    """All that is said of one side, in full figures."""
    typed = comb.sides[face]
    held: dict[str, Any] = {"kind": typed.kind.value, "bees_eighths": typed.bees, "queen": typed.queen}
    held["queen_cells"] = [kind.value for kind in typed.cells]
    if typed.kind is not SideKind.EIGHTHS:
        return held
    from beeworkbook.comb.layout import lay_out
    from beeworkbook.comb.notation import to_text

    kind: FrameType = asked.frame
    cells = lay_out(kind, typed.all_eighths, face)
    sums = tally(kind, cells, drone_cells=True)
    held["contents"] = [
        {
            "content": content.name.lower(),
            "eighths": typed.all_eighths.get(content),
            "lattice_cells": int((cells == content).sum()),
            "cells": sums.cells[content],
            "area_dm2": sums.area_dm2[content],
        }
        for content in Content
        if sums.share[content] and content is not Content.NOT_RECORDED
    ]
    held.update(_summed(kind, sums, typed.bees))
    if asked.cells:
        held["notation"] = to_text(kind.lattice, cells)
    return held


def _summed(kind: FrameType, sums: SideTally, bees: float | None) -> dict[str, Any]:
    from beeworkbook.colony.records import PartKind
    from beeworkbook.colony.stores import side_stores_kg
    from beeworkbook.colony.strength import bees_on_side

    return {
        "worker_brood_cells": sums.worker_brood_cells,
        "brood_dm2": sums.brood_dm2,
        "stores_kg": side_stores_kg(sums.area_dm2, PartKind.BROOD_BOX).total,
        "bees": None if bees is None else bees_on_side(kind.area_dm2, bees),
    }


def _described(side: dict[str, Any]) -> str:
    """One side in a small table and a line, two significant figures."""
    if "contents" not in side:
        return ": " + say(_KINDS[SideKind(side["kind"])])
    rows = [
        (
            content_name(Content[held["content"].upper()]),
            number(held["eighths"]),
            two_figures(held["cells"]),
            two_figures(held["area_dm2"]),
        )
        for held in side["contents"]
    ]
    marks = [say("queen seen")] * side["queen"]
    marks += [cell_kind_name(CellKind(kind)) for kind in side["queen_cells"]]
    lines = ["", table((say("content"), say("eighths"), say("cells"), say("dm²")), rows, right=(1, 2, 3))]
    said = [
        say("{cells} cells of worker brood", cells=two_figures(side["worker_brood_cells"])),
        say("{kg} kg of stores, at 0.25 kg per dm² of comb", kg=two_figures(side["stores_kg"])),
    ]
    if side["bees"] is not None:
        said.append(say("{bees} bees", bees=two_figures(side["bees"])))
    lines.append("; ".join([*said, *marks]))
    if "notation" in side:
        lines.append(side["notation"])
    return "\n".join(lines)


COMMAND = Command(
    "comb",
    "Lay out a typed comb and print its figures; no workbook is needed.",
    'beeworkbook comb "E1O2S4H1 / S2O2." --frame zander',
    _words,
    _run,
)
