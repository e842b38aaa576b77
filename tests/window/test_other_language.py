"""A language that exists nowhere: every text in it stands in brackets, and is half as long again.

So what was not translated is seen, and what has no room for a longer language too.
"""

from collections.abc import Iterator, Mapping

import pytest
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QDialog,
    QGroupBox,
    QLabel,
    QLineEdit,
    QWidget,
)

from beeworkbook.colony.records import Apiary, Colony, Hive, Stand
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.told import show_sentence, show_unforeseen
from beeworkbook.window.help_actions import HelpWindow
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.words import Catalogue, installed_catalogue, use_catalogue
from tests.window.conftest import Answerer

OPEN, SHUT = "⟦", "⟧"
SIGNS_OF_KEYS = frozenset({"Ctrl", "Shift", "Alt"})


class Bracketed(dict[str, str]):
    """A catalogue that has every text, in brackets."""

    def get(self, text: str, default: object = None) -> object:  # type: ignore[override]
        del default
        return f"{OPEN}{text}{SHUT}"


@pytest.fixture(autouse=True)
def _in_brackets() -> Iterator[None]:
    held = installed_catalogue()
    texts: Mapping[str, str] = Bracketed()
    use_catalogue(Catalogue(texts, plural="single"))
    yield
    use_catalogue(held)


def outside(text: str) -> str:
    """What stands outside all brackets."""
    depth, left = 0, []
    for letter in text:
        depth += (letter == OPEN) - (letter == SHUT)
        if depth == 0 and letter != SHUT:
            left.append(letter)
    return "".join(left)


def own_words(window: MainWindow) -> set[str]:
    """What the keeper wrote, which no catalogue translates."""
    read = window.desk.book.read
    return {
        window.desk.book.title,
        *(each.name for each in read.find(Apiary)),
        *(each.name for each in read.find(Stand)),
        *(each.name for each in read.find(Colony)),
        *(each.name for each in read.find(Hive)),
    }


def texts_of(widget: QWidget) -> Iterator[str]:
    """All texts a widget shows or says."""
    yield widget.toolTip()
    yield widget.windowTitle()
    yield widget.accessibleName()
    if isinstance(widget, (QLabel, QAbstractButton)):
        yield widget.text()
    if isinstance(widget, QGroupBox):
        yield widget.title()
    if isinstance(widget, QLineEdit):
        yield widget.placeholderText()
    if isinstance(widget, QComboBox):
        yield from (widget.itemText(at) for at in range(widget.count()))


def untranslated(whole: QWidget, own: set[str]) -> set[str]:
    """Texts with words of ours in them that stand outside all brackets."""
    found = set()
    for widget in (whole, *whole.findChildren(QWidget)):
        if isinstance(widget, QLineEdit) and isinstance(widget.parent(), QComboBox):
            continue
        for text in texts_of(widget):
            left = outside(text)
            for name in sorted(own, key=len, reverse=True):
                left = left.replace(name, "")
            words = [word for word in left.replace("+", " ").split() if sum(map(str.isalpha, word)) > 2]
            if [word for word in words if word.strip("().,:;…") not in SIGNS_OF_KEYS]:
                found.add(text)
    return found


def test_every_room_speaks_the_language(opener: Opener, orchard: object) -> None:
    assert opener.begin(orchard)  # type: ignore[arg-type]
    window = opener.window
    assert window is not None
    window.desk.go(visit_id=window.desk.visits()[-1].id)
    own = own_words(window) | {"Super to go on next time", "2L 1:1"}
    for view in (View.ROUND, View.BOX, View.BENCH, View.STACK, View.YEAR, View.DAYS, View.PAPERS):
        window.go_to(view)
        QApplication.processEvents()
        assert untranslated(window.shell, own) == set(), view


def test_every_menu_speaks_the_language(opener: Opener, orchard: object) -> None:
    assert opener.begin(orchard)  # type: ignore[arg-type]
    window = opener.window
    assert window is not None
    for action in window.shell.findChildren(QAction):
        if action.text():
            assert action.text().startswith(OPEN), action.text()
            assert not action.toolTip() or action.toolTip().startswith(OPEN), action.toolTip()


@pytest.mark.parametrize(
    "name",
    [
        "add_colony",
        "add_event",
        "happened",
        "give_feed",
        "add_due",
        "rename",
        "take_out",
        "settings",
        "move_colony",
        "add_apiary",
        "go_colony",
        "move_comb",
        "other_end",
        "begin_round",
    ],
)
def test_every_form_speaks_the_language(opener: Opener, orchard: object, answer: Answerer, name: str) -> None:
    assert opener.begin(orchard)  # type: ignore[arg-type]
    window = opener.window
    assert window is not None
    own = own_words(window) | {"2L 1:1", "2 L 1:1", "English"}
    found: set[str] = set()

    def look(dialog: QWidget) -> None:
        assert isinstance(dialog, QDialog)
        found.update(untranslated(dialog, own))

    answer(look)
    window.commands.do(name)
    assert found == set()


def test_what_is_told_in_a_box_of_its_own_speaks_the_language(
    opener: Opener, orchard: object, answer: Answerer
) -> None:
    assert opener.begin(orchard)  # type: ignore[arg-type]
    window = opener.window
    assert window is not None
    found: set[str] = set()
    answer(lambda box: found.update(untranslated(box, set())))
    show_sentence(window.shell, f"{OPEN}Title{SHUT}", f"{OPEN}Sentence.{SHUT}")
    answer(lambda box: found.update(untranslated(box, set())))
    show_unforeseen(window.shell, "Traceback")
    assert found == set()
    window.commands.do("about")
    page = next(held for held in QApplication.topLevelWidgets() if isinstance(held, HelpWindow))
    assert {button.text() for button in page.findChildren(QAbstractButton) if button.text()} == {
        f"{OPEN}Close{SHUT}"
    }
    page.close()
