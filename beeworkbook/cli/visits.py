"""Which visit a command means when it was not told: the last one worth a picture."""

from datetime import date
from typing import TYPE_CHECKING

from beeworkbook.colony.records import ColonyId, Level, Visit

if TYPE_CHECKING:
    from beeworkbook.workbook.workbook import Workbook


def drawn_visit(book: "Workbook", colony_id: ColonyId, until: date) -> Visit | None:
    """The visit of this day, or else the last one before it at which combs were noted; None if none was."""
    visits = [visit for visit in book.read.visits(colony_id) if visit.day <= until]
    if visits and visits[-1].day == until:
        return visits[-1]
    return next((visit for visit in reversed(visits) if book.read.sides(visit.id)), None)


def shown_visit(book: "Workbook", until: date) -> Visit | None:
    """The visit the window is shown at: the last painted one up to a day, else the last with combs noted."""
    visits = [visit for visit in book.read.find(Visit) if visit.day <= until]
    visits.sort(key=lambda visit: (visit.day, visit.id), reverse=True)
    painted = next((visit for visit in visits if visit.level is Level.PAINTED), None)
    return painted or next((visit for visit in visits if book.read.sides(visit.id)), None)
