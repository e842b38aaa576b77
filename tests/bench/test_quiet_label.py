from pytestqt.qtbot import QtBot

from beeworkbook.bench.quiet_label import QuietLabel


def test_a_label_gives_way_and_keeps_the_whole_text_in_its_tooltip(qtbot: QtBot) -> None:
    label = QuietLabel()
    qtbot.addWidget(label)
    label.resize(60, 20)
    label.say("a long sentence that does not fit in sixty pixels")
    assert label.text().endswith("…")
    assert label.toolTip() == label.accessibleName() == "a long sentence that does not fit in sixty pixels"
    label.resize(900, 20)
    label.show()
    qtbot.waitUntil(lambda: label.text() == label.accessibleName())
    assert label.toolTip() == ""
