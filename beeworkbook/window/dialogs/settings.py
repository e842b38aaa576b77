"""Settings of the workbook (title, hemisphere, own frame types) and of the window (dark, language)."""

from dataclasses import replace
from typing import TYPE_CHECKING

from beeworkbook.colony.records import OwnFrame
from beeworkbook.comb.frames import FRAME_TYPES, OwnFrameError, own_frame
from beeworkbook.comb.lattice import DRONE_CELLS_PER_DM2, WORKER_CELLS_PER_DM2
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.resources import MissingResourceError, resource
from beeworkbook.window.dialogs.form import Choice, FieldError, Form, NumberLine, TextLine, Tick
from beeworkbook.words import load_catalogue, say
from beeworkbook.workbook.edits.place import AddOwnFrame, ChangeRecord, RemoveRecord, SetSetting
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.place import Edit

if TYPE_CHECKING:
    from beeworkbook.window.main_window import MainWindow


class SettingsForm(Form):
    """What can be set, for this workbook and for this window. What is the workbook's is one undo step."""

    def __init__(self, window: "MainWindow") -> None:
        """The settings as they are now."""
        super().__init__(window, say("Settings"), say("Keep"))
        self._window = window
        book = window.desk.book
        self.title = self.add(TextLine(say("Title of the workbook"), book.title, needed=True))
        ends: list[tuple[str, object]] = [(say("northern"), "north"), (say("southern"), "south")]
        held = book.setting("hemisphere", "north")
        hint = say("which months are the season")
        self.hemisphere = self.add(Choice(say("Hemisphere"), ends, held, hint=hint))
        self.language = self.add(Choice(say("Language"), languages(), window.memory.get("language", "")))
        self.dark = self.add(Tick(say("dark ground"), on=window.desk.palette == DARK))
        self.next_column()
        self._add_frame()
        if book.read_only:
            own = (self.title, self.hemisphere, self.frame, self.name, self.width_mm, self.height_mm)
            for field in (*own, self.density, self.drone_density, self.gone):
                field.widget.setEnabled(False)
        self.title.line.setFocus()

    def _add_frame(self) -> None:
        owned = sorted(self._window.desk.book.read.find(OwnFrame), key=lambda own: own.name)
        options: list[tuple[str, object]] = [(say("a new one"), None), *((own.name, own) for own in owned)]
        known = say("{n} published types are known; only for one that is missing", n=len(FRAME_TYPES))
        self.frame = self.add(Choice(say("A frame type of your own"), options, hint=known))
        self.name = self.add(TextLine(say("Its name"), blank=say("left blank, none is added")))
        self.width_mm = self.add(NumberLine(say("Inside width, mm")))
        self.height_mm = self.add(NumberLine(say("Inside height, mm")))
        self.density = self.add(NumberLine(say("Worker cells per dm² of a side"), WORKER_CELLS_PER_DM2))
        self.drone_density = self.add(NumberLine(say("Drone cells per dm² of a side"), DRONE_CELLS_PER_DM2))
        self.gone = self.add(Tick(say("take it out of the book")))
        self.frame.on_change(self._show_frame)
        self.add_check(self._frame_can_be)
        self._show_frame()

    def ask_and_keep(self) -> bool:
        """Show the form; when it is agreed to, keep what was changed."""
        if not self.ask(self._keep):
            return False
        window = self._window
        window.desk.set_palette(DARK if self.dark.on else LIGHT)
        if self.language.value != window.memory.get("language", ""):
            window.memory.put("language", self.language.value)
            window.tell(say("The language changes at the next start."))
        elif self.name.text and self.frame.value is None:
            window.tell(say("The frame type {name} can now be chosen for a box.", name=self.name.text))
        return True

    def _keep(self) -> object:
        edits = self.edits()
        if not edits:
            return None
        return self._window.desk.book.do(Together(edits, say("change the settings")), source=self)

    def edits(self) -> tuple[Edit, ...]:
        """What was changed of the workbook."""
        book = self._window.desk.book
        made: list[Edit] = []
        if self.title.text != book.title:
            made.append(SetSetting("title", self.title.text))
        if self.hemisphere.value != book.setting("hemisphere", "north"):
            made.append(SetSetting("hemisphere", str(self.hemisphere.value)))
        made += self._frame_edits()
        return tuple(made)

    def _frame_edits(self) -> list[Edit]:
        own = self.frame.value
        if isinstance(own, OwnFrame) and self.gone.on:
            return [RemoveRecord(OwnFrame, own.id)]
        width, height = self.width_mm.number, self.height_mm.number
        if not self.name.text or width is None or height is None:
            return []
        density = self.density.number or WORKER_CELLS_PER_DM2
        drone = self.drone_density.number or DRONE_CELLS_PER_DM2
        if isinstance(own, OwnFrame):
            after = replace(
                own,
                name=self.name.text,
                inside_width_mm=width,
                inside_height_mm=height,
                cells_per_dm2=density,
                drone_cells_per_dm2=drone,
            )
            return [ChangeRecord(after)] if after != own else []
        return [AddOwnFrame(self.name.text, width, height, density, drone)]

    def _show_frame(self) -> None:
        own = self.frame.value
        is_own = isinstance(own, OwnFrame)
        self.show_field(self.gone, shown=is_own)
        self.gone.box.setChecked(False)
        if isinstance(own, OwnFrame):
            self.name.line.setText(own.name)
            for field, value in (
                (self.width_mm, own.inside_width_mm),
                (self.height_mm, own.inside_height_mm),
                (self.density, own.cells_per_dm2),
                (self.drone_density, own.drone_cells_per_dm2),
            ):
                field.show(value)
        else:
            for line in (self.name, self.width_mm, self.height_mm):
                line.line.clear()
        sides_kept = is_own and self._is_drawn_in(own)  # type: ignore[arg-type]  # is_own says it is one
        for field in (self.width_mm, self.height_mm, self.density):
            field.widget.setEnabled(not sides_kept)
            field.widget.setToolTip(
                say("Combs are drawn in this frame already, so its size stays") if sides_kept else field.label
            )

    def _is_drawn_in(self, own: OwnFrame) -> bool:
        from beeworkbook.colony.records import Side

        return bool(self._window.desk.book.read.find(Side, frame_type=own.id))

    def _frame_can_be(self) -> None:
        own = self.frame.value
        if isinstance(own, OwnFrame) and self.gone.on:
            if self._is_used(own):
                raise FieldError(say("Boxes of this workbook take this frame, so it stays."), self.frame)
            return
        if not self.name.text:
            if isinstance(own, OwnFrame):
                raise FieldError(say("{field} is wanted.", field=self.name.label), self.name)
            return
        width, height = self.width_mm.number, self.height_mm.number
        if width is None or height is None:
            raise FieldError(
                say("A frame type of your own needs its inside width and height."), self.width_mm
            )
        try:
            own_frame(
                "own",
                self.name.text,
                width,
                height,
                cells_per_dm2=self.density.number or WORKER_CELLS_PER_DM2,
                drone_cells_per_dm2=self.drone_density.number or DRONE_CELLS_PER_DM2,
            )
        except OwnFrameError as error:
            raise FieldError(str(error), self._field_of(error.field)) from error

    def _is_used(self, own: OwnFrame) -> bool:
        from beeworkbook.colony.records import Frame, Part

        read = self._window.desk.book.read
        return bool(read.find(Part, frame_type=own.id) or read.find(Frame, frame_type=own.id))

    def _field_of(self, name: str) -> TextLine:
        return {
            "inside_width_mm": self.width_mm,
            "inside_height_mm": self.height_mm,
            "cells_per_dm2": self.density,
            "drone_cells_per_dm2": self.drone_density,
        }.get(name, self.name)


def ask_settings(window: "MainWindow") -> None:
    """Ask for the settings and keep what was changed."""
    SettingsForm(window).ask_and_keep()


def languages() -> list[tuple[str, object]]:
    """The languages that are shipped, English first."""
    made: list[tuple[str, object]] = [("English", "")]
    try:
        folder = resource("languages")
    except MissingResourceError:
        return made
    for path in sorted(folder.glob("*.json")):
        made += [(load_catalogue(path).language or path.stem, path.stem)]
    return made
