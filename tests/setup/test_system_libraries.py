"""What the system lacks is installed where we may, and otherwise the exact line is printed."""

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from beeworkbook.setup import system_libraries
from beeworkbook.setup.system_libraries import LIBRARIES, missing_libraries, provide

linux_only = pytest.mark.skipif(sys.platform != "linux", reason="only Linux brings Qt's libraries apart")


def lacking(*names: str) -> Any:
    def load(name: str) -> None:
        if name in names:
            raise OSError(name)

    return load


@pytest.fixture
def debian(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """A Debian whose package tool notes what it was asked and ends with the code in a file."""
    tools = tmp_path / "bin"
    tools.mkdir()
    tool = tools / "apt-get"
    tool.write_text(
        f'#!/bin/sh\necho "$DEBIAN_FRONTEND $*" >> {tmp_path}/asked\nexit $(cat {tmp_path}/code)\n'
    )
    tool.chmod(0o755)
    (tmp_path / "code").write_text("0")
    (tmp_path / "debian_version").touch()
    monkeypatch.setenv("PATH", f"{tools}{os.pathsep}{os.environ['PATH']}")
    monkeypatch.setattr(system_libraries, "_DEBIAN", tmp_path / "debian_version")
    return tmp_path


@linux_only
def test_what_cannot_be_loaded_is_missing() -> None:
    assert missing_libraries(lacking("libEGL.so.1", "libxcb-cursor.so.0")) == [
        "libEGL.so.1",
        "libxcb-cursor.so.0",
    ]
    assert missing_libraries(lacking()) == []


def test_other_systems_bring_them_along(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "darwin")
    assert missing_libraries(lacking(*LIBRARIES)) == []


def test_another_linux_is_told_the_names(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(system_libraries, "_DEBIAN", tmp_path / "not-there")
    assert not provide(["libEGL.so.1"], tmp_path / "log")
    assert "libEGL.so.1" in capsys.readouterr().out


@linux_only
def test_debian_without_root_is_told_the_exact_line(
    debian: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    assert not provide(["libxcb-cursor.so.0", "libEGL.so.1"], debian / "log")
    assert "  sudo apt-get install libegl1 libxcb-cursor0\n" in capsys.readouterr().out
    assert not (debian / "asked").exists()


@linux_only
def test_debian_as_root_installs_them(debian: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    assert provide(["libEGL.so.1"], debian / "log")
    asked = (debian / "asked").read_text().splitlines()
    assert [line.split()[:2] for line in asked] == [
        ["noninteractive", "update"],
        ["noninteractive", "install"],
    ]
    assert asked[-1].endswith(" libegl1")


@linux_only
def test_debian_as_root_that_fails_goes_on_and_says_where_to_look(
    debian: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    (debian / "code").write_text("100")
    assert not provide(["libEGL.so.1"], debian / "log")
    shown = capsys.readouterr().out
    assert str(debian / "log") in shown
    assert "apt-get install libegl1" in shown


@linux_only
def test_the_list_names_what_qts_own_files_link_to() -> None:
    """Each library on the list is one that a file of Qt's asks for, so that none is asked for in vain."""
    import PySide6

    folder = Path(PySide6.__file__).parent
    files = [*folder.glob("Qt/lib/libQt6*.so.6"), *folder.glob("Qt/plugins/*/*.so")]
    held = b"\0".join(file.read_bytes() for file in files)
    assert [name for name in LIBRARIES if name.encode() + b"\0" not in held] == []


@linux_only
def test_qt_lacks_nothing_once_the_list_is_there() -> None:
    """Of the libraries that the window's own files link to directly, none is left off the list."""
    import PySide6

    if missing_libraries():
        pytest.skip("this system lacks some, so that ldd cannot follow them")
    folder = Path(PySide6.__file__).parent / "Qt"
    names = ("platforms/libqxcb.so", "platforms/libqwayland.so", "platforms/libqoffscreen.so")
    for file in [
        *(folder / "plugins" / name for name in names),
        folder / "plugins/printsupport/libcupsprintersupport.so",
    ]:
        told = subprocess.run(["ldd", file], capture_output=True, text=True, check=True).stdout
        assert [line for line in told.splitlines() if "not found" in line] == []
