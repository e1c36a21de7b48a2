"""Read and write the four kinds of definitions: connectors, pinout records, cables, parts."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from planner.files.envelope import Kind, head, kind_of, opened
from planner.files.explain import problems_of
from planner.files.json_text import clean
from planner.files.side import mirrored
from planner.files.syntax import parse_toml, read_toml
from planner.model.cable import Cable, Core
from planner.model.connector import Connector
from planner.model.definition import Definition, kind_name
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.problem import InputError

AnyRecord = TypeVar("AnyRecord", bound=BaseModel)

# Keys that only the file form has.
FILE_KEYS: dict[type[BaseModel], tuple[str, ...]] = {
    Connector: ("view",),
    Core: ("awg", "area_mm2"),
}


def read_connector(path: Path) -> Connector:
    """Read one connector; one drawn from the mating side is mirrored. InputError if not valid."""
    return connector_from(read_toml(path), path)


def read_pinout(path: Path) -> PinoutRecord:
    """Read one pinout record; InputError if it is not valid."""
    return pinout_from(read_toml(path), path)


def read_cable(path: Path) -> Cable:
    """Read one cable; InputError if it is not valid."""
    return cable_from(read_toml(path), path)


def read_part(path: Path) -> Part:
    """Read one part; InputError if it is not valid."""
    return part_from(read_toml(path), path)


def read_definition(path: Path) -> Definition:
    """Read a definition of any kind, told by its format; InputError if it is not valid."""
    return definition_from(read_toml(path), path)


def parse_definition(text: str, path: Path) -> Definition:
    """Read a definition of any kind from text; `path` is only for the message."""
    return definition_from(parse_toml(text, path), path)


def definition_from(values: Mapping[str, Any], path: Path) -> Definition:
    """Make a record of a file's values; InputError if they are not valid."""
    kind = kind_of(values, path)
    if kind == "plan":
        raise InputError.single(
            "this is a plan, a definition is wanted", f"{path}: format", "Open it as a plan."
        )
    return _MAKERS[kind](values, path)


def connector_from(values: Mapping[str, Any], path: Path) -> Connector:
    """Make a connector of a file's values."""
    body = opened(values, "connector", path)
    if "drawn_from" in body:
        raise InputError.single(
            "the key 'drawn_from' is not known here", f"{path}: drawn_from", "Did you mean 'view'?"
        )
    view = body.pop("view", "unstated")  # whatever stands there: a list, a table
    if view not in ("solder", "mating") and "view" in values:
        raise InputError.single(
            f"{view!r} is not a view", f"{path}: view", "Write solder or mating."
        )
    body["drawn_from"] = view
    record = validated(Connector, body, path)
    return mirrored(record) if view == "mating" else record


def pinout_from(values: Mapping[str, Any], path: Path) -> PinoutRecord:
    """Make a pinout record of a file's values."""
    return validated(PinoutRecord, opened(values, "pinout", path), path)


def cable_from(values: Mapping[str, Any], path: Path) -> Cable:
    """Make a cable of a file's values."""
    return validated(Cable, opened(values, "cable", path), path)


def part_from(values: Mapping[str, Any], path: Path) -> Part:
    """Make a part of a file's values."""
    return validated(Part, opened(values, "part", path), path)


def validated(model: type[AnyRecord], body: Mapping[str, Any], path: Path) -> AnyRecord:
    """Validate strictly: a text in a number's place is an error, not converted."""
    try:
        return model.model_validate(body, strict=True)
    except ValidationError as error:
        problems = problems_of(error, model, body, str(path), FILE_KEYS)
    raise InputError(problems)


_MAKERS: dict[Kind, Callable[[Mapping[str, Any], Path], Definition]] = {
    "connector": connector_from,
    "pinout": pinout_from,
    "cable": cable_from,
    "part": part_from,
}


def connector_text(record: Connector, earlier: str = "") -> str:
    """Return a connector's file; with its `earlier` text, keep the comments there."""
    return definition_text(record, earlier)


def pinout_text(record: PinoutRecord, earlier: str = "") -> str:
    """Return a pinout record's file; with its `earlier` text, keep the comments there."""
    return definition_text(record, earlier)


def cable_text(record: Cable, earlier: str = "") -> str:
    """Return a cable's file; with its `earlier` text, keep the comments there."""
    return definition_text(record, earlier)


def part_text(record: Part, earlier: str = "") -> str:
    """Return a part's file; with its `earlier` text, keep the comments there."""
    return definition_text(record, earlier)


def definition_text(record: Definition, earlier: str = "") -> str:
    """Return the file of a definition of any kind; InputError if `earlier` is not valid."""
    from planner.files import toml_text  # noqa: PLC0415 - only writing needs tomlkit

    values = file_values(record)
    if not earlier:
        return toml_text.new_text(values)
    before = file_values(parse_definition(earlier, Path("the earlier text")))
    return toml_text.edited_text(earlier, before, values)


def file_values(record: Definition) -> dict[str, Any]:
    """Return the plain values of a file: positions as drawn, defaults left out."""
    drawn: Definition = record
    if isinstance(record, Connector) and record.drawn_from == "mating":
        drawn = mirrored(record)
    values: dict[str, Any] = clean(drawn.model_dump(exclude_defaults=True))
    view = values.pop("drawn_from", None)
    return head(kind_name(record)) | ({"view": view} if view else {}) | values
