import numpy as np

from beeworkbook.bench.numbers import box_numbers, brood_numbers, comb_numbers, side_numbers, tally_of
from beeworkbook.comb.contents import CONTENTS, Content, Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import tally
from beeworkbook.qt.desk import Desk
from tests.workbook.keeping import Keeping

FRAME = FRAME_TYPES["bs_deep"]
CELLS = FRAME.lattice.cells


def counts(**held: int) -> list[int]:
    made = [0] * len(CONTENTS)
    for name, count in held.items():
        made[Content[name]] = count
    made[Content.NOT_RECORDED] = CELLS - sum(made)
    return made


def test_counts_kept_by_the_canvas_give_the_tally_of_the_cells() -> None:
    cells = np.random.default_rng(4).integers(0, len(CONTENTS), CELLS).astype(np.uint8)
    kept = np.bincount(cells, minlength=len(CONTENTS)).tolist()
    assert tally_of(FRAME, kept, drone_cells=True) == tally(FRAME, cells)
    assert tally_of(FRAME, kept, drone_cells=False) == tally(FRAME, cells, drone_cells=False)


def test_a_side_with_brood_is_said_by_stage_to_two_figures() -> None:
    made = tally_of(FRAME, counts(EGGS=290, OPEN=430, SEALED=820, DRONE=51), drone_cells=False)
    assert side_numbers(made) == "about 1 500 brood cells: 290 eggs, 430 open, 820 sealed, 51 drone".replace(
        "1 500", "1\u202f500"
    )


def test_drone_brood_alone_is_not_called_worker_brood() -> None:
    assert (
        side_numbers(tally_of(FRAME, counts(DRONE=100), drone_cells=False)) == "about 100 drone brood cells"
    )


def test_a_side_without_brood_says_its_stores() -> None:
    made = tally_of(FRAME, counts(STORES=CELLS // 2, POLLEN=CELLS // 4), drone_cells=True)
    assert side_numbers(made) == "no brood; stores 3.2 dm², pollen 1.6 dm²"
    assert side_numbers(tally_of(FRAME, counts(FOUNDATION=CELLS), drone_cells=True)) == "no brood; no stores"


def test_nothing_is_claimed_of_a_side_nobody_recorded() -> None:
    blank = tally_of(FRAME, counts(), drone_cells=True)
    assert side_numbers(blank) == ""
    assert brood_numbers((blank,)) == ""
    assert comb_numbers((blank, blank)) == ""


def test_a_comb_is_worth_half_of_its_two_sides_shares() -> None:
    full = tally_of(FRAME, counts(SEALED=CELLS), drone_cells=True)
    half = tally_of(FRAME, counts(SEALED=CELLS // 2, EMPTY=CELLS - CELLS // 2), drone_cells=True)
    bare = tally_of(FRAME, counts(EMPTY=CELLS), drone_cells=True)
    few = tally_of(FRAME, counts(EGGS=20, EMPTY=CELLS - 20), drone_cells=True)
    assert comb_numbers((full, half)).endswith("worth 0.75")
    assert comb_numbers((bare, bare)) == "comb: no brood"
    assert comb_numbers((few, bare)) == "comb: about 20 brood cells"


def test_a_box_says_how_many_of_its_combs_were_looked_at(keeping: Keeping, desk: Desk) -> None:
    totals = keeping.book.read.visit_totals(keeping.visit)
    box = keeping.box.id
    some = box_numbers(totals, box, 11)
    assert "brood on 4 combs, worth 1.9" in some
    assert some.endswith("; 5 of 11 combs looked at")
    assert not box_numbers(totals, box, 5).endswith("looked at")
    assert desk.spot.visit_id is not None
    assert box_numbers(keeping.book.read.visit_totals(desk.spot.visit_id), box, 11) == ""


def test_a_dab_of_the_brush_is_worth_less_than_a_tenth(keeping: Keeping, desk: Desk) -> None:
    assert desk.spot.visit_id is not None
    keeping.paint(6, Face.A, Content.SEALED, count=20, visit=desk.spot.visit_id)
    box = keeping.box.id
    said = box_numbers(keeping.book.read.visit_totals(desk.spot.visit_id), box, 11)
    assert said.startswith("brood on 1 comb, worth less than 0.1")
