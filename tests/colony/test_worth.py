from beeworkbook.colony.worth import worth_words


def test_a_dab_of_brood_is_no_figure_of_four_places() -> None:
    assert [worth_words(worth) for worth in (0, 0.0037, 0.09, 0.1, 4.17)] == [
        "0", "less than 0.1", "less than 0.1", "0.1", "4.2",
    ]  # fmt: skip
    dab = comb(1, {Content.SEALED: 0.03, Content.EMPTY: 7.97})
    whole, part = visit_figures(totals(*dab, combs=1)), visit_figures(totals(*dab, combs=11))
    assert whole.brood is not None
    assert part.brood is not None
    assert phrases.brood_value(whole.brood, whole) == "on 1 comb, worth less than 0.1"
    assert phrases.brood_said(whole.brood, whole) == "brood on 1 comb worth less than 0.1"
    assert phrases.brood_value(part.brood, part) == "on 1 comb or more"
    assert phrases.brood_said(part.brood, part) == "brood on 1 comb or more"
