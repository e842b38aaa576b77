from beeworkbook.colony.worth import worth_words


def test_what_a_dab_is_worth_is_no_figure_of_four_places() -> None:
    assert [worth_words(worth) for worth in (0, 0.0037, 0.09, 0.1, 4.17)] == [
        "0", "less than 0.1", "less than 0.1", "0.1", "4.2",
    ]  # fmt: skip
