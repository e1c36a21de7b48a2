"""Add a line to a file of lines, so that a kill at any moment costs at most that line."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from planner.files.atomic import not_written, sync_folder


def append_line(path: Path, line: bytes) -> None:
    """Add `line`, which holds no line end, as a line of its own and wait until the disk has it.

    Several processes may do so at once. A torn line that a kill left at the end is closed off
    first; nothing that stands in the file is changed. InputError says why it can't be written.
    """
    try:
        _append(path, line)
    except OSError as error:
        raise not_written(path, error) from error


def settled_size(path: Path) -> int:
    """Return how many bytes stand in the file while nobody is in the middle of a line.

    So a reader takes no line of another process for a torn one. OSError if it can't be opened.
    """
    handle = os.open(path, os.O_RDONLY | _BINARY)
    try:
        with _alone(handle):
            return os.lseek(handle, 0, os.SEEK_END)
    finally:
        os.close(handle)


def _append(path: Path, line: bytes) -> None:
    is_new = not path.exists()
    handle = os.open(path, os.O_RDWR | os.O_APPEND | os.O_CREAT | _BINARY, 0o666)
    try:
        with _alone(handle) as alone:
            size = os.lseek(handle, 0, os.SEEK_END)
            torn = size > 0 and _last_byte(handle, size) != b"\n"
            try:
                _write_whole(handle, (b"\n" if torn else b"") + line + b"\n")
            except OSError:
                if alone:
                    os.ftruncate(handle, size)
                raise
    finally:
        os.close(handle)
    if is_new:
        sync_folder(path.parent)


def _last_byte(handle: int, size: int) -> bytes:
    os.lseek(handle, size - 1, os.SEEK_SET)
    return os.read(handle, 1)


def _write_whole(handle: int, data: bytes) -> None:
    """Write in one go where the system lets us, and wait for the disk."""
    rest = memoryview(data)
    while rest:
        rest = rest[os.write(handle, rest) :]
    os.fsync(handle)


_BINARY = getattr(os, "O_BINARY", 0)

if sys.platform == "win32":
    import msvcrt

    # A byte that no file reaches: Windows keeps others from reading what is locked.
    _LOCKED_AT = 1 << 40

    @contextmanager
    def _alone(handle: int) -> Iterator[bool]:
        """Keep other writers out; OSError where they hold it for long."""
        os.lseek(handle, _LOCKED_AT, os.SEEK_SET)
        msvcrt.locking(handle, msvcrt.LK_LOCK, 1)
        try:
            yield True
        finally:
            os.lseek(handle, _LOCKED_AT, os.SEEK_SET)
            msvcrt.locking(handle, msvcrt.LK_UNLCK, 1)

else:
    import fcntl

    @contextmanager
    def _alone(handle: int) -> Iterator[bool]:
        """Keep other writers out; closing the file lets them in again, and so does a kill.

        Yields False where the file system has no locks: there one write at the end must do.
        """
        alone = False
        with suppress(OSError):
            fcntl.flock(handle, fcntl.LOCK_EX)
            alone = True
        yield alone
