import statistics
import zlib

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.codec import VERSION, DamagedCombError, pack, unpack
from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.layout import lay_out
from tests.comb.drawn import brood_side

CELLS = st.lists(st.integers(0, 11), max_size=3000).map(lambda codes: np.array(codes, np.uint8))


def stored(raw: bytes) -> bytes:
    return bytes((VERSION,)) + zlib.compress(raw)


@given(CELLS)
def test_the_stored_form_comes_back(cells: np.ndarray[tuple[int], np.dtype[np.uint8]]) -> None:
    back = unpack(pack(cells), cells=len(cells))
    assert np.array_equal(back, cells)
    assert not back.flags.writeable


def test_the_form_is_a_version_byte_and_level_six() -> None:
    cells = np.arange(4000, dtype=np.uint8) % 12
    assert pack(cells) == b"\x01" + zlib.compress(cells.tobytes(), 6)


@given(CELLS, st.data())
def test_any_changed_byte_is_refused_or_harmless(
    cells: np.ndarray[tuple[int], np.dtype[np.uint8]], data: st.DataObject
) -> None:
    blob = bytearray(pack(cells))
    blob[data.draw(st.integers(0, len(blob) - 1))] ^= data.draw(st.integers(1, 255))
    try:
        back = unpack(bytes(blob), cells=len(cells))
    except DamagedCombError:
        return
    assert np.array_equal(back, cells)  # a few bits of a zlib head carry nothing


@given(CELLS, st.data())
def test_a_blob_cut_short_is_refused(
    cells: np.ndarray[tuple[int], np.dtype[np.uint8]], data: st.DataObject
) -> None:
    blob = pack(cells)
    with pytest.raises(DamagedCombError):
        unpack(blob[: data.draw(st.integers(0, len(blob) - 1))], cells=len(cells))


@pytest.mark.parametrize(
    ("blob", "reason"),
    [
        (b"", "it is empty"),
        (b"\x02" + zlib.compress(bytes(10)), "its form is number 2"),
        (b"\x01 no such bytes", "its bytes are damaged"),
        (stored(bytes(9)), "it has 9 cells and not 10"),
        (stored(bytes(11)), "it has more than 10 cells"),
        (stored(bytes(9) + b"\x0c"), "content number 12 is not known"),
        (stored(bytes(10)) + b"x", "something follows its end"),
        (stored(bytes(10))[:-1], "it breaks off before its end"),
    ],
)
def test_damage_is_refused_with_its_reason(blob: bytes, reason: str) -> None:
    with pytest.raises(DamagedCombError, match=reason):
        unpack(blob, cells=10)


def test_a_bomb_is_not_unpacked() -> None:
    bomb = stored(bytes(200_000_000))
    with pytest.raises(DamagedCombError, match="more than 4536 cells"):
        unpack(bomb, cells=4536)


@pytest.mark.parametrize(
    "cells", [np.array([12], np.uint8), np.zeros(3, np.int64), np.zeros((2, 2), np.uint8)], ids=str
)
def test_only_content_codes_are_packed(cells: np.ndarray[tuple[int], np.dtype[np.uint8]]) -> None:
    with pytest.raises(ValueError, match="content codes"):
        pack(cells)


def plausible_box() -> list[np.ndarray[tuple[int], np.dtype[np.uint8]]]:
    """Eleven combs of a Dadant-Blatt laid out from eighths: stores, pollen, brood, foundation."""
    frame = FRAME_TYPES["dadant_blatt"]
    stores = {Content.STORES: 6.0, Content.NECTAR: 1.0, Content.EMPTY: 1.0}
    pollen = {Content.STORES: 4.0, Content.POLLEN: 3.0, Content.EMPTY: 1.0}
    brood = {
        Content.EGGS: 1.0,
        Content.OPEN: 2.0,
        Content.SEALED: 3.0,
        Content.POLLEN: 0.5,
        Content.STORES: 1.5,
    }
    foundation = {Content.FOUNDATION: 8.0}
    combs = [stores, stores, pollen, *[brood] * 5, pollen, foundation, foundation]
    return [
        lay_out(frame, said, face, entrance_end=end, seed=place)
        for place, said in enumerate(combs)
        for face, end in ((Face.A, "left"), (Face.B, "right"))
    ]


def test_a_plausible_box_takes_little_room() -> None:
    sizes = [len(pack(cells)) / len(cells) for cells in plausible_box()]
    assert len(sizes) == 22
    assert statistics.median(sizes) <= 0.08


def test_a_painted_side_with_speckle_takes_little_room() -> None:
    cells = brood_side(FRAME_TYPES["dadant_blatt"].lattice)
    assert len(pack(cells)) / len(cells) <= 0.2
