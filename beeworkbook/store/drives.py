"""Whether a file lies on a network drive, where a database can lose what it was told is safe."""

import sys
from pathlib import Path
from typing import Final

from beeworkbook.words import say

_NETWORK: Final = frozenset(
    {
        "9p",
        "afs",
        "afpfs",
        "ceph",
        "cifs",
        "coda",
        "davfs",
        "fuse.davfs",
        "fuse.rclone",
        "fuse.sshfs",
        "fuse.gvfsd-fuse",
        "fuse.glusterfs",
        "glusterfs",
        "lustre",
        "ncpfs",
        "nfs",
        "nfs3",
        "nfs4",
        "smb",
        "smb2",
        "smb3",
        "smbfs",
        "vboxsf",
        "vmhgfs",
        "fuse.vmhgfs-fuse",
        "webdav",
    }
)
_MOUNTS: Final = Path("/proc/mounts")
_REMOTE_DRIVE: Final = 4
"""DRIVE_REMOTE. Source: Microsoft's documentation of GetDriveTypeW, from memory."""


def network_warning(path: Path) -> str | None:
    """A sentence about the risk if this file lies on a network drive, else None."""
    if not _on_network(path):
        return None
    return say(
        "This workbook lies on a network drive. If the connection breaks while it is open, work can be lost. "
        "It is safer on this computer, with a copy on the drive."
    )


def _on_network(path: Path) -> bool:
    if sys.platform == "win32":
        return _is_remote_drive(path)
    try:
        mounts = _MOUNTS.read_text(encoding="utf-8", errors="replace")
    except OSError:
        return False  # macOS keeps no such list
    return file_system(path, mounts) in _NETWORK


def file_system(path: Path, mounts: str) -> str:
    """The kind of file system a path lies on, by a list of mounts as Linux keeps it; "" if unknown."""
    resolved = path.resolve()
    best, kind = Path(), ""
    for line in mounts.splitlines():
        words = line.split()
        if len(words) < 3:
            continue
        point = Path(words[1].replace("\\040", " "))
        if resolved.is_relative_to(point) and len(point.parts) >= len(best.parts):
            best, kind = point, words[2]
    return kind


def _is_remote_drive(path: Path) -> bool:
    if sys.platform != "win32":
        return False
    import ctypes

    drive = path.resolve().drive
    if drive.startswith("\\\\"):
        return True
    return bool(ctypes.windll.kernel32.GetDriveTypeW(drive + "\\") == _REMOTE_DRIVE)
