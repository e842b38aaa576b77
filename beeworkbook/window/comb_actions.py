"""Mending the wrong page and moving combs: what the Comb menu does."""

from beeworkbook.colony.records import Colony, Frame, FrameMake, PartId
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.window.dialogs.form import Choice, DayLine, Form, Tick
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import say
from beeworkbook.workbook.edits.combs import ClearSide
from beeworkbook.workbook.edits.frames import AddFrame, MoveFrame, TakeFrame, TurnFrame
from beeworkbook.workbook.edits.mend import MoveDrawing, SwapSides


def swap_sides(window: MainWindow) -> None:
    """The sides of this comb were drawn the wrong way round."""
    spot = window.desk.spot
    if spot.visit_id and spot.frame_id:
        window.desk.do(SwapSides(spot.visit_id, spot.frame_id), source=window)


def clear_side(window: MainWindow) -> None:
    """Nothing recorded on this side."""
    spot = window.desk.spot
    if spot.visit_id and spot.frame_id:
        window.desk.do(ClearSide(spot.visit_id, spot.frame_id, spot.face), source=window)


def move_drawing(window: MainWindow) -> None:
    """The drawing belongs to another comb, colony or day."""
    desk = window.desk
    spot = desk.spot
    if spot.visit_id is None or spot.frame_id is None or spot.colony_id is None:
        window.tell(say("No drawing lies open to be moved."))
        return
    form = Form(
        window, say("Move this drawing"), say("Move it"), say("Both sides and their marks go with it.")
    )
    colonies = sorted(desk.book.read.find(Colony), key=lambda colony: colony.name)
    colony = form.add(Choice(say("To colony"), [(held.name, held.id) for held in colonies], spot.colony_id))
    day = form.add(DayLine(say("To day"), spot.day, desk.today))
    comb = form.add(Choice(say("To comb"), []))

    def fill() -> None:
        comb.combo.clear()
        comb._values[:] = []  # noqa: SLF001  # the choice is filled anew when the colony changes
        hive = desk.book.read.hive_day(colony.value, day.day)  # type: ignore[arg-type]
        for box in hive.boxes if hive else ():
            for place in box.frames:
                if place.frame is not None and place.frame.make is FrameMake.FRAME:
                    name = say(
                        "{box} comb {place}",
                        box=say(box.part.kind.value.replace("_", " ")),
                        place=place.place,
                    )
                    comb.combo.addItem(name)
                    comb._values.append(place.frame.id)  # noqa: SLF001  # as above

    colony.on_change(fill)
    fill()
    if form.ask() and comb.value is not None:
        edit = MoveDrawing(
            spot.visit_id,
            spot.frame_id,
            comb.value,  # type: ignore[arg-type]
            to_colony_id=colony.value,  # type: ignore[arg-type]
            to_day=day.day,
        )
        made = desk.do(edit, source=window)
        if made is not None:
            desk.go(visit_id=made, frame_id=comb.value)


def turn_comb(window: MainWindow) -> None:
    """From this day the comb hangs the other way round."""
    spot = window.desk.spot
    if spot.frame_id:
        window.desk.do(TurnFrame(spot.frame_id, spot.day), source=window)


def take_comb(window: MainWindow) -> None:
    """From this day the comb is out of the box."""
    spot = window.desk.spot
    if spot.frame_id:
        window.desk.do(TakeFrame(spot.frame_id, spot.day), source=window)


def move_comb(window: MainWindow) -> None:
    """From a day on the comb hangs in another place; a taken place changes with it."""
    desk = window.desk
    hive = desk.hive_day()
    if hive is None or desk.spot.frame_id is None:
        return
    form = Form(
        window,
        say("Move this comb"),
        say("Move it"),
        say("If the place is taken, the two combs change places."),
    )
    day = form.add(DayLine(say("From day"), desk.spot.day, desk.today))
    options: list[tuple[str, object]] = [
        (
            say("{box}, place {place}", box=_box_words(box.part.kind.value), place=place.place),
            (box.part.id, place.place),
        )
        for box in hive.boxes
        for place in box.frames
    ]
    to = form.add(Choice(say("To"), options))
    if form.ask() and isinstance(to.value, tuple):
        part_id, place = to.value
        desk.do(MoveFrame(desk.spot.frame_id, part_id, place, day.day), source=window)


def add_comb(window: MainWindow) -> None:
    """A new frame or a dummy board into an empty place."""
    desk = window.desk
    box = desk.box()
    if box is None:
        return
    free = [place.place for place in box.frames if place.frame is None]
    if not free:
        window.tell(say("Every place of this box is taken: take a comb out first."))
        return
    form = Form(window, say("Put a frame in"), say("Put it in"))
    day = form.add(DayLine(say("From day"), desk.spot.day, desk.today))
    place = form.add(Choice(say("Place"), [(str(at), at) for at in free]))
    dummy = form.add(Tick(say("a dummy board")))
    drone = form.add(
        Tick(say("drone cells"), hint=say("drone foundation: its brood is counted at drone density"))
    )
    if form.ask():
        make = FrameMake.DUMMY if dummy.on else FrameMake.FRAME
        edit = AddFrame(PartId(box.part.id), int(str(place.value)), day.day, make=make, drone_cells=drone.on)
        desk.do(edit, source=window)


def shine_through(window: MainWindow) -> None:
    """Show the outlines of the visit before under the drawing, or not."""
    window.bench.set_shine_through(on=window.actions_by_name["shine_through"].isChecked())


def frame_words(frame: Frame) -> str:
    """A frame in words: its name and its type."""
    kind = FRAME_TYPES.get(frame.frame_type)
    return f"{frame.name or frame.id} ({kind.name if kind else frame.frame_type})"


def _box_words(kind: str) -> str:
    return say(kind.replace("_", " "))
