from pathlib import Path

import pytest

from beeworkbook.store import drives
from beeworkbook.store.drives import file_system, network_warning

MOUNTS = """\
/dev/sda1 / ext4 rw 0 0
tmpfs /run tmpfs rw 0 0
//nas/bees /mnt/nas cifs rw 0 0
/dev/sdb1 /mnt/nas/here ext4 rw 0 0
nas:/old /mnt/my\\040bees nfs4 rw 0 0
short line
"""


def test_the_longest_mount_point_tells_the_file_system() -> None:
    assert file_system(Path("/home/ada/bees.beebook"), MOUNTS) == "ext4"
    assert file_system(Path("/mnt/nas/bees.beebook"), MOUNTS) == "cifs"
    assert file_system(Path("/mnt/nasty/bees.beebook"), MOUNTS) == "ext4"
    assert file_system(Path("/mnt/nas/here/bees.beebook"), MOUNTS) == "ext4"
    assert file_system(Path("/mnt/my bees/a.beebook"), MOUNTS) == "nfs4"
    assert file_system(Path("/x"), "") == ""


def test_a_network_drive_is_named_as_a_risk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    mounts = tmp_path / "mounts"
    mounts.write_text(MOUNTS)
    monkeypatch.setattr(drives, "_MOUNTS", mounts)
    warning = network_warning(Path("/mnt/nas/bees.beebook"))
    assert warning is not None
    assert "network drive" in warning
    assert network_warning(tmp_path / "bees.beebook") is None
    monkeypatch.setattr(drives, "_MOUNTS", tmp_path / "nowhere")
    assert network_warning(Path("/mnt/nas/bees.beebook")) is None
