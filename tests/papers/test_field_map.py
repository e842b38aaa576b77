import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.papers.field_map import (
    Field,
    FieldKind,
    FieldMap,
    FieldMapError,
    MarkerPlace,
    PageMap,
    field_map_from_json,
)
from beeworkbook.papers.rect import Rect

hundredths = st.integers(0, 30_000).map(lambda value: value / 100)
rects = st.builds(Rect, hundredths, hundredths, hundredths, hundredths)
pages = st.builds(
    PageMap,
    st.integers(1, 9),
    hundredths,
    hundredths,
    st.integers(0, 15),
    st.text(max_size=8),
    st.tuples(st.builds(MarkerPlace, st.integers(0, 335), rects)),
    st.tuples(rects, rects),
    st.lists(st.builds(Field, st.text(max_size=9), st.sampled_from(FieldKind), rects), max_size=4).map(tuple),
)
maps = st.builds(
    FieldMap, st.text(max_size=5), st.integers(0, 9), st.text(max_size=6), st.booleans(), st.tuples(pages)
)


@given(maps)
def test_a_map_written_and_read_is_the_same(held: FieldMap) -> None:
    assert field_map_from_json(held.to_json()) == held


def test_places_are_rounded_to_a_hundredth_of_a_millimetre() -> None:
    page = PageMap(
        1, 210, 297, 1, "", (), (), (Field("box1.comb1.A.eggs", FieldKind.TICK, Rect(1 / 3, 2, 5, 5)),)
    )
    read = field_map_from_json(FieldMap("K3QF7", 4, "A4", read_back=True, pages=(page,)).to_json())
    assert read.pages[0].field("box1.comb1.A.eggs").place.x == 0.33


def test_a_field_that_is_not_there_is_no_field() -> None:
    with pytest.raises(KeyError):
        PageMap(1, 210, 297, 1, "", (), (), ()).field("box1.comb1.A.eggs")


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{}",
        "[]",
        '{"format":"something else","version":1}',
        '{"format":"hive sheet field map","version":2}',
        '{"format":"hive sheet field map","version":1,"code":"A"}',
        (
            '{"format":"hive sheet field map","version":1,"code":"A","revision":1,"paper":"A4",'
            '"read_back":true,"pages":[{}]}'
        ),
    ],
)
def test_what_is_no_field_map_is_refused(text: str) -> None:
    with pytest.raises(FieldMapError):
        field_map_from_json(text)


def test_the_json_names_its_format_and_unit() -> None:
    held = json.loads(FieldMap("K3QF7", 4, "A4", read_back=True, pages=()).to_json())
    assert held["format"] == "hive sheet field map"
    assert held["unit"].startswith("mm")
