"""The typed comb: every sign, every refusal, and there and back again."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.comb.contents import KEY_LETTERS, CellKind, Content, Face
from beeworkbook.comb.key_letters import KeyLetters
from beeworkbook.comb.typed import (
    EIGHTHS,
    SideKind,
    TypedComb,
    TypedSide,
    TypingError,
    parse_comb,
    parse_so_far,
    write_comb,
    write_side,
)

E, O, S, H, P, C = Content.EGGS, Content.OPEN, Content.SEALED, Content.STORES, Content.POLLEN, Content.EMPTY  # noqa: E741


def both(side: TypedSide) -> TypedComb:
    return TypedComb({Face.A: side, Face.B: side})


def test_both_sides_alike() -> None:
    assert parse_comb("E1O2S4H1") == both(TypedSide(eighths={E: 1, O: 2, S: 4, H: 1}))


def test_a_slash_parts_side_a_from_side_b() -> None:
    assert parse_comb("S4 / S2O2") == TypedComb(
        {Face.A: TypedSide(eighths={S: 4}), Face.B: TypedSide(eighths={S: 2, O: 2})}
    )


def test_a_letter_alone_is_the_whole_side() -> None:
    assert parse_comb("H") == both(TypedSide(eighths={H: EIGHTHS}))
    assert parse_comb("F / -") == TypedComb(
        {Face.A: TypedSide(eighths={Content.FOUNDATION: 8}), Face.B: TypedSide(SideKind.NOT_LOOKED)}
    )


def test_a_point_leaves_the_rest_empty() -> None:
    side = parse_comb("H5P2.").sides[Face.A]
    assert side == TypedSide(eighths={H: 5, P: 2}, rest_empty=True)
    assert side.all_eighths == {H: 5, P: 2, C: 1}
    assert parse_comb(".").sides[Face.B].all_eighths == {C: 8}
    assert parse_comb("C2.").sides[Face.B].all_eighths == {C: 8}
    assert parse_comb("H.").sides[Face.B].all_eighths == {H: 8}


def test_what_is_not_said_is_not_in_the_eighths() -> None:
    side = parse_comb("S3").sides[Face.A]
    assert side.all_eighths == {S: 3}
    assert side.filled == 3


@pytest.mark.parametrize(
    ("sign", "kind"), [("=", SideKind.UNCHANGED), ("?", SideKind.ASSUMED), ("-", SideKind.NOT_LOOKED)]
)
def test_each_side_has_its_own_kind(sign: str, kind: SideKind) -> None:
    assert parse_comb(sign) == both(TypedSide(kind))
    assert parse_comb(f"{sign} / S2") == TypedComb(
        {Face.A: TypedSide(kind), Face.B: TypedSide(eighths={S: 2})}
    )


def test_an_unsaid_side_stays_away() -> None:
    assert parse_comb("S4/").sides == {Face.A: TypedSide(eighths={S: 4})}
    assert parse_comb("/S4").sides == {Face.B: TypedSide(eighths={S: 4})}
    assert parse_comb("  ") == TypedComb()


def test_case_and_spaces_do_not_matter() -> None:
    assert parse_comb(" e 1 o2s 4 H1 ") == parse_comb("E1O2S4H1")


@pytest.mark.parametrize(("text", "eighths"), [("S2.5", 2.5), ("S2,5", 2.5), ("S30%", 2.4), ("s 30 %", 2.4)])
def test_decimals_and_percent(text: str, eighths: float) -> None:
    assert parse_comb(text).sides[Face.A].eighths == {S: eighths}


def test_a_point_after_a_number_is_the_rest_unless_a_figure_follows() -> None:
    assert parse_comb("S2.").sides[Face.A].rest_empty
    assert not parse_comb("S2.5").sides[Face.A].rest_empty
    assert parse_comb("S2.5.").sides[Face.A] == TypedSide(eighths={S: 2.5}, rest_empty=True)


def test_three_thirds_in_percent_are_a_whole_side() -> None:
    assert parse_comb("E33.333334%O33.333333%S33.333333%").sides[Face.A].filled == pytest.approx(8)


def test_bees_queen_and_queen_cells() -> None:
    comb = parse_comb("E1S3W5QKCKU")
    assert comb.sides[Face.A] == TypedSide(eighths={E: 1, S: 3}, bees=5)
    assert comb.queen
    assert comb.cells == (CellKind.CHARGED, CellKind.PLAY_CUP)


def test_a_mark_beside_a_slash_belongs_to_that_side() -> None:
    comb = parse_comb("S4Q / S2 K c")
    assert not comb.queen
    assert not comb.cells
    assert comb.sides[Face.A].queen
    assert comb.sides[Face.B].cells == (CellKind.CHARGED,)


def test_marks_after_a_second_slash_belong_to_the_comb() -> None:
    comb = parse_comb("S4 / S2 / QKS")
    assert comb.queen
    assert comb.cells == (CellKind.SEALED,)
    assert not comb.sides[Face.A].queen


def test_a_mark_alone_says_nothing_of_the_sides() -> None:
    assert parse_comb("Q") == TypedComb({}, queen=True)
    assert parse_comb("/ Q").sides == {Face.B: TypedSide(queen=True)}


def test_bees_may_cover_an_unchanged_side() -> None:
    assert parse_comb("=W6").sides[Face.A] == TypedSide(SideKind.UNCHANGED, bees=6)
    assert parse_comb("w").sides[Face.A].bees == EIGHTHS


@pytest.mark.parametrize(
    ("text", "position", "words"),
    [
        ("E1X2", 2, "none of the letters"),
        ("E5S4", 2, "9 eighths: a side has eight"),
        ("S8.5", 0, "8.5 eighths"),
        ("S120%", 0, "9.6 eighths"),
        ("W9", 0, "9 eighths"),
        ("E1S2E3", 4, "named twice"),
        ("E1S", 2, "whole side"),
        ("SE1", 1, "whole side"),
        ("SO", 1, "whole side"),
        ("E1.S2", 3, "put it after"),
        ("E1..", 3, "One point"),
        ("=.", 1, "no rest"),
        ("=S2", 1, "as last time or not looked at"),
        ("S2=", 2, "stands alone"),
        ("=?", 1, "stands alone"),
        (".=", 1, "stands alone"),
        ("?Q", 1, "not looked at"),
        ("-W5", 1, "not looked at"),
        ("-KC", 1, "not looked at"),
        ("Q-", 1, "it was looked at"),
        ("QQ", 1, "named twice"),
        ("W1W2", 2, "named twice"),
        ("S2K", 2, "what kind"),
        ("S2K /", 2, "what kind"),
        ("KX", 1, "its kind"),
        ("KE2", 2, "without a number"),
        ("S2/S2/ S2", 7, "only the queen"),
        ("S/S/Q/Q", 5, "two sides"),
        ("S0000000000002", 1, "too long"),
        ("S-1", 1, "stands alone"),
        ("S2,", 2, "none of the letters"),
        ("7", 0, "none of the letters"),
        ("ß1", 0, "none of the letters"),
        ("S\u0662", 1, "none of the letters"),
    ],
)
def test_refusals_point_at_the_letter(text: str, position: int, words: str) -> None:
    with pytest.raises(TypingError, match=words) as refused:
        parse_comb(text)
    assert refused.value.position == position
    assert refused.value.message == str(refused.value)


def test_what_can_be_read_so_far_is_read() -> None:
    comb, error = parse_so_far("E1O2K")
    assert comb == parse_comb("E1O2")
    assert error is not None
    assert error.position == 4
    comb, error = parse_so_far("E1KX")
    assert comb == parse_comb("E1")
    assert error is not None
    assert error.position == 3
    assert parse_so_far("S4") == (parse_comb("S4"), None)


amounts = st.one_of(st.integers(0, 8).map(float), st.integers(0, 8_000_000).map(lambda part: part / 1e6))
kinds = st.lists(st.sampled_from(CellKind), max_size=3).map(tuple)


@st.composite
def seen_sides(draw: st.DrawFn) -> TypedSide:
    eighths: dict[Content, float] = {}
    for content in draw(st.lists(st.sampled_from(tuple(KEY_LETTERS)), unique=True, max_size=6)):
        amount = draw(amounts)
        if sum(eighths.values()) + amount <= EIGHTHS:
            eighths[content] = amount
    return TypedSide(
        SideKind.EIGHTHS,
        eighths,
        draw(st.booleans()),
        draw(st.none() | amounts),
        draw(st.booleans()),
        draw(kinds),
    )


sides = st.one_of(
    seen_sides(),
    st.builds(
        TypedSide, st.just(SideKind.UNCHANGED), bees=st.none() | amounts, queen=st.booleans(), cells=kinds
    ),
    st.sampled_from([TypedSide(SideKind.ASSUMED), TypedSide(SideKind.NOT_LOOKED)]),
).filter(lambda side: side != TypedSide())
combs = st.one_of(
    st.builds(TypedComb, st.dictionaries(st.sampled_from(Face), sides, max_size=2), st.booleans(), kinds),
    st.builds(
        lambda side, *marks: TypedComb({Face.A: side, Face.B: side}, *marks), sides, st.booleans(), kinds
    ),
)


@settings(max_examples=150, deadline=None)
@given(combs, st.sampled_from(["", " "]))
def test_writing_and_reading_again_gives_the_same_comb(comb: TypedComb, gap: str) -> None:
    assert parse_comb(write_comb(comb, gap=gap)) == comb


@settings(max_examples=150, deadline=None)
@given(st.text(alphabet="EOSHPCFGWQKU=?-./ 0123456789%,x", max_size=14))
def test_any_typing_is_read_or_refused_at_a_place(text: str) -> None:
    comb, error = parse_so_far(text)
    if error is None:
        assert parse_comb(write_comb(comb)) == comb
        assert all(side.filled <= EIGHTHS + 1e-5 for side in comb.sides.values())
    else:
        assert 0 <= error.position < len(text)
        assert error.message


def test_combs_are_written_as_a_keeper_types() -> None:
    for text in (
        "E1O2S4H1",
        "S4 / S2O2",
        "H",
        "F / -",
        "H5N2.",
        "=",
        "? / =",
        "S2.5W5",
        "S4Q / S2KC",
        "S4 /",
    ):
        assert write_comb(parse_comb(text)) == text
    assert write_comb(parse_comb("e1o1s3p1h1."), gap=" ") == "E1 O1 S3 P1 H1 ."
    assert write_side(TypedSide(eighths={S: 3}, rest_empty=True)) == "S3."


def test_the_letters_of_a_translation() -> None:
    german = KeyLetters(contents={**KEY_LETTERS, Content.EGGS: "Ä", Content.OPEN: "L"})
    assert parse_comb("ä1L2", german).sides[Face.A].eighths == {E: 1, O: 2}
    assert write_comb(parse_comb("E1O2"), german) == "Ä1L2"
    with pytest.raises(TypingError):
        parse_comb("E1", german)
