"""Turn validation errors into problems in plain words: what, with the value; where; mend."""

import types
import typing
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

from pydantic import BaseModel, ValidationError

from planner.problem import Problem, did_you_mean

Loc = tuple[int | str, ...]
Details = Mapping[str, Any]

_LIMITS = {
    "greater_than": ("gt", "above"),
    "greater_than_equal": ("ge", "at least"),
    "less_than": ("lt", "below"),
    "less_than_equal": ("le", "at most"),
}
_WANTED = {
    "float": "a number",
    "int": "a whole number",
    "string": "a text in quotes",
    "bool": "true or false",
    "tuple": "a list in [ ]",
    "dict": "a table of keys and values",
    "model": "a table of keys and values",
}
_NAME_RULE = (
    "Use letters, digits, dot, hyphen and underscore, no spaces; begin with a letter or digit."
)


def problems_of(
    error: ValidationError,
    model: type[BaseModel],
    data: Mapping[str, Any],
    file: str,
    extra_keys: Mapping[type[BaseModel], Iterable[str]] | None = None,
) -> list[Problem]:
    """Say what each validation error means; `extra_keys` are keys of the file form."""
    problems = []
    for details in error.errors(include_url=False):
        if _is_an_echo(details):
            continue
        loc = details["loc"]
        what, mend = _said(details, _known_keys(model, loc[:-1], extra_keys or {}))
        place = key_path(data, loc)
        problems.append(Problem(what, f"{file}: {place}" if place else file, mend))
    return problems


def key_path(data: object, loc: Loc) -> str:
    """Write a place in a file: `contacts[R1].terminal.bore_mm`; `[#4]` is the fourth item."""
    text = ""
    for step in loc:
        if isinstance(step, int):
            data = data[step] if isinstance(data, Sequence) and step < len(data) else None
            name = data.get("id") if isinstance(data, Mapping) else None
            text += f"[{name}]" if isinstance(name, str) and name else f"[#{step + 1}]"
        elif step != "[key]":
            data = data.get(step) if isinstance(data, Mapping) else None
            text += f".{step}" if text else step
    return text


def _is_an_echo(details: Details) -> bool:
    """Tell whether a list is called too short only because its items have errors of their own."""
    given = details["input"]
    return (
        details["type"] == "too_short"
        and isinstance(given, Sequence)
        and len(given) >= details["ctx"]["min_length"]
    )


def _said(details: Details, known: Iterable[str]) -> tuple[str, str]:
    kind = details["type"]
    name = str(details["loc"][-1]) if details["loc"] else ""
    if kind == "extra_forbidden":
        return f"the key {name!r} is not known here", did_you_mean(name, known)
    if kind == "missing":
        return f"the key {name!r} is missing", f"Add {name}."
    if kind in _LIMITS:
        return _limit_said(details)
    for ending in ("_type", "_parsing", "_from_float"):
        if kind.endswith(ending) and kind.removesuffix(ending) in _WANTED:
            wanted = _WANTED[kind.removesuffix(ending)]
            return f"{_shown(details['input'])} is not {wanted}", f"Write {wanted}."
    teller = _TELLERS.get(kind)
    if teller is not None:
        return teller(details)
    return f"{_shown(details['input'])} can't be used: {details['msg']}", "Correct the value."


def _limit_said(details: Details) -> tuple[str, str]:
    key, words = _LIMITS[details["type"]]
    bound = f"{words} {_plain(details['ctx'][key])}"
    return f"{_shown(details['input'])} must be {bound}", f"Write a value {bound}."


def _plain(value: float) -> str:
    """Write a whole number whole, another short."""
    return str(int(value)) if value == int(value) else f"{value:g}"


def _literal_said(details: Details) -> tuple[str, str]:
    expected = details["ctx"]["expected"].replace(" or ", ", ")
    choices = [choice.strip("' ") or '""' for choice in expected.split(",")]
    given = details["input"]
    listed = f"Write one of {', '.join(choices)}."
    guess = did_you_mean(given, choices) if isinstance(given, str) else ""
    mend = f"{guess} {listed}" if guess.startswith("Did you mean") else listed
    return f"{_shown(given)} is not one of the words allowed", mend


def _value_said(details: Details) -> tuple[str, str]:
    """Split our validators' own sentences `what: how to mend`."""
    what, _colon, mend = str(details["ctx"]["error"]).partition(": ")
    return what, f"{mend[:1].upper()}{mend[1:]}." if mend else "Correct it there."


def _length_said(details: Details) -> tuple[str, str]:
    context = details["ctx"]
    thing = "text" if details["type"].startswith("string") else "list"
    unit = "characters" if thing == "text" else "items"
    if "min_length" in context:
        least = context["min_length"]
        return f"the {thing} is too short", f"Give it {least} or more {unit}."
    most = context["max_length"]
    return f"the {thing} has {len(details['input'])} {unit}, more than {most}", "Make it shorter."


def _pattern_said(details: Details) -> tuple[str, str]:
    return f"{_shown(details['input'])} can't be a name", _NAME_RULE


def _infinite_said(details: Details) -> tuple[str, str]:
    return f"{details['input']} is not a number that can be used", "Write a plain number."


_TELLERS: dict[str, Callable[[Details], tuple[str, str]]] = {
    "literal_error": _literal_said,
    "value_error": _value_said,
    "string_too_short": _length_said,
    "string_too_long": _length_said,
    "too_short": _length_said,
    "too_long": _length_said,
    "string_pattern_mismatch": _pattern_said,
    "finite_number": _infinite_said,
}


def _shown(value: object) -> str:
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, Sequence) and not isinstance(value, str):
        return "a list"
    if isinstance(value, bool):
        return "true" if value else "false"
    if value is None:
        return "null"
    text = repr(value) if isinstance(value, str) else str(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _known_keys(
    model: type[BaseModel], loc: Loc, extra_keys: Mapping[type[BaseModel], Iterable[str]]
) -> set[str]:
    current: type[BaseModel] | None = model
    for step in loc:
        if isinstance(step, str) and current is not None:
            field = current.model_fields.get(step)
            current = _record_in(field.annotation) if field else None
    if current is None:
        return set()
    return set(current.model_fields) | set(extra_keys.get(current, ()))


def _record_in(annotation: object) -> type[BaseModel] | None:
    if isinstance(annotation, type) and not isinstance(annotation, types.GenericAlias):
        return annotation if issubclass(annotation, BaseModel) else None
    found = (_record_in(part) for part in typing.get_args(annotation))
    return next((record for record in found if record is not None), None)
