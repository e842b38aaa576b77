from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.figures import Amount, VisitFigures, eggs_last_seen, visit_figures
from beeworkbook.colony.records import Level, PartKind
from beeworkbook.colony.totals import SideTotals
from beeworkbook.comb.contents import ALL_BROOD, WORKER_BROOD, Content, Face, Origin
from beeworkbook.comb.frames import FrameType
from tests.colony.making import DAY, PER_DM2, SIDE_DM2, answers, comb, side, totals, visit

E, O, S, B, D = Content.EGGS, Content.OPEN, Content.SEALED, Content.BROOD, Content.DRONE  # noqa: E741 - as typed
P, N, H, C = Content.POLLEN, Content.NECTAR, Content.STORES, Content.EMPTY

ZANDER = FrameType("zander", "Zander", 400, 200)


def test_a_box_adds_up_as_by_hand() -> None:
    # Three combs: 1 stores; 2 with an eighth of eggs, 2 open, 4 sealed, 1 drone; 3 half sealed on A only.
    figures = visit_figures(
        totals(
            *comb(1, {H: 8}),
            *comb(2, {E: 1, O: 2, S: 4, D: 1}),
            side(3, Face.A, {S: 4, C: 4}),
            side(3, Face.B, {C: 8}),
            combs=3,
        )
    )
    brood = figures.brood
    assert brood is not None
    assert brood.combs == 2
    assert brood.worth == pytest.approx((1 + 1 + 0.5) / 2)
    assert brood.stages[E] == Amount(800, 2)
    assert brood.stages[S] == Amount(12 * 400, 12)
    assert brood.amount == Amount(18 * 400, 18)
    assert brood.drone == Amount(2 * 230, 2)
    assert brood.doubt is not None
    assert not brood.doubt.at_least
    assert not figures.coarse
    assert figures.stores is not None
    assert figures.stores.kg == pytest.approx(8 * 0.25)
    assert figures.stores.parts is not None
    assert figures.stores.parts.brood_box == pytest.approx(2.0)
    assert figures.bees is None
    assert (figures.eggs_seen, figures.young_seen) == (True, True)
    assert (figures.combs_seen, figures.combs_in_hive) == (3, 3)


def test_nothing_noted_is_nothing_known() -> None:
    figures = visit_figures(totals())
    assert (figures.brood, figures.stores, figures.bees, figures.pollen_dm2) == (None, None, None, None)
    assert (figures.eggs_seen, figures.young_seen) == (None, None)
    assert not figures.at_least
    assert not figures.coarse


def test_combs_missing_make_it_at_least() -> None:
    figures = visit_figures(totals(*comb(4, {S: 8}), side(5, Face.A, {S: 8}), combs=11))
    assert figures.at_least
    assert (figures.combs_seen, figures.combs_in_hive) == (2, 11)
    assert figures.brood is not None
    assert figures.brood.worth == pytest.approx(1.5)


def test_one_side_missing_is_missing() -> None:
    assert visit_figures(totals(*comb(1, {S: 8}), side(2, Face.A, {S: 8}), combs=2)).at_least
    assert not visit_figures(totals(*comb(1, {S: 8}), *comb(2, {S: 8}), combs=2)).at_least


def test_an_undrawn_super_hides_no_brood_but_perhaps_stores() -> None:
    figures = visit_figures(totals(*comb(1, {S: 4, H: 4}), combs=1, supers=10))
    assert not figures.at_least
    assert figures.stores is not None
    assert figures.stores.doubt.at_least


def test_assumed_is_never_counted() -> None:
    seen = comb(1, {S: 8})
    assumed = comb(2, {S: 8}, origin=Origin.ASSUMED, covered=8)
    assert visit_figures(totals(*seen, *assumed, combs=2)) == visit_figures(totals(*seen, combs=2))
    assert visit_figures(totals(*assumed, combs=2)).brood is None


def test_a_side_on_which_only_bees_were_noted_says_nothing_of_brood() -> None:
    figures = visit_figures(totals(side(1, Face.A, {}, covered=4), combs=1))
    assert figures.brood is None
    assert figures.bees is not None
    assert figures.bees.bees == 500
    assert figures.bees.doubt.at_least


def test_stores_weigh_by_where_they_are() -> None:
    figures = visit_figures(
        totals(*comb(1, {H: 8}), *comb(2, {N: 8}), *comb(1, {H: 8}, kind=PartKind.SUPER), combs=2, supers=1)
    )
    assert figures.stores is not None
    parts = figures.stores.parts
    assert parts is not None
    assert (parts.brood_box, parts.super_box, parts.thin) == pytest.approx((2.0, 2.64, 1.76))
    assert figures.stores.kg == pytest.approx(6.4)
    assert figures.stores.doubt.low < 6.4 < figures.stores.doubt.high


def test_a_line_becomes_an_area_by_the_frame() -> None:
    figures = visit_figures(totals(said=answers(brood="7/4.2", stores="8", seams="8", eggs="4-6")), ZANDER)
    assert figures.brood is not None
    assert (figures.brood.combs, figures.brood.worth) == (7, 4.2)
    assert figures.brood.amount is not None
    assert figures.brood.amount.dm2 == pytest.approx(4.2 * 16)
    assert figures.brood.amount.cells == pytest.approx(4.2 * 6400)
    assert figures.brood.stages == {B: figures.brood.amount}
    assert figures.brood.drone is None
    assert figures.coarse
    assert not figures.at_least
    assert figures.stores is not None
    assert figures.stores.kg == 8
    assert figures.stores.parts is None
    assert figures.bees is not None
    assert figures.bees.seams == 8
    assert 8 * 16 * 80 < figures.bees.bees < 8 * 16 * 125
    assert figures.eggs_seen is True


def test_a_line_without_its_worth_or_without_a_frame_claims_no_area() -> None:
    for figures in (
        visit_figures(totals(said=answers(brood="7")), ZANDER),
        visit_figures(totals(said=answers(brood="7/4.2"))),
        visit_figures(totals(said=answers(brood="y")), ZANDER),
    ):
        assert figures.brood is not None
        assert figures.brood.amount is None
        assert figures.coarse
    assert visit_figures(totals(said=answers(seams="8"))).bees is None


def test_no_brood_said_is_no_brood() -> None:
    figures = visit_figures(totals(said=answers(brood="n", stores="n", eggs="n")))
    assert figures.brood is not None
    assert (figures.brood.combs, figures.brood.amount) == (0, Amount())
    assert figures.stores is not None
    assert figures.stores.kg == 0
    assert figures.eggs_seen is False


def test_not_looked_is_not_no() -> None:
    figures = visit_figures(totals(said=answers(brood="-", stores="-", eggs="-", seams="-")))
    assert (figures.brood, figures.stores, figures.eggs_seen, figures.bees) == (None, None, None, None)


def test_a_line_stands_in_for_combs_that_are_missing_and_keeps_their_stages() -> None:
    figures = visit_figures(
        totals(*comb(5, {E: 2, S: 4, H: 2}), said=answers(brood="7/4.2", stores="8")), ZANDER
    )
    brood = figures.brood
    assert brood is not None
    assert (brood.combs, brood.worth) == (7, 4.2)
    assert brood.amount is not None
    assert brood.amount.dm2 == pytest.approx(4.2 * 16)
    assert brood.stages[E].dm2 == 4
    assert brood.stages[B].dm2 == pytest.approx(4.2 * 16 - 12)
    assert figures.coarse
    assert not figures.at_least
    assert figures.stores is not None
    assert figures.stores.kg == 8


def test_combs_that_show_more_than_the_line_says_win() -> None:
    figures = visit_figures(totals(*comb(5, {S: 8}), *comb(6, {S: 8}), said=answers(brood="2/1", seams="1")))
    assert figures.brood is not None
    assert figures.brood.worth == 2
    assert figures.at_least
    covered = visit_figures(totals(*comb(5, {S: 8}, covered=8), said=answers(seams="8")))
    assert covered.bees is not None
    assert covered.bees.seams == 8
    assert visit_figures(totals(*comb(5, {S: 8}, covered=8), said=answers(seams="1"))).bees != covered.bees


def test_a_line_takes_its_frame_from_combs_that_were_noted() -> None:
    figures = visit_figures(totals(*comb(5, {S: 4, C: 4}), said=answers(brood="7/4.2")))
    assert figures.brood is not None
    assert figures.brood.amount is not None
    assert figures.brood.amount.cells == pytest.approx(4.2 * 2 * SIDE_DM2 * PER_DM2)


def test_drawn_eggs_outweigh_a_slip_in_the_line() -> None:
    assert visit_figures(totals(*comb(5, {E: 1, C: 7}), said=answers(eggs="n"))).eggs_seen is True


SIDES = st.lists(
    st.tuples(
        st.integers(1, 11),
        st.sampled_from(Face),
        st.sampled_from([E, O, S, B, D, H, N]),
        st.integers(0, 8),
        st.one_of(st.none(), st.integers(0, 8)),
    ),
    max_size=12,
    unique_by=lambda made: made[:2],
)


def made_sides(drawn: list[tuple[int, Face, Content, int, int | None]]) -> list[SideTotals]:
    return [
        side(number, face, {content: eighths, C: 8 - eighths}, covered=covered)
        for number, face, content, eighths, covered in drawn
    ]


@given(SIDES)
def test_figures_lie_in_their_bands_and_stages_add_up(
    drawn: list[tuple[int, Face, Content, int, int | None]],
) -> None:
    figures = visit_figures(totals(*made_sides(drawn)))
    if not drawn:
        assert figures.brood is None
        return
    assert figures.brood is not None
    assert figures.stores is not None
    assert figures.brood.amount is not None
    doubt = figures.brood.doubt
    assert doubt is not None
    assert doubt.low <= figures.brood.amount.dm2 <= doubt.high
    assert figures.stores.doubt.low <= figures.stores.kg <= figures.stores.doubt.high + 1e-9
    assert sum(figures.brood.stages[content].dm2 for content in WORKER_BROOD) == pytest.approx(
        figures.brood.amount.dm2
    )
    all_brood = sum(figures.brood.stages[content].dm2 for content in ALL_BROOD)
    assert figures.brood.worth == pytest.approx(all_brood / (2 * SIDE_DM2))
    if figures.bees is not None:
        assert figures.bees.doubt.low <= figures.bees.bees <= figures.bees.doubt.high


@given(SIDES, st.integers(0, 11))
def test_a_comb_nobody_looked_at_never_adds_anything(
    drawn: list[tuple[int, Face, Content, int, int | None]], hidden: int
) -> None:
    sides = made_sides(drawn)
    fewer = [one for one in sides if one.place != hidden]
    whole, part = visit_figures(totals(*sides)), visit_figures(totals(*fewer))
    assert _dm2(part) <= _dm2(whole)
    assert part.combs_seen <= whole.combs_seen


def _dm2(figures: VisitFigures) -> float:
    return figures.brood.amount.dm2 if figures.brood and figures.brood.amount else 0.0


@given(st.sampled_from(WORKER_BROOD), st.integers(2, 7))
def test_painting_narrows_the_band_and_a_line_widens_it(content: Content, eighths: int) -> None:
    drawn = {content: eighths, C: 8 - eighths}
    painted = visit_figures(totals(*comb(1, drawn, grain=Origin.PAINTED), combs=1))
    read = visit_figures(totals(*comb(1, drawn), combs=1))
    line = visit_figures(totals(said=answers(brood=f"1/{eighths / 8}"), combs=1), ZANDER)
    assert _width(painted) < _width(read) < _width(line)


def _width(figures: VisitFigures) -> float:
    assert figures.brood is not None
    assert figures.brood.doubt is not None
    return figures.brood.doubt.high - figures.brood.doubt.low


def test_days_since_eggs_were_last_seen() -> None:
    seen = [
        visit_figures(totals(of=visit(date(2026, 5, day), Level.ONE_LINE), said=answers(eggs=typed)))
        for day, typed in ((2, "y"), (9, "4-6"), (16, "n"), (23, "y"))
    ]
    found = eggs_last_seen(seen, DAY)
    assert found is not None
    assert (found.day, found.days) == (date(2026, 5, 9), 7)
    assert eggs_last_seen(seen[2:3], DAY) is None


def test_supers_alone_say_nothing_of_the_brood_below_them() -> None:
    supers = comb(1, {H: 8}, kind=PartKind.SUPER)
    assert visit_figures(totals(*supers, combs=11, supers=10)).brood is None
    said = visit_figures(totals(*supers, combs=11, supers=10, said=answers(brood="7")), ZANDER)
    assert said.brood is not None
    assert said.brood.combs == 7
    above = visit_figures(totals(*comb(1, {S: 8}, kind=PartKind.SUPER), combs=11, supers=10))
    assert above.brood is not None
    assert above.brood.combs == 1


def _in_part(noted: SideTotals, dm2: float) -> SideTotals:
    return replace(noted, unrecorded_dm2=dm2)


def test_what_nobody_named_on_sides_noted_in_part_is_not_recorded() -> None:
    sides = [_in_part(each, SIDE_DM2 / 8) for number in (1, 2, 3) for each in comb(number, {H: 7})]
    figures = visit_figures(totals(*sides, combs=3))
    assert figures.brood is None
    assert figures.pollen_dm2 is None
    assert figures.stores is not None
    assert figures.stores.kg > 0
    whole = visit_figures(totals(*(replace(each, unrecorded_dm2=0.0) for each in sides), combs=3))
    assert whole.brood is not None
    assert (whole.brood.combs, whole.brood.worth) == (0, 0)
    assert whole.pollen_dm2 == 0


def test_a_line_speaks_where_sides_noted_in_part_are_silent() -> None:
    sides = [_in_part(each, SIDE_DM2 / 2) for number in (1, 2) for each in comb(number, {C: 4})]
    figures = visit_figures(totals(*sides, combs=2, said=answers(brood="4/2", stores="5 kg")), ZANDER)
    assert figures.brood is not None
    assert (figures.brood.combs, figures.coarse) == (4, True)
    assert figures.stores is not None
    assert figures.stores.kg == 5
    assert visit_figures(totals(*sides, combs=2)).stores is None


def test_a_stage_nobody_named_on_sides_noted_in_part_is_no_stage() -> None:
    seen = _in_part(side(1, Face.A, {S: 4}), SIDE_DM2 / 2)
    brood = visit_figures(totals(seen, side(1, Face.B, {C: 8}), combs=1)).brood
    assert brood is not None
    assert set(brood.stages) == {S}
    assert brood.drone is None
    assert brood.amount == brood.stages[S]
    with_line = visit_figures(totals(seen, combs=4, said=answers(brood="3/2")), ZANDER).brood
    assert with_line is not None
    assert with_line.amount == Amount(2 * 16 * 400, 2 * 16)
    assert set(with_line.stages) == {S, B}


def test_a_super_noted_in_part_hides_no_stage_of_the_brood_below() -> None:
    super_side = _in_part(side(1, Face.A, {H: 4}, kind=PartKind.SUPER), SIDE_DM2 / 2)
    brood = visit_figures(totals(*comb(1, {S: 4, C: 4}), super_side, combs=1, supers=1)).brood
    assert brood is not None
    assert brood.stages[E] == Amount()


def test_stores_of_sides_noted_in_part_are_at_least_and_a_line_that_says_more_stands() -> None:
    sides = [replace(each, unrecorded_dm2=1.0) for each in (*comb(1, {H: 6}), *comb(2, {H: 6}))]
    alone = visit_figures(totals(*sides, combs=2)).stores
    assert alone is not None
    assert (alone.kg, alone.doubt.at_least) == (3.0, True)
    for line, kg in (("8", 8.0), ("2", 3.0)):
        told = visit_figures(totals(*sides, combs=2, said=answers(stores=line))).stores
        assert told is not None
        assert told.kg == kg
