"""The head of every file: its format and version; and the steps that bring an old one up."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from planner.problem import InputError, did_you_mean

Kind = Literal["plan", "connector", "pinout", "cable", "part"]
KINDS: tuple[Kind, ...] = ("plan", "connector", "pinout", "cable", "part")
VERSIONS: dict[Kind, int] = dict.fromkeys(KINDS, 1)


@dataclass(frozen=True, slots=True)
class Step:
    """One named change of a file's shape, from `version` to the next; it returns new values."""

    version: int
    name: str
    change: Callable[[dict[str, Any]], dict[str, Any]]


# One tuple of steps for each kind that has ever changed, oldest first.
STEPS: dict[Kind, tuple[Step, ...]] = {}


def format_name(kind: Kind) -> str:
    """Return what the key `format` says for a kind."""
    return f"cupwright-{kind}"


def head(kind: Kind) -> dict[str, Any]:
    """Return the first two keys of a file written now."""
    return {"format": format_name(kind), "version": VERSIONS[kind]}


def kind_of(values: Mapping[str, Any], path: Path) -> Kind:
    """Tell a file's kind by its format; InputError if there is none or it is not ours."""
    given = values.get("format")
    for kind in KINDS:
        if given == format_name(kind):
            return kind
    names = [format_name(kind) for kind in KINDS]
    if given is None:
        raise InputError.single(
            "the key 'format' is missing", f"{path}: format", f"Add one of {', '.join(names)}."
        )
    raise InputError.single(
        f"{given!r} is no format of ours", f"{path}: format", did_you_mean(str(given), names)
    )


def opened(
    values: Mapping[str, Any],
    kind: Kind,
    path: Path,
    *,
    current: int | None = None,
    steps: tuple[Step, ...] | None = None,
) -> dict[str, Any]:
    """Return a file's body in the current version's shape, without `format` and `version`.

    InputError if the format is another, or the version is no whole number or newer than ours.
    """
    found = kind_of(values, path)
    if found != kind:
        raise InputError.single(
            f"this is a {found} file, a {kind} is wanted",
            f"{path}: format",
            f"Name a file that says {format_name(kind)}.",
        )
    newest = VERSIONS[kind] if current is None else current
    version = _version(values, path, newest)
    body = {key: value for key, value in values.items() if key not in {"format", "version"}}
    for step in STEPS.get(kind, ()) if steps is None else steps:
        if step.version >= version:
            body = step.change(body)
    return body


def _version(values: Mapping[str, Any], path: Path, newest: int) -> int:
    where = f"{path}: version"
    if "version" not in values:
        raise InputError.single("the key 'version' is missing", where, f"Add version {newest}.")
    version = values["version"]
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        what = f"the version {version!r} is not a whole number from 1 up"
        raise InputError.single(what, where, f"Write {newest}.")
    if version > newest:
        what = f"written by a newer Cupwright: version {version}, this one reads {newest}"
        mend = f"Install a newer Cupwright, or save it there as version {newest}."
        raise InputError.single(what, where, mend)
    return version
