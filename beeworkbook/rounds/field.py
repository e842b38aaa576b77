"""The fields of a line: what each shows, what may be typed, and the edits that what was typed asks for.

A field is a question of the round or one of feed, left, note and next. Heft is typed where stores are.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Final

from beeworkbook.colony.answers import ROOM_WORDS, TEMPERS
from beeworkbook.colony.feeding import write_feed, write_left
from beeworkbook.colony.from_combs import CombsSay
from beeworkbook.colony.questions import full_question, heading, may_be_typed, one_key, write_answer
from beeworkbook.colony.records import Level, Question, Reply, VisitId
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.colony.written import write_heft
from beeworkbook.qt.typed_day import DayError, parse_day
from beeworkbook.rounds.offers import TAKES, look_offered, set_day, short_day, take_offer
from beeworkbook.rounds.row import Noted, Row
from beeworkbook.words import NumberError, date_words, number, parse_number, say
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft, SetHeft
from beeworkbook.workbook.edits.visit import SetAnswer, SetLevel, SetNext, SetNote
from beeworkbook.workbook.place import Edit

OVER_KEY: Final = "x"
SAME: Final = "="
NOT_LOOKED: Final = "-"
TARGETS: Final[tuple[Target, ...]] = (*Question, Field.FEED, Field.LEFT, Field.NOTE, Field.NEXT)
"""All columns, in the order of the printed round sheet."""
_IN_ORDER: Final = tuple(
    dict.fromkeys((*"yn", *TEMPERS, *ROOM_WORDS, OVER_KEY, NOT_LOOKED, SAME, *sorted(TAKES)))
)
"""The keys that are a whole answer, as they are told."""
_FROM_OUTSIDE: Final = frozenset(
    {Question.OPENED, Question.POLLEN, Question.STORES, Field.FEED, Field.LEFT, Field.NOTE, Field.NEXT}
)
_OF_A_COLONY_PASSED: Final = frozenset({Question.OPENED, Field.NOTE, Field.NEXT})
_LEADS_TO: Final[dict[Target, Target]] = {Field.HEFT: Question.STORES, Field.LEVEL: Question.OPENED}
_NONE: Final = VisitId(0)


class FieldError(ValueError):
    """What was typed cannot be taken; the text is what the person reads."""


@dataclass(frozen=True)
class Wish:
    """What a finished field asks for: edits on the line, whether they empty it, what is passed over."""

    edits: tuple[Edit, ...] = ()
    clears: bool = False
    passes: bool = False


def field_of(target: Target) -> Target:
    """The column in which a phrase's target is typed: heft is typed where stores are."""
    return _LEADS_TO.get(target, target)


def asked(row: Row, columns: Iterable[Target]) -> tuple[Target, ...]:
    """The fields of this line that are asked, in order."""
    wanted = set(columns)
    if row.passed:
        wanted &= _OF_A_COLONY_PASSED
    elif row.shut:
        wanted &= _FROM_OUTSIDE
    if row.feed_before is None:
        wanted -= {Field.LEFT}
    return tuple(target for target in TARGETS if target in wanted)


# --- words ----------------------------------------------------------------------------------------


def field_heading(target: Target) -> str:
    """The short heading of a column."""
    if isinstance(target, Question):
        return heading(target)
    return {
        Field.FEED: say("feed"),
        Field.LEFT: say("left"),
        Field.NOTE: say("note"),
        Field.NEXT: say("next"),
    }[target]


def field_question(row: Row, target: Target) -> str:
    """The whole question of a field."""
    if target is Question.STORES and row.shut:
        return say("How heavy is the hive, lifted at the left and at the right?")
    if isinstance(target, Question):
        return full_question(target)
    return {
        Field.FEED: say("What was fed?"),
        Field.LEFT: say("How much was left of the feed given before?"),
        Field.NOTE: say("What else is worth keeping?"),
        Field.NEXT: say("When to look again?"),
    }[target]


def field_hint(row: Row, target: Target) -> str:
    """What may be typed into a field, in one line."""
    if target is Question.STORES and row.shut:
        return say("kilograms left and right, as 14+15; - not hefted. Lift with your legs, not your back")
    if target is Question.OPENED:
        return say("{hint}; x passed over", hint=may_be_typed(target))
    if isinstance(target, Question):
        return say("{hint}; = as last time", hint=may_be_typed(target))
    before = row.feed_before
    return {
        Field.FEED: say("as it is said: 2L 1:1 or 2.5 kg fondant; sugar to water by weight; = as last time"),
        Field.LEFT: say("of {feed}: 0.5 or 0 or all", feed=write_feed(before)) if before else "",
        Field.NOTE: say("in your own words; = as last time"),
        Field.NEXT: say("a day: 19, 19 May or +7; Enter or . takes what is offered"),
    }[target]


def field_moves(row: Row, target: Target) -> str:
    """Which keys move on by themselves in this field, and how to leave it else; nothing if none does."""
    keys = one_keys(row, target)
    if not keys:
        return ""
    told = [key for key in _IN_ORDER if key in keys]
    return say("{keys} move on by themselves; Tab for anything else", keys=" ".join(told))


def field_name(row: Row, target: Target) -> str:
    """A field for a reader of the screen aloud: "Pear Tree, stores, last time 7 kg"."""
    what = say("heft") if target is Question.STORES and row.shut else field_heading(target)
    read, last = combs_words(row, target), last_words(row, target)
    if read:
        what = say("{field} {text}", field=what, text=read)
    if not last:
        return say("{colony}, {field}", colony=row.colony.name, field=what)
    return say("{colony}, {field}, last time {last}", colony=row.colony.name, field=what, last=last)


# --- what is shown ----------------------------------------------------------------------------------


def shown(row: Row, target: Target) -> str:
    """What stands in a field."""
    if target is Question.OPENED and row.passed:
        return say("passed over")
    if target is Field.LEFT:
        return write_left(row.now.left) if row.now.left else ""
    return _shown(row.now, target)


def last_shown(row: Row, target: Target) -> str:
    """What stands small under it: last time's, from the combs where the line said nothing or was at odds."""
    return _last_combs(row, target) or _last_typed(row, target)


def last_words(row: Row, target: Target) -> str:
    """The same, saying that it is from the combs where it is, and what the line said instead."""
    typed, read = _last_typed(row, target), _from_combs(_last_combs(row, target))
    return say("{combs}; the line said {line}", combs=read, line=typed) if read and typed else read or typed


def last_from_combs(row: Row, target: Target) -> bool:
    """Whether what stands small is what the combs say."""
    return bool(_last_combs(row, target))


def _last_combs(row: Row, target: Target) -> str:
    found = row.last.combs.get(target) if isinstance(target, Question) else None
    if found is None or (not _is_answered(row.last, target) and _shown(row.last, target)):
        return ""  # a heft stands for the stores
    return found.shown


def _is_answered(noted: Noted, target: Target) -> bool:
    return isinstance(target, Question) and noted.reply(target) is not None


def combs_say(noted: Noted, target: Target) -> str:
    """What the combs of a visit say in a field where nothing was typed."""
    found = noted.combs.get(target) if isinstance(target, Question) else None
    return "" if found is None or _shown(noted, target) else found.shown


def combs_words(row: Row, target: Target) -> str:
    """What the combs of this visit say in a field, saying that it is from them."""
    return _from_combs(combs_say(row.now, target))


def _from_combs(text: str) -> str:
    return say("{text}, from the combs", text=text) if text else ""


def _last_typed(row: Row, target: Target) -> str:
    if target is Field.NEXT:
        return ""
    if target is Field.LEFT:
        return write_left(row.last.left) if row.last.left else ""
    return _shown(row.last, target)


def _shown(noted: Noted, target: Target) -> str:
    if isinstance(target, Question):
        answer = noted.answers.get(target)
        said = write_answer(target, answer) if answer is not None else ""
        if target is Question.STORES and not said and noted.heft is not None:
            return say("{pulls} kg", pulls=write_heft(noted.heft, " + "))
        return said
    visit = noted.visit
    if target is Field.FEED:
        return write_feed(noted.feed) if noted.feed else ""
    if visit is None:
        return ""
    if target is Field.NOTE:
        return visit.note
    return short_day(visit.next_day) if target is Field.NEXT and visit.next_day else ""


def heft_total(noted: Noted) -> str:
    """Both pulls of a heft together, where there is less room: "32 kg"; empty if stores were said."""
    heft = noted.heft
    if heft is None or heft.left_kg is None or heft.right_kg is None or _is_answered(noted, Question.STORES):
        return ""
    return say("{kg} kg", kg=number(heft.left_kg + heft.right_kg))


def not_looked(row: Row, target: Target) -> bool:
    """Whether the field says that nobody looked."""
    return isinstance(target, Question) and row.now.reply(target) is Reply.NOT_LOOKED


def to_edit(row: Row, target: Target) -> str:
    """What stands in the field to be typed over: as it was typed."""
    now = row.now
    if target is Question.OPENED and row.passed:
        return OVER_KEY
    if isinstance(target, Question):
        answer = now.answers.get(target)
        if answer is None and target is Question.STORES and now.heft is not None:
            return write_heft(now.heft)
        return answer.typed if answer is not None else ""
    if target is Field.FEED:
        return (now.feed.typed or write_feed(now.feed)) if now.feed else ""
    if target is Field.LEFT:
        return shown(row, target)
    if now.visit is None:
        return ""
    if target is Field.NOTE:
        return now.visit.note
    return date_words(now.visit.next_day, "day") if now.visit.next_day else ""


# --- what may be typed ------------------------------------------------------------------------------


def one_keys(row: Row, target: Target) -> frozenset[str]:
    """The keys that are a whole answer to this field and move on by themselves."""
    if target is Question.STORES and row.shut:
        return frozenset({SAME, NOT_LOOKED})
    if target is Question.OPENED:
        return one_key(target) | {OVER_KEY, SAME}
    if isinstance(target, Question):
        return one_key(target) | {SAME}
    return {Field.FEED: frozenset({SAME, NOT_LOOKED}), Field.NEXT: TAKES}.get(target, frozenset())


def wish(row: Row, target: Target, typed: str) -> Wish:
    """What the text of a finished field asks for; nothing if it is as it was.

    Errors: FieldError, a sentence for the keeper. What the book refuses it refuses itself.
    """
    text = typed.strip()
    if text == SAME and target is not Field.NEXT:
        text = _as_last(row, target)
    if text == to_edit(row, target):
        return Wish()
    if isinstance(target, Question):
        return _answered(row, target, text)
    if target is Field.FEED:
        return Wish((GiveFeed(row.colony.id, row.day, text, _NONE),), clears=text in {"", NOT_LOOKED})
    if target is Field.LEFT:
        return _left(row, text)
    if target is Field.NOTE:
        return Wish((SetNote(_NONE, text),), clears=not text)
    return _next(row, text)


def _as_last(row: Row, target: Target) -> str:
    """Last time's answer, to be typed again. Errors: FieldError if there was none."""
    last = row.last
    text = ""
    if isinstance(target, Question):
        if _last_combs(row, target):
            return _as_the_combs(last.combs[target])
        answer = last.answers.get(target)
        text = answer.typed if answer is not None else ""
        if not text and target is Question.STORES and last.heft is not None:
            text = write_heft(last.heft)
    elif target is Field.FEED and last.feed is not None:
        text = last.feed.typed or write_feed(last.feed)
    elif target is Field.NOTE and last.visit is not None:
        text = last.visit.note
    if not text:
        raise FieldError(say("Nothing was noted here last time."))
    return text


def _as_the_combs(combs: CombsSay) -> str:
    if not combs.typed:
        raise FieldError(say("Last time only some combs were looked at: type what you saw."))
    return combs.typed


def _answered(row: Row, question: Question, text: str) -> Wish:
    if question is Question.OPENED:
        if text.casefold() == OVER_KEY:
            return Wish(passes=True)
        if row.passed and not text:
            return Wish((SetLevel(_NONE, Level.NOT_OPENED),), clears=True)
    if question is Question.STORES:
        pulls = _pulls(row, text)
        if pulls is not None:
            return Wish((SetHeft(row.colony.id, row.day, *pulls, _NONE),), clears=pulls == (None, None))
    return Wish((SetAnswer(_NONE, question, text),), clears=not text)


def _pulls(row: Row, text: str) -> tuple[float | None, float | None] | None:
    """The two pulls of a heft; None if the text is an answer about stores instead."""
    said = row.now.answers.get(Question.STORES)
    if text in {"", NOT_LOOKED} and said is None and (row.shut or row.now.heft is not None):
        return None, None
    parts = [part for part in re.split(r"\s*\+\s*", text.casefold().removesuffix("kg").strip()) if part]
    if len(parts) != 2 or "+" not in text:
        if row.shut and text:
            raise FieldError(say("Write the two pulls of a heft, as 14+15."))
        return None
    try:
        left, right = (parse_number(part.removesuffix("kg")) for part in parts)
    except NumberError as error:
        raise FieldError(str(error)) from error
    return left, right


def _left(row: Row, text: str) -> Wish:
    if row.feed_before is None:
        raise FieldError(say("No feed was given before, so none can be left."))
    return Wish((SetFeedLeft(row.feed_before.id, text, row.day, _NONE),), clears=text in {"", NOT_LOOKED})


def _next(row: Row, text: str) -> Wish:
    if not text:
        return Wish((SetNext(_NONE, None),), clears=True)
    if text in TAKES:
        if look_offered(row) is None:
            raise FieldError(say("Nothing is offered before something is noted: type a day, as 19 or +7."))
        return Wish(take_offer(row))
    try:
        day = parse_day(text, row.day, ahead=True)
    except DayError as error:
        raise FieldError(str(error)) from error
    return Wish(set_day(row, _after(row.day, day)))


def _after(visit_day: date, day: date) -> date:
    if day <= visit_day:
        raise FieldError(say("The next look comes after this one: give a later day."))
    return day
