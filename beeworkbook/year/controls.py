"""The row of switches above the chart: measure, arrangement, what is shown, which colonies, which year."""

from collections.abc import Callable, Iterable
from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QButtonGroup,
    QCheckBox,
    QHBoxLayout,
    QLabel,
    QMenu,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from beeworkbook.colony.records import Colony, ColonyId
from beeworkbook.qt.icons import icon
from beeworkbook.qt.palette import Palette
from beeworkbook.words import say
from beeworkbook.year.choice import Arrangement, Choice, Measure

_SHOWN = ("drones", "last_year", "stores", "bees")


class Controls(QWidget):
    """All that can be asked of the chart; every control has its words, its tooltip and its key of access."""

    changed = Signal(object)
    """The Choice, after the keeper asked for something else."""

    def __init__(self, choice: Choice) -> None:
        """The controls, set to `choice`."""
        super().__init__()
        self._choice = choice
        self._setting = False
        self._listed: tuple[Colony, ...] = ()
        self._actions: dict[ColonyId, QAction] = {}
        self.year_back = self._quiet(say("The year before"), lambda: self._take(year=self._choice.year - 1))
        self.year_on = self._quiet(say("The year after"), lambda: self._take(year=self._choice.year + 1))
        self.year_label = QLabel()
        self.year_label.setObjectName("strong")
        self.year_label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.year_label.setMinimumWidth(58)
        self.arrangements = self._group(
            (
                (Arrangement.SEASON, say("Season"), say("One season, the brood stacked by stage")),
                (Arrangement.ROW, say("In a row"), say("All seasons one after the other")),
                (Arrangement.YEARS, say("Laid over"), say("The years laid over one another by day of year")),
            ),
            lambda value: self._take(arrangement=value),
        )
        self.measures = self._group(
            (
                (Measure.AREA, say("dm²"), say("Brood in square decimetres of comb side")),
                (Measure.CELLS, say("cells"), say("Brood in cells")),
            ),
            lambda value: self._take(measure=value),
        )
        self.boxes = {
            "drones": self._box("drones", say("Drones"), say("Drone brood, apart from the workers")),
            "last_year": self._box("last_year", say("Last year"), say("The season before, as a dashed line")),
            "stores": self._box("stores", say("Stores"), say("Stores in kilograms, in a pane below")),
            "bees": self._box("bees", say("Bees"), say("Bees by sides or seams, in a pane below")),
        }
        self.colonies = QToolButton()
        self.colonies.setText(say("Colonies…"))
        self.colonies.setToolTip(say("Show other colonies beside this one"))
        self.colonies.setAccessibleName(say("Colonies shown together"))
        self.colonies.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.colonies.setMenu(QMenu(self.colonies))
        # Its three dots say that it opens; the style's arrow would lie over them.
        self.colonies.setStyleSheet("QToolButton::menu-indicator { image: none; width: 0; }")
        self._lay_out()
        self.show_choice(choice, ())

    @property
    def choice(self) -> Choice:
        """What is asked for now."""
        return self._choice

    def show_choice(self, choice: Choice, colonies: Iterable[Colony], year_words: str = "") -> None:
        """Follow a choice made elsewhere; `colonies` can be shown together, the first one always is."""
        self._setting = True
        self._choice = choice
        self.year_label.setText(year_words or f"{choice.year}")
        self.arrangements[choice.arrangement].setChecked(True)
        self.measures[choice.measure].setChecked(True)
        for name, box in self.boxes.items():
            box.setChecked(bool(getattr(choice, name)))
        stacked = choice.arrangement is Arrangement.SEASON and len(choice.colony_ids) == 1
        self.boxes["last_year"].setEnabled(stacked)
        one_year = choice.arrangement is Arrangement.SEASON
        for button in (self.year_back, self.year_on):
            button.setEnabled(one_year)
        self._fill_menu(tuple(colonies))
        self._setting = False

    def show_palette(self, palette: Palette) -> None:
        """Draw the arrows in the theme's ink."""
        self.year_back.setIcon(icon("back", palette.ink))
        self.year_on.setIcon(icon("on", palette.ink))

    # --- within -------------------------------------------------------------------------------

    def _take(self, **asked: object) -> None:
        if self._setting:
            return
        self._choice = replace(self._choice, **asked)  # type: ignore[arg-type] # the controls name the fields
        self.changed.emit(self._choice)

    def _quiet(self, words: str, act: Callable[[], None]) -> QToolButton:
        made = QToolButton()
        made.setObjectName("quiet")
        made.setToolTip(words)
        made.setAccessibleName(words)
        made.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        made.clicked.connect(act)
        return made

    def _group(
        self, items: Iterable[tuple[object, str, str]], act: Callable[[object], None]
    ) -> dict[object, QToolButton]:
        group = QButtonGroup(self)
        made: dict[object, QToolButton] = {}
        for value, words, tip in items:
            button = QToolButton()
            button.setText(words)
            button.setCheckable(True)
            button.setToolTip(tip)
            button.setAccessibleName(words)
            button.setAccessibleDescription(tip)
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            button.toggled.connect(lambda on, value=value: act(value) if on else None)
            group.addButton(button)
            made[value] = button
        return made

    def _box(self, name: str, words: str, tip: str) -> QCheckBox:
        made = QCheckBox(words)
        made.setToolTip(tip)
        made.setAccessibleName(words)
        made.setAccessibleDescription(tip)
        made.toggled.connect(lambda on: self._take(**{name: on}))
        return made

    def _fill_menu(self, colonies: tuple[Colony, ...]) -> None:
        """An action a colony; kept as long as the colonies are the same, since one of them may be acting."""
        if colonies != self._listed:
            self._listed = colonies
            menu = self.colonies.menu()
            menu.clear()
            self._actions = {colony.id: self._colony_action(colony, menu) for colony in colonies}
        for colony_id, action in self._actions.items():
            action.setChecked(colony_id in self._choice.colony_ids)
            action.setEnabled(colony_id != self._choice.colony_ids[0])
        self.colonies.setEnabled(len(colonies) > 1)
        shown = len(self._choice.colony_ids)
        self.colonies.setText(say("Colonies…") if shown < 2 else say("{n} colonies…", n=shown))

    def _colony_action(self, colony: Colony, menu: QMenu) -> QAction:
        action = QAction(colony.name, menu)
        action.setCheckable(True)
        action.toggled.connect(lambda on: self._take_colony(colony.id, on=on))
        menu.addAction(action)
        return action

    def _take_colony(self, colony_id: ColonyId, *, on: bool) -> None:
        if self._setting:
            return
        held = [its for its in self._choice.colony_ids if its != colony_id]
        self._take(colony_ids=(*held, *([colony_id] if on else [])))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Two rows where one is too narrow."""
        super().resizeEvent(event)
        need = self._left.sizeHint().width() + self._right.sizeHint().width()
        narrow = self.width() < need
        way = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        if self._rows.direction() != way:
            self._rows.setDirection(way)
            self.updateGeometry()

    def _lay_out(self) -> None:
        self._left, self._right = QWidget(), QWidget()
        left, right = (_row(held) for held in (self._left, self._right))
        for widgets in (
            (self.year_back, self.year_label, self.year_on),
            tuple(self.arrangements.values()),
            tuple(self.measures.values()),
        ):
            for widget in widgets:
                left.addWidget(widget)
            left.addSpacing(14)
        left.addStretch(1)
        for box in self.boxes.values():
            right.addWidget(box)
            right.addSpacing(6)
        right.addStretch(1)
        right.addWidget(self.colonies)
        self._rows = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(4)
        self._rows.addWidget(self._left)
        self._rows.addWidget(self._right, 1)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)


def _row(held: QWidget) -> QHBoxLayout:
    row = QHBoxLayout(held)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(0)
    return row
