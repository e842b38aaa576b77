"""A filled comb sheet of 22 combs to PDF, beside the same operators as ready bytes in a minimal file.

The floor writes the very same page descriptions, forms and fonts, each packed by zlib as they are
here, with the objects round them as ready bytes and nothing computed.
Run with: python -m pytest tests/benchmarks/bench_papers.py --benchmark-enable -s
"""

import io
import zlib
from collections.abc import Callable

import pypdf
import pytest
from pypdf.generic import NameObject, StreamObject
from pytest_benchmark.fixture import BenchmarkFixture

from beeworkbook.colony.sheet_models import CombSheetModel
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.papers import canvas, comb_patterns, comb_picture
from beeworkbook.papers.comb_sheet import comb_sheet
from beeworkbook.papers.field_map import FieldKind
from beeworkbook.papers.options import PaperOptions
from tests.benchmarks.turns import Turns, by_turns
from tests.papers import invented

Print = Callable[[str], None]
Ready = list[tuple[bytes, bytes | None]]
FRAME = "dadant_blatt"


@pytest.fixture
def show(benchmark: BenchmarkFixture, capsys: pytest.CaptureFixture[str]) -> Print:
    """Prints a line where benchmarks are on; the benchmark is skipped where they are off."""
    if benchmark.disabled:  # type: ignore[no-untyped-call, unused-ignore]
        pytest.skip("benchmarks are off")

    def line(text: str) -> None:
        with capsys.disabled():
            print(f"\n  {text}", end="")

    return line


def sheet() -> CombSheetModel:
    """Two boxes of eleven full-size combs."""
    boxes = (invented.box(FRAME, 11), invented.box(FRAME, 11, name="Upper brood box", seed=100))
    assert FRAME_TYPES[FRAME].lattice.cells > 4_400
    return invented.model(*boxes, filled=True)


def printed(model: CombSheetModel) -> bytes:
    stream = io.BytesIO()
    comb_sheet(model, PaperOptions(), stream)
    return stream.getvalue()


def printed_new(model: CombSheetModel) -> bytes:
    """As printed, with nothing known of the combs: what the first print of a sheet takes."""
    comb_picture._outlines_of.cache_clear()
    comb_picture._described.cache_clear()
    return printed(model)


def printed_afresh(model: CombSheetModel) -> bytes:
    """As printed, with nothing kept from an earlier print but the fonts: the first of a program's run."""
    comb_patterns.pattern_operators.cache_clear()
    canvas._form_bytes.cache_clear()
    return printed_new(model)


def taken_apart(written: bytes) -> Ready:
    """Every object of a document: its words before a stream, and the stream unpacked, if it has one."""
    reader = pypdf.PdfReader(io.BytesIO(written))
    ready: Ready = []
    for number in range(1, int(reader.trailer["/Size"].get_object())):  # type: ignore[call-overload]
        held = reader.get_object(number)
        assert held is not None
        words = io.BytesIO()
        if not isinstance(held, StreamObject):
            held.write_to_stream(words)
            ready.append((words.getvalue(), None))
            continue
        content = held.get_data()
        entries = [
            f"{key} {_written(value)}" for key, value in held.items() if key not in {"/Length", "/Filter"}
        ]
        ready.append((" ".join(entries).encode("latin-1"), content))
    return ready


def _written(value: object) -> str:
    words = io.BytesIO()
    value.write_to_stream(words)  # type: ignore[attr-defined]
    return words.getvalue().decode("latin-1")


def minimal_file(ready: Ready, root: int) -> bytes:
    """The floor: all objects one after another, streams packed, and the table of where they are."""
    parts, places, length = [b"%PDF-1.4\n"], [], 9
    for number, (words, content) in enumerate(ready, 1):
        if content is None:
            held = b"%d 0 obj\n%b\nendobj\n" % (number, words)
        else:
            packed = zlib.compress(content)
            held = b"%d 0 obj\n<< %b /Filter /FlateDecode /Length %d >>\nstream\n%b\nendstream\nendobj\n" % (
                number,
                words,
                len(packed),
                packed,
            )
        places.append(length)
        parts.append(held)
        length += len(held)
    table = b"".join(b"%010d 00000 n \n" % place for place in places)
    count = len(places) + 1
    parts.append(b"xref\n0 %d\n0000000000 65535 f \n%b" % (count, table))
    parts.append(b"trailer << /Size %d /Root %d 0 R >>\nstartxref\n%d\n%%%%EOF" % (count, root, length))
    return b"".join(parts)


def root_of(written: bytes) -> int:
    held = pypdf.PdfReader(io.BytesIO(written)).trailer.raw_get(NameObject("/Root"))
    return int(held.idnum)


def beside_floor(work: Callable[[], bytes], written: bytes, rounds: int) -> Turns:
    ready, root = taken_apart(written), root_of(written)
    floor = minimal_file(ready, root)
    again = pypdf.PdfReader(io.BytesIO(floor))
    assert [page.extract_text() for page in again.pages] == [
        page.extract_text() for page in pypdf.PdfReader(io.BytesIO(written)).pages
    ]
    return by_turns(work, lambda: minimal_file(ready, root), rounds=rounds, loops=1)


def bench_filled_sheet(benchmark: BenchmarkFixture, show: Print) -> None:
    model = sheet()
    written = printed(model)
    field_map = comb_sheet(model, PaperOptions(), io.BytesIO())
    combs = [field for page in field_map.pages for field in page.fields if field.kind is FieldKind.COMB]
    assert len(combs) == 44
    assert len(written) <= 150_000
    floor = minimal_file(taken_apart(written), root_of(written))
    show(
        f"size: {len(written)} bytes, floor {len(floor)}, ratio {len(written) / len(floor):.3f} (at most 1.1)"
    )
    show(beside_floor(lambda: printed(model), written, 60).line("22 combs, seen before (combs kept)", 2))
    show(beside_floor(lambda: printed_new(model), written, 30).line("22 combs, the combs new", 2))
    show(beside_floor(lambda: printed_afresh(model), written, 30).line("22 combs, patterns new too", 2))
    benchmark(printed, model)


def bench_blank_sheet(benchmark: BenchmarkFixture, show: Print) -> None:
    model = invented.model(invented.box(FRAME, 11))
    written = printed(model)
    turns = beside_floor(lambda: printed(model), written, 60)
    show(f"blank sheet of 11 combs: {len(written)} bytes, {turns.ratio:.2f} times its floor (no bound set)")
    benchmark(printed, model)
