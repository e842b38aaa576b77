from datetime import timedelta

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.store.database import Database
from beeworkbook.store.tallies import COLUMNS, tally_row
from tests.store.small_apiary import BOX_FRAME, SmallApiary

DAY = timedelta(days=1)


def test_a_row_holds_the_side_its_densities_and_a_count_a_content(
    database: Database, small: SmallApiary
) -> None:
    frame = FRAME_TYPES[BOX_FRAME]
    assert database.reader.frame_type(BOX_FRAME) is frame
    row = tally_row(frame, small.sides[0])
    assert len(row) == len(COLUMNS) == 3 + len(CONTENTS)
    assert row[:3] == (frame.area_dm2, frame.cells_per_dm2, frame.cells_per_dm2)
    assert sum(row[3:]) == frame.lattice.cells
    assert row[3 + Content.DRONE] > 0
    assert tally_row(frame, small.sides[2])[2] == frame.drone_cells_per_dm2
