"""The store beside raw sqlite3 and a flat file: a stroke, a visit, a season, ten years, the size of the file.

Run with: python -m pytest tests/benchmarks/bench_store.py --benchmark-enable -s
Every drawing has the 4,536 cells of a modern Dadant-Blatt brood side, ten contents and some speckle.
"""

import random
import sqlite3
import zlib
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from itertools import count, cycle
from pathlib import Path
from typing import Any, Final

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Arrival,
    Colony,
    ColonyId,
    Frame,
    FrameId,
    FrameStay,
    FrameStayId,
    Hive,
    HiveId,
    Housing,
    HousingId,
    Level,
    Part,
    PartId,
    PartKind,
    PartStay,
    PartStayId,
    Side,
    SideId,
    Stand,
    StandId,
    Visit,
    VisitId,
)
from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import tally
from beeworkbook.store.check import check
from beeworkbook.store.database import Database, create, open_database
from beeworkbook.store.tallies import COLUMNS
from beeworkbook.store.texts import text
from beeworkbook.store.transaction import Transaction
from tests.benchmarks.turns import by_turns
from tests.comb.drawn import brood_side

FRAME: Final = FRAME_TYPES["dadant_blatt"]
CELLS: Final = FRAME.lattice.cells
COMBS, VISITS_A_YEAR, YEARS, COLONIES = 11, 30, 10, 50
FIRST_DAY: Final = date(2016, 4, 1)
STAMP: Final = datetime(2026, 5, 1, 12, 0, tzinfo=UTC)

Print = Callable[[str], None]


@pytest.fixture
def show(benchmark: BenchmarkFixture, capsys: pytest.CaptureFixture[str]) -> Print:
    """Prints a line where benchmarks are on; the benchmark is skipped where they are off."""
    if benchmark.disabled:  # type: ignore[no-untyped-call, unused-ignore]
        pytest.skip("benchmarks are off")

    def line(text: str) -> None:
        with capsys.disabled():
            print(f"\n  {text}", end="")

    return line


def _drawings(number: int) -> list[bytes]:
    return [pack(brood_side(FRAME.lattice, seed=seed)) for seed in range(number)]


def _settled(tx: Transaction, name: str) -> tuple[Colony, Part, tuple[Frame, ...]]:
    """A colony in a box of eleven combs on a stand."""
    apiary = tx.add(Apiary(ApiaryId(0), name))
    stand = tx.add(Stand(StandId(0), apiary.id, "1"))
    colony = tx.add(Colony(ColonyId(0), name, Arrival.NUCLEUS, FIRST_DAY))
    hive = tx.add(Hive(HiveId(0), name))
    tx.add(Housing(HousingId(0), colony.id, hive.id, stand.id, FIRST_DAY))
    box = tx.add(Part(PartId(0), PartKind.BROOD_BOX, frame_type=FRAME.id, places=COMBS))
    tx.add(PartStay(PartStayId(0), box.id, hive.id, 0, FIRST_DAY))
    frames = tuple(tx.add(Frame(FrameId(0), FRAME.id)) for _ in range(COMBS))
    for place, frame in enumerate(frames, 1):
        tx.add(FrameStay(FrameStayId(0), frame.id, box.id, place, FIRST_DAY))
    return colony, box, frames


def _visited(tx: Transaction, name: str, visits: int, drawings: Iterator[bytes]) -> None:
    colony, box, frames = _settled(tx, name)
    for number in range(visits):
        year, nth = divmod(number, VISITS_A_YEAR)
        day = FIRST_DAY.replace(year=FIRST_DAY.year + year) + timedelta(days=6 * nth)
        visit = tx.add(Visit(VisitId(0), colony.id, day, Level.PAINTED))
        for place, frame in enumerate(frames, 1):
            for face in Face:
                ids = (SideId(0), visit.id, frame.id, box.id)
                origin = Origin.PAINTED
                tx.add(Side(*ids, place, face, FRAME.id, origin, origin, next(drawings)))


@pytest.fixture(scope="module")
def ten_years(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One colony: 300 visits of 22 sides, every drawing another."""
    path = tmp_path_factory.mktemp("ten") / "ten.beebook"
    with create(path) as database, database.write() as tx:
        _visited(tx, "Hazel", VISITS_A_YEAR * YEARS, iter(_drawings(2 * COMBS * VISITS_A_YEAR * YEARS)))
    return path


@pytest.fixture(scope="module")
def large(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Fifty colonies of ten years: 330,000 sides, of 500 drawings by turns."""
    path = tmp_path_factory.mktemp("large") / "large.beebook"
    drawings = cycle(_drawings(500))
    with create(path) as database:
        for number in range(COLONIES):
            with database.write() as tx:
                _visited(tx, f"colony {number}", VISITS_A_YEAR * YEARS, drawings)
        assert database.link.row("SELECT count(*) FROM side") == (330_000,)
    return path


@pytest.fixture
def opened(ten_years: Path) -> Iterator[Database]:
    with open_database(ten_years) as database:
        yield database


def bench_stroke(benchmark: BenchmarkFixture, show: Print, tmp_path: Path) -> None:
    """A finished stroke is safe: side, journal, totals and stamp in one transaction, synced."""
    drawings = _drawings(40)
    path, floor_path = tmp_path / "stroke.beebook", tmp_path / "floor.beebook"
    with create(path) as database, database.write() as tx:
        _visited(tx, "Hazel", 2, cycle(drawings))
    floor_path.write_bytes(path.read_bytes())
    turning, floor_turning = cycle(drawings), cycle(drawings)
    rows = {blob: _counted(blob) for blob in drawings}
    database = open_database(path)
    side_id = database.reader.find(Side)[3].id

    stamps = iter(STAMP + timedelta(seconds=number) for number in count())

    def stroke() -> None:
        with database.write(stamp=next(stamps)) as tx:
            tx.put(replace(tx.get(Side, side_id), cells=next(turning)))
        assert tx.journal

    driver = sqlite3.connect(floor_path, isolation_level=None)
    for pragma in ("journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON"):
        driver.execute(f"PRAGMA {pragma}")
    sets = ", ".join(f"{name} = ?" for name in COLUMNS)

    def raw() -> None:
        blob = next(floor_turning)
        driver.execute("BEGIN IMMEDIATE")
        driver.execute("SELECT * FROM side JOIN comb ON side_id = id WHERE id = ?", (side_id,)).fetchone()
        driver.execute(f"UPDATE tally SET {sets} WHERE side_id = ?", (*rows[blob], side_id))
        driver.execute("UPDATE comb SET cells = ? WHERE side_id = ?", (blob, side_id))
        driver.execute("SELECT * FROM visit WHERE id = 1").fetchone()
        driver.execute("UPDATE visit SET saved_utc = ? WHERE id = 1", (next(stamps).isoformat(),))
        driver.execute("COMMIT")

    times = by_turns(stroke, raw, rounds=400, loops=1)
    benchmark.pedantic(stroke, rounds=20)  # type: ignore[no-untyped-call]
    assert check(database) == ()
    database.close()
    driver.close()
    show(times.line("a finished stroke is safe", 2))


def _counted(blob: bytes) -> tuple[float, ...]:
    counts = np.bincount(unpack(blob, cells=CELLS), minlength=12).tolist()
    return (FRAME.area_dm2, FRAME.cells_per_dm2, FRAME.cells_per_dm2, *counts)


def bench_visit_among_many(benchmark: BenchmarkFixture, show: Print, large: Path, tmp_path: Path) -> None:
    """Show a visit of 22 sides out of 330,000: records read and decoded, beside a flat file decoded."""
    with open_database(large) as database:
        read = database.reader
        visits = [visit_id for (visit_id,) in database.link.rows("SELECT id FROM visit")]
        random.Random(7).shuffle(visits)
        wanted = visits[:300]
        files = []
        for visit_id in wanted:
            file = tmp_path / f"{visit_id}"
            file.write_bytes(
                b"".join(len(side.cells).to_bytes(4) + side.cells for side in read.sides(visit_id))
            )
            files.append(file)
        turning, floor_turning = cycle(wanted), cycle(files)

        def shown() -> list[Any]:
            return [unpack(side.cells, cells=CELLS) for side in read.sides(next(turning))]

        def flat() -> list[Any]:
            content, at, found = next(floor_turning).read_bytes(), 0, []
            while at < len(content):
                end = at + 4 + int.from_bytes(content[at : at + 4])
                found.append(unpack(content[at + 4 : end], cells=CELLS))
                at = end
            return found

        assert [cells.tobytes() for cells in shown()] == [cells.tobytes() for cells in flat()]
        times = by_turns(shown, flat, rounds=300, loops=1)
        benchmark.pedantic(shown, rounds=20)  # type: ignore[no-untyped-call]
    size = large.stat().st_size / 1e6
    show(times.line(f"a visit of 22 sides among 330,000 ({size:.0f} MB)", 3))


@pytest.mark.parametrize("years", [1, 10])
def bench_season(benchmark: BenchmarkFixture, show: Print, opened: Database, years: int) -> None:
    """The stored totals of many visits, beside the same statements on raw sqlite3."""
    (colony,) = opened.reader.find(Colony)
    until = FIRST_DAY.replace(year=FIRST_DAY.year + years)
    driver = sqlite3.connect(opened.path, isolation_level=None)
    texts = [text(f"season {name}") for name in ("visits", "answers", "sides", "combs")]
    asked = {"colony_id": colony.id, "since": FIRST_DAY.isoformat(), "until": until.isoformat()}

    def read() -> Any:
        return opened.reader.season([colony.id], FIRST_DAY, until)

    def raw() -> Any:
        driver.execute("BEGIN")
        rows = [driver.execute(text, asked).fetchall() for text in texts]
        driver.execute("ROLLBACK")
        return rows

    found, rows = read(), raw()
    assert [len(held) for held in rows] == [30 * years, 0, 660 * years, 30 * years]
    assert sum(len(totals.sides) for totals in found) == 660 * years
    assert {totals.combs_in_hive for totals in found} == {COMBS}
    first = found[0].sides[0]
    side = opened.reader.get(Side, first.side_id)
    assert side is not None
    assert first.cells == tally(FRAME, unpack(side.cells, cells=CELLS), drone_cells=False).cells
    times = by_turns(read, raw, rounds=30 if years > 1 else 150, loops=1)
    benchmark.pedantic(read, rounds=5)  # type: ignore[no-untyped-call]
    driver.close()
    show(times.line(f"{years} seasons of 30 × 22 sides from stored totals", 3))


def bench_size(benchmark: BenchmarkFixture, show: Print, ten_years: Path) -> None:
    """The closed file after ten years, beside its drawings each compressed by itself."""
    with open_database(ten_years) as database:
        blobs = [blob for (blob,) in database.link.rows("SELECT cells FROM comb")]
    raw = [unpack(blob, cells=CELLS).tobytes() for blob in blobs]
    zlibbed = sum(len(zlib.compress(cells, 6)) for cells in raw)
    benchmark.pedantic(lambda: zlib.compress(raw[0], 6), rounds=20)  # type: ignore[no-untyped-call]
    assert len(set(raw)) == 6600
    size = ten_years.stat().st_size
    show(
        f"{'ten years in one file':<52} {size:>10,} bytes, sides by zlib 6 {zlibbed:,} "
        f"({zlibbed / len(raw):.0f} each)   ratio {size / zlibbed:>5.2f}   must be at most 1.4"
    )
