from datetime import timedelta

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QPaintEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.bench.box_view import BoxView
from beeworkbook.bench.folded_box import FOLDED_PX
from beeworkbook.colony.records import PartId, PartKind
from beeworkbook.comb.contents import Content, Face
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from tests.workbook.keeping import CAME, LATER, Keeping, as_int


@pytest.fixture
def box(desk: Desk, qtbot: QtBot) -> BoxView:
    made = BoxView(desk)
    qtbot.addWidget(made)
    made.resize(1090, 200)
    made.show()
    qtbot.waitExposed(made)
    made.take_focus()
    return made


def middle(box: BoxView, place: int, face: Face) -> QPoint:
    return box.row.picture_rect(place, face).center().toPoint()


def test_arrows_choose_comb_and_side(box: BoxView, desk: Desk, keeping: Keeping) -> None:
    QTest.keyClick(box.row, Qt.Key.Key_Right)
    QTest.keyClick(box.row, Qt.Key.Key_Right)
    assert desk.spot.frame_id == keeping.frame(3)
    QTest.keyClick(box.row, Qt.Key.Key_Left)
    assert desk.spot.frame_id == keeping.frame(2)
    QTest.keyClick(box.row, Qt.Key.Key_Down)
    assert str(desk.spot.face) == "B"
    QTest.keyClick(box.row, Qt.Key.Key_Up)
    assert str(desk.spot.face) == "A"
    QTest.keyClick(box.row, Qt.Key.Key_End)
    QTest.keyClick(box.row, Qt.Key.Key_Right)
    assert desk.spot.frame_id == keeping.frame(11)
    QTest.keyClick(box.row, Qt.Key.Key_Home)
    assert desk.spot.frame_id == keeping.frame(1)


def test_enter_is_the_next_comb(box: BoxView, desk: Desk, keeping: Keeping) -> None:
    QTest.keyClick(box.row, Qt.Key.Key_Return)
    assert desk.spot.frame_id == keeping.frame(2)


@pytest.mark.parametrize(
    ("key", "text"), [("e", "E"), ("3", "3"), (".", "."), ("=", "="), ("?", "?"), ("-", "-")]
)
def test_letters_digits_and_signs_begin_to_type(box: BoxView, qtbot: QtBot, key: str, text: str) -> None:
    with qtbot.waitSignal(box.typing_started) as told:
        QTest.keyClicks(box.row, key)
    assert told.args == [text]


def test_other_keys_do_not(box: BoxView, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(box.typing_started):
        QTest.keyClick(box.row, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
        QTest.keyClick(box.row, Qt.Key.Key_Space)
        QTest.keyClick(box.row, Qt.Key.Key_PageUp)


def test_a_click_chooses_a_side_and_a_double_click_lifts_the_comb_out(
    box: BoxView, desk: Desk, keeping: Keeping
) -> None:
    QTest.mouseClick(box.row, Qt.MouseButton.LeftButton, pos=middle(box, 4, Face.B))
    assert (desk.spot.frame_id, desk.spot.face, desk.spot.view) == (keeping.frame(4), Face.B, View.BOX)
    QTest.mouseDClick(box.row, Qt.MouseButton.LeftButton, pos=middle(box, 6, Face.A))
    assert (desk.spot.frame_id, desk.spot.face, desk.spot.view) == (keeping.frame(6), Face.A, View.BENCH)


def test_the_seam_under_the_pointer_lights_both_sides_that_look_into_it(box: BoxView, qtbot: QtBot) -> None:
    dark = box.row.grab().toImage()
    edge = box.row.column(5).right()
    for x in (edge - 8, edge + 8):
        box.row._light(None)
        QTest.mouseMove(box.row, QPoint(round(x), 60))
        qtbot.waitUntil(lambda: box.row.seam == 5)
    lit = box.row.grab().toImage()
    for place, face, changes in (
        (5, Face.B, True),
        (6, Face.A, True),
        (5, Face.A, False),
        (6, Face.B, False),
    ):
        rect = box.row.picture_rect(place, face)
        at = rect.topLeft().toPoint() + QPoint(1, 20)
        assert (lit.pixelColor(at) != dark.pixelColor(at)) is changes
    assert lit.size() == dark.size()


def test_the_seam_at_the_wall_has_one_side(box: BoxView) -> None:
    assert box.row.seam_at(box.row.column(1).topLeft() + QPoint(4, 50)) == 0
    assert box.row.seam_at(box.row.column(11).topRight() + QPoint(-4, 50)) == 11
    box.row._light(0)
    assert not box.row.grab().isNull()


def test_typing_a_comb_shows_its_text_and_its_picture(box: BoxView, desk: Desk, keeping: Keeping) -> None:
    assert desk.spot.visit_id is not None
    assert box.row.combs[3].word == ""
    desk.do(LayOutComb(desk.spot.visit_id, keeping.frame(4), "E1O2S4H1"))
    assert box.row.combs[3].word == "E1O2S4H1"
    assert box.row.pictures.image(box.row.combs[3], Face.A) is not None
    desk.undo()
    box.row.draw()
    assert box.row.pictures.image(box.row.combs[3], Face.A) is None


def test_after_a_stroke_only_its_picture_is_painted_again(
    box: BoxView, desk: Desk, keeping: Keeping, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeping.paint(4, Face.A, Content.SEALED, count=1500, visit=desk.spot.visit_id)
    qtbot.wait(30)
    rects: list[QRect] = []
    original = box.row.paintEvent

    def noting(event: QPaintEvent) -> None:
        rects.append(event.rect())
        original(event)

    monkeypatch.setattr(box.row, "paintEvent", noting)
    keeping.paint(4, Face.A, Content.EGGS, first=600, count=20, visit=desk.spot.visit_id)
    qtbot.waitUntil(lambda: bool(rects))
    picture = box.row.picture_rect(4, Face.A).toAlignedRect()
    assert all(picture.adjusted(-3, -3, 3, 3).contains(rect) for rect in rects)
    assert max(rect.height() for rect in rects) < picture.height() / 2


def test_a_change_in_another_box_shows_in_its_strip(desk: Desk, qtbot: QtBot) -> None:
    hive = desk.hive_day()
    assert hive is not None
    super_box = AddPart(
        hive.hive.id, PartKind.SUPER, CAME, frame_type="bs_shallow", places=10, new_frames=Content.FOUNDATION
    )
    part_id = desk.do(super_box)
    made = BoxView(desk)
    qtbot.addWidget(made)
    assert made._folded == []
    hive = desk.hive_day()
    assert hive is not None
    frame = hive.frames_of(PartId(as_int(part_id)))[3].frame
    assert frame is not None
    assert desk.spot.visit_id is not None
    desk.do(LayOutComb(desk.spot.visit_id, frame.id, "H8"))
    assert [folded.accessibleName() for folded in made._folded] == ["super, 10 combs"]


def test_the_numbers_of_the_box_follow(box: BoxView, desk: Desk, keeping: Keeping, qtbot: QtBot) -> None:
    assert desk.spot.visit_id is not None
    desk.do(LayOutComb(desk.spot.visit_id, keeping.frame(4), "S8"))
    said = "brood on 1 comb, worth 1, no stores; 1 of 11 combs looked at"
    qtbot.waitUntil(lambda: box._numbers.text() == said)


def test_above_twelve_combs_the_row_scrolls_and_keeps_the_comb_in_view(
    box: BoxView, desk: Desk, keeping: Keeping
) -> None:
    colony = keeping.another("Gate", places=16, combs=())
    desk.go(colony_id=colony, view=View.BOX)
    assert len(box.row.combs) == 16
    bar = box._scroll.horizontalScrollBar()
    assert bar.maximum() > 0
    QTest.keyClick(box.row, Qt.Key.Key_End)
    assert bar.value() == bar.maximum()


def test_first_seen_it_keeps_no_room_for_a_bar_it_does_not_need(desk: Desk, qtbot: QtBot) -> None:
    rooms = QStackedWidget()
    qtbot.addWidget(rooms)
    rooms.resize(1366, 700)
    walk = QWidget()
    column = QVBoxLayout(walk)
    box = BoxView(desk, walk)
    column.addWidget(box)
    rooms.addWidget(QWidget())
    rooms.addWidget(walk)
    rooms.show()
    qtbot.waitExposed(rooms)
    rooms.setCurrentWidget(walk)
    qtbot.waitUntil(lambda: box.width() > 1300)
    first = box.height()
    box.refresh()
    assert box.height() == first


def test_another_box_is_folded_to_a_strip_that_unfolds(desk: Desk, qtbot: QtBot) -> None:
    brood = desk.spot.part_id
    hive = desk.hive_day()
    assert hive is not None
    desk.do(
        AddPart(
            hive.hive.id,
            PartKind.SUPER,
            CAME,
            frame_type="bs_shallow",
            places=10,
            new_frames=Content.FOUNDATION,
        )
    )
    roomy = QWidget()
    qtbot.addWidget(roomy)
    roomy.resize(1090, 900)
    box = BoxView(desk, roomy)
    assert len(box._folded) == 1
    assert box._folded[0].accessibleName() == "super, 10 combs"
    QTest.mouseClick(box._folded[0], Qt.MouseButton.LeftButton)
    assert desk.spot.part_id != brood
    assert box._folded[0].accessibleName() == "brood box, 11 combs"
    QTest.keyClick(box._folded[0], Qt.Key.Key_Return)
    assert desk.spot.part_id == brood


def test_on_a_low_screen_folded_boxes_share_one_strip(desk: Desk, qtbot: QtBot) -> None:
    hive = desk.hive_day()
    assert hive is not None
    assert desk.spot.visit_id is not None
    for _ in range(2):
        made = desk.do(
            AddPart(
                hive.hive.id,
                PartKind.SUPER,
                CAME,
                frame_type="bs_shallow",
                places=9,
                new_frames=Content.EMPTY,
            )
        )
        hive = desk.hive_day()
        assert hive is not None
        frame = hive.frames_of(PartId(as_int(made)))[0].frame
        assert frame is not None
        desk.do(LayOutComb(desk.spot.visit_id, frame.id, "H8"))
    heights = []
    for height in (700, 1000):
        window = QWidget()
        qtbot.addWidget(window)
        window.resize(1090, height)
        view = BoxView(desk, window)
        view.resize(1090, view.height())
        window.show()
        assert len(view._folded) == 2
        heights.append(view.height() - view.row.height())
    assert heights[1] - heights[0] == FOLDED_PX


def test_a_day_without_a_visit_says_so(box: BoxView, desk: Desk) -> None:
    desk.go(day=LATER - timedelta(days=3))
    assert box._numbers.text() == "no visit on this day yet"


def test_the_row_says_what_it_shows(box: BoxView, desk: Desk, keeping: Keeping) -> None:
    assert desk.spot.visit_id is not None
    desk.do(LayOutComb(desk.spot.visit_id, keeping.frame(1), "H5N2.Q"))
    said = box.row.accessibleDescription()
    assert "comb 1, side A" in said
    assert "queen seen" in said
    assert box.row.toolTip()


def test_the_keyboard_on_the_row_leads_back_from_the_bench(box: BoxView, desk: Desk) -> None:
    box.row.clearFocus()
    desk.go(view=View.BENCH)
    box.take_focus()
    assert desk.spot.view is View.BOX


def test_it_goes_dark(box: BoxView, desk: Desk) -> None:
    light = box.grab().toImage()
    desk.set_palette(DARK)
    assert box.grab().toImage() != light
