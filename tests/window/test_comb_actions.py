"""The wrong page mended in a gesture or two and one step of undo; combs moved, turned, put in, taken out."""

from PySide6.QtCore import Qt

from beeworkbook.colony.records import Colony, Frame, FrameMake, FrameStay, Side
from beeworkbook.comb.contents import Face
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Form
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from tests.window.conftest import ALT, CTRL, Answerer, press, write


def draw(window: MainWindow, typed: str = "S4/H8") -> tuple[int, int]:
    """A comb typed in a visit of today; gives the visit and the frame."""
    window.go_to(View.BENCH)
    visit_id, frame_id = window.desk.visit_to_write(), window.desk.spot.frame_id
    assert visit_id is not None
    assert frame_id is not None
    window.desk.do(LayOutComb(visit_id, frame_id, typed))
    return visit_id, frame_id


def typed_on(window: MainWindow, visit_id: int, frame_id: int) -> dict[Face, str]:
    sides = window.desk.book.read.find(Side, visit_id=visit_id, frame_id=frame_id)
    return {side.face: side.typed for side in sides}


def test_sides_are_swapped_by_one_key_and_back_by_undo(window: MainWindow) -> None:
    visit_id, frame_id = draw(window)
    before = typed_on(window, visit_id, frame_id)
    press(Qt.Key.Key_X, CTRL | ALT)
    after = typed_on(window, visit_id, frame_id)
    assert (after[Face.A], after[Face.B]) == (before[Face.B], before[Face.A])
    press(Qt.Key.Key_Z, CTRL)
    assert typed_on(window, visit_id, frame_id) == before


def test_a_side_is_cleared(window: MainWindow) -> None:
    visit_id, frame_id = draw(window)
    press(Qt.Key.Key_Delete, CTRL)
    assert set(typed_on(window, visit_id, frame_id)) == {Face.B}
    press(Qt.Key.Key_Z, CTRL)
    assert set(typed_on(window, visit_id, frame_id)) == {Face.A, Face.B}


def test_a_drawing_is_moved_to_another_colony(window: MainWindow, answer: Answerer) -> None:
    visit_id, frame_id = draw(window)
    desk = window.desk
    gate = next(colony for colony in desk.book.read.find(Colony) if colony.name == "Gate")

    def move(form: object) -> None:
        assert isinstance(form, Form)
        write("Gate")
        press(Qt.Key.Key_Tab, times=2)
        press(Qt.Key.Key_Down, times=3)
        press(Qt.Key.Key_Return)

    answer(move)
    press(Qt.Key.Key_M, CTRL | ALT)
    assert desk.spot.colony_id == gate.id
    assert typed_on(window, visit_id, frame_id) == {}
    assert desk.spot.visit_id is not None
    assert desk.spot.frame_id is not None
    assert set(typed_on(window, desk.spot.visit_id, desk.spot.frame_id)) == {Face.A, Face.B}
    box = desk.box()
    assert box is not None
    assert next(p.place for p in box.frames if p.frame and p.frame.id == desk.spot.frame_id) == 4
    press(Qt.Key.Key_Z, CTRL)
    assert set(typed_on(window, visit_id, frame_id)) == {Face.A, Face.B}


def test_a_drawing_cannot_go_to_a_day_the_colony_stood_nowhere(window: MainWindow, answer: Answerer) -> None:
    draw(window)

    def move(form: object) -> None:
        assert isinstance(form, Form)
        press(Qt.Key.Key_Tab)
        write("2020-01-01")
        press(Qt.Key.Key_Return)
        assert "stood in no hive on that day" in form.wrong.text()

    answer(move)
    press(Qt.Key.Key_M, CTRL | ALT)


def test_a_comb_is_turned_taken_out_and_put_in(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    window.go_to(View.BENCH)
    frame_id = desk.spot.frame_id
    press(Qt.Key.Key_T, CTRL | ALT)
    assert any(stay.turned for stay in desk.book.read.find(FrameStay, frame_id=frame_id))
    press(Qt.Key.Key_I, CTRL | ALT)
    assert "Every place of this box is taken" in window.told_line.sentence
    press(Qt.Key.Key_O, CTRL | ALT)
    box = desk.box()
    assert box is not None
    assert [place.place for place in box.frames if place.frame is None] == [1]
    assert desk.spot.frame_id not in {None, frame_id}

    def put_in(form: object) -> None:
        assert isinstance(form, Form)
        press(Qt.Key.Key_Tab, times=3)
        press(Qt.Key.Key_Space)
        press(Qt.Key.Key_Return)

    answer(put_in)
    press(Qt.Key.Key_I, CTRL | ALT)
    box = desk.box()
    assert box is not None
    assert box.frames[0].frame is not None
    assert box.frames[0].frame.make is FrameMake.DUMMY


def test_two_combs_change_places(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    window.go_to(View.BENCH)
    first = desk.spot.frame_id

    def move(_form: object) -> None:
        press(Qt.Key.Key_Tab)
        press(Qt.Key.Key_Down, times=2)
        press(Qt.Key.Key_Return)

    answer(move)
    press(Qt.Key.Key_C, CTRL | ALT)
    box = desk.box()
    assert box is not None
    assert box.frames[2].frame is not None
    assert box.frames[2].frame.id == first


def test_a_comb_of_drone_cells_is_said_to_be_one(window: MainWindow) -> None:
    desk = window.desk
    window.go_to(View.BENCH)
    press(Qt.Key.Key_G, CTRL | ALT)
    frame = desk.book.read.get(Frame, desk.spot.frame_id)
    assert frame is not None
    assert frame.drone_cells
    assert "drone cells" in window.told_line.sentence
    press(Qt.Key.Key_Z, CTRL)
    frame = desk.book.read.get(Frame, desk.spot.frame_id)
    assert frame is not None
    assert not frame.drone_cells


def test_without_a_drawing_nothing_is_mended(window: MainWindow) -> None:
    window.go_to(View.BOX)
    for key in (Qt.Key.Key_X, Qt.Key.Key_M):
        press(key, CTRL | ALT)
        assert "No drawing lies open" in window.told_line.sentence
    assert window.desk.visit is None


def test_the_visit_before_shines_through_by_a_key(window: MainWindow) -> None:
    window.go_to(View.BENCH)
    action = window.actions_by_name["shine_through"]
    press(Qt.Key.Key_L, CTRL)
    assert action.isChecked()
    assert window.bench._shines
    press(Qt.Key.Key_L, CTRL)
    assert not window.bench._shines
