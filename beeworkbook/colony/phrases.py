"""Facts of a visit in words: the building stones of the Page's sentences and of the read-back.

Two significant figures, "about" for what was reckoned, and nothing that nobody saw. Which of them are said
where is in sentences.py.
"""

from collections.abc import Iterable, Mapping
from datetime import date
from types import MappingProxyType
from typing import Final

from beeworkbook.colony.answers import AnAnswer
from beeworkbook.colony.feeding import taken, write_feed, write_left
from beeworkbook.colony.figures import BeesFigures, BroodFigures, EggsSeen, StoresFigures, VisitFigures
from beeworkbook.colony.records import Event, Feed, FrameId, Level, Mark, Reply, Round
from beeworkbook.colony.said import CellsSaid
from beeworkbook.colony.worth import LEAST_WORTH, worth_words
from beeworkbook.colony.written import cells_said
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind
from beeworkbook.words import date_words, number, say, say_count, two_figures

_COUNTS: Final = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_TITLE: Final = 1
_ENDS: Final = (".", "?", "!", "…")


def count_words(count: int) -> str:
    """A small number as a word, a larger one in figures: "two", "14"."""
    return say(_COUNTS[count]) if 0 <= count < len(_COUNTS) else number(count)


def about(value: float) -> str:
    """A reckoned number: "about 4 800"."""
    return say("about {number}", number=two_figures(value))


def comb_list(combs: tuple[int, ...]) -> str:
    """Combs in a sentence: "5", "4 and 5", "4 to 6", "4, 5 and 7"."""
    if len(combs) > 2 and combs[-1] - combs[0] == len(combs) - 1:
        return say("{first} to {last}", first=combs[0], last=combs[-1])
    if len(combs) > 1:
        return say("{some} and {last}", some=", ".join(map(str, combs[:-1])), last=combs[-1])
    return ", ".join(map(str, combs))


def level_words(level: Level) -> str:
    """How far the look went: "by comb"."""
    words = {
        Level.NOT_OPENED: say("not opened"),
        Level.ONE_LINE: say("one line"),
        Level.BY_COMB: say("by comb"),
        Level.BY_SIDE: say("by side"),
        Level.PAINTED: say("painted"),
        Level.PASSED_OVER: say("passed over"),
    }
    return words[level]


def round_words(held: Round) -> str:
    """What a round asked once: "fine, 18 °C, with Ada, hawthorn in flower"; empty if nothing was said."""
    parts = [held.weather]
    if held.temperature_c is not None:
        parts.append(say("{temperature} °C", temperature=number(held.temperature_c)))
    if held.who:
        parts.append(say("with {who}", who=held.who))
    if held.flowering:
        parts.append(say("{plants} in flower", plants=held.flowering))
    return ", ".join(part for part in parts if part)


def titled(text: str) -> str:
    """The text with its first letter large, to begin a sentence with."""
    return text[:_TITLE].upper() + text[_TITLE:]


def closed(text: str) -> str:
    """The text as a sentence: with a full stop, unless it ends in a sign of its own."""
    return text if text.endswith(_ENDS) else say("{sentence}.", sentence=text)


def eggs_state(seen: EggsSeen | None) -> str:
    """The state of a colony: "eggs seen today", "eggs last seen on 9 May, 7 days ago"."""
    if seen is None:
        return say("no eggs on record")
    if not seen.days:
        return say("eggs seen today")
    return say_count(
        seen.days,
        "eggs last seen yesterday, on {day}",
        "eggs last seen on {day}, {n} days ago",
        day=date_words(seen.day),
    )


def brood_value(brood: BroodFigures, figures: VisitFigures) -> str:
    """Brood twice: "on 7 combs, worth 4.2"; of some combs only, "on 4 combs or more, worth 2.1 or more"."""
    if brood.combs is None:
        return say("seen")
    if not brood.combs:
        return say("none on the combs looked at") if figures.at_least else say("none")
    combs = say_count(brood.combs, "on 1 comb", "on {n} combs")
    if brood.worth is None:
        return combs
    if figures.at_least and brood.worth < LEAST_WORTH:
        return say("{combs} or more", combs=combs)
    if figures.at_least:
        return say("{combs} or more, worth {worth} or more", combs=combs, worth=two_figures(brood.worth))
    return say("{combs}, worth {worth}", combs=combs, worth=worth_words(brood.worth))


def brood_said(brood: BroodFigures, figures: VisitFigures) -> str:
    """Brood in a sentence: "brood on 7 combs worth 4.2", "brood on 4 combs or more"."""
    combs = brood.combs or 0
    if brood.worth is None:
        return say_count(combs, "brood on 1 comb", "brood on {n} combs")
    if figures.at_least and brood.worth < LEAST_WORTH:
        return say_count(combs, "brood on 1 comb or more", "brood on {n} combs or more")
    if figures.at_least:
        one, many = "brood on 1 comb or more worth {worth}", "brood on {n} combs or more worth {worth}"
    else:
        one, many = "brood on 1 comb worth {worth}", "brood on {n} combs worth {worth}"
    return say_count(combs, one, many, worth=worth_words(brood.worth))


def looked_at(figures: VisitFigures) -> str:
    """How many of the combs were looked at: "4 of 11 combs"; empty if that is all or not known."""
    if not figures.at_least or not figures.combs_in_hive:
        return ""
    if figures.combs_seen >= figures.combs_in_hive:
        return say("not both sides of every comb")
    return say("{seen} of {all} combs", seen=figures.combs_seen, all=figures.combs_in_hive)


def brood_cells(brood: BroodFigures, *, at_least: bool = False) -> str:
    """Brood in cells by stage: "about 16 000 cells: 2 400 eggs, 14 000 sealed"; empty if not known."""
    if brood.amount is None or not brood.amount.cells:
        return ""
    words = {
        Content.EGGS: say("eggs"),
        Content.OPEN: say("open"),
        Content.SEALED: say("sealed"),
        Content.BROOD: say("of no noted age"),
    }
    told = {content: brood.stages[content].cells for content in words if content in brood.stages}
    stages = [f"{two_figures(cells)} {words[content]}" for content, cells in told.items() if cells]
    said = say("{cells} cells", cells=about(brood.amount.cells))
    if at_least:
        said = say("{cells} or more", cells=said)
    if set(told) == {Content.BROOD}:
        return said
    return say("{cells}: {stages}", cells=said, stages=", ".join(stages))


def drone_cells(brood: BroodFigures) -> str:
    """Drone brood in cells: "about 1 200 cells"; empty if none is known."""
    if brood.drone is None or not brood.drone.cells:
        return ""
    return say("{cells} cells", cells=about(brood.drone.cells))


def bees_value(bees: BeesFigures) -> str:
    """Bees: "8 seams, about 9 000 bees", "about 12 000", "about 4 000 on the sides looked at"."""
    if bees.seams is not None:
        seams = say_count(bees.seams, "1 seam", "{n} seams")
        return say("{seams}, {bees} bees", seams=seams, bees=about(bees.bees))
    if bees.doubt.at_least:
        return say("{bees} on the sides looked at", bees=about(bees.bees))
    return about(bees.bees)


def stores_value(stores: StoresFigures) -> str:
    """Stores: "about 8 kg", "about 6.4 kg on the combs looked at", "none"."""
    if not stores.kg:
        return say("none on the combs looked at") if stores.doubt.at_least else say("none")
    said = say("about {kg} kg", kg=two_figures(stores.kg))
    return say("{stores} on the combs looked at", stores=said) if stores.doubt.at_least else said


def stores_said(stores: StoresFigures) -> str:
    """Stores in a sentence: "about 8 kg in store", "no stores on the combs looked at"."""
    if not stores.kg:
        return say("no stores on the combs looked at") if stores.doubt.at_least else say("no stores")
    kg = two_figures(stores.kg)
    if stores.doubt.at_least:
        return say("about {kg} kg of stores on the combs looked at", kg=kg)
    return say("about {kg} kg in store", kg=kg)


def combs_where(combs: Iterable[tuple[str, int]]) -> str:
    """Combs by box and place in a sentence: "4 to 6", "4 to 6 in the lower box and 5 in the upper box"."""
    by_box: dict[str, list[int]] = {}
    for box, place in combs:
        by_box.setdefault(box, []).append(place)
    parts = [_in_box(comb_list(tuple(sorted(set(places)))), box) for box, places in by_box.items()]
    if len(parts) < 2:
        return "".join(parts)
    return say("{some} and {last}", some=", ".join(parts[:-1]), last=parts[-1])


def place_words(comb: int | None, face: Face | None, box: str = "") -> str:
    """A place in short: "5A", "5A in the upper box"; empty if nobody said."""
    return "" if comb is None else _in_box(f"{comb}{face or ''}", box)


def _in_box(combs: str, box: str) -> str:
    return say("{combs} {in_box}", combs=combs, in_box=box) if box else combs


def cells_seen(
    answer: AnAnswer | None,
    marks: Iterable[Mark],
    places: Mapping[FrameId, int],
    boxes: Mapping[FrameId, str] = MappingProxyType({}),
) -> tuple[CellsSaid, ...]:
    """The queen cells of a visit: those marked, with their places, and what the line says beyond them."""
    marked: dict[tuple[object, ...], CellsSaid] = {}
    for mark in marks:
        if mark.kind is MarkKind.QUEEN_CELL:
            place = places.get(mark.frame_id) if mark.frame_id is not None else None
            face = mark.face if place is not None else None
            box = boxes.get(mark.frame_id, "") if mark.frame_id is not None else ""
            key = (mark.cell_kind, place, face, box)
            before = marked[key].count if key in marked else 0
            marked[key] = CellsSaid(mark.cell_kind, before + 1, place, face, box)
    beyond = [
        CellsSaid(cell.kind, cell.count - here, cell.comb, cell.face)
        for cell in (cells_said(answer) if answer is not None else ())
        if (here := sum(one.count for one in marked.values() if one.kind is cell.kind)) < cell.count
    ]
    return (*marked.values(), *beyond)


_CELL_WORDS: Final = {
    CellKind.PLAY_CUP: ("a play cup", "{count} play cups"),
    CellKind.WITH_EGG: ("a queen cell with an egg", "{count} queen cells with eggs"),
    CellKind.CHARGED: ("a charged cell", "{count} charged cells"),
    CellKind.SEALED: ("a sealed queen cell", "{count} sealed queen cells"),
    CellKind.EMERGED: ("an emerged queen cell", "{count} emerged queen cells"),
    CellKind.TORN_DOWN: ("a torn down queen cell", "{count} torn down queen cells"),
    None: ("a queen cell", "{count} queen cells"),
}


def cells_words(cell: CellsSaid) -> str:
    """Some queen cells in a sentence: "two charged cells on 6B"."""
    one, many = _CELL_WORDS[cell.kind]
    said = say_count(cell.count, one, many, count=count_words(cell.count))
    where = place_words(cell.comb, cell.face, cell.box)
    return say("{what} on {place}", what=said, place=where) if where else said


def feed_given(feed: Feed) -> str:
    """Feed given: "2 L 1:1 given"."""
    return say("{feed} given", feed=write_feed(feed))


def feed_left(feed: Feed) -> str:
    """What was left of a feed and so what was taken: "0.2 L left of 2 L 1:1, so 1.8 L taken"; else empty."""
    used = taken(feed)
    if used is None:
        return ""
    amount = f"{number(used.litres)} L" if used.litres is not None else f"{number(used.kg or 0)} kg"
    return say(
        "{left} left of {given}, so {taken} taken",
        left=write_left(feed),
        given=write_feed(feed),
        taken=amount,
    )


def heft_value(event: Event) -> str:
    """The pulls of a heft: "14 + 15 kg, together 29"; one pull alone is about half."""
    pulls = [kg for kg in (event.left_kg, event.right_kg) if kg is not None]
    if len(pulls) == 2:
        left, right = map(number, pulls)
        return say("{left} + {right} kg, together {sum}", left=left, right=right, sum=number(sum(pulls)))
    return say("{kg} kg on one side", kg=number(pulls[0])) if pulls else say("not weighed")


def heft_words(event: Event) -> str:
    """A heft in a sentence: "heft 14 + 15 kg, together 29"."""
    if event.left_kg is None and event.right_kg is None:
        return say("hefted")
    return say("heft {pulls}", pulls=heft_value(event))


def not_said(answer: AnAnswer | None) -> str:
    """What stands where there is no answer: "not looked for" if somebody said so, else "not recorded"."""
    if answer is not None and answer.reply is Reply.NOT_LOOKED:
        return say("not looked for")
    return say("not recorded")


def next_words(day: date, reason: str) -> str:
    """The next look: "look on 19 May: a charged cell"."""
    look = say("look on {day}", day=date_words(day))
    return say("{look}: {reason}", look=look, reason=reason) if reason else look
