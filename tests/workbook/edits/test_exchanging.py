from beeworkbook.comb.contents import Content, Face
from beeworkbook.workbook.edits import LayOutComb
from beeworkbook.workbook.edits.exchanging import exchange, move_combs, swap_faces
from tests.workbook.keeping import Keeping


def test_drawings_change_places_and_records_do_not(keeping: Keeping) -> None:
    keeping.paint(5, Face.A, Content.EGGS)
    keeping.paint(6, Face.B, Content.STORES)
    one, other = keeping.side(5, Face.A), keeping.side(6, Face.B)
    assert one is not None
    assert other is not None
    with keeping.book._base.write() as tx:
        exchange(tx, one, other)
    after = keeping.side(5, Face.A), keeping.side(6, Face.B)
    assert after[0] is not None
    assert after[1] is not None
    assert (after[0].id, after[0].cells, after[0].place) == (one.id, other.cells, 5)
    assert (after[1].id, after[1].cells, after[1].place) == (other.id, one.cells, 6)


def test_faces_swapped_twice_are_as_they_were(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4Q / H8"))
    before = keeping.everything()
    with keeping.book._base.write() as tx:
        swap_faces(tx, keeping.visit, keeping.frame(5))
        swap_faces(tx, keeping.visit, keeping.frame(5))
    assert keeping.everything() == before


def test_what_was_noted_of_the_other_comb_comes_back(keeping: Keeping) -> None:
    keeping.paint(5, Face.A, Content.EGGS)
    keeping.paint(6, Face.B, Content.STORES)
    with keeping.book._base.write() as tx:
        move_combs(
            tx,
            keeping.visit,
            keeping.frame(5),
            keeping.visit,
            keeping.frame(6),
            to_part=keeping.box.id,
            to_place=6,
        )
    assert (keeping.cells(6, Face.A) == Content.EGGS).sum() == 40
    assert (keeping.cells(5, Face.B) == Content.STORES).sum() == 40
    assert keeping.side(5, Face.A) is None
    assert keeping.side(6, Face.B) is None
