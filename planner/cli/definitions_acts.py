"""What `cupwright connectors` does, once its words are understood."""

import os
from argparse import Namespace
from pathlib import Path

from planner.cli.definitions_text import compared, listed, shown
from planner.cli.output import complain, say, say_json
from planner.cli.parsing import WrongUseError
from planner.files.definitions import file_values, read_definition
from planner.files.plans import read_plan
from planner.library.collection import Library
from planner.library.comparing import differences
from planner.library.folder import definition_files
from planner.library.loading import load_library
from planner.model.definition import Definition
from planner.problem import InputError, Problem, did_you_mean


def list_all(args: Namespace) -> int:
    """List all definitions, or those that meet the words; say which files can't be read."""
    library = load_library(args.folder)
    records = library.search(" ".join(args.words), trust=args.trust)
    if args.json:
        say_json([file_values(record) for record in records])
    else:
        say(listed(records))
    complain(library.problems)
    return 0


def show(args: Namespace) -> int:
    """Show one definition."""
    library = load_library(args.folder)
    record = named(library, args.id)
    if args.json:
        say_json(file_values(record))
    else:
        say(shown(record, library))
    return 0


def compare(args: Namespace) -> int:
    """Compare two definitions of one kind."""
    library = load_library(args.folder)
    first, second = named(library, args.first), named(library, args.second)
    if type(first) is not type(second):
        raise WrongUseError(
            f"{first.id!r} and {second.id!r} are of two kinds. Name two of one kind."
        )
    found = differences(first, second)
    if args.json:
        rows = [{"key": one.key, "first": one.first, "second": one.second} for one in found]
        say_json({"first": first.id, "second": second.id, "differences": rows})
    else:
        say(compared(first, second, found))
    return 0


def validate(args: Namespace) -> int:
    """Read each file; return 3 if one is not valid."""
    problems: list[Problem] = []
    paths = [path for given in args.paths for path in _files_of(given, problems)]
    results = [(path, _problems_in(path)) for path in paths]
    problems += [problem for _path, found in results for problem in found]
    if args.json:
        say_json([{"path": str(path), "valid": not found} for path, found in results])
    else:
        words = {True: "valid", False: "not valid"}
        say("\n".join(f"{words[not found]:<9} {path}" for path, found in results))
    complain(problems)
    return 3 if problems else 0


def _files_of(path: Path, problems: list[Problem]) -> list[Path]:
    if not os.path.isdir(path):  # noqa: PTH112 - Path.is_dir raises for a name that is too long
        return [path]
    files = list(definition_files(path, problems))
    if not files:
        what, mend = "it holds no definitions", "Name a folder with .toml files, or a file."
        problems.append(Problem(what, str(path), mend))
    return files


def _problems_in(path: Path) -> tuple[Problem, ...]:
    try:
        if path.suffix == ".json":
            read_plan(path)
        else:
            read_definition(path)
    except InputError as error:
        return error.problems
    return ()


def named(library: Library, name: str) -> Definition:
    """Return the definition with that id, of whatever kind, or tell a wrong use."""
    finders = (library.connector, library.pinout, library.cable, library.part)
    for find in finders:
        record = find(name)
        if record is not None:
            return record
    known = [record.id for record in library.search("")]
    raise WrongUseError(f"nothing is called {name!r}. {did_you_mean(name, known)}")
