from beeworkbook.colony.records import Apiary, Colony, Due, Feed, Mark, Setting, Side, Stand, Visit
from beeworkbook.store.ties import Tie, ties_to


def test_what_hangs_and_what_is_let_go() -> None:
    to_visit = ties_to(Visit)
    assert Tie(Side, "visit_id", hangs=True) in to_visit
    assert Tie(Mark, "visit_id", hangs=True) in to_visit
    assert Tie(Feed, "left_visit_id", hangs=False) in to_visit
    assert Tie(Due, "done_visit_id", hangs=False) in to_visit
    assert Tie(Colony, "mother_id", hangs=False) in ties_to(Colony)
    assert Tie(Due, "colony_id", hangs=True) in ties_to(Colony)
    assert Tie(Stand, "apiary_id", hangs=True) in ties_to(Apiary)
    assert ties_to(Setting) == ()


def test_references_are_let_go_before_anything_is_removed() -> None:
    for cls in (Visit, Colony, Side):
        hanging = [tie.hangs for tie in ties_to(cls)]
        assert hanging == sorted(hanging)
