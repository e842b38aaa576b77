"""Every action of the window in one table: its menu, words, keys, and what it is for.

No key here is a letter alone, since letters are contents and digits are eighths.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True)
class ActionSpec:
    """One action. `name` is the method of Commands that does it; texts are keys of the translation."""

    name: str
    menu: str
    text: str
    keys: str
    tip: str
    group: int = 0
    checkable: bool = False
    writes: bool = False


MENUS: Final = ("Workbook", "Edit", "Visit", "Comb", "Hive", "Year", "Papers", "View", "Help")

ACTIONS: Final[tuple[ActionSpec, ...]] = (
    ActionSpec(
        "new_workbook",
        "Workbook",
        "New workbook…",
        "Ctrl+Shift+B",
        "Begin a new workbook in a file you choose",
    ),
    ActionSpec("open_workbook", "Workbook", "Open a workbook…", "Ctrl+O", "Open another workbook"),
    ActionSpec(
        "open_sample",
        "Workbook",
        "Open the sample",
        "Ctrl+Shift+O",
        "Open your copy of the invented sample apiary",
    ),
    ActionSpec(
        "save_copy",
        "Workbook",
        "Save a copy…",
        "Ctrl+Shift+S",
        "Write a copy of the workbook; this one stays open",
        1,
    ),
    ActionSpec(
        "restore_copy",
        "Workbook",
        "Restore a copy…",
        "Ctrl+Alt+R",
        "Go back to a copy kept on an earlier day",
        1,
    ),
    ActionSpec(
        "export_book",
        "Workbook",
        "Export everything…",
        "Ctrl+E",
        "Write the whole workbook in the exchange format",
        2,
    ),
    ActionSpec(
        "import_book",
        "Workbook",
        "Import a workbook…",
        "Ctrl+I",
        "Read an exchange file into a new workbook",
        2,
    ),
    ActionSpec(
        "export_totals",
        "Workbook",
        "Totals as a table…",
        "Ctrl+Shift+E",
        "Write the totals of every visit as CSV",
        2,
    ),
    ActionSpec(
        "check_book",
        "Workbook",
        "Check the workbook",
        "Ctrl+Alt+K",
        "Recount the totals and look for damage",
        3,
    ),
    ActionSpec(
        "settings",
        "Workbook",
        "Settings…",
        "Ctrl+,",
        "Title, hemisphere, your own frames, and how it looks",
        3,
    ),
    ActionSpec("quit", "Workbook", "Close", "Ctrl+Q", "Close the workbook; everything is already kept", 4),
    ActionSpec("undo", "Edit", "Undo", "Ctrl+Z", "Take the last step back and go to its place"),
    ActionSpec("redo", "Edit", "Redo", "Ctrl+Shift+Z", "Do the step again that was taken back"),
    ActionSpec(
        "rename", "Edit", "Rename…", "F2", "Give this colony, stand or apiary another name", 1, writes=True
    ),
    ActionSpec(
        "take_out",
        "Edit",
        "Take out of the book…",
        "Ctrl+Shift+Del",
        "What was entered by mistake: a colony, stand, apiary, box, comb, queen",
        1,
        writes=True,
    ),
    ActionSpec(
        "begin_round",
        "Visit",
        "Begin a round…",
        "Ctrl+R",
        "An afternoon in one apiary, a row a colony",
        writes=True,
    ),
    ActionSpec(
        "visit_on",
        "Visit",
        "Visit on another day…",
        "Ctrl+D",
        "Enter a look at this colony on a day you choose",
        writes=True,
    ),
    ActionSpec("visit_earlier", "Visit", "Earlier visit", "PgUp", "Leaf back to the visit before", 1),
    ActionSpec("visit_later", "Visit", "Later visit", "PgDown", "Leaf on to the visit after", 1),
    ActionSpec(
        "add_event",
        "Visit",
        "Something happened…",
        "Ctrl+Shift+V",
        "Queen, swarm, split, sold, died: a dated line",
        2,
        writes=True,
    ),
    ActionSpec(
        "give_feed",
        "Visit",
        "Feed…",
        "Ctrl+Shift+F",
        "Note feed given, or what was left of it",
        2,
        writes=True,
    ),
    ActionSpec(
        "happened",
        "Visit",
        "What happened…",
        "Ctrl+H",
        "Every dated line of this colony: seen, changed, taken out",
        2,
    ),
    ActionSpec(
        "add_due",
        "Visit",
        "Put down for a day…",
        "Ctrl+Alt+D",
        "Something to bring or to do; it stands in the Days",
        2,
        writes=True,
    ),
    ActionSpec(
        "move_visit",
        "Visit",
        "Move this visit…",
        "Ctrl+Alt+V",
        "It was another colony, or another day",
        3,
        writes=True,
    ),
    ActionSpec(
        "remove_visit",
        "Visit",
        "Remove this visit",
        "Ctrl+Alt+Del",
        "Take this visit out; undo brings it back",
        3,
        writes=True,
    ),
    ActionSpec(
        "swap_sides",
        "Comb",
        "Swap sides A and B",
        "Ctrl+Alt+X",
        "The two sides of this comb were drawn the wrong way round",
        writes=True,
    ),
    ActionSpec(
        "move_drawing",
        "Comb",
        "Move this drawing…",
        "Ctrl+Alt+M",
        "It was another comb, colony or day",
        writes=True,
    ),
    ActionSpec(
        "mirror_side",
        "Comb",
        "Mirror this side",
        "Ctrl+Alt+B",
        "This side was drawn left for right; its marks go with it",
        writes=True,
    ),
    ActionSpec(
        "copy_side",
        "Comb",
        "Copy from another visit…",
        "Ctrl+Alt+F",
        "Looked at, and as it was on a day you choose",
        writes=True,
    ),
    ActionSpec(
        "clear_side", "Comb", "Clear this side", "Ctrl+Del", "Nothing recorded on this side", writes=True
    ),
    ActionSpec(
        "turn_comb",
        "Comb",
        "Turn this comb round",
        "Ctrl+Alt+T",
        "From this day the comb hangs the other way round",
        1,
        writes=True,
    ),
    ActionSpec(
        "move_comb",
        "Comb",
        "Move this comb…",
        "Ctrl+Alt+C",
        "From this day the comb hangs in another place",
        1,
        writes=True,
    ),
    ActionSpec(
        "take_comb",
        "Comb",
        "Take this comb out",
        "Ctrl+Alt+O",
        "From this day the comb is out of the box",
        1,
        writes=True,
    ),
    ActionSpec(
        "add_comb",
        "Comb",
        "Put a frame in…",
        "Ctrl+Alt+I",
        "A new frame or a dummy board in an empty place",
        1,
        writes=True,
    ),
    ActionSpec(
        "drone_comb",
        "Comb",
        "Drone cells or worker cells",
        "Ctrl+Alt+G",
        "Drone brood is counted at the density of the cells it is in",
        1,
        writes=True,
    ),
    ActionSpec(
        "add_colony",
        "Hive",
        "Bees have come…",
        "Ctrl+N",
        "A nucleus, a package, a swarm or a whole hive",
        writes=True,
    ),
    ActionSpec(
        "add_apiary",
        "Hive",
        "Another apiary…",
        "Ctrl+Shift+A",
        "A second place where colonies stand",
        writes=True,
    ),
    ActionSpec(
        "change_apiary",
        "Hive",
        "This apiary…",
        "Ctrl+Alt+P",
        "Where it lies, its map reference, what is to be known of it",
        writes=True,
    ),
    ActionSpec(
        "go_colony", "Hive", "Go to a colony…", "Ctrl+G", "Any colony of the book, also one that is no more"
    ),
    ActionSpec(
        "go_apiary", "Hive", "Go to the next apiary", "Ctrl+Shift+G", "Show the stands of another apiary"
    ),
    ActionSpec(
        "move_colony",
        "Hive",
        "Move to another stand…",
        "Ctrl+Shift+M",
        "From this day the hive stands elsewhere",
        1,
        writes=True,
    ),
    ActionSpec(
        "stand_earlier",
        "Hive",
        "Stand earlier in the walk",
        "Alt+Shift+Left",
        "The round and its sheet follow the order of the stands",
        1,
        writes=True,
    ),
    ActionSpec(
        "stand_later",
        "Hive",
        "Stand later in the walk",
        "Alt+Shift+Right",
        "The round and its sheet follow the order of the stands",
        1,
        writes=True,
    ),
    ActionSpec(
        "other_end",
        "Hive",
        "Number from the other end",
        "Ctrl+Alt+E",
        "The combs of this box were counted from the wrong end",
        1,
        writes=True,
    ),
    ActionSpec(
        "chart_picture",
        "Year",
        "Save the chart as a picture…",
        "Ctrl+Shift+P",
        "The chart you see, as PNG or SVG",
    ),
    ActionSpec(
        "chart_table",
        "Year",
        "Save the chart's figures…",
        "Ctrl+Shift+T",
        "The figures behind the chart, as CSV",
    ),
    ActionSpec("paper_blank", "Papers", "Comb sheet, blank", "Ctrl+Shift+1", "A sheet to take to this hive"),
    ActionSpec(
        "paper_filled",
        "Papers",
        "Comb sheet, filled",
        "Ctrl+Shift+2",
        "This visit's combs, figures and notes on paper",
    ),
    ActionSpec(
        "paper_round", "Papers", "Round sheet", "Ctrl+Shift+3", "A row a colony, in the order they stand"
    ),
    ActionSpec("print_paper", "Papers", "Print…", "Ctrl+P", "Print the sheet shown, at its true size", 1),
    ActionSpec("view_round", "View", "Round", "Ctrl+1", "An afternoon, a line a colony"),
    ActionSpec("view_box", "View", "Box", "Ctrl+2", "All combs of the hive in their order"),
    ActionSpec("view_bench", "View", "Bench", "Ctrl+3", "One comb lifted out, both sides large"),
    ActionSpec("view_page", "View", "Page", "Ctrl+4", "What was noted that day"),
    ActionSpec("view_stack", "View", "Stack", "Ctrl+5", "The hive from stand to roof"),
    ActionSpec("view_year", "View", "Year", "Ctrl+6", "Brood over the season"),
    ActionSpec("view_days", "View", "Days", "Ctrl+7", "What is due and why"),
    ActionSpec("view_papers", "View", "Papers", "Ctrl+8", "Sheets to print"),
    ActionSpec("view_stands", "View", "Stands", "Ctrl+9", "The colonies as they stand"),
    ActionSpec(
        "deeper", "View", "A depth down", "F6", "From the round into the box, from the box to the bench", 1
    ),
    ActionSpec(
        "higher", "View", "A depth up", "Shift+F6", "From the bench to the box, from the box to the round", 1
    ),
    ActionSpec("colony_before", "View", "Colony before", "Ctrl+PgUp", "The colony on the stand before", 1),
    ActionSpec("colony_after", "View", "Colony after", "Ctrl+PgDown", "The colony on the next stand", 1),
    ActionSpec(
        "shine_through",
        "View",
        "Last visit shines through",
        "Ctrl+L",
        "Show the outlines of the visit before under the drawing",
        2,
        checkable=True,
    ),
    ActionSpec("dark", "View", "Dark", "Ctrl+Shift+D", "Light ground or dark ground", 2, checkable=True),
    ActionSpec("help", "Help", "Help", "F1", "How the book is kept, and the cautions"),
    ActionSpec("help_keys", "Help", "Keys", "Ctrl+F1", "Every key on one page"),
    ActionSpec(
        "help_cautions", "Help", "Cautions", "Shift+F1", "Stings, lifting, smoke, acids, notifiable disease"
    ),
    ActionSpec("about", "Help", "About", "Ctrl+Alt+A", "Version, licence, where the log lies"),
)


def by_name(name: str) -> ActionSpec:
    """The action of that name.

    Errors: KeyError if there is none.
    """
    return {spec.name: spec for spec in ACTIONS}[name]
