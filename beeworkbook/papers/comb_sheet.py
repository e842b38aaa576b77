"""The comb sheet of a colony, blank to be filled in at the hive, or filled from the workbook.

Plans the pages, draws each and gives the field map. Six frames a page where the frames allow it;
the fields of the Page take the room left after the last comb, or a page of their own.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import BinaryIO, Final

from beeworkbook.colony.sheet_models import CombSheetModel, SheetBox, SheetComb
from beeworkbook.comb.contents import Face
from beeworkbook.papers import sheet_frame
from beeworkbook.papers.comb_forms import Form, field_form, form_for_all, words_form
from beeworkbook.papers.comb_picture import Drawn, comb_outlines
from beeworkbook.papers.comb_side import draw_side
from beeworkbook.papers.field_map import Field, FieldMap, PageMap
from beeworkbook.papers.fonts import TITLE
from beeworkbook.papers.mark_words import mark_texts, note_numbers
from beeworkbook.papers.markers import plain_code
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.page import Document
from beeworkbook.papers.page_fields import (
    broken,
    draw_fields,
    draw_ruled,
    draw_texts,
    fields_height,
    note_texts,
    text_columns,
)
from beeworkbook.papers.rect import Rect
from beeworkbook.papers.side_task import SideTask
from beeworkbook.words import date_words, say

_LEAST_NOTES_MM: Final = 15.0


@dataclass(frozen=True)
class _Plan:
    """One page: its form, the combs on it, and whether the fields of the Page follow them."""

    form: Form
    box_number: int
    box: SheetBox | None
    combs: tuple[SheetComb, ...]
    has_fields: bool = False

    @property
    def free(self) -> Rect:
        """The strip under the last comb."""
        body = self.form.body
        top = body.y + body.height / len(self.form.rows) * len(self.combs)
        return Rect(body.x, top, body.width, body.bottom - top)


def comb_sheet(model: CombSheetModel, options: PaperOptions, stream: BinaryIO) -> FieldMap:
    """Print one colony's comb sheet as PDF; gives where its fields lie."""
    return comb_sheets((model,), options, stream)[0]


def comb_sheets(
    models: Sequence[CombSheetModel], options: PaperOptions, stream: BinaryIO
) -> tuple[FieldMap, ...]:
    """Print the comb sheets of several colonies one after another; gives a field map each.

    Errors: ValueError if there is no colony, since a PDF has at least a page.
    """
    if not models:
        raise ValueError("no colony to print")
    names = ", ".join(model.colony_name for model in models)
    document = Document(stream, options, say("Comb sheet: {names}", names=names))
    maps = []
    for index, model in enumerate(models):
        if index:
            document.next_page()
        maps.append(_draw_sheet(document, model))
    document.close()
    return tuple(maps)


def _draw_sheet(document: Document, model: CombSheetModel) -> FieldMap:
    plans = _plans(model, document.options.paper)
    drawn = comb_outlines(comb for plan in plans for comb in plan.combs) if model.visit else {}
    extra = _pages_of_text(plans[-1].form, _overflow(model, plans))
    count = len(plans) + len(extra)
    pages = []
    for number, plan in enumerate(plans, 1):
        if number > 1:
            document.next_page()
        pages.append(_draw_page(document, model, plan, drawn, (number, count)))
    for number, lines in enumerate(extra, len(plans) + 1):
        document.next_page()
        _draw_text_page(document, model, plans[-1].form, lines, number, count)
    paper = document.options.paper
    read_back = any(page.markers for page in pages)
    return FieldMap(model.code, model.revision, paper.value, read_back, tuple(pages))


def _plans(model: CombSheetModel, paper: Paper) -> list[_Plan]:
    """The pages of a sheet; the fields of the Page stand on the first that has room for them.

    A filled sheet of a visit without combs is a page of words.
    """
    plans = [
        _Plan(form, number, box, combs)
        for number, box in enumerate(model.boxes, 1)
        if model.visit is None or _is_noted(box)
        for form in [form_for_all(paper, [comb.lattice for comb in box.combs])]
        for combs in _shares(box.combs, len(form.rows))
    ]
    if model.visit is not None and not plans:
        return [_Plan(words_form(paper), 0, None, (), has_fields=True)]
    for index, plan in enumerate(plans):
        if plan.free.height >= fields_height(plan.form) + _LEAST_NOTES_MM:
            plans[index] = replace(plan, has_fields=True)
            return plans
    return [*plans, _Plan(field_form(paper), 0, None, (), has_fields=True)]


def _is_noted(box: SheetBox) -> bool:
    """Whether anything was noted of a comb of this box; a filled sheet leaves the others out."""
    sides = [comb.side(face) for comb in box.combs for face in Face]
    return any(
        side.cells is not None or side.marks or side.bees_eighths is not None for side in sides
    ) or any(comb.marks for comb in box.combs)


def _shares(combs: tuple[SheetComb, ...], most: int) -> Iterator[tuple[SheetComb, ...]]:
    for start in range(0, len(combs), most):
        yield combs[start : start + most]


def _draw_page(
    document: Document, model: CombSheetModel, plan: _Plan, drawn: Drawn, place: tuple[int, int]
) -> PageMap:
    """One page; its place is its number and how many there are."""
    number, count = place
    form, plain = plan.form, plain_code(model.code, number, model.revision)
    markers = sheet_frame.draw_markers(document, form, number)
    sheet_frame.draw_codes(document, form, plain)
    fields = list(sheet_frame.draw_head(document, form, model, _about(model, plan, number, count), plain))
    sheet_frame.draw_foot(document, form, model)
    numbers = note_numbers(model) if model.visit else {}
    for comb, row in zip(plan.combs, form.rows, strict=False):
        for side in (row.a, row.b):
            name = f"box{plan.box_number}.comb{comb.place}.{side.face.value}"
            task = SideTask(comb, side, model.way, model.visit is not None, name, numbers, drawn)
            fields += draw_side(document, task)
    if plan.has_fields:
        fields += _draw_page_fields(document, model, plan)
    return PageMap(
        number, document.width_mm, document.height_mm, form.number, plain, markers, form.codes, tuple(fields)
    )


def _draw_page_fields(document: Document, model: CombSheetModel, plan: _Plan) -> Iterator[Field]:
    yield from draw_fields(document, plan.form, plan.free, model)
    columns = text_columns(plan.form, _under_fields(plan))
    if model.visit is None:
        yield from draw_ruled(document, columns, model)
    else:
        draw_texts(document, columns, _note_lines(model, plan.form))


def _under_fields(plan: _Plan) -> Rect:
    free, used = plan.free, fields_height(plan.form) + 1.6
    return Rect(free.x, free.y + used, free.width, max(free.height - used, 0.0))


def _note_lines(model: CombSheetModel, form: Form) -> list[str]:
    left_out = [box.name for box in model.boxes if not _is_noted(box)]
    texts = note_texts(model, mark_texts(model), left_out)
    return broken(texts, text_columns(form, form.body).left.width)


def _overflow(model: CombSheetModel, plans: Sequence[_Plan]) -> list[str]:
    """Lines of a filled sheet that the page of the fields has no room for."""
    if model.visit is None:
        return []
    (plan,) = (plan for plan in plans if plan.has_fields)
    room = text_columns(plan.form, _under_fields(plan)).lines
    return _note_lines(model, plan.form)[room:]


def _pages_of_text(form: Form, lines: list[str]) -> list[list[str]]:
    room = text_columns(form, _text_body(form)).lines
    return [lines[start : start + room] for start in range(0, len(lines), room)]


def _text_body(form: Form) -> Rect:
    body = form.body
    return Rect(body.x, body.y + 8.0, body.width, body.height - 8.0)


def _draw_text_page(
    document: Document, model: CombSheetModel, form: Form, lines: list[str], number: int, count: int
) -> None:
    """A page of notes alone: nothing on it is read back, so it has no markers."""
    plain = plain_code(model.code, number, model.revision)
    about = say("Notes, page {page} of {pages}", page=number, pages=count)
    for _ in sheet_frame.draw_head(document, form, model, (about, ""), plain):
        pass
    columns = text_columns(form, _text_body(form))
    document.text(columns.left.x, form.body.y + 4.0, say("Notes, continued"), TITLE)
    draw_texts(document, columns, lines)
    sheet_frame.draw_foot(document, form, model)


def _about(model: CombSheetModel, plan: _Plan, number: int, count: int) -> tuple[str, str]:
    """What is on this page, "Brood box, combs 1 to 6 of 11, cold way. Page 1 of 2.", and what else to say."""
    parts, more = [], []
    if plan.box is not None and plan.combs:
        first, last = plan.combs[0].place, plan.combs[-1].place
        parts.append(
            say(
                "{box}, combs {first} to {last} of {places}, {way}.",
                box=plan.box.name,
                first=first,
                last=last,
                places=max(plan.box.places, last),
                way=sheet_frame.way_words(model.way),
            )
        )
        if plan.box.remark and plan.combs[-1] is plan.box.combs[-1]:
            more.append(f"{plan.box.remark}.")
    parts.append(say("Page {page} of {pages}.", page=number, pages=count))
    if model.visit is None:
        more.append(say("Made for {day}.", day=date_words(model.day, "weekday_year")))
    return " ".join(parts), " ".join(more)
