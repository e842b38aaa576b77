"""All that a visit's sentences are made of, in one value, and the fields they lead to."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from beeworkbook.colony import phrases
from beeworkbook.colony.figures import VisitFigures
from beeworkbook.colony.records import Answer, Event, Feed, FrameId, Mark, Queen, Question, Reply
from beeworkbook.colony.said import CellsSaid, QueenSaid
from beeworkbook.colony.totals import VisitTotals
from beeworkbook.colony.written import combs_said, queen_said
from beeworkbook.comb.contents import Content, MarkKind


class Field(StrEnum):
    """The fields of a line that are no questions."""

    LEVEL = "level"
    HEFT = "heft"
    FEED = "feed"
    LEFT = "left"
    NOTE = "note"
    NEXT = "next"


Target = Question | Field


@dataclass(frozen=True)
class VisitStory:
    """All that a visit's sentences are made of.

    feeds: given in this visit. left: fed before and looked at in this visit. events: of that day. places:
    the comb number of frames that only have a mark; those of noted sides are known. asked: the questions of
    the round, None for all. boxes: what is said behind the comb number of frames that it alone does not tell
    apart, see box_names.
    """

    totals: VisitTotals
    figures: VisitFigures
    marks: tuple[Mark, ...] = ()
    feeds: tuple[Feed, ...] = ()
    left: tuple[Feed, ...] = ()
    events: tuple[Event, ...] = ()
    queen: Queen | None = None
    places: Mapping[FrameId, int] = field(default_factory=dict)
    asked: frozenset[Question] | None = None
    boxes: Mapping[FrameId, str] = field(default_factory=dict)

    def answer(self, question: Question) -> Answer | None:
        """The answer to a question, if there is one."""
        return self.totals.answers.get(question)

    def reply(self, question: Question) -> Reply | None:
        """Yes, no, not looked, or None for blank."""
        answer = self.answer(question)
        return answer.reply if answer is not None else None

    @property
    def all_places(self) -> dict[FrameId, int]:
        """The comb number of every frame that is known here."""
        return {**self.places, **{side.frame_id: side.place for side in self.totals.sides}}

    def combs_with(self, content: Content) -> tuple[int, ...]:
        """The combs on which this was drawn."""
        sides = self.totals.counted_sides
        return tuple(sorted({side.place for side in sides if side.area_dm2[content] > 0}))

    def frames_with(self, *contents: Content) -> frozenset[FrameId]:
        """The frames on which any of these was drawn."""
        sides = self.totals.counted_sides
        return frozenset(
            side.frame_id for side in sides if any(side.area_dm2[content] > 0 for content in contents)
        )

    def where(self, question: Question, content: Content) -> str:
        """The combs the line names, else those on which it was drawn, in words; empty if there are none.

        A comb's box is said where its number alone may mean two combs.
        """
        answer = self.answer(question)
        said = combs_said(answer) if answer is not None else ()
        if said:
            return phrases.comb_list(said)
        order = ["", *self.boxes.values()]
        drawn = [
            (self.boxes.get(side.frame_id, ""), side.place)
            for side in self.totals.counted_sides
            if side.area_dm2[content] > 0
        ]
        return phrases.combs_where(sorted(drawn, key=lambda comb: order.index(comb[0])))

    @property
    def cells(self) -> tuple[CellsSaid, ...]:
        """The queen cells, marked ones with their places."""
        return phrases.cells_seen(self.answer(Question.CELLS), self.marks, self.all_places, self.boxes)

    @property
    def queen_place(self) -> QueenSaid | None:
        """Where the queen was seen, from her mark or the line; None if she was not seen."""
        answer = self.answer(Question.QUEEN)
        said = queen_said(answer) if answer is not None else QueenSaid()
        for mark in self.marks:
            if mark.kind is MarkKind.QUEEN:
                frame_id = mark.frame_id
                comb = self.all_places.get(frame_id) if frame_id is not None else None
                box = self.boxes.get(frame_id, "") if frame_id is not None else ""
                return QueenSaid(comb, mark.face, said.colour, box) if comb is not None else said
        return said if self.reply(Question.QUEEN) is Reply.YES else None


def left_texts(story: VisitStory) -> tuple[str, ...]:
    """What was left of each feed looked at, and what was taken."""
    return tuple(filter(None, map(phrases.feed_left, story.left)))
