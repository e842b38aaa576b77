"""What the papers print, read out of a workbook: comb sheets blank and filled, and the round sheet.

Only builds the values of colony/sheet_models.py; nothing here draws. Window and command line print
from the same ones.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Final, Protocol

from beeworkbook.colony.asked import asked_questions
from beeworkbook.colony.dues import bring_words, due_words
from beeworkbook.colony.feeding import write_feed, write_left
from beeworkbook.colony.from_combs import from_combs
from beeworkbook.colony.hive import HiveDay, PartDay, holds_on
from beeworkbook.colony.phrases import feed_left
from beeworkbook.colony.queens import queen_words
from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Colony,
    ColonyId,
    Due,
    DueKind,
    Event,
    EventKind,
    Frame,
    FrameId,
    FrameMake,
    FrameStay,
    Level,
    Mark,
    PartKind,
    Question,
    Reply,
    Round,
    Sheet,
    SheetId,
    Side,
    Stand,
    Visit,
    VisitId,
)
from beeworkbook.colony.sentences import Field, PageRow, Target, page_rows, row_text
from beeworkbook.colony.sheet_models import (
    CombSheetModel,
    RoundSheetModel,
    RoundSheetRow,
    SheetAnswer,
    SheetBox,
    SheetComb,
    SheetFeed,
    SheetSide,
    SheetVisit,
    sheet_code,
)
from beeworkbook.colony.written import write_heft
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.comb.eighths import read_back, whole_eighths
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.store.reader import Reader
from beeworkbook.store.whereabouts import Standing
from beeworkbook.words import date_words, say, say_count
from beeworkbook.workbook.edits.hive import part_words
from beeworkbook.workbook.story import queen_on, visit_story
from beeworkbook.workbook.workbook import Workbook

_NOBODY: Final = ColonyId(0)
_TOLD: Final[frozenset[Target]] = frozenset(
    {
        Field.LEVEL,
        Field.HEFT,
        Question.QUEEN,
        Question.EGGS,
        Question.YOUNG,
        Question.BROOD,
        Question.CELLS,
        Question.SEAMS,
        Question.STORES,
        Question.POLLEN,
        Question.ROOM,
        Question.DRAWN,
    }
)
"""What a filled sheet says in sentences; the other answers stand in their own fields."""


class FieldMapText(Protocol):
    """Where the fields of a printed sheet lie, as the papers give it."""

    @property
    def pages(self) -> Sequence[object]:
        """The pages of the sheet."""

    def to_json(self) -> str:
        """The map as text."""


@dataclass(frozen=True, eq=False)
class BookSheet(CombSheetModel):
    """A comb sheet that knows which colony and visit of the workbook it was made of."""

    colony_id: ColonyId = _NOBODY
    visit_id: VisitId | None = None


# --- comb sheets ----------------------------------------------------------------------------------


def blank_sheet(book: Workbook, colony_id: ColonyId, day: date, *, supers: bool = False) -> BookSheet | None:
    """A sheet to take to the hive on a day, the last look small beside each field.

    Of the brood and nucleus boxes, and of the supers only where they are asked for, since hardly anybody
    draws those; a hive of supers alone has them all. None if the colony lives in no hive that day.
    """
    read = book.read
    hive = read.hive_day(colony_id, day)
    if hive is None:
        return None
    earlier = [visit for visit in read.visits(colony_id) if visit.day <= day]
    last = next((visit for visit in reversed(earlier) if read.sides(visit.id)), None)
    known = _last_known(read, hive, last)
    shown = hive.boxes if supers else hive.brood_boxes or hive.boxes
    boxes = tuple(_box(read, hive, box, (), known, {}) for box in shown)
    sheet = _sheet(read, hive, colony_id, None, boxes)
    return replace(sheet, last=_last_looked(read, earlier), bring=_bring(read, day, colony_id=colony_id))


def filled_sheet(book: Workbook, visit_id: VisitId) -> BookSheet | None:
    """A sheet that says what was found at a visit. None if there is no such visit, or it had no hive."""
    read = book.read
    visit = read.get(Visit, visit_id)
    hive = read.hive_day(visit.colony_id, visit.day) if visit else None
    if visit is None or hive is None:
        return None
    before = [each for each in read.visits(visit.colony_id) if each.day < visit.day]
    marks = read.marks(visit.id)
    noted = {(side.frame_id, side.face): side for side in read.sides(visit.id)}
    boxes = tuple(_box(read, hive, box, marks, {}, noted) for box in hive.boxes)
    told = _sheet_visit(read, visit, told=True)
    loose = tuple(mark for mark in marks if mark.frame_id is None)
    sheet = _sheet(read, hive, visit.colony_id, visit, boxes)
    return replace(
        sheet,
        last=_last_looked(read, before),
        visit=replace(told, marks=loose),
    )


def kept_sheets(
    models: Iterable[CombSheetModel], maps: Iterable[FieldMapText], paper: str, day: date
) -> tuple[Sheet, ...]:
    """The sheets to keep once they were printed on a day, each with its field map.

    Errors: TypeError if a sheet was not made of a workbook.
    """
    kept = []
    for model, fields in zip(models, maps, strict=True):
        if not isinstance(model, BookSheet):
            raise TypeError("only a sheet made of a workbook can be kept in it")
        kept.append(
            Sheet(
                SheetId(0),
                model.code,
                model.colony_id,
                day,
                model.revision,
                len(fields.pages),
                paper,
                model.visit_id,
                fields.to_json(),
            )
        )
    return tuple(kept)


def _sheet(
    read: Reader, hive: HiveDay, colony_id: ColonyId, visit: Visit | None, boxes: tuple[SheetBox, ...]
) -> BookSheet:
    colony, stand = read.get(Colony, colony_id), read.get(Stand, hive.housing.stand_id)
    apiary = read.get(Apiary, stand.apiary_id) if stand else None
    queen = queen_on(read, colony_id, hive.day)
    code, revision = _code(read, colony_id, hive.day, visit.id if visit else None)
    return BookSheet(
        code=code,
        revision=revision,
        colony_name=colony.name if colony else "",
        stand_name=stand.name if stand else "",
        day=hive.day,
        way=hive.hive.way,
        boxes=boxes,
        apiary_name=apiary.name if apiary else "",
        place=apiary.place if apiary else "",
        map_reference=apiary.map_reference if apiary else "",
        hive_name=hive.hive.name,
        queen=queen_words(queen) if queen is not None else "",
        colony_id=colony_id,
        visit_id=visit.id if visit else None,
    )


def _code(read: Reader, colony_id: ColonyId, day: date, visit_id: VisitId | None) -> tuple[str, int]:
    """The code and revision of a sheet: printed again it keeps its code; a new one has one of its own.

    Several colonies printed at once each take another of the codes that were never used.
    """
    sheets = read.find(Sheet)
    same = [
        sheet
        for sheet in sheets
        if (sheet.colony_id, sheet.visit_id) == (colony_id, visit_id) and (visit_id or sheet.day == day)
    ]
    if same:
        newest = max(same, key=lambda sheet: sheet.revision)
        return newest.code, newest.revision + 1
    used = {sheet.code for sheet in sheets}
    rank = sorted(colony.id for colony in read.find(Colony)).index(colony_id)
    number = len(sheets)
    while True:
        code = sheet_code(number)
        number += 1
        if code in used:
            continue
        if not rank:
            return code, 1
        rank -= 1


# --- boxes and combs ------------------------------------------------------------------------------

_Known = dict[FrameId, dict[Face, Side]]
_Noted = dict[tuple[FrameId, Face], Side]


def _last_known(read: Reader, hive: HiveDay, last: Visit | None) -> _Known:
    """What was noted last of every comb in the hive, by the letter it shows on the hive's day."""
    if last is None:
        return {}
    known: _Known = {}
    for box in hive.boxes:
        for placed in box.frames:
            if placed.frame is not None and placed.stay is not None:
                known[placed.frame.id] = _last_of(read, placed.stay, last)
    return known


def _last_of(read: Reader, hangs: FrameStay, last: Visit) -> dict[Face, Side]:
    frame_id = hangs.frame_id
    found = read.last_sides(frame_id, last.id)
    for side in read.find(Side, visit_id=last.id, frame_id=frame_id):
        if side.origin is not Origin.ASSUMED:
            found[side.face] = side
    stays = read.find(FrameStay, frame_id=frame_id)
    turned = any(stay.turned for stay in stays if holds_on(stay, last.day))
    if turned == hangs.turned:
        return found
    return {face.other: side for face, side in found.items()}


def _box(
    read: Reader, hive: HiveDay, box: PartDay, marks: tuple[Mark, ...], known: _Known, noted: _Noted
) -> SheetBox:
    combs = tuple(
        _comb(read, placed.place, placed.frame, marks, known, noted)
        for placed in box.frames
        if placed.frame is not None and placed.frame.make is FrameMake.FRAME
    )
    return SheetBox(
        box.part.kind, box.part.name or _box_name(hive, box), combs, len(box.frames), _remark(box)
    )


def _box_name(hive: HiveDay, box: PartDay) -> str:
    """The kind of a box, numbered from below where there are several of it."""
    same = [each for each in hive.boxes if each.part.kind is box.part.kind]
    name = part_words(box.part.kind).capitalize()
    if len(same) == 1:
        return name
    number = next(at for at, each in enumerate(same, start=1) if each.part.id == box.part.id)
    return say("{box} {number}", box=name, number=number)


def _remark(box: PartDay) -> str:
    """What the places without a comb hold: "11 dummy board, 10 free"."""
    said = [
        say("{place} dummy board", place=placed.place)
        if placed.frame is not None
        else say("{place} free", place=placed.place)
        for placed in box.frames
        if placed.frame is None or placed.frame.make is FrameMake.DUMMY
    ]
    return ", ".join(said)


def _comb(
    read: Reader, place: int, frame: Frame, marks: tuple[Mark, ...], known: _Known, noted: _Noted
) -> SheetComb:
    frame_type = read.frame_type(frame.frame_type)
    mine = tuple(mark for mark in marks if mark.frame_id == frame.id)
    sides = [
        _side(
            read,
            face,
            known.get(frame.id, {}).get(face),
            noted.get((frame.id, face)),
            tuple(mark for mark in mine if mark.face is face),
        )
        for face in Face
    ]
    return SheetComb(
        place,
        frame_type.name,
        frame_type.lattice,
        sides[0],
        sides[1],
        frame.name,
        tuple(mark for mark in mine if mark.face is None),
    )


def _side(
    read: Reader, face: Face, last: Side | None, side: Side | None, marks: tuple[Mark, ...]
) -> SheetSide:
    before = read.get(Visit, last.visit_id) if last else None
    small = _letters(read, last) if last else ""
    blank = SheetSide(face, small, before.day if before and small else None, marks=marks)
    if side is None:
        return blank
    cells = unpack(side.cells, cells=read.frame_type(side.frame_type).lattice.cells)
    return replace(
        blank,
        cells=cells,
        origin=side.origin,
        grain=side.grain,
        bees_eighths=side.covered,
        figures="" if side.origin is Origin.ASSUMED else _letters(read, side),
    )


def _letters(read: Reader, side: Side) -> str:
    """A side in letters and whole eighths: "E1 O2 S4 H1"."""
    frame = read.frame_type(side.frame_type)
    eighths = whole_eighths(read_back(frame, unpack(side.cells, cells=frame.lattice.cells)))
    letters = installed_letters().contents
    order = {content: at for at, content in enumerate(letters)}
    said = sorted(eighths.items(), key=lambda item: order[item[0]])
    return " ".join(f"{letters[content]}{amount}" for content, amount in said)


# --- visits ---------------------------------------------------------------------------------------


def _sheet_visit(read: Reader, visit: Visit, *, told: bool) -> SheetVisit:
    held = read.get(Round, visit.round_id) if visit.round_id is not None else None
    story = visit_story(read, visit.id)
    given = ", ".join(write_feed(feed) for feed in story.feeds)
    left = ", ".join((feed_left(feed) if told else "") or write_left(feed) for feed in story.left)
    rows = page_rows(story) if told else ()
    return SheetVisit(
        visit.day,
        visit.at or (held.at if held else None),
        visit.who or (held.who if held else ""),
        held.weather if held else "",
        held.temperature_c if held else None,
        held.flowering if held else "",
        _answers(read, visit),
        SheetFeed(given, left),
        tuple(f"{row_text(row)}." for row in rows if _is_told(row)),
        visit.note,
        visit.next_day,
        visit.next_reason,
        combs={question: said.shown for question, said in from_combs(story).items()},
        heft=_heft_words(story.events),
    )


def _answers(read: Reader, visit: Visit) -> dict[Question, SheetAnswer]:
    """What was typed; that nobody opened the hive also where only its level says so, as on screen."""
    said = {
        question: SheetAnswer(answer.typed, answer.reply)
        for question, answer in read.answers(visit.id).items()
    }
    if visit.level is Level.NOT_OPENED:
        said.setdefault(Question.OPENED, SheetAnswer(say("no"), Reply.NO))
    return said


def _is_told(row: PageRow) -> bool:
    """Whether a row of the Page has no field of its own on paper; that a hive was opened goes without."""
    if row.target is Question.OPENED:
        return row.recorded and row.value != say("yes")
    return row.recorded and row.target in _TOLD


def _last_looked(read: Reader, visits: Sequence[Visit]) -> SheetVisit | None:
    """The last of these visits at which the keeper was at the hive; one passed over is no last time."""
    looked = (visit for visit in reversed(visits) if visit.level is not Level.PASSED_OVER)
    last = next(looked, None)
    return _sheet_visit(read, last, told=False) if last is not None else None


def _passed_words(visits: Sequence[Visit]) -> str:
    """That the colony was passed over since last time, and why: "passed over 16 May: rain"."""
    if not visits or visits[-1].level is not Level.PASSED_OVER:
        return ""
    passed = visits[-1]
    said = say("passed over {day}", day=date_words(passed.day))
    return say("{said}: {why}", said=said, why=passed.note) if passed.note else said


def _heft_words(events: Iterable[Event]) -> str:
    """The two pulls of a heft, as narrow as they are typed: "14+15 kg"."""
    heft = next((event for event in events if event.kind is EventKind.HEFT), None)
    return say("{pulls} kg", pulls=write_heft(heft)) if heft is not None else ""


# --- the round sheet ------------------------------------------------------------------------------


def round_sheet_of(book: Workbook, apiary_id: ApiaryId, day: date) -> RoundSheetModel:
    """A row a colony of an apiary, as they stand on a day, with last time and what to bring.

    Errors: ValueError if there is no such apiary.
    """
    read = book.read
    apiary = read.get(Apiary, apiary_id)
    if apiary is None:
        raise ValueError("there is no such apiary")
    rounds = [held for held in read.rounds(apiary_id) if held.day <= day]
    asked = asked_questions(rounds[-1].left_out if rounds else "")
    standing = read.standing(apiary_id, day)
    return RoundSheetModel(
        apiary.name,
        day,
        tuple(row for place in standing if (row := _row(read, place, day)) is not None),
        apiary.place,
        apiary.map_reference,
        frozenset(Question) - frozenset(asked),
        _bring(read, day, apiary_id=apiary_id),
    )


def _row(read: Reader, place: Standing, day: date) -> RoundSheetRow | None:
    if place.colony is None:
        return None
    earlier = [visit for visit in read.visits(place.colony.id) if visit.day <= day]
    dues = [due for due in read.dues(colony_id=place.colony.id) if due.kind is not DueKind.BRING]
    hive = read.hive_day(place.colony.id, day)
    return RoundSheetRow(
        place.stand.name,
        place.colony.name,
        _hive_words(hive) if hive else "",
        _last_looked(read, earlier),
        _due_words(dues),
        _bring(read, day, colony_id=place.colony.id),
        _passed_words(earlier),
    )


def _hive_words(hive: HiveDay) -> str:
    """What boxes stand there: "2 brood boxes, 1 super"."""
    kinds = [box.part.kind for box in hive.boxes]
    counted = {
        PartKind.NUCLEUS_BOX: ("1 nucleus box", "{n} nucleus boxes"),
        PartKind.BROOD_BOX: ("1 brood box", "{n} brood boxes"),
        PartKind.SUPER: ("1 super", "{n} supers"),
    }
    return ", ".join(
        say_count(kinds.count(kind), one, many) for kind, (one, many) in counted.items() if kind in kinds
    )


def _due_words(dues: Sequence[Due]) -> str:
    """The next that is due: "feed look, 18 May"."""
    if not dues:
        return ""
    due = min(dues, key=lambda each: (each.day, each.id))
    return say("{what}, {day}", what=due_words(due.kind), day=date_words(due.day))


def _bring(
    read: Reader, day: date, *, colony_id: ColonyId | None = None, apiary_id: ApiaryId | None = None
) -> tuple[str, ...]:
    """What the open dues till a day say to carry; for an apiary, only what is its own and no colony's."""
    dues = read.dues(colony_id=colony_id) if colony_id else read.dues(apiary_id=apiary_id)
    own = [due for due in dues if due.day <= day and (colony_id or due.colony_id is None)]
    return bring_words(own)
