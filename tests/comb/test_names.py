"""Every content and every queen cell has a name of its own."""

from beeworkbook.comb.contents import CellFate, CellKind, Content
from beeworkbook.comb.names import cell_fate_name, cell_kind_name, content_name, content_short


def test_names_differ() -> None:
    assert len({content_name(content) for content in Content}) == len(Content)
    assert len({content_short(content) for content in Content}) == len(Content)
    assert len({cell_kind_name(kind) for kind in CellKind}) == len(CellKind)
    assert len({cell_fate_name(fate) for fate in CellFate}) == len(CellFate)
    assert content_name(Content.SEALED) == "sealed brood"
