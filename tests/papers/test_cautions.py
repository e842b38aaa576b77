import pytest

from beeworkbook.papers.cautions import cautions


@pytest.mark.parametrize(
    "words",
    ["ring for help at once", "Lift in two", "smoker", "product label and local law", "bee inspector"],
)
def test_every_caution_is_there(words: str) -> None:
    assert any(words in text for text in cautions())


def test_nothing_is_diagnosed_or_dosed() -> None:
    text = " ".join(cautions()).lower()
    for word in ("foulbrood", "varroa", "gram", "ml", "dose"):
        assert word not in text
    assert "may be notifiable" in text
