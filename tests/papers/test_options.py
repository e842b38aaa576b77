import pytest

from beeworkbook.papers.options import Paper, PaperOptions


@pytest.mark.parametrize(
    ("paper", "width", "height"), [(Paper.A4, 210, 297), (Paper.A5, 148, 210), (Paper.LETTER, 215.9, 279.4)]
)
def test_papers_have_their_published_sizes(paper: Paper, width: float, height: float) -> None:
    # ISO 216:2007, and 8½ × 11 in.
    assert (paper.width_mm, paper.height_mm) == (width, height)


def test_the_usual_paper_is_a4_in_colour_with_place_names() -> None:
    assert PaperOptions() == PaperOptions(Paper.A4, colour=True, place_names=True)
