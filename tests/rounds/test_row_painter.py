"""A line is drawn where its columns are, in the colours of its theme; looked at as pixels."""

from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from pytestqt.qtbot import QtBot

from beeworkbook.colony.from_combs import CombsSay
from beeworkbook.colony.records import (
    Answer,
    AnswerId,
    Arrival,
    Colony,
    ColonyId,
    Event,
    EventId,
    EventKind,
    Level,
    Question,
    Reply,
    Stand,
    StandId,
    Visit,
    VisitId,
)
from beeworkbook.colony.soft_notes import SoftNote
from beeworkbook.qt.palette import DARK, LIGHT, Palette
from beeworkbook.rounds.columns import lay_columns
from beeworkbook.rounds.field import TARGETS
from beeworkbook.rounds.row import Noted, Row
from beeworkbook.rounds.row_painter import (
    NOTE_HEIGHT,
    ROW_HEIGHT,
    RowLook,
    RowPainter,
    name_lines,
    notes_words,
    row_height,
    text_within,
)

DAY = date(2026, 5, 16)
WIDTH = 1090
ROW = Row(
    Colony(ColonyId(1), "Wall", Arrival.SWARM, DAY),
    Stand(StandId(1), None, "1"),  # type: ignore[arg-type] # no apiary is asked for here
    DAY,
)
VISIT = Visit(VisitId(1), ColonyId(1), DAY, Level.ONE_LINE)


def _noted(question: Question, typed: str, reply: Reply, level: Level = Level.ONE_LINE) -> Row:
    answer = Answer(AnswerId(1), VISIT.id, question, typed, reply)
    return replace(ROW, now=Noted(replace(VISIT, level=level), {question: answer}))


def _drawn(row: Row, look: RowLook, palette: Palette = LIGHT, shift: float = 0.0) -> QImage:
    picture = QImage(WIDTH, ROW_HEIGHT + NOTE_HEIGHT, QImage.Format.Format_RGB32)
    picture.fill(QColor(palette.ground))
    painter = QPainter(picture)
    height = row_height(row, WIDTH, chosen=look.chosen)
    columns = lay_columns(TARGETS, WIDTH)
    RowPainter(palette, columns, TARGETS).paint_row(painter, row, QRectF(0, 0, WIDTH, height), shift, look)
    painter.end()
    return picture


def _ink(picture: QImage, question: Question, palette: Palette = LIGHT) -> int:
    """How many pixels of the first line of a column are not ground."""
    column = lay_columns(TARGETS, WIDTH).of(question)
    assert column is not None
    grounds = {QColor(palette.ground).rgb(), QColor(palette.selection).rgb()}
    return sum(
        picture.pixel(x, y) not in grounds
        for x in range(int(column.left), int(column.right) - 2)
        for y in range(6, 28)
    )


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("palette", [LIGHT, DARK])
def test_an_answer_leaves_ink_in_its_own_column_alone(palette: Palette) -> None:
    picture = _drawn(_noted(Question.SEAMS, "n", Reply.NO), RowLook(), palette)
    inked = {question for question in Question if _ink(picture, question, palette)}
    assert inked == {Question.SEAMS}


@pytest.mark.usefixtures("qapp")
def test_the_line_in_hand_shows_where_something_can_be_typed() -> None:
    picture = _drawn(ROW, RowLook(chosen=True))
    assert all(_ink(picture, question) for question in Question)
    assert picture.pixelColor(600, 3).name().upper() == LIGHT.selection
    assert picture.pixelColor(11, 20).name().upper() == LIGHT.focus
    typing = _drawn(ROW, RowLook(chosen=True, typing=Question.EGGS))
    assert not _ink(typing, Question.EGGS)


@pytest.mark.usefixtures("qapp")
def test_a_text_that_was_refused_stays_to_be_seen() -> None:
    picture = _drawn(ROW, RowLook(refused={Question.EGGS: "4-99"}))
    assert _ink(picture, Question.EGGS)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize(
    ("row", "told"),
    [
        (_noted(Question.OPENED, "n", Reply.NO, Level.NOT_OPENED), True),
        (replace(ROW, now=Noted(replace(VISIT, level=Level.PASSED_OVER))), True),
        (replace(ROW, now=Noted(replace(VISIT, level=Level.BY_COMB))), True),
        (replace(ROW, now=Noted(VISIT)), False),
    ],
)
def test_why_nothing_stands_there_is_told(row: Row, told: bool) -> None:
    assert bool(_ink(_drawn(row, RowLook()), Question.EGGS)) is told


@pytest.mark.usefixtures("qapp")
def test_what_the_combs_say_looks_unlike_what_was_typed() -> None:
    by_comb = replace(VISIT, level=Level.BY_COMB)
    read = replace(ROW, now=Noted(by_comb, combs={Question.EGGS: CombsSay("4–6", "4–6")}))
    typed = _noted(Question.EGGS, "4-6", Reply.YES, Level.BY_COMB)
    pictures = [_drawn(row, RowLook()) for row in (read, typed)]
    assert all(_ink(picture, Question.EGGS) for picture in pictures)
    assert pictures[0] != pictures[1]
    assert not any(_ink(picture, Question.YOUNG) for picture in pictures)


@pytest.mark.usefixtures("qapp")
def test_scrolled_fields_never_run_under_the_name() -> None:
    row = _noted(Question.OPENED, "y", Reply.YES)
    frozen = int(lay_columns(TARGETS, WIDTH).frozen)
    still, moved = _drawn(row, RowLook()), _drawn(row, RowLook(), shift=40.0)
    for x in range(frozen - 1):
        assert [still.pixel(x, y) for y in range(6, 28)] == [moved.pixel(x, y) for y in range(6, 28)]


def test_a_line_grows_only_in_hand_and_only_for_something_to_mention(qtbot: QtBot) -> None:
    del qtbot
    noted = replace(ROW, notes=(SoftNote("A super is on.", "syrup may be carried up"),))
    assert row_height(noted, WIDTH, chosen=True) > row_height(noted, WIDTH, chosen=False) == ROW_HEIGHT
    assert row_height(ROW, WIDTH, chosen=True) == ROW_HEIGHT
    assert notes_words(noted) == "A super is on. Syrup may be carried up."


@pytest.mark.usefixtures("qapp")
def test_all_there_is_to_mention_is_written_out_in_as_many_lines_as_it_takes() -> None:
    long = SoftNote("A super is on while the colony is fed.", "what comes of it is stores, not honey; " * 4)
    row = replace(ROW, notes=(long, long))
    heights = [row_height(row, width, chosen=True) for width in (2600, 1090, 600)]
    assert heights == sorted(set(heights))
    picture = _drawn(row, RowLook(chosen=True))
    low = range(ROW_HEIGHT + NOTE_HEIGHT // 2, ROW_HEIGHT + NOTE_HEIGHT)
    ground = QColor(LIGHT.selection).rgb()
    assert any(picture.pixel(x, y) != ground for x in range(100, 1000) for y in low)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize(
    ("name", "lines"),
    [
        ("Wall", ("Wall",)),
        ("Elder by the old mill", ("Elder by the", "old mill")),
        ("Rhabarberkuchenbaecker", ("Rhabarberkuchenbaecker",)),
    ],
)
def test_a_long_name_is_written_smaller_and_in_two_lines(name: str, lines: tuple[str, ...]) -> None:
    said, font = name_lines(name, 86)
    assert said == lines
    assert font.pixelSize() == (17 if name == "Wall" else 13)


@pytest.mark.usefixtures("qapp")
def test_what_does_not_fit_its_column_is_said_shorter_and_then_smaller() -> None:
    heft = Event(EventId(1), ColonyId(1), DAY, EventKind.HEFT, left_kg=16.5, right_kg=15.5)
    hefted = replace(ROW, now=Noted(VISIT, heft=heft), last=Noted(VISIT, heft=heft))
    assert text_within(hefted, Question.STORES, 200)[0] == "16.5 + 15.5 kg"
    assert text_within(hefted, Question.STORES, 46)[0] == "32 kg"
    room = _noted(Question.ROOM, "super on", Reply.YES)
    wide, tight = text_within(room, Question.ROOM, 100), text_within(room, Question.ROOM, 49)
    assert wide[0] == tight[0] == "super on"
    assert wide[1].pixelSize() > tight[1].pixelSize()
    cells = _noted(Question.TEMPER, "qf", Reply.YES)
    assert [text_within(cells, Question.TEMPER, room)[0] for room in (200, 42)] == ["quiet, following", "qf"]
    passed = _noted(Question.EGGS, "-", Reply.NOT_LOOKED)
    assert text_within(passed, Question.EGGS, 30)[0] == "–"


@pytest.mark.usefixtures("qapp")
def test_last_times_heft_is_one_sum_where_its_pulls_have_no_room() -> None:
    heft = Event(EventId(1), ColonyId(1), DAY, EventKind.HEFT, left_kg=16.5, right_kg=15.5)
    summed = replace(heft, left_kg=32.0, right_kg=None)
    told = [
        _drawn(replace(ROW, last=Noted(VISIT, heft=held)), RowLook())
        for held in (heft, replace(heft, left_kg=10.5, right_kg=21.5), summed)
    ]
    assert told[0] == told[1]
    assert told[0] != told[2]
