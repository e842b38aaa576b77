"""Sizes and capacities of frames against published figures."""

import pytest

from beeworkbook.comb.contents import Content
from beeworkbook.comb.frames import FRAME_TYPES, Confidence
from beeworkbook.comb.hives import HIVE_KINDS
from beeworkbook.comb.lattice import cells_per_dm2_of
from beeworkbook.comb.side import blank_cells, tally


def comb_cells(frame_id: str) -> float:
    return 2 * FRAME_TYPES[frame_id].side_cells


@pytest.mark.parametrize(
    ("frame_id", "width_mm", "height_mm"),
    [
        ("dadant_blatt_old", 420, 265),  # E. Bertrand, La conduite du rucher, p. 239
        ("dadant_blatt", 420, 270),  # "Tipi di arnie più diffuse": 42 × 27 cm
        ("dadant_blatt_super", 420, 135),  # Bertrand p. 239
        ("layens", 310, 370),  # É. Warré, L'apiculture pour tous: 0.37 × 0.31 m
        ("voirnot", 330, 330),  # CARI (cari.be), overview of hives: 33 × 33 cm
        ("de_normal", 354, 205),  # imkerverein-dorsten.de, DNM page
    ],
)
def test_published_inside_sizes(frame_id: str, width_mm: float, height_mm: float) -> None:
    frame = FRAME_TYPES[frame_id]
    assert (frame.inside_width_mm, frame.inside_height_mm) == (width_mm, height_mm)
    assert frame.confidence is Confidence.PUBLISHED


@pytest.mark.parametrize(
    ("frame_id", "width_mm", "height_mm", "top_bar_mm"),
    [
        ("bs_deep", 14, 8.5, 432),  # D. Cushman, British Standard frame parts (BS 1300:1960)
        ("bs_shallow", 14, 5.5, 432),  # the same
        ("bs_14x12", 14, 12, 432),  # Taunton Honey equipment sizes
        ("smith_deep", 14, 8.5, 394),  # D. Cushman: lug 19 mm instead of 38 mm
        ("commercial", 16, 10, 438),  # D. Cushman: 16 × 10; top bar from memory
        ("commercial_super", 16, 6, 438),  # the same
        ("langstroth_deep", 17.625, 9.125, 483),  # frame construction write-up, everything2
        ("langstroth_medium", 17.625, 6.25, 483),  # kingbee.us
        ("langstroth_shallow", 17.625, 5.375, 483),  # kingbee.us
        ("langstroth_jumbo", 17.625, 11.25, 483),  # UK list of hive sizes
    ],
)
def test_outer_sizes_published_in_inches(
    frame_id: str, width_mm: float, height_mm: float, top_bar_mm: float
) -> None:
    frame = FRAME_TYPES[frame_id]
    assert frame.outer_width_mm == pytest.approx(width_mm * 25.4, abs=0.6)
    assert frame.outer_height_mm == pytest.approx(height_mm * 25.4, abs=0.8)
    assert frame.top_bar_mm == top_bar_mm


def test_zander_in_eighths() -> None:
    # bees-online.at 2020: 3 200 worker or 1 840 drone cells a side; one eighth is one dm².
    zander = FRAME_TYPES["zander"]
    assert zander.area_dm2 == 8
    assert tally(zander, blank_cells(zander.lattice, Content.SEALED)).cells[Content.SEALED] == 3200
    assert tally(zander, blank_cells(zander.lattice, Content.DRONE)).cells[Content.DRONE] == 1840
    assert comb_cells("zander") == 6400
    assert zander.lattice.cells == pytest.approx(3200, rel=0.01)


@pytest.mark.parametrize(
    ("frame_id", "cells"),
    # Worker cells on both sides of a comb at 400 per dm², computed from the sizes and rounded to ten.
    [
        ("bs_deep", 5140),
        ("bs_shallow", 3080),
        ("bs_14x12", 7540),
        ("commercial", 7080),
        ("commercial_super", 3910),
        ("langstroth_deep", 7040),
        ("langstroth_medium", 4530),
        ("langstroth_shallow", 3780),
        ("langstroth_jumbo", 8890),
        ("dadant_modified", 8890),
        ("dadant_blatt_old", 8900),
        ("dadant_blatt", 9070),
        ("dadant_blatt_super", 4540),
        ("de_normal", 5810),
        ("layens", 9180),
        ("voirnot", 8710),
    ],
)
def test_cells_of_a_comb(frame_id: str, cells: int) -> None:
    assert comb_cells(frame_id) == pytest.approx(cells, abs=6)
    assert 2 * FRAME_TYPES[frame_id].lattice.cells == pytest.approx(cells, rel=0.011)


def test_swiss_comb_from_its_bees() -> None:
    # imker.felser.ch: 1 250 bees on a side at 130 per dm²: 9.6 dm².
    assert FRAME_TYPES["swiss"].area_dm2 == pytest.approx(1250 / 130, rel=0.01)
    assert FRAME_TYPES["swiss"].confidence is Confidence.ESTIMATED


def test_cells_of_bertrands_comb() -> None:
    # E. Bertrand p. 239: 9 550 cells in theory on a comb of 420 × 265 mm, 9 300 of use, 111 600 in twelve.
    area = FRAME_TYPES["dadant_blatt_old"].area_dm2
    assert area == pytest.approx(11.13, abs=0.005)
    assert 9550 / area == pytest.approx(858, rel=0.005)
    assert 2 * area * cells_per_dm2_of(5.19) == pytest.approx(9550, rel=0.005)
    assert HIVE_KINDS["dadant_blatt_12"].brood_frames * 9300 == 111_600


def test_a_langstroth_side() -> None:
    # Arithmetic posted on a hive-maker's forum: 3 500 cells on one side of a deep frame.
    frame = FRAME_TYPES["langstroth_deep"]
    assert frame.side_cells == pytest.approx(3500, rel=0.01)
    assert frame.lattice.cells == pytest.approx(3500, rel=0.01)


@pytest.mark.parametrize(
    ("hive_id", "published", "ours"),
    # Published cells of a hive, exam-revision table, bbkamodules 2015: shown for comparison only, since the
    # table mixes densities (trade: 690 to 800 per dm² of comb). Ours is area × 400, computed.
    [
        ("national", 55_000, 56_500),
        ("national_14x12", 80_300, 83_000),
        ("commercial", 70_625, 77_900),
        ("langstroth_10", 61_000, 70_300),
        ("dadant_modified", 85_000, 97_800),
    ],
)
def test_cells_of_a_brood_box(hive_id: str, published: int, ours: int) -> None:
    hive = HIVE_KINDS[hive_id]
    cells = hive.brood_frames * comb_cells(hive.brood_frame)
    assert cells == pytest.approx(ours, rel=0.002)
    assert published == pytest.approx(cells, rel=0.15)


@pytest.mark.parametrize(
    ("hive_id", "frames", "pitch_mm"),
    [
        ("wbc", 10, 38),  # bbkamodules 2015; D. Cushman, narrow metal ends
        ("national", 11, 38),  # UK list of hive sizes; the same
        ("smith", 11, 38),  # bbkamodules 2015
        ("commercial", 11, 38),  # bbkamodules 2015
        ("dadant_modified", 11, 38),  # bbkamodules 2015; Cushman
        ("dadant_blatt_12", 12, 37),  # Bertrand p. 237-239: spacing 37 mm, 450 mm inside
        ("dadant_blatt_10", 10, 385 / 10),  # museoapicoltura.it: 385 mm inside; computed
        ("layens", 20, 767 / 20),  # Bertrand p. 272: 767 mm inside; computed
        ("zander", 10, 35),  # 35 mm schwaebisch-hall.lvwi.de; frames common practice
        ("swiss", 14, 35),  # 35 mm Bertrand p. 283; frames from memory
    ],
)
def test_frames_and_spacing_of_a_box(hive_id: str, frames: int, pitch_mm: float) -> None:
    hive = HIVE_KINDS[hive_id]
    assert hive.brood_frames == frames
    assert hive.pitch_mm == pytest.approx(pitch_mm, abs=0.05)


def test_a_box_is_wide_enough_for_its_combs() -> None:
    # Inside widths: Dadant-Blatt 450 (Bertrand), Brother Adam's 465 (beesource, Dutch article of 1948).
    for hive_id, inside_mm in (("dadant_blatt_12", 450), ("brother_adam", 465)):
        hive = HIVE_KINDS[hive_id]
        assert 0.97 <= hive.brood_frames * hive.pitch_mm / inside_mm <= 1.0
