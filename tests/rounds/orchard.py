"""A small invented apiary for the tests of rounds and of the page: four colonies with a line last week.

Names are invented; no number here is a fact about bees.
"""

from datetime import date
from pathlib import Path
from typing import Final

from beeworkbook.colony.records import Apiary, Arrival, ColonyId, Question, VisitId
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony
from beeworkbook.workbook.edits.events import QueenSpec
from beeworkbook.workbook.edits.feed import GiveFeed
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.visit import SetAnswer, SetNote
from beeworkbook.workbook.workbook import Workbook

DAY: Final = date(2026, 5, 16)
LAST: Final = date(2026, 5, 9)
NAMES: Final = ("Pear Tree", "Gate", "Wall", "Elder")
NONE: Final = VisitId(0)


def make_orchard(path: Path, names: tuple[str, ...] = NAMES, today: date = DAY) -> Workbook:
    """A new workbook with these colonies in one apiary, each with a line of the week before."""
    book = Workbook.create(path, "Orchard book", today=today)
    apiary_id = None
    for stand, name in enumerate(names, 1):
        spec = ArrivalSpec(
            name,
            Arrival.UNKNOWN,
            date(2025, 5, 1),
            apiary_id=apiary_id,
            apiary_name="" if apiary_id else "Orchard",
            stand_name=str(stand),
            places=11,
            queen=QueenSpec(mark_colour="yellow", clipped=False),
        )
        colony_id = ColonyId(int(str(book.do(ArriveColony(spec)))))
        apiary_id = book.read.find(Apiary)[0].id
        typed = {
            Question.OPENED: "y",
            Question.EGGS: "4-5",
            Question.BROOD: "6/2.6",
            Question.SEAMS: "7",
            Question.STORES: "7",
            Question.TEMPER: "q",
        }
        edits = [SetAnswer(NONE, question, text) for question, text in typed.items()]
        note = SetNote(NONE, "Super to go on next time")
        feed = GiveFeed(colony_id, LAST, "2L 1:1", NONE)
        book.do(OnLine(apiary_id, colony_id, LAST, (*edits, note, feed)))
    return book
