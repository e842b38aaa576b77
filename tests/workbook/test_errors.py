import pytest

from beeworkbook.workbook.errors import (
    GoneError,
    NotKeptError,
    NotReadableError,
    ReadOnlyError,
    RefusedError,
    StaleStepError,
)


@pytest.mark.parametrize(
    "error",
    [
        ReadOnlyError(),
        NotReadableError("“x” is none of the letters.", 3),
        GoneError("This visit"),
        StaleStepError("paint eggs on 5A"),
        NotKeptError("The disk is full, so the last change was not saved."),
    ],
)
def test_every_refusal_is_a_sentence_for_the_person(error: RefusedError) -> None:
    text = str(error)
    assert text.endswith(".")
    assert text[0].isupper() or text[0] == "“"


def test_what_cannot_be_read_says_where() -> None:
    assert NotReadableError("no", 3).position == 3
    assert NotReadableError("no").position is None
