"""Load the collection: what ships, the user's own data folder, then any folder named."""

from collections.abc import Callable, Sequence
from functools import lru_cache
from pathlib import Path

from planner.data import data_dir
from planner.files.definitions import read_definition
from planner.files.folders import library_folder
from planner.library.collection import Library
from planner.library.crosscheck import crosscheck
from planner.library.folder import definition_files
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.definition import Definition
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.problem import InputError, Problem


def shipped_folders() -> tuple[Path, ...]:
    """Return the folders of the definitions that ship."""
    resources = data_dir("resources")
    shelves = (resources / name for name in ("pinouts", "cable", "parts"))
    return (data_dir("connector_defs"), *shelves)


def load_library(folders: Sequence[Path] = ()) -> Library:
    """Load all definitions; of two with one id the later counts. A broken file hurts no other."""
    own = library_folder()
    named = ((own,) if own.is_dir() else ()) + tuple(folders)
    found: list[tuple[Definition, Path]] = []
    problems: list[Problem] = []
    for folder in shipped_folders():
        _load_folder(folder, found, problems, _read_shipped)
    for folder in named:
        _load_folder(folder, found, problems, read_definition)
    library = _sorted_in(found, problems)
    return _sorted_in(found, [*problems, *crosscheck(library)])


def _sorted_in(found: list[tuple[Definition, Path]], problems: list[Problem]) -> Library:
    records = [record for record, _path in found]
    return Library(
        (record for record in records if isinstance(record, Connector)),
        (record for record in records if isinstance(record, PinoutRecord)),
        (record for record in records if isinstance(record, Cable)),
        (record for record in records if isinstance(record, Part)),
        problems,
        files={(type(record), record.id): path for record, path in found},
    )


def _read_shipped(path: Path) -> Definition:
    """Read a definition that ships, once: those files stay as they are while the program runs."""
    status = path.stat()
    return _read_once(path, status.st_mtime_ns, status.st_size)


@lru_cache(maxsize=1024)
def _read_once(path: Path, _mtime_ns: int, _size: int) -> Definition:
    return read_definition(path)


def _load_folder(
    folder: Path,
    records: list[tuple[Definition, Path]],
    problems: list[Problem],
    read: Callable[[Path], Definition],
) -> None:
    """Read every TOML file below a folder; note two files of it that use one id."""
    seen: dict[tuple[type, str], Path] = {}
    for path in definition_files(folder, problems):
        try:
            record = read(path)
        except InputError as error:
            problems.extend(error.problems)
            continue
        earlier = seen.setdefault((type(record), record.id), path)
        if earlier is not path:
            what = f"the id {record.id!r} is also used by {earlier.name}"
            problems.append(Problem(what, f"{path}: id", "Give one of the two another id."))
        records.append((record, path))
