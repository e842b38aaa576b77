from beeworkbook.colony.records import PartKind
from beeworkbook.colony.stores import StoresKg, comb_stores_kg, side_stores_kg, stores_basis
from beeworkbook.comb.contents import CONTENTS, Content


def area(content: Content, dm2: float) -> tuple[float, ...]:
    return tuple(dm2 if one is content else 0.0 for one in CONTENTS)


def test_two_full_sides_are_a_full_comb() -> None:
    for kind in (PartKind.BROOD_BOX, PartKind.NUCLEUS_BOX, PartKind.SUPER):
        one = side_stores_kg(area(Content.STORES, 8), kind)
        assert (one + one).total == comb_stores_kg(8, kind)


def test_only_stores_weigh() -> None:
    for content in set(CONTENTS) - {Content.STORES, Content.NECTAR}:
        assert side_stores_kg(area(content, 8), PartKind.BROOD_BOX).total == 0


def test_the_sentence_says_which_weights_were_used() -> None:
    assert stores_basis(StoresKg(1, 1, 1)).count("0.") == 3
    assert "0.33" not in stores_basis(StoresKg(brood_box=1))
    assert "0.25" not in stores_basis(StoresKg(super_box=1))
    assert "no stores were seen" in stores_basis(StoresKg())
