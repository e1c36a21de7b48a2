"""Compare two definitions of one kind, figure by figure."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from planner.model.definition import Definition
from planner.problem import InputError

_HEAD = {"format", "version", "id", "revision"}


@dataclass(frozen=True, slots=True)
class Difference:
    """One key path that differs, with both values as text; empty where one lacks it."""

    key: str
    first: str
    second: str


def differences(first: Definition, second: Definition) -> tuple[Difference, ...]:
    """List what differs, in the order of the first; InputError if the kinds are not the same."""
    if type(first) is not type(second):
        raise InputError.single(
            f"{first.id} and {second.id} are not of one kind",
            "what is compared",
            "Name two connectors, two pinout records, two cables or two parts.",
        )
    ours, theirs = _flat_values(first), _flat_values(second)
    keys = [*ours, *(key for key in theirs if key not in ours)]
    pairs = ((key, ours.get(key, ""), theirs.get(key, "")) for key in keys)
    return tuple(Difference(*pair) for pair in pairs if pair[1] != pair[2])


def _flat_values(record: Definition) -> dict[str, str]:
    """Return solder-side values by key path, with defaults, so that left-out keys compare."""
    values = record.model_dump()
    flat = dict(_flat("", {key: value for key, value in values.items() if key not in _HEAD}))
    return {key: text for key, text in flat.items() if text}


def _flat(place: str, value: object) -> Iterator[tuple[str, str]]:
    if isinstance(value, Mapping):
        for key, item in value.items():
            yield from _flat(f"{place}.{key}" if place else str(key), item)
    elif isinstance(value, Sequence) and value and isinstance(value[0], Mapping):
        for at, item in enumerate(value, start=1):
            name = item.get("id", f"#{at}")
            inner = {key: part for key, part in item.items() if key != "id"}
            yield f"{place}[{name}]", "there"
            yield from _flat(f"{place}[{name}]", inner)
    else:
        yield place, _text(value)


def _text(value: object) -> str:
    if isinstance(value, Sequence) and not isinstance(value, str):
        return " ".join(str(item) for item in value)
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)
