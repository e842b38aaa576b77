"""One side of one comb in one visit, made and put: shared by the edits that draw."""

from dataclasses import replace

from beeworkbook.colony.hive import holds_on
from beeworkbook.colony.records import Frame, FrameId, FrameStay, Side, SideId, Visit
from beeworkbook.comb.codec import pack
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.comb.side import blank_cells
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import frame_type_of, place_of_comb, side_of, the
from beeworkbook.workbook.place import Place


def side_or_blank(tx: Transaction, visit: Visit, frame_id: FrameId, face: Face) -> Side:
    """What was noted of this side, or a side with nothing recorded yet and no id.

    Errors: RefusedError if the comb hung in no hive that day.
    """
    present = side_of(tx, visit.id, frame_id, face)
    if present is not None:
        return present
    frame = the(tx, Frame, frame_id)
    part_id, place = place_of_comb(tx, visit, frame_id)
    lattice = frame_type_of(tx, frame.frame_type).lattice
    return Side(
        SideId(0),
        visit.id,
        frame_id,
        part_id,
        place,
        face,
        frame.frame_type,
        Origin.EIGHTHS,
        Origin.EIGHTHS,
        pack(blank_cells(lattice)),
        frame.drone_cells,
    )


def put_side(tx: Transaction, side: Side) -> Side:
    """Keep this side, as a new one if it has no id yet."""
    if not side.id:
        return tx.add(side)
    if side_of(tx, side.visit_id, side.frame_id, side.face) != side:
        tx.put(side)
    return side


def cells_in(tx: Transaction, side: Side) -> int:
    """How many cells this side has."""
    return frame_type_of(tx, side.frame_type).lattice.cells


def place_of_side(visit: Visit, side: Side) -> Place:
    """Where undo takes the person."""
    return Place(visit.colony_id, visit.id, side.part_id, side.frame_id, side.face)


def side_name(side: Side) -> str:
    """A side as the keeper says it: "5A"."""
    return f"{side.place}{side.face}"


def last_side(tx: Transaction, visit: Visit, frame_id: FrameId, face: Face, *, seen: bool) -> Side | None:
    """What was noted of this face of the frame at the latest visit before this one.

    A frame turned round since shows its other letter. seen leaves out what was only assumed.
    """
    sides = tx.find(Side, frame_id=frame_id)
    visits = {visit_id: the(tx, Visit, visit_id) for visit_id in {side.visit_id for side in sides}}
    stays = tx.find(FrameStay, frame_id=frame_id)
    turned = _turned(stays, visit)
    earlier = [
        (before.day, before.id, side)
        for side in sides
        if (before := visits[side.visit_id]).day < visit.day
        and side.face is (face if _turned(stays, before) == turned else face.other)
        and not (seen and side.origin is Origin.ASSUMED)
    ]
    return max(earlier, key=lambda found: found[:2])[2] if earlier else None


def _turned(stays: tuple[FrameStay, ...], visit: Visit) -> bool:
    return any(stay.turned for stay in stays if holds_on(stay, visit.day))


def copied(tx: Transaction, side: Side, source: Side, origin: Origin) -> Side:
    """The side showing what the source shows, as coarse as that is.

    Errors: RefusedError if the two are not of one frame type.
    """
    if source.frame_type != side.frame_type:
        raise RefusedError(other_frames(tx, source.frame_type, side.frame_type))
    return replace(
        side, origin=origin, grain=source.grain, cells=source.cells, copied_from=source.id, typed=""
    )


def other_frames(tx: Transaction, one: str, other: str) -> str:
    """The sentence for a drawing that does not fit."""
    return say(
        "A drawing of a {one} frame does not fit a {other} frame.",
        one=frame_type_of(tx, one).name,
        other=frame_type_of(tx, other).name,
    )
