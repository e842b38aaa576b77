"""Drawings that change places: two sides, the two faces of a comb, all of one comb for all of another."""

from collections.abc import Iterable
from dataclasses import replace

from beeworkbook.colony.records import FrameId, Mark, PartId, Side, VisitId
from beeworkbook.comb.contents import Face
from beeworkbook.store.transaction import Transaction
from beeworkbook.workbook.found import side_of


def exchange(tx: Transaction, one: Side, other: Side) -> None:
    """Each record shows what the other showed; the records stay where they hang.

    The drawings change places and not the records, since no two may ever claim one face at once.
    What was copied from either is pointed to the one that shows it now.
    """
    followers = [(one.id, tx.find(Side, copied_from=other.id)), (other.id, tx.find(Side, copied_from=one.id))]
    tx.put(_showing(one, other))
    tx.put(_showing(other, one))
    for side_id, sides in followers:
        for side in sides:
            if side.id not in {one.id, other.id}:
                tx.put(replace(side, copied_from=side_id))


def _showing(side: Side, drawing: Side) -> Side:
    # A copy of the very side it changes with would point to itself.
    source = None if drawing.copied_from == side.id else drawing.copied_from
    return replace(
        side,
        frame_type=drawing.frame_type,
        origin=drawing.origin,
        grain=drawing.grain,
        cells=drawing.cells,
        drone_cells=drawing.drone_cells,
        covered=drawing.covered,
        typed=drawing.typed,
        copied_from=source,
    )


def swap_faces(tx: Transaction, visit_id: VisitId, frame_id: FrameId) -> None:
    """What was noted of A is noted of B and the other way about, with the marks."""
    a, b = (side_of(tx, visit_id, frame_id, face) for face in Face)
    if a is not None and b is not None:
        exchange(tx, a, b)
    else:
        for side in (a, b):
            if side is not None:
                tx.put(replace(side, face=side.face.other))
    for mark in tx.find(Mark, visit_id=visit_id, frame_id=frame_id):
        if mark.face is not None:
            tx.put(replace(mark, face=mark.face.other))


def move_combs(
    tx: Transaction,
    visit_id: VisitId,
    frame_id: FrameId,
    to_visit: VisitId,
    to_frame: FrameId,
    *,
    to_part: PartId,
    to_place: int,
) -> None:
    """The sides and marks of one comb go to another; what was noted there comes back in exchange."""
    here = {side.face: side for side in tx.find(Side, visit_id=visit_id, frame_id=frame_id)}
    there = {side.face: side for side in tx.find(Side, visit_id=to_visit, frame_id=to_frame)}
    marks = (
        tx.find(Mark, visit_id=visit_id, frame_id=frame_id),
        tx.find(Mark, visit_id=to_visit, frame_id=to_frame),
    )
    back = next(iter(here.values()), None)
    for face in Face:
        if face in here and face in there:
            exchange(tx, here[face], there[face])
        elif face in here:
            tx.put(replace(here[face], visit_id=to_visit, frame_id=to_frame, part_id=to_part, place=to_place))
        elif face in there and back is not None:
            tx.put(
                replace(
                    there[face],
                    visit_id=visit_id,
                    frame_id=frame_id,
                    part_id=back.part_id,
                    place=back.place,
                )
            )
    _send(tx, marks[0], to_visit, to_frame)
    _send(tx, marks[1], visit_id, frame_id)


def _send(tx: Transaction, marks: Iterable[Mark], visit_id: VisitId, frame_id: FrameId) -> None:
    for mark in marks:
        tx.put(replace(mark, visit_id=visit_id, frame_id=frame_id))
