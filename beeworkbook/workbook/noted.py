"""Whether anything was noted in a visit: a page that was only opened is not a look."""

from beeworkbook.colony.records import Event, Feed, Frame, Mark, Visit
from beeworkbook.store.reader import Reader


def is_noted(read: Reader, visit: Visit) -> bool:
    """Whether an answer, a drawing, a mark, an event, feed, a note or a next day is kept of this visit.

    The foundation of frames that were new that day is none: they came with a box.
    """
    if visit.note or visit.next_day is not None or read.answers(visit.id):
        return True
    if any(read.find(cls, visit_id=visit.id) for cls in (Feed, Event, Mark)):
        return True
    if read.find(Feed, colony_id=visit.colony_id, left_day=visit.day):
        return True
    seen = {side.frame_id for side in read.visit_totals(visit.id).sides if side.counted}
    frames = (read.get(Frame, frame_id) for frame_id in seen)
    return any(frame is None or frame.since != visit.day for frame in frames)
