from pytestqt.qtbot import QtBot

from beeworkbook.bench.bench_view import BenchView
from beeworkbook.bench.box_view import BoxView
from beeworkbook.bench.seen_face import SeenFace
from beeworkbook.comb.contents import Content, Face
from beeworkbook.qt.desk import Desk
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from tests.workbook.keeping import Keeping


class Counting(SeenFace):
    def __init__(self) -> None:
        super().__init__()
        self.times = 0

    def refresh(self) -> None:
        self.times += 1


def test_a_face_follows_while_it_is_seen_and_catches_up_once(qtbot: QtBot) -> None:
    face = Counting()
    qtbot.addWidget(face)
    face.refresh_if_seen()
    assert face.times == 1
    face.show()
    face.refresh_if_seen()
    assert face.times == 2
    face.hide()
    for _ in range(5):
        face.refresh_if_seen()
    assert (face.times, face.is_behind) == (2, True)
    face.show()
    assert (face.times, face.is_behind) == (3, False)
    face.hide()
    face.show()
    assert face.times == 3


def test_box_and_bench_catch_up_with_what_was_done_elsewhere(
    desk: Desk, keeping: Keeping, qtbot: QtBot
) -> None:
    box, bench = BoxView(desk), BenchView(desk)
    for face in (box, bench):
        qtbot.addWidget(face)
        face.show()
        face.hide()
    assert desk.spot.visit_id is not None
    desk.do(LayOutComb(desk.spot.visit_id, keeping.frame(1), "S8"))
    assert box.row.combs[0].typed == ""
    assert bench.sides[Face.A].canvas.side.counts[Content.SEALED] == 0
    box.show()
    bench.show()
    assert box.row.combs[0].typed == "S"
    assert bench.sides[Face.A].canvas.side.counts[Content.SEALED] > 2000
