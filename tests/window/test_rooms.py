from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.window.rooms import PAGE_WIDTH, RULER_HEIGHT, TALL_RULER_HEIGHT, WIDE_PAGE_WIDTH, Room, Rooms
from beeworkbook.window.shell import STANDS_HEIGHT


def test_the_box_stands_where_it_will_stay_whatever_is_hung_round_it(qtbot: QtBot) -> None:
    window, box = QWidget(), QWidget()
    qtbot.addWidget(window)
    box.setFixedHeight(150)
    rooms = Rooms(window, box)
    rooms.fit(1366, 740)
    window.resize(1366, 740)
    window.show()
    QApplication.processEvents()
    top, width = box.mapTo(window, box.rect().topLeft()).y(), box.width()
    assert top >= STANDS_HEIGHT + RULER_HEIGHT
    assert width <= 1366 - PAGE_WIDTH
    for room in (rooms.stands, rooms.ruler, rooms.bench, rooms.keys, rooms.side):
        room.hang(QLabel("a part"))
    QApplication.processEvents()
    assert (box.mapTo(window, box.rect().topLeft()).y(), box.width()) == (top, width)


def test_large_screens_get_a_wider_page_and_a_taller_ruler(qtbot: QtBot) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    rooms = Rooms(window, QWidget())
    rooms.fit(2560, 1440)
    assert rooms.side.minimumWidth() == WIDE_PAGE_WIDTH
    assert rooms.ruler.minimumHeight() == TALL_RULER_HEIGHT
    rooms.fit(1366, 768)
    assert rooms.side.minimumWidth() == PAGE_WIDTH
    assert rooms.ruler.minimumHeight() == RULER_HEIGHT


def test_parts_of_a_room_hang_below_one_another(qtbot: QtBot) -> None:
    first, second = QLabel("first"), QLabel("second")
    room = Room(first)
    qtbot.addWidget(room)
    room.hang(second, 1)
    room.resize(100, 200)
    room.show()
    QApplication.processEvents()
    assert first.geometry().bottom() + 1 == second.geometry().top()
    assert second.geometry().bottom() + 1 == room.height()
