"""The one door to the sentences: that it opens on the same things."""

from beeworkbook.colony import page_rows, read_back, sentences, story


def test_the_door_opens_on_the_rooms_behind_it() -> None:
    assert sentences.page_rows is page_rows.page_rows
    assert sentences.read_back is read_back.read_back
    assert sentences.VisitStory is story.VisitStory
    assert all(hasattr(sentences, name) for name in sentences.__all__)
