from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.window.dialogs.frame_choice import frame_options
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.place import AddOwnFrame


def test_every_shipped_frame_is_offered_after_ones_own(window: MainWindow) -> None:
    window.desk.do(AddOwnFrame("Grandfather", 300, 250))
    offered = frame_options(window.desk.book)
    assert [frame_id for _words, frame_id in offered[1:]] == list(FRAME_TYPES)
    assert offered[0][0].startswith("Grandfather, 300 × 250 mm")
