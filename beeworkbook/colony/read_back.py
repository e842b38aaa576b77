"""The read-back of a visit: only what was noted, phrase by phrase, each leading to its field."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from beeworkbook.colony import phrases
from beeworkbook.colony.from_combs import differences
from beeworkbook.colony.records import Answer, EventKind, Level, Question, Reply
from beeworkbook.colony.story import Field, Target, VisitStory, left_texts
from beeworkbook.colony.written import sign_words, temper_words, write_answer
from beeworkbook.comb.contents import Content
from beeworkbook.words import say, say_count


@dataclass(frozen=True)
class Phrase:
    """A piece of a read-back and the field it leads to."""

    text: str
    target: Target


def read_back(story: VisitStory) -> tuple[Phrase, ...]:
    """What was noted of a colony in this visit, phrase by phrase; empty if nothing was noted yet."""
    visit = story.totals.visit
    if visit.level is Level.PASSED_OVER:
        return (Phrase(say("passed over"), Field.LEVEL), *_note_phrases(visit.note))
    said = [
        *_opened_phrases(story),
        *_found_phrases(story, Question.EGGS, Content.EGGS, say("eggs")),
        *_queen_phrases(story),
        *_young_phrases(story),
        *_brood_phrases(story),
        *_cells_phrases(story),
        *_bees_phrases(story),
        *_stores_phrases(story),
        *_other_phrases(story),
    ]
    said = _both_named(story, said)
    said += [
        Phrase(phrases.heft_words(event), Field.HEFT)
        for event in story.events
        if event.kind is EventKind.HEFT
    ]
    said += [Phrase(text, Field.LEFT) for text in left_texts(story)]
    said += [Phrase(phrases.feed_given(feed), Field.FEED) for feed in story.feeds]
    if visit.next_day is not None:
        said.append(Phrase(phrases.next_words(visit.next_day, visit.next_reason), Field.NEXT))
    return (*said, *_note_phrases(visit.note))


def _note_phrases(note: str) -> list[Phrase]:
    """The keeper's own words in quotation marks, without the full stop the sentence has itself."""
    words = " ".join(note.split()).removesuffix(".")
    return [Phrase(say("noted: “{words}”", words=words), Field.NOTE)] if words else []


def _both_named(story: VisitStory, said: Iterable[Phrase]) -> list[Phrase]:
    """Where the line and the combs are at odds, each is named; once, where a field has several pieces."""
    told = list(said)
    for held in differences(story):
        at = max((at for at, phrase in enumerate(told) if phrase.target is held.question), default=None)
        sources = say("the line {line}, the combs {combs}", line=held.line, combs=held.combs)
        if at is not None:
            text = say("{said} ({sources})", said=told[at].text, sources=sources)
            told[at] = replace(told[at], text=text)
    return told


def read_back_text(name: str, said: tuple[Phrase, ...]) -> str:
    """A colony's read-back as one sentence: "Wall: eggs on 4 to 6, ..., 8 kg in store."."""
    text = ", ".join(phrase.text for phrase in said) or say("nothing noted yet")
    return phrases.closed(say("{colony}: {text}", colony=name, text=text))


def _opened_phrases(story: VisitStory) -> list[Phrase]:
    if story.totals.visit.level is Level.NOT_OPENED or story.reply(Question.OPENED) is Reply.NO:
        return [Phrase(say("not opened"), Question.OPENED)]
    return []


def _found_phrases(story: VisitStory, question: Question, content: Content, what: str) -> list[Phrase]:
    combs, reply = story.where(question, content), story.reply(question)
    if combs:
        text = say("{what} on {place}", what=what, place=combs)
    elif reply is Reply.YES:
        text = say("{what} seen", what=what)
    elif reply is Reply.NO:
        text = say("no {what} seen", what=what)
    elif reply is Reply.NOT_LOOKED:
        text = say("{what} not looked for", what=what)
    else:
        return []
    return [Phrase(text, question)]


def _young_phrases(story: VisitStory) -> list[Phrase]:
    """Open brood is said where the line says it; drawn, it goes without saying in the brood."""
    if story.reply(Question.YOUNG) is None:
        return []
    return _found_phrases(story, Question.YOUNG, Content.OPEN, say("open brood"))


def _queen_phrases(story: VisitStory) -> list[Phrase]:
    place, reply = story.queen_place, story.reply(Question.QUEEN)
    if place is not None:
        where = phrases.place_words(place.comb, place.face, place.box)
        text = say("queen seen on {place}", place=where) if where else say("queen seen")
        if place.colour:
            text = say("{queen}, {colour} mark", queen=text, colour=say(place.colour))
    elif reply is Reply.NO:
        text = say("queen not seen")
    elif reply is Reply.NOT_LOOKED:
        text = say("queen not looked for")
    else:
        return []
    return [Phrase(text, Question.QUEEN)]


def _brood_phrases(story: VisitStory) -> list[Phrase]:
    figures, brood = story.figures, story.figures.brood
    if brood is None:
        if story.reply(Question.BROOD) is Reply.NOT_LOOKED:
            return [Phrase(say("brood not looked for"), Question.BROOD)]
        return []
    if brood.combs is None:
        text = say("brood seen")
    elif not brood.combs:
        text = say("no brood on the combs looked at") if figures.at_least else say("no brood")
    else:
        text = phrases.brood_said(brood, figures)
        looked = phrases.looked_at(figures)
        text = say("{brood} ({looked} looked at)", brood=text, looked=looked) if looked else text
    return [Phrase(text, Question.BROOD)]


def _cells_phrases(story: VisitStory) -> list[Phrase]:
    if story.cells:
        return [Phrase(phrases.cells_words(cell), Question.CELLS) for cell in story.cells]
    words = {
        Reply.YES: say("queen cells seen"),
        Reply.NO: say("no queen cells"),
        Reply.NOT_LOOKED: say("queen cells not looked for"),
    }
    reply = story.reply(Question.CELLS)
    return [Phrase(words[reply], Question.CELLS)] if reply is not None else []


def _bees_phrases(story: VisitStory) -> list[Phrase]:
    answer = story.answer(Question.SEAMS)
    if answer is not None and answer.number is not None:
        return [Phrase(say_count(answer.number, "1 seam of bees", "{n} seams of bees"), Question.SEAMS)]
    bees = story.figures.bees
    if bees is None:
        return []
    return [Phrase(say("{bees} bees", bees=phrases.bees_value(bees)), Question.SEAMS)]


def _stores_phrases(story: VisitStory) -> list[Phrase]:
    stores, answer = story.figures.stores, story.answer(Question.STORES)
    if answer is not None and answer.number is not None:
        text = say("{stores} in store", stores=write_answer(Question.STORES, answer))
    elif stores is not None:
        text = phrases.stores_said(stores)
    elif story.reply(Question.STORES) is Reply.YES:
        text = say("some stores")
    elif story.reply(Question.STORES) is Reply.NOT_LOOKED:
        text = say("stores not looked at")
    else:
        return []
    return [Phrase(text, Question.STORES)]


def _other_phrases(story: VisitStory) -> list[Phrase]:
    makers = {
        Question.POLLEN: _pollen_text,
        Question.TEMPER: lambda answer: ", ".join(temper_words(answer)),
        Question.ROOM: _room_text,
        Question.DRAWN: _drawn_text,
        Question.SIGNS: _signs_text,
    }
    said = []
    for question, maker in makers.items():
        answer = story.answer(question)
        if answer is not None and answer.reply in {Reply.YES, Reply.NO}:
            said.append(Phrase(maker(answer), question))
    return said


def _pollen_text(answer: Answer) -> str:
    return say("pollen coming in") if answer.reply is Reply.YES else say("no pollen coming in")


def _room_text(answer: Answer) -> str:
    if answer.reply is Reply.NO:
        return say("too little room")
    plain = answer.typed.casefold() in {"y", "yes", "enough", say("yes").casefold(), say("enough").casefold()}
    return say("room enough") if plain else write_answer(Question.ROOM, answer)


def _drawn_text(answer: Answer) -> str:
    if answer.reply is Reply.NO:
        return say("no comb being drawn")
    if answer.number is None:
        return say("comb being drawn")
    return say("{combs} being drawn", combs=say_count(answer.number, "1 comb", "{n} combs"))


def _signs_text(answer: Answer) -> str:
    if answer.reply is Reply.NO:
        return say("no sign of disease seen")
    words = ", ".join(sign_words(answer)) or say("a sign of disease")
    return say("{signs} seen: ask your bee inspector", signs=words)
