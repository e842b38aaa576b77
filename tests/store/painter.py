"""Paint a cell a stroke for ever and say each stroke that is safe: test_kill.py starts and kills this."""

import sys
from dataclasses import replace
from itertools import count
from pathlib import Path

from beeworkbook.colony.records import Mark, MarkId, Side
from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.contents import Content, MarkKind
from beeworkbook.store.database import open_database


def main() -> None:
    path, first = Path(sys.argv[1]), int(sys.argv[2])
    database = open_database(path)
    side_id = database.reader.find(Side)[0].id
    _say("ready")
    for stroke in count(first):
        with database.write() as tx:
            side = tx.get(Side, side_id)
            cells = unpack(side.cells, cells=tx.frame_type(side.frame_type).lattice.cells).copy()
            cells[(stroke - 1) % len(cells)] = Content.NECTAR
            tx.put(replace(side, cells=pack(cells)))
            tx.add(Mark(MarkId(0), side.visit_id, MarkKind.NOTE, text=f"stroke {stroke}"))
        _say(str(stroke))


def _say(word: str) -> None:
    sys.stdout.write(word + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
