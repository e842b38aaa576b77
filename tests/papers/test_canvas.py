import io

from beeworkbook.papers.canvas import SheetCanvas
from tests.papers.printed import Printed


def test_letters_are_subset_and_can_be_read_back() -> None:
    stream = io.BytesIO()
    canvas = SheetCanvas(stream, 200, 100, "letters")
    (once,) = canvas.letters("Lato", "Wall Μ")
    assert canvas.letters("Lato", "Wall Μ") == (once,)
    name, codes = once
    canvas.addLiteral(f"BT 10 50 Td {name} 12 Tf <{codes}> Tj ET")
    canvas.showPage()
    canvas.save()
    assert Printed(stream.getvalue()).text() == "Wall Μ"


def test_a_font_of_more_letters_than_a_byte_has_is_several_subsets() -> None:
    canvas = SheetCanvas(io.BytesIO(), 200, 100, "letters")
    many = "".join(map(chr, range(0x0100, 0x0220)))
    assert len({name for name, _ in canvas.letters("Gentium", many)}) == 2


def test_a_page_notes_the_forms_it_uses_and_no_others() -> None:
    stream = io.BytesIO()
    canvas = SheetCanvas(stream, 200, 100, "forms")
    for name in ("one", "two"):
        canvas.keep(name, (0, 0, 10, 10), b"0 0 10 10 re f", 1)
    canvas.addLiteral(canvas.form_operator("one"))
    canvas.addLiteral(canvas.form_operator("one"))
    canvas.showPage()
    canvas.addLiteral(canvas.form_operator("two"))
    canvas.showPage()
    canvas.save()
    pages = Printed(stream.getvalue()).reader.pages
    used = [list(page["/Resources"]["/XObject"].keys()) for page in pages]  # type: ignore[index]
    assert [len(names) for names in used] == [1, 1]
    assert used[0] != used[1]
