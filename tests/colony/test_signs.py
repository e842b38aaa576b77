from beeworkbook.colony.signs import SIGNS, read_sign, sign_advice


def test_every_sign_is_what_is_seen_and_leads_to_the_inspector() -> None:
    assert "bee inspector" in sign_advice()
    names = ("foulbrood", "sacbrood", "chalkbrood", "nosema", "paralysis", "laying worker", "tropilaelaps")
    for sign in SIGNS:
        assert not any(name in f"{sign.word} {sign.seen}".casefold() for name in names), "never a diagnosis"


def test_signs_are_found_by_their_word_or_its_beginning() -> None:
    for sign in SIGNS:
        assert read_sign(sign.word.upper()) is sign
    assert read_sign("mum") == read_sign("mummies")
    assert read_sign("mu") is None
    assert read_sign("a smell of pears") is None
    assert read_sign(" ") is None
