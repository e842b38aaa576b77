"""The menu of a right click on a side: marks on this cell, and what can be done with what the cell holds."""

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QInputDialog, QMenu

from beeworkbook.colony.phrases import titled
from beeworkbook.colony.records import Mark
from beeworkbook.comb.contents import CellFate, CellKind, Content, Face, MarkKind
from beeworkbook.comb.names import cell_fate_name, cell_kind_name, content_name
from beeworkbook.qt.marks import mark_name
from beeworkbook.words import say
from beeworkbook.workbook.edits.marks import ChangeMark, MoveMark, RemoveMark
from beeworkbook.workbook.place import Edit

if TYPE_CHECKING:
    from beeworkbook.bench.bench_view import BenchView


def fill_mark_menu(menu: QMenu, bench: "BenchView", face: Face, cell: int, mark: Mark | None) -> None:
    """Offer what can be done here: a new mark on the cell, or changes to the mark that is there."""
    if mark is not None:
        _fill_with_mark(menu, bench, mark)
        menu.addSeparator()
    menu.addAction(say("Queen seen here"), lambda: bench.add_mark(face, cell, MarkKind.QUEEN))
    kinds = menu.addMenu(say("Queen cell here"))
    for kind in CellKind:
        kinds.addAction(
            cell_kind_name(kind),
            partial(bench.add_mark, face, cell, MarkKind.QUEEN_CELL, kind),
        )
    menu.addAction(say("Note here…"), lambda: _add_note(bench, face, cell))
    menu.addSeparator()
    _fill_with_content(menu, bench, face, cell)


def _fill_with_content(menu: QMenu, bench: "BenchView", face: Face, cell: int) -> None:
    """What can be done with the content pointed at, and with the side."""
    hand, held = bench.hand, bench.content_at(face, cell)
    name = content_name(held)
    if held is not Content.NOT_RECORDED:
        menu.addAction(say("Paint with {content}", content=name), lambda: bench.choose_content(held))
    if held is not hand.content and not hand.is_empty:
        text = say("Change all {old} of this side to {new}", old=name, new=content_name(hand.content))
        menu.addAction(text, lambda: bench.replace_all(face, cell))
    menu.addAction(say("Paint only over {content}", content=name), lambda: hand.paint_only_over(held))
    if hand.only is not None:
        menu.addAction(say("Paint over everything"), lambda: hand.paint_only_over(None))
    menu.addSeparator()
    menu.addAction(say("This side looks as last time"), lambda: bench.as_last_time(face))
    menu.addAction(say("The whole side again"), bench.sides[face].canvas.show_whole)


def _fill_with_mark(menu: QMenu, bench: "BenchView", mark: Mark) -> None:
    named = menu.addAction(titled(mark_name(mark.kind, mark.cell_kind, mark.text)))
    named.setEnabled(False)  # a heading: the style of the menus has no other
    if mark.kind is MarkKind.QUEEN_CELL:
        kinds, fates = menu.addMenu(say("It is")), menu.addMenu(say("It was"))
        for kind in CellKind:
            chosen = kinds.addAction(
                cell_kind_name(kind),
                partial(_do, bench, ChangeMark(replace(mark, cell_kind=kind))),
            )
            chosen.setCheckable(True)
            chosen.setChecked(kind is mark.cell_kind)
        for fate in (None, *CellFate):
            said = fates.addAction(
                say("not said") if fate is None else cell_fate_name(fate),
                partial(_do, bench, ChangeMark(replace(mark, fate=fate))),
            )
            said.setCheckable(True)
            said.setChecked(fate is mark.fate)
    if mark.kind is MarkKind.NOTE:
        menu.addAction(say("Change the note…"), lambda: _change_note(bench, mark))
    menu.addAction(
        say("On this side, the cell not known"),
        partial(_do, bench, MoveMark(mark.id, mark.frame_id, mark.face, None)),
    )
    menu.addAction(say("Take it away"), partial(_do, bench, RemoveMark(mark.id)))


def _do(bench: "BenchView", edit: Edit) -> None:
    bench.desk.do(edit, source=bench)


def _add_note(bench: "BenchView", face: Face, cell: int) -> None:
    text, said = QInputDialog.getText(bench, say("Note"), say("What is there?"))
    if said and text.strip():
        bench.add_mark(face, cell, MarkKind.NOTE, text=text.strip())


def _change_note(bench: "BenchView", mark: Mark) -> None:
    text, said = QInputDialog.getText(bench, say("Note"), say("What is there?"), text=mark.text)
    if said and text.strip():
        _do(bench, ChangeMark(replace(mark, text=text.strip())))
