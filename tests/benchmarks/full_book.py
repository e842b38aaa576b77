"""A keeper's folder as it is left in the evening: the sample, and a colony whose box is painted through.

Its 22 sides are full-size ones: 4,536 cells of a modern Dadant-Blatt brood side with some speckle.
"""

import json
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Final

from beeworkbook.colony.records import ColonyId, VisitId
from beeworkbook.comb.contents import Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import CellPatch, blank_cells
from beeworkbook.resources import sample_folder
from beeworkbook.workbook.edits.arrive import ArriveColony
from beeworkbook.workbook.edits.combs import PaintCells
from beeworkbook.workbook.edits.visit import BeginVisit
from beeworkbook.workbook.exchange import import_book
from beeworkbook.workbook.workbook import Workbook
from tests.comb.drawn import brood_side
from tests.workbook.keeping import LOOK, NUCLEUS, as_int

COMBS: Final = 11
FRAME: Final = FRAME_TYPES["dadant_blatt"]


def keep_full_book(home: Path, today: date) -> Path:
    """Make the folder, left at the box; gives the path of its workbook."""
    path = home / "Full.beebook"
    import_book(sample_folder() / "sample.json", path)
    book = Workbook.open(path, today=today)
    spec = replace(NUCLEUS, name="Full", frame_type=FRAME.id)
    colony = ColonyId(as_int(book.do(ArriveColony(spec))))
    visit = VisitId(as_int(book.do(BeginVisit(colony, LOOK))))
    hive = book.read.hive_day(colony, LOOK)
    assert hive is not None
    box = hive.brood_boxes[0]
    frames = [placed.frame.id for placed in box.frames if placed.frame is not None]
    assert len(frames) == COMBS
    for at, frame in enumerate(frames):
        for face in Face:
            cells = brood_side(FRAME.lattice, seed=2 * at + (face is Face.B))
            book.do(PaintCells(visit, frame, face, CellPatch.between(blank_cells(FRAME.lattice), cells)))
    book.close()
    spot = {
        "view": "box",
        "colony_id": colony,
        "visit_id": visit,
        "part_id": box.part.id,
        "frame_id": frames[5],
    }
    settings = {"last_workbook": str(path), "spots": {str(path): spot}}
    (home / "settings.json").write_text(json.dumps(settings), encoding="utf-8")
    return path
