"""Where Cupwright keeps the user's own data."""

import os
from pathlib import Path

from planner.problem import InputError


def user_data_folder() -> Path:
    """Return the user's data folder, or the one CUPWRIGHT_DATA names; it need not exist."""
    named = os.environ.get("CUPWRIGHT_DATA")
    if named:
        return Path(named)
    from platformdirs import user_data_path  # noqa: PLC0415 - only where no folder is named

    return user_data_path("cupwright", appauthor=False)


def library_folder() -> Path:
    """Return the folder of the user's own definitions."""
    return user_data_folder() / "library"


def recovery_folder() -> Path:
    """Return the folder of the copies kept while plans are open."""
    return user_data_folder() / "recovery"


def check_inside(path: Path, folder: Path) -> None:
    """Raise InputError if a path leads out of a folder by a link, so that nothing is written there.

    A folder that strangers share may hold links to files of the user's own.
    """
    if not path.resolve().is_relative_to(folder.resolve()):
        what = "it leads out of the folder by a link, and is not written to"
        raise InputError.single(what, str(path), "Put a plain file or folder in its place.")
