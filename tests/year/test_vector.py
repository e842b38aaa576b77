"""A stand-in becomes the pattern of its content, and nothing else is touched."""

from xml.etree import ElementTree as ET

import pytest

from beeworkbook.comb.contents import Content
from beeworkbook.comb.legend import LEGEND
from beeworkbook.qt.palette import LIGHT
from beeworkbook.year.inks import Fill
from beeworkbook.year.vector import with_patterns

SVG = '<svg xmlns="http://www.w3.org/2000/svg"><defs></defs><g fill="{fill}"/><g fill="#123456"/></svg>'
NAMESPACE = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("content", [entry for entry in LEGEND if entry is not Content.NOT_RECORDED])
@pytest.mark.parametrize("colour", [True, False])
def test_a_stand_in_becomes_its_pattern(content: Content, *, colour: bool) -> None:
    fill = Fill(content, LIGHT.board, colour)
    root = ET.fromstring(with_patterns(SVG.format(fill=fill.stand_in.name()), [fill]))
    pattern = root.find(f".//{NAMESPACE}pattern")
    assert pattern is not None
    first, second = root.findall(f"{NAMESPACE}g")
    assert first.get("fill") == f"url(#{pattern.get('id')})"
    assert second.get("fill") == "#123456"
    ground = pattern.find(f"{NAMESPACE}rect")
    assert ground is not None
    assert ground.get("fill") == (LEGEND[content].fill.lower() if colour else "#ffffff")
    inked = pattern.find(f"{NAMESPACE}g")
    assert inked is not None
    assert len(inked) > 0


def test_seen_and_assumed_are_two_patterns() -> None:
    fills = [Fill(Content.EGGS, LIGHT.board, assumed=held) for held in (False, True)]
    root = ET.fromstring(with_patterns(SVG.format(fill="#000000"), [*fills, fills[0]]))
    assert len(root.findall(f".//{NAMESPACE}pattern")) == 2


def test_a_text_without_definitions_is_refused() -> None:
    with pytest.raises(ValueError, match="definitions"):
        with_patterns("<svg/>", [])
