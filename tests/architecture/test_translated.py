"""Every visible text goes through the one translation call, so that a language is data.

Text handed to Qt as a literal, or built with an f-string, would stay English in every language.
"""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.architecture.house import CHECKOUT

ROOMS = ("qt", "bench", "rounds", "year", "window")
SHOWN_BY = frozenset(
    {
        "setText",
        "setToolTip",
        "setStatusTip",
        "setWindowTitle",
        "setAccessibleName",
        "setAccessibleDescription",
        "setPlaceholderText",
        "setTitle",
        "setHtml",
        "setMarkdown",
        "setPlainText",
        "setLabelText",
        "setInformativeText",
        "addItem",
        "addAction",
        "addMenu",
        "addButton",
        "drawText",
        "tell",
        "say_kept",
        "show_sentence",
        "QLabel",
        "QPushButton",
        "QToolButton",
        "QCheckBox",
        "QRadioButton",
        "QGroupBox",
        "QAction",
        "QMenu",
        "QMessageBox",
        "QProgressDialog",
        "QListWidgetItem",
        "Form",
        "TextLine",
        "TextBlock",
        "NumberLine",
        "DayLine",
        "Choice",
        "Tick",
        "FieldError",
    }
)
SIGNS = frozenset("‹›+-−×…·/:;,. ()[]=?")
"""Signs are no words: an arrow or a dash is the same in every language."""


def _files() -> list[Path]:
    return sorted(path for room in ROOMS for path in (CHECKOUT / "beeworkbook" / room).rglob("*.py"))


def _called(node: ast.Call) -> str:
    return node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")


def _words(node: ast.expr) -> Iterator[str]:
    """Words written out in an argument; what say() gets is left out, and so are signs."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        if any(letter.isalpha() for letter in node.value):
            yield node.value
    elif isinstance(node, ast.JoinedStr):
        for part in node.values:
            if isinstance(part, ast.Constant) and any(letter.isalpha() for letter in str(part.value)):
                yield str(part.value)
    elif isinstance(node, ast.BinOp):
        yield from _words(node.left)
        yield from _words(node.right)
    elif isinstance(node, ast.IfExp):
        yield from _words(node.body)
        yield from _words(node.orelse)


def untranslated(source: str) -> list[tuple[int, str]]:
    """Line and words of each text shown without say()."""
    found = []
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call) or _called(node) not in SHOWN_BY:
            continue
        arguments = [*node.args, *(keyword.value for keyword in node.keywords if keyword.arg == "hint")]
        found += [(node.lineno, words) for argument in arguments for words in _words(argument)]
    return found


@pytest.mark.parametrize("path", _files(), ids=lambda path: str(path.relative_to(CHECKOUT)))
def test_no_text_is_shown_without_the_translation_call(path: Path) -> None:
    assert untranslated(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    ("source", "found"),
    [
        ('label.setText("Hello")', ["Hello"]),
        ('QLabel(f"{n} combs")', [" combs"]),
        ('button.setToolTip("Do " + it)', ["Do "]),
        ('label.setText("yes" if on else "no")', ["yes", "no"]),
        ('form.add(TextLine(say("Name"), hint="as it is called"))', ["as it is called"]),
        ('label.setText(say("Hello"))', []),
        ('label.setText(f"{a}: {b}")', []),
        ('button.setText("‹")', []),
        ('thing.setObjectName("quiet")', []),
    ],
)
def test_the_rule_sees_what_it_is_to_see(source: str, found: list[str]) -> None:
    assert [words for _line, words in untranslated(source)] == found
