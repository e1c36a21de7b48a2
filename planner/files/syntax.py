"""Text to plain values: TOML and JSON, strictly, with line and column of what is malformed."""

import datetime as dt
import json
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NoReturn

from planner.files.limits import (
    DEFINITION_BYTES,
    DEPTH,
    LINE_CHARACTERS,
    PLAN_BYTES,
    forbidden_mark,
    read_text,
)
from planner.problem import InputError

Values = dict[str, Any]

_AT = re.compile(
    r"^(?P<what>.*?)"
    r"(?: \(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\))?$",
    re.DOTALL,
)
_TOKEN = re.compile(r'"(?:\\.|[^"\\])*"|[{}\[\]:,]|[^\s{}\[\]:,"]+')
_FIX_TOML = "Correct the TOML there: one key = value a line, text in quotes."
_FIX_JSON = "Correct the JSON there, or restore the file from a copy."


def read_toml(path: Path) -> Values:
    """Read a TOML file as plain values, lists as tuples; InputError if it is malformed."""
    return parse_toml(read_text(path, DEFINITION_BYTES), path)


def parse_toml(text: str, path: Path) -> Values:
    """Parse TOML text; `path` is only for the message."""
    for at, line in enumerate(text.split("\n"), start=1):
        if len(line) > LINE_CHARACTERS:
            raise InputError.single(
                f"the line has {len(line)} characters, more than the {LINE_CHARACTERS} allowed",
                f"{path}: line {at}",
                "Break it into several lines.",
            )
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        _fail_toml(str(error), text, path)
    except (RecursionError, ValueError) as error:
        raise _unparsed(error, path) from None
    return _checked(values, path)


def read_json(path: Path) -> Values:
    """Read a JSON file as plain values, lists as tuples; InputError if it is malformed."""
    return parse_json(read_text(path, PLAN_BYTES), path)


def parse_json(text: str, path: Path) -> Values:
    """Parse JSON text with an object at the top; `path` is only for the message."""
    try:
        values = json.loads(text, object_pairs_hook=_unique, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        what = f"malformed JSON: {error.msg[:1].lower()}{error.msg[1:]}"
        where = f"{path}: line {error.lineno}, column {error.colno}"
        raise InputError.single(what, where, _FIX_JSON) from None
    except _RefusedError as refused:
        where = _place_of(refused, text, path)
        raise InputError.single(refused.what, where, refused.mend) from None
    except (RecursionError, ValueError) as error:
        raise _unparsed(error, path) from None
    if not isinstance(values, dict):
        what = f"the file holds {_kind(values)}, not an object"
        raise InputError.single(what, f"{path}: line 1", "Name a build plan: it begins with {.")
    return _checked(values, path)


class _RefusedError(Exception):
    """A key or word that JSON's own grammar lets through and we don't."""

    def __init__(self, what: str, mend: str, word: str = "", twice: str = "") -> None:
        super().__init__(what)
        self.what, self.mend, self.word, self.twice = what, mend, word, twice


def _unique(pairs: list[tuple[str, Any]]) -> Values:
    values = dict(pairs)
    if len(values) < len(pairs):
        names = [name for name, _value in pairs]
        twice = next(name for name in names if names.count(name) > 1)
        raise _RefusedError(
            f"the key {twice!r} stands twice in one object", "Keep one of the two.", twice=twice
        )
    return values


def _no_constant(word: str) -> NoReturn:
    what = f"{word} is not a number that can be used"
    raise _RefusedError(what, "Write a plain number.", word=word)


def _place_of(refused: _RefusedError, text: str, path: Path) -> str:
    for position, token, repeated in _tokens(text):
        if token == refused.word or (refused.twice and repeated and _bare(token) == refused.twice):
            line = text.count("\n", 0, position) + 1
            column = position - text.rfind("\n", 0, position)
            return f"{path}: line {line}, column {column}"
    return str(path)


def _tokens(text: str) -> Iterator[tuple[int, str, bool]]:
    """Yield position, token, and whether it is a key that its object already has."""
    seen: list[set[str]] = []
    matches = list(_TOKEN.finditer(text))
    for match, following in zip(matches, [*matches[1:], None], strict=True):
        token = match.group()
        is_key = bool(seen) and following is not None and following.group() == ":"
        yield match.start(), token, is_key and _bare(token) in seen[-1]
        if is_key:
            seen[-1].add(_bare(token))
        elif match.group() in "{[":
            seen.append(set())
        elif match.group() in "}]" and seen:
            seen.pop()


def _bare(token: str) -> str:
    return str(json.loads(token)) if token.startswith('"') else token


def _fail_toml(message: str, text: str, path: Path) -> NoReturn:
    match = _AT.match(message)
    what, line, column = match.group("what", "line", "column") if match else (message, None, None)
    if line is None:
        line, column = text.count("\n") + 1, len(text) - text.rfind("\n")
    what = f"malformed TOML: {what[:1].lower()}{what[1:]}"
    raise InputError.single(what, f"{path}: line {line}, column {column}", _FIX_TOML)


def _unparsed(error: Exception, path: Path) -> InputError:
    if isinstance(error, RecursionError):
        return _too_deep(path)
    what = "a number has too many digits" if "digit" in str(error) else f"malformed: {error}"
    return InputError.single(what, str(path), "Write a plain number.")


def _too_deep(path: Path) -> InputError:
    what = f"the values are nested more than {DEPTH} levels deep"
    return InputError.single(what, str(path), "Check that it is the right file.")


def _checked(values: Values, path: Path) -> Values:
    checked: Values = _settled(values, path, ())
    return checked


def _settled(value: Any, path: Path, place: tuple[str, ...]) -> Any:  # noqa: ANN401 - file data
    """Return a value with tuples for lists and text for dates, its texts checked."""
    if len(place) > DEPTH:
        raise _too_deep(path)
    if isinstance(value, dict):
        for key in value:
            _check_text(key, path, place)
        return {key: _settled(item, path, (*place, key)) for key, item in value.items()}
    if isinstance(value, list):
        return tuple(
            _settled(item, path, (*place, f"#{at}")) for at, item in enumerate(value, start=1)
        )
    if isinstance(value, str):
        _check_text(value, path, place)
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    return value


def _check_text(text: str, path: Path, place: tuple[str, ...]) -> None:
    mark = forbidden_mark(text)
    if mark:
        where = f"{path}: {'.'.join(place) or 'top'}"
        what = f"the control character {mark} is not allowed"
        raise InputError.single(what, where, "Delete that character.")


def _kind(value: object) -> str:
    names = {list: "a list", str: "a text", bool: "a yes or no", type(None): "nothing"}
    return names.get(type(value), "a number")
