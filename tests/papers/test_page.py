import io

import pytest

from beeworkbook.papers.fonts import BODY
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.page import BLACK, WHITE, Document
from beeworkbook.papers.rect import Rect
from tests.papers.printed import Printed, cut, darkness


def printed(draw: object, options: PaperOptions | None = None, *, landscape: bool = False) -> Printed:
    stream = io.BytesIO()
    document = Document(stream, options or PaperOptions(), "A title", landscape=landscape)
    draw(document)  # type: ignore[operator]
    document.close()
    return Printed(stream.getvalue())


def nothing(document: Document) -> None:
    """An empty page."""


def test_a_paper_lies_across_when_asked() -> None:
    page = printed(nothing, PaperOptions(Paper.A5), landscape=True)
    assert page.size_mm() == pytest.approx((210, 148), abs=0.05)


def test_nothing_in_a_document_tells_when_or_where_it_was_made() -> None:
    page = printed(lambda document: document.text(10, 10, "x", BODY))
    assert page.written == printed(lambda document: document.text(10, 10, "x", BODY)).written
    assert page.reader.metadata is not None
    assert page.reader.metadata.title == "A title"
    assert "2000" in str(page.reader.metadata.get("/CreationDate"))


def test_it_asks_to_be_printed_at_its_own_size() -> None:
    page = printed(nothing)
    root = page.reader.trailer["/Root"]
    assert root["/ViewerPreferences"]["/PrintScaling"] == "/None"  # type: ignore[index]


def test_streams_are_binary() -> None:
    assert b"ASCII85" not in printed(lambda document: document.text(10, 10, "x", BODY)).written


@pytest.mark.parametrize(("align", "x"), [("left", 50.0), ("right", 49.0), ("middle", 49.5)])
def test_text_is_set_where_it_is_asked(align: str, x: float) -> None:
    picture = printed(lambda document: document.text(50, 50, "l", BODY, align=align)).picture(dpi=300)
    columns = (picture.mean(axis=(0, 2)) < 255).nonzero()[0] * 25.4 / 300
    assert columns.mean() == pytest.approx(x + 0.4, abs=0.3)


def test_shapes_lie_where_they_are_put() -> None:
    def draw(document: Document) -> None:
        document.box(Rect(10, 10, 10, 5), 0.0, fill=BLACK)
        document.box(Rect(12, 11, 6, 3), 0.2, fill=WHITE)
        document.line((40, 20), (60, 20), 1.0)
        document.disc((80, 20), 4.0, fill=BLACK)
        document.disc((80, 20), 2.0, 0.2, fill=WHITE)
        document.shape([(100, 10), (110, 10), (105, 20)], fill=BLACK)
        document.shape([(120, 10), (130, 10)], 1.0, closed=False)

    picture = printed(draw).picture()
    assert darkness(cut(picture, Rect(10.3, 10.3, 1.4, 4.4))) > 0.95
    assert darkness(cut(picture, Rect(12.4, 11.4, 5, 2))) < 0.01
    assert darkness(cut(picture, Rect(41, 19.8, 18, 0.4))) > 0.95
    assert darkness(cut(picture, Rect(77, 19.8, 0.8, 0.4))) > 0.9
    assert darkness(cut(picture, Rect(79, 19, 2, 2))) < 0.01
    assert darkness(cut(picture, Rect(104, 11, 2, 2))) > 0.95
    assert darkness(cut(picture, Rect(121, 9.8, 8, 0.4))) > 0.95


def test_a_kept_drawing_is_made_once_cut_at_its_edges_and_shown_where_it_is_placed() -> None:
    made = []

    def drawing() -> bytes:
        made.append(1)
        return b"0 0 200 200 re f"

    def draw(document: Document) -> None:
        for _ in range(2):
            document.keep_form("square", 10, 10, drawing)
        document.place_form("square", 50, 60)

    picture = printed(draw).picture()
    assert made == [1]
    assert darkness(cut(picture, Rect(50.3, 60.3, 9.4, 9.4))) > 0.99
    assert darkness(cut(picture, Rect(60.5, 60, 5, 10))) < 0.01
    assert darkness(cut(picture, Rect(50, 70.5, 10, 5))) < 0.01


def test_black_only_prints_small_words_and_rules_black() -> None:
    stream = io.BytesIO()
    assert Document(stream, PaperOptions(colour=False), "").second == BLACK
    assert Document(stream, PaperOptions(colour=False), "").rule == BLACK
    assert Document(stream, PaperOptions(), "").second != BLACK
    assert Document(stream, PaperOptions(), "").rule != BLACK
