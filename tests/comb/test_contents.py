from beeworkbook.comb.contents import (
    ALL_BROOD,
    BEES_LETTER,
    CELL_KIND_LETTERS,
    CONTENTS,
    KEY_LETTERS,
    NOTATION_LETTERS,
    QUEEN_CELL_LETTER,
    QUEEN_LETTER,
    WORKER_BROOD,
    CellFate,
    CellKind,
    Content,
    Face,
    MarkKind,
    Origin,
)


def test_the_codes_of_contents_never_change() -> None:
    """They are in every workbook: this list may grow and never change."""
    assert [(int(content), content.name) for content in CONTENTS] == [
        (0, "NOT_RECORDED"),
        (1, "GAP"),
        (2, "FOUNDATION"),
        (3, "EMPTY"),
        (4, "EGGS"),
        (5, "OPEN"),
        (6, "SEALED"),
        (7, "BROOD"),
        (8, "DRONE"),
        (9, "POLLEN"),
        (10, "NECTAR"),
        (11, "STORES"),
    ]


def test_the_words_kept_for_marks_and_sides_never_change() -> None:
    assert [str(kind) for kind in CellKind] == [
        "play_cup",
        "with_egg",
        "charged",
        "sealed",
        "emerged",
        "torn_down",
    ]
    assert [str(fate) for fate in CellFate] == ["left", "chosen", "moved", "knocked_down"]
    assert [str(kind) for kind in MarkKind] == ["queen", "queen_cell", "note"]
    assert [str(origin) for origin in Origin] == ["painted", "eighths", "unchanged", "assumed"]
    assert [str(face) for face in Face] == ["A", "B"]


def test_the_letters_of_the_notation_never_change() -> None:
    assert "".join(NOTATION_LETTERS[content] for content in CONTENTS) == "_GFCEOSBDPNH"


def test_letters_are_told_apart() -> None:
    typed = [*KEY_LETTERS.values(), BEES_LETTER, QUEEN_LETTER, QUEEN_CELL_LETTER]
    assert len(set(typed)) == len(typed)
    assert set(KEY_LETTERS) == set(CONTENTS) - {Content.NOT_RECORDED}
    assert set(CELL_KIND_LETTERS) == set(CellKind)
    assert len(set(CELL_KIND_LETTERS.values())) == len(CellKind)


def test_drone_brood_is_brood_and_not_worker_brood() -> None:
    assert set(ALL_BROOD) - set(WORKER_BROOD) == {Content.DRONE}


def test_a_comb_has_two_faces() -> None:
    assert Face.A.other is Face.B
    assert Face.B.other is Face.A
