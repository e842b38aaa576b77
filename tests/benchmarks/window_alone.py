"""A window in a process of its own that says when it was painted and what memory it holds.

Started by bench_start with what to do: `bare` shows a Qt window with nothing in it; `program` starts
beeworkbook where it was left and ends once the box is painted; `charts` goes on to the Year; `all` uses
everything. The floor and the program are marked alike: when the event loop goes on after a painting.
"""

import json
import os
import sys
import traceback
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path
from time import monotonic_ns, process_time_ns
from types import TracebackType
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from beeworkbook.window.main_window import MainWindow

TODAY: Final = date(2026, 5, 16)
SETTLED_MS: Final = 1500
STEP_MS: Final = 700
told: dict[str, object] = {}


def mark(name: str) -> None:
    """Keep the moment and the processor's time so far: the second says more where other programs are busy."""
    told[name], told[f"{name}_worked"] = monotonic_ns(), process_time_ns()


def memory_kb() -> int:
    """What this process holds of the machine's memory now, libraries included."""
    for line in Path("/proc/self/status").read_text(encoding="ascii").splitlines():
        if line.startswith("VmRSS:"):
            return int(line.split()[1])
    raise RuntimeError("this system does not tell what memory a process holds")


def tell() -> None:
    """Say what was found to whoever started this, and end at once."""
    print(json.dumps(told), flush=True)
    os._exit(0)


def fail(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
    """An error in a step ends the process, so that nothing is measured that was not done."""
    traceback.print_exception(kind, error, trace)
    sys.stderr.flush()
    os._exit(1)


def bare(*, stays: bool) -> None:
    """A Qt window of the program's size, and nothing in it."""
    from PySide6.QtCore import QTimer
    from PySide6.QtGui import QPaintEvent
    from PySide6.QtWidgets import QApplication, QMainWindow

    class Bare(QMainWindow):
        def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802  # Qt's own spelling
            super().paintEvent(event)
            if "painted" not in told:
                told["painted"] = None
                QTimer.singleShot(0, self.go_on)

        def go_on(self) -> None:
            mark("painted")
            if stays:
                QTimer.singleShot(SETTLED_MS, self.settled)
            else:
                tell()

        def settled(self) -> None:
            told["memory"] = memory_kb()
            tell()

    app = QApplication(sys.argv[:1])
    window = Bare()
    window.setWindowTitle("bare")
    window.resize(1366, 740)
    window.show()
    app.exec()


def program(once_seen: Callable[["QWidget"], None]) -> None:
    """The program as its command starts it, on the workbook that lay open last."""
    import beeworkbook.cli.main
    import beeworkbook.cli.opening  # noqa: F401  # the way there; it would send us off without a screen
    from beeworkbook.app import run
    from beeworkbook.qt import first_paint

    original = first_paint.when_painted

    def noting(widget: "QWidget", then: Callable[[], object]) -> None:
        name = "box" if "painted" in told else "painted"
        told[name] = None

        def noted() -> None:
            mark(name)
            if name == "box":
                once_seen(widget)
            then()

        original(widget, noted)

    first_paint.when_painted = noting
    run(None, lambda: TODAY)


def compare(row: Any) -> None:
    """What is seen of the box now is what is seen of it when all is settled, or the mark came too early."""
    from PySide6.QtCore import QTimer

    now = row.grab().toImage()
    told["pictures"] = sum(
        row.pictures.image(comb, face) is not None for comb in row.combs for face in comb.sides
    )

    def settled() -> None:
        told["alike"] = row.grab().toImage() == now
        tell()

    QTimer.singleShot(SETTLED_MS, settled)


def use(steps: Callable[["MainWindow"], Iterator[None]]) -> Callable[["QWidget"], None]:
    """Once the box is painted, take step after step with some time between them, then look at the memory."""

    def begin(row: "QWidget") -> None:
        from PySide6.QtCore import QTimer

        sys.excepthook = fail  # the program would show a sentence and wait for somebody to read it
        shell: Any = row.window()
        walk: Iterator[None] = iter(())

        def go_on() -> None:
            if next(walk, StopIteration) is StopIteration:
                told["memory"] = memory_kb()
                tell()
            QTimer.singleShot(STEP_MS, go_on)

        def start() -> None:
            nonlocal walk
            walk = steps(shell.centralWidget())
            go_on()

        QTimer.singleShot(SETTLED_MS, start)

    return begin


def charts(window: "MainWindow") -> Iterator[None]:
    """The box and its comb are there; the ruler is one chart, the Year with stores and bees the other."""
    from beeworkbook.qt.desk import View

    window.desk.go(view=View.BENCH)
    yield
    window.go_to(View.YEAR)
    year: Any = window.face(View.YEAR)
    year.controls.boxes["stores"].click()
    yield
    assert year.model is not None
    told["panes"] = len(year.model.panes)
    window.go_to(View.BOX)
    yield


def everything(window: "MainWindow") -> Iterator[None]:
    """Every room, both themes, strokes and undo, sheets on paper, pictures, exchange, and a check."""
    from beeworkbook.comb.contents import Content
    from beeworkbook.comb.regions import flood
    from beeworkbook.comb.side import CellPatch
    from beeworkbook.qt.desk import View
    from beeworkbook.qt.palette import DARK, LIGHT
    from beeworkbook.window.papers_view import SheetKind
    from beeworkbook.workbook.edits.combs import PaintCells
    from beeworkbook.workbook.exchange import export_book

    folder = Path(os.environ["BEEWORKBOOK_HOME"])
    yield from charts(window)
    bench, desk = window.bench, window.desk
    window.go_to(View.BENCH)
    yield
    visit, frame, face = desk.spot.visit_id, desk.spot.frame_id, desk.spot.face
    assert visit is not None
    assert frame is not None
    side = bench.sides[face].canvas.side
    lattice = side.lattice
    assert lattice is not None
    for content in (Content.EGGS, Content.POLLEN, Content.STORES) * 4:
        cells = flood(lattice, side.cells, lattice.cells // 2)
        desk.do(PaintCells(visit, frame, face, CellPatch.painting(side.cells, cells, content), content))
        yield
    for _ in range(12):
        desk.undo()
    yield
    for palette in (DARK, LIGHT):
        desk.set_palette(palette)
        yield
    for view in View:
        if view is not View.FIRST:
            window.go_to(view)
            yield
    papers: Any = window.face(View.PAPERS)
    for kind in SheetKind:
        papers.choose_kind(kind)
        for _ in range(4):
            yield
        papers.write_pdf(folder / f"{kind.name}.pdf")
    window.go_to(View.YEAR)
    year: Any = window.face(View.YEAR)
    for name in ("chart.png", "chart.svg"):
        year.save_picture(folder / name)
        yield
    year.save_table(folder / "chart.csv")
    exported = folder / "all.json"
    exported.unlink(missing_ok=True)
    export_book(desk.book.read, exported)
    yield
    told["findings"] = len(desk.book.check())
    window.go_to(View.BOX)
    yield


DOES: Final[dict[str, Callable[[], None]]] = {
    "bare": lambda: bare(stays=False),
    "bare_settled": lambda: bare(stays=True),
    "program": lambda: program(lambda _row: tell()),
    "compare": lambda: program(compare),
    "charts": lambda: program(use(charts)),
    "all": lambda: program(use(everything)),
}

if __name__ == "__main__":
    DOES[sys.argv[1]]()
