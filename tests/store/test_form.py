from beeworkbook.store.form import APPLICATION_ID, FILE_ENDING, SCHEMA_VERSION


def test_the_marks_of_a_workbook_file() -> None:
    assert FILE_ENDING == ".beebook"
    assert 0 < APPLICATION_ID < 2**31  # the header holds a signed number of four bytes
    assert SCHEMA_VERSION >= 1
