"""Replace a file in one step, so that a kill at any moment leaves the old one or the new one."""

import os
import tempfile
from contextlib import suppress
from pathlib import Path

from planner.problem import InputError, reason_of


def write_atomic(path: Path, data: bytes) -> None:
    """Write `data` to `path` or leave what is there; InputError says why it can't be written.

    A symlink is followed: the file it names is replaced. Permissions of an older file are kept.
    """
    target = path.resolve()
    try:
        _replace(target, data)
    except OSError as error:
        raise not_written(path, error) from error


def not_written(path: Path, error: OSError) -> InputError:
    """Return why a file can't be written, with what to do."""
    return InputError.single(
        f"it can't be written: {reason_of(error)}",
        str(path),
        "Choose another folder, or free some space; what was there is as it was.",
    )


def _replace(target: Path, data: bytes) -> None:
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.", suffix=".part")
    part = Path(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        part.chmod(_permissions(target))
        part.replace(target)
    except BaseException:
        with suppress(OSError):
            part.unlink()
        raise
    sync_folder(target.parent)


def _permissions(target: Path) -> int:
    """Return the older file's permissions, or what the user's mask gives a new one."""
    with suppress(FileNotFoundError):
        return target.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def sync_folder(folder: Path) -> None:
    """Make the rename itself last; some systems can't sync a folder, and the file is whole."""
    with suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
