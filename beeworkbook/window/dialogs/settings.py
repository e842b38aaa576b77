"""Settings of the workbook (title, hemisphere, own frame types) and of the window (dark, language)."""

from typing import TYPE_CHECKING, Final

from beeworkbook.comb.frames import FRAME_TYPES, OwnFrameError, own_frame
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.resources import MissingResourceError, resource
from beeworkbook.window.dialogs.form import Choice, FieldError, Form, NumberLine, TextLine, Tick
from beeworkbook.words import load_catalogue, say
from beeworkbook.workbook.edits.place import AddOwnFrame, SetSetting

if TYPE_CHECKING:
    from beeworkbook.window.main_window import MainWindow

_LEAVE: Final = None


def ask_settings(window: "MainWindow") -> None:
    """Ask for the settings and keep what was changed."""
    desk = window.desk
    form = Form(window, say("Settings"), say("Keep"))
    title = form.add(TextLine(say("Title of the workbook"), desk.book.title, needed=True))
    ends = [(say("northern"), "north"), (say("southern"), "south")]
    held = desk.book.setting("hemisphere", "north")
    hemisphere = form.add(Choice(say("Hemisphere"), ends, held, hint=say("which months are the season")))
    language = form.add(Choice(say("Language"), languages(), window.memory.get("language", "")))
    dark = form.add(Tick(say("dark ground"), on=desk.palette == DARK))
    own = _add_frame_fields(form)
    if not form.ask():
        return
    if title.text != desk.book.title:
        desk.do(SetSetting("title", title.text), source=window)
    if hemisphere.value != held:
        desk.do(SetSetting("hemisphere", str(hemisphere.value)), source=window)
    desk.set_palette(DARK if dark.on else LIGHT)
    if language.value != window.memory.get("language", ""):
        window.memory.put("language", language.value)
        window.tell(say("The language changes at the next start."))
    name, width, height, density = own
    if name.text and width.number and height.number:
        made = desk.do(
            AddOwnFrame(name.text, width.number, height.number, density.number or 400.0), source=window
        )
        if made is not None:
            window.tell(say("The frame type {name} can now be chosen for a box.", name=name.text))


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


def _add_frame_fields(form: Form) -> tuple[TextLine, NumberLine, NumberLine, NumberLine]:
    known = say_names()
    name = form.add(TextLine(say("A frame type of your own"), hint=known))
    width = form.add(NumberLine(say("Inside width, mm")))
    height = form.add(NumberLine(say("Inside height, mm")))
    density = form.add(NumberLine(say("Worker cells per dm² of a side"), 400.0))

    def check() -> None:
        if not name.text:
            return
        if width.number is None or height.number is None:
            raise FieldError(say("A frame type of your own needs its inside width and height."))
        try:
            own_frame("own", name.text, width.number, height.number, cells_per_dm2=density.number or 400.0)
        except OwnFrameError as error:
            raise FieldError(str(error)) from error

    form.add_check(check)
    return name, width, height, density


def say_names() -> str:
    """How many frame types are known already."""
    return say("{n} published types are known; leave this blank unless yours is missing", n=len(FRAME_TYPES))
