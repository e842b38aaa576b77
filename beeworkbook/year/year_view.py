"""The Year: the chart of a colony's brood and its switches. It gathers, shows, and leads to a visit."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from beeworkbook.colony.records import Colony, ColonyId, VisitId
from beeworkbook.colony.seasons import season_year
from beeworkbook.qt.desk import Desk, Spot, View
from beeworkbook.qt.palette import Palette
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.story import hemisphere_of
from beeworkbook.year.chart_model import build, year_words
from beeworkbook.year.choice import Choice
from beeworkbook.year.controls import Controls
from beeworkbook.year.export import write_picture
from beeworkbook.year.glass import ChartGlass
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import ChartModel
from beeworkbook.year.table import write_table

_LEAST_TITLE: Final = 120
"""A longer name is cut before it widens the window; the tooltip has all of it."""


class YearView(QWidget):
    """The curves of the colony the keeper is at, and of others beside it."""

    def __init__(self, desk: Desk) -> None:
        """The Year of the desk."""
        super().__init__()
        self.setObjectName("board")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._desk = desk
        self._model: ChartModel | None = None
        self._stale = True
        self._title = QLabel()
        self._title.setObjectName("name")
        self._title.setMinimumWidth(_LEAST_TITLE)
        self._subtitle = QLabel()
        self._subtitle.setObjectName("small")
        self._subtitle.setContentsMargins(0, 0, 0, 4)
        self.glass = ChartGlass()
        self.controls = Controls(self._first_choice())
        self.controls.show_palette(desk.palette)
        self._lay_out()
        self.controls.changed.connect(lambda _choice: self.refresh())
        self.glass.visit_chosen.connect(self._open)
        desk.spot_changed.connect(self._spot_changed)
        desk.book_changed.connect(self._book_changed)
        desk.palette_changed.connect(self._palette_changed)

    # --- what it gives ------------------------------------------------------------------------

    @property
    def choice(self) -> Choice:
        """What is asked for."""
        return self.controls.choice

    @property
    def model(self) -> ChartModel | None:
        """The chart as values; None without a colony."""
        if self._stale:
            self.refresh()
        return self._model

    def take_focus(self) -> None:
        """Put the keyboard on the chart."""
        self.glass.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def save_picture(self, path: Path) -> None:
        """Write the chart that is seen as PNG or SVG, by the ending of the path.

        Errors: PictureError with a sentence; OSError if the file cannot be written.
        """
        model = self.model
        if model is not None:
            write_picture(model, path, self._desk.palette)

    def save_table(self, path: Path) -> None:
        """Write the figures behind the chart as CSV. Errors: OSError if the file cannot be written."""
        write_table(self._desk.book, self.choice, path)

    # --- following ------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Gather and show anew."""
        self._stale = False
        choice = self.choice
        if not choice.colony_ids:
            self._follow(self._desk.spot)
            choice = self.choice
        book = self._desk.book
        self._model = build(book, choice) if choice.colony_ids else None
        words = year_words(choice.year, hemisphere_of(book))
        self.controls.show_choice(choice, self._choosable(choice.colony_ids), words)
        self._title.setText(self._model.title if self._model else say("No colony yet"))
        self._title.setToolTip(self._title.text())
        self._subtitle.setText(self._model.subtitle if self._model else "")
        self.glass.show_model(self._model, choice.measure, Inks(self._desk.palette))
        self.glass.show_chosen(self._desk.spot.visit_id)

    def _first_choice(self) -> Choice:
        return self._at(Choice((), 0), self._desk.spot)

    def _at(self, choice: Choice, spot: Spot) -> Choice:
        """The choice for where the keeper is: another colony drops those that stood beside the last."""
        year = season_year(spot.day, hemisphere_of(self._desk.book))
        held = choice.colony_ids
        if spot.colony_id is None:
            held = ()
        elif not held or held[0] != spot.colony_id:
            held = (spot.colony_id,)
        return replace(choice, colony_ids=held, year=year)

    def _follow(self, spot: Spot) -> None:
        choice = self._at(self.choice, spot)
        self.controls.show_choice(choice, self._choosable(choice.colony_ids))

    def _spot_changed(self, spot: Spot) -> None:
        if self._at(self.choice, spot) != self.choice:
            self._follow(spot)
            self._stale = True
            self._refresh_if_seen()
        self.glass.show_chosen(spot.visit_id)

    def _book_changed(self, _changes: Changes) -> None:
        self._stale = True
        self._refresh_if_seen()

    def _palette_changed(self, palette: Palette) -> None:
        self.controls.show_palette(palette)
        self._stale = True
        self._refresh_if_seen()

    def _refresh_if_seen(self) -> None:
        if self.isVisible():
            self.refresh()

    def showEvent(self, event: QShowEvent) -> None:
        """Come into sight as the book is now."""
        super().showEvent(event)
        if self._stale:
            self.refresh()

    def _open(self, visit_id: VisitId) -> None:
        self._desk.go(visit_id=visit_id, view=View.BOX)

    def _choosable(self, chosen: Iterable[ColonyId]) -> tuple[Colony, ...]:
        """The colony the keeper is at, then those that stand in its apiary, then any other chosen one.

        Their order stays the same while they are chosen and let go.
        """
        read, spot = self._desk.book.read, self._desk.spot
        standing = read.standing(spot.apiary_id, spot.day) if spot.apiary_id is not None else ()
        chosen = tuple(chosen)
        here = (place.colony.id for place in standing if place.colony is not None)
        ids = dict.fromkeys([*chosen[:1], *here, *chosen])
        return tuple(colony for its in ids if (colony := read.get(Colony, its)) is not None)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(12)
        head.addWidget(self._title)
        head.addWidget(self._subtitle, 1, Qt.AlignmentFlag.AlignBottom)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 8, 14, 6)
        column.setSpacing(4)
        column.addLayout(head)
        column.addWidget(self.controls)
        column.addSpacing(4)
        column.addWidget(self.glass, 1)
