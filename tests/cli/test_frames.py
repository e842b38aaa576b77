import json

from beeworkbook.comb.frames import FRAME_TYPES
from tests.cli.conftest import Typed


def test_every_frame_type_is_a_line(typed: Typed) -> None:
    told = typed("frames")
    assert told.code == 0
    heading, *held = told.out.splitlines()
    assert heading.split()[:2] == ["id", "frame"]
    assert [line.split()[0] for line in held] == list(FRAME_TYPES)
    # 3 200 cells a side: bees-online.at 2020.
    zander = next(line for line in held if line.startswith("zander "))
    assert "3\u202f200" in zander


def test_json_has_the_lattice_and_the_source(typed: Typed) -> None:
    held = {frame["id"]: frame for frame in json.loads(typed("frames", "--json").out)}
    assert list(held) == list(FRAME_TYPES)
    for its_id, frame in held.items():
        lattice = FRAME_TYPES[its_id].lattice
        assert frame["lattice_cells"] == lattice.cells
        assert frame["source"]
        assert abs(frame["lattice_cells"] / frame["side_cells"] - 1) <= 0.01
