"""Which files of a folder are definitions."""

import os
from collections.abc import Iterator
from pathlib import Path

from planner.library.history import HISTORY_FOLDER
from planner.library.lock import LOCK_FOLDER
from planner.library.papers import PAPERS_FOLDER
from planner.problem import Problem, reason_of

MOST_FILES = 5_000
# What a store keeps beside the definitions, at the top of its folder.
KEPT_APART = {HISTORY_FOLDER, LOCK_FOLDER, PAPERS_FOLDER}


def definition_files(folder: Path, problems: list[Problem]) -> Iterator[Path]:
    """Yield the TOML files below a folder in order; links that lead out are noted, not followed."""
    if not os.path.isdir(folder):  # noqa: PTH112 - Path.is_dir raises for a name that is too long
        problems.append(
            Problem(
                "there is no such folder",
                str(folder),
                "Connect its drive, or correct its name in the settings.",
            )
        )
        return

    def unread(error: OSError) -> None:
        what = f"it can't be read: {reason_of(error)}"
        problems.append(Problem(what, str(error.filename), "Check the drive and the permissions."))

    root = folder.resolve()
    found = 0
    for place, inner, names in os.walk(folder, onerror=unread):
        inner[:] = sorted(set(inner) - KEPT_APART) if Path(place) == folder else sorted(inner)
        for name in sorted(name for name in names if name.endswith(".toml")):
            path = Path(place, name)
            if path.is_symlink() and not path.resolve().is_relative_to(root):
                what = "it is a link to a file outside its folder, and is not followed"
                problems.append(Problem(what, str(path), "Put a copy of the file there."))
                continue
            found += 1
            if found > MOST_FILES:
                what = f"it holds more than {MOST_FILES} definitions; the rest is not read"
                problems.append(Problem(what, str(folder), "Name a folder of definitions only."))
                return
            yield path
