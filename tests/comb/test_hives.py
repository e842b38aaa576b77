import pytest

from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.hives import HIVE_KINDS, NUCLEUS_FRAMES, HiveKind


@pytest.mark.parametrize("hive", HIVE_KINDS.values(), ids=list(HIVE_KINDS))
def test_every_hive_takes_frames_there_are(hive: HiveKind) -> None:
    assert HIVE_KINDS[hive.id] is hive
    assert hive.brood_frame in FRAME_TYPES
    assert hive.source
    assert 8 <= hive.brood_frames <= 20
    assert (
        32 <= hive.pitch_mm <= 38.5
    )  # a brood comb's spacing, trade facts: Hoffman 32–38, Dadant-Blatt 38.5
    if hive.super_frame is None:
        assert hive.super_frames == 0
    else:
        assert hive.super_frames > 0
        brood, above = FRAME_TYPES[hive.brood_frame], FRAME_TYPES[hive.super_frame]
        assert above.inside_width_mm == brood.inside_width_mm
        assert above.inside_height_mm <= brood.inside_height_mm


def test_names_are_told_apart() -> None:
    assert len({hive.name for hive in HIVE_KINDS.values()}) == len(HIVE_KINDS)


def test_a_nucleus_box_takes_five_or_six() -> None:
    assert NUCLEUS_FRAMES == (5, 6)
