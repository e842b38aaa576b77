"""A side mirrored, or copied from another visit: what the Comb menu does with a drawing as a whole."""

from beeworkbook.colony.records import FrameId
from beeworkbook.comb.contents import Face
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.form import Choice, FieldError, Form
from beeworkbook.window.dialogs.other_looks import OtherLook, look_words, other_looks
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.combs import CopySide
from beeworkbook.workbook.edits.in_visit import NO_VISIT
from beeworkbook.workbook.edits.mirroring import MirrorSide
from beeworkbook.workbook.edits.together import Together


def mirror_side(window: MainWindow) -> None:
    """The side that lies open was drawn left for right."""
    spot = window.desk.spot
    if spot.visit_id and spot.frame_id:
        window.desk.do(MirrorSide(spot.visit_id, spot.frame_id, spot.face), source=window)
    else:
        window.tell(say("No drawing lies open."))


def copy_side(window: MainWindow) -> None:
    """A side, or both, are as they were at another visit: looked at, and as coarse as that look was."""
    desk = window.desk
    frame_id, face = desk.spot.frame_id, desk.spot.face
    looks = other_looks(desk, frame_id) if frame_id is not None else ()
    if frame_id is None or not looks:
        window.tell(say("This comb was not looked at on any other day."))
        return
    form = Form(
        window,
        say("Copy from another visit"),
        say("Copy it"),
        say("It counts as looked at and found as it was then, as coarse as that look was."),
    )
    look = form.add(Choice(say("As on"), [(look_words(desk, held), held) for held in looks]))
    sides: list[tuple[str, object]] = [
        (say("side {face} alone", face=face.value), (face,)),
        (say("both sides"), tuple(Face)),
    ]
    which = form.add(Choice(say("What"), sides))
    form.add_check(lambda: _needs_a_side(look, which))
    form.ask(lambda: _copy(desk, frame_id, *_chosen(look, which)))


def _chosen(look: Choice, which: Choice) -> tuple[OtherLook, tuple[Face, ...]]:
    held, faces = look.value, which.value
    if not isinstance(held, OtherLook) or not isinstance(faces, tuple):  # the options are nothing else
        raise TypeError("the options are looks and sides")
    return held, tuple(face for face in faces if face in held.sides)


def _needs_a_side(look: Choice, which: Choice) -> None:
    if not _chosen(look, which)[1]:
        raise FieldError(say("That side was not looked at on that day."), look)


def _copy(desk: Desk, frame_id: FrameId, look: OtherLook, faces: tuple[Face, ...]) -> object:
    """Copy these sides of a look to the day that lies open, in one step."""
    copies = tuple(CopySide(NO_VISIT, frame_id, face, look.sides[face].id) for face in faces)
    day = date_words(look.visit.day)
    return desk.note_or_refuse(Together(copies, say("copy the comb as it was on {day}", day=day)))
