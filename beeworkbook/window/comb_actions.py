"""Mending the wrong page and moving combs: what the Comb menu does."""

from beeworkbook.colony.box_names import box_title
from beeworkbook.colony.records import Colony, FrameMake, PartId
from beeworkbook.qt.typed_day import DayError
from beeworkbook.window.dialogs.form import Choice, DayLine, FieldError, Form, Tick
from beeworkbook.window.dialogs.frame_choice import frame_options
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import say
from beeworkbook.workbook.edits.combs import ClearSide
from beeworkbook.workbook.edits.frames import AddFrame, MoveFrame, SetDroneCells, TakeFrame, TurnFrame
from beeworkbook.workbook.edits.mend import MoveDrawing, SwapSides


def swap_sides(window: MainWindow) -> None:
    """The sides of this comb were drawn the wrong way round."""
    spot = window.desk.spot
    if spot.visit_id and spot.frame_id:
        window.desk.do(SwapSides(spot.visit_id, spot.frame_id), source=window)
    else:
        window.tell(say("No drawing lies open."))


def clear_side(window: MainWindow) -> None:
    """Nothing recorded on this side."""
    spot = window.desk.spot
    if spot.visit_id and spot.frame_id:
        window.desk.do(ClearSide(spot.visit_id, spot.frame_id, spot.face), source=window)
    else:
        window.tell(say("No drawing lies open."))


def move_drawing(window: MainWindow) -> None:
    """The drawing belongs to another comb, colony or day."""
    desk = window.desk
    visit_id, frame_id, colony_id = desk.spot.visit_id, desk.spot.frame_id, desk.spot.colony_id
    if visit_id is None or frame_id is None or colony_id is None:
        window.tell(say("No drawing lies open to be moved."))
        return
    form = Form(
        window, say("Move this drawing"), say("Move it"), say("Both sides and their marks go with it.")
    )
    colonies = sorted(desk.book.read.find(Colony), key=lambda colony: colony.name.casefold())
    colony = form.add(Choice(say("To colony"), [(held.name, held.id) for held in colonies], colony_id))
    day = form.add(DayLine(say("To day"), desk.spot.day, desk.today))
    comb = form.add(Choice(say("To comb"), []))

    def offer_combs() -> None:
        comb.offer(_combs_of(window, colony, day), frame_id)

    colony.on_change(offer_combs)
    day.line.textChanged.connect(lambda _text: offer_combs())
    offer_combs()

    def move() -> object:
        edit = MoveDrawing(
            visit_id,
            frame_id,
            comb.value,  # type: ignore[arg-type]  # the options are frame ids
            to_colony_id=colony.value,  # type: ignore[arg-type]  # the options are colony ids
            to_day=day.day,
        )
        return desk.book.do(edit, source=window)

    form.add_check(lambda: _needs_a_comb(comb))
    if form.ask(move):
        desk.go(visit_id=form.made, frame_id=comb.value)


def _combs_of(window: MainWindow, colony: Choice, day: DayLine) -> list[tuple[str, object]]:
    """The combs that hung in a colony's hive on a day, in words."""
    try:
        hive = window.desk.book.read.hive_day(colony.value, day.day)  # type: ignore[arg-type]  # as above
    except DayError:
        return []
    if hive is None:
        return []
    return [
        (say("{box}, comb {place}", box=box_title(hive, box.part.id), place=place.place), place.frame.id)
        for box in hive.boxes
        for place in box.frames
        if place.frame is not None and place.frame.make is FrameMake.FRAME
    ]


def _needs_a_comb(comb: Choice) -> None:
    if comb.value is None:
        raise FieldError(say("That colony stood in no hive on that day, or it held no comb."), comb)


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


def drone_comb(window: MainWindow) -> None:
    """This comb has drone cells, or has not: its drone brood is counted accordingly."""
    desk = window.desk
    box = desk.box()
    frames = [place.frame for place in box.frames if place.frame is not None] if box else []
    frame = next((frame for frame in frames if frame.id == desk.spot.frame_id), None)
    if frame is None:
        return
    desk.do(SetDroneCells(frame.id, not frame.drone_cells, desk.spot.visit_id), source=window)
    words = say("This comb has worker cells.") if frame.drone_cells else say("This comb has drone cells.")
    window.tell(words)


def move_comb(window: MainWindow) -> None:
    """From a day on the comb hangs in another place; a taken place changes with it."""
    desk = window.desk
    hive, frame_id = desk.hive_day(), desk.spot.frame_id
    if hive is None or frame_id is None:
        return
    form = Form(
        window,
        say("Move this comb"),
        say("Move it"),
        say("If the place is taken, the two combs change places."),
    )
    day = form.add(DayLine(say("From day"), desk.spot.day, desk.today))
    held = hive.place_of(frame_id)
    here = (held[0].part.id, held[1]) if held is not None else None
    options: list[tuple[str, object]] = [
        (
            say("{box}, place {place}", box=box_title(hive, box.part.id), place=place.place),
            (box.part.id, place.place),
        )
        for box in hive.boxes
        for place in box.frames
    ]
    to = form.add(Choice(say("To"), options, here))

    def move() -> object:
        if not isinstance(to.value, tuple):
            return None
        part_id, place = to.value
        return desk.book.do(MoveFrame(frame_id, part_id, place, day.day), source=window)

    form.ask(move)


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
    kind = form.add(Choice(say("Frame"), frame_options(desk.book), box.part.frame_type))
    kind.combo.setMaximumWidth(330)
    dummy = form.add(Tick(say("a dummy board")))
    drone = form.add(
        Tick(say("drone cells"), hint=say("drone foundation: its brood is counted at drone density"))
    )

    def put() -> object:
        edit = AddFrame(
            PartId(box.part.id),
            int(str(place.value)),
            day.day,
            str(kind.value),
            FrameMake.DUMMY if dummy.on else FrameMake.FRAME,
            drone_cells=drone.on,
        )
        return desk.book.do(edit, source=window)

    if form.ask(put) and isinstance(form.made, int):
        desk.go(frame_id=form.made)


def shine_through(window: MainWindow) -> None:
    """Show the outlines of the visit before under the drawing, or not."""
    window.bench.set_shine_through(on=window.actions_by_name["shine_through"].isChecked())
