"""Definitions in one file, with their sources and documents: to send, and to take in from anyone.

What comes from a stranger is data: its size, depth, names, digests and characters are checked
before anything is shown, and nothing of it is written under a name that it chose.
"""

import base64
import binascii
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from planner.files.definitions import definition_from, file_values, validated
from planner.files.json_text import json_text
from planner.files.limits import read_text
from planner.files.syntax import parse_json
from planner.library.papers import check_paper
from planner.model.base import Record
from planner.model.definition import Definition, documents_of, kind_name
from planner.model.source import Document
from planner.problem import InputError, Problem, did_you_mean

FORMAT, VERSION = "cupwright-parcel", 1
SUFFIX = ".parcel.json"
PARCEL_BYTES = 60_000_000
MOST_DEFINITIONS = 50
_KEYS = ("format", "version", "definitions", "documents")


@dataclass(frozen=True, slots=True)
class Parcel:
    """What one file holds: definitions, the first of them the one it was made for, and papers."""

    definitions: tuple[Definition, ...]
    papers: Mapping[str, bytes]


class _Paper(Record):
    """One document as it stands in the file."""

    digest: str
    data: str


def parcel_bytes(definitions: Iterable[Definition], read: Callable[[Document], bytes]) -> bytes:
    """Return the file of definitions, the same bytes for the same ones.

    `read` gets the bytes of a document, as `Papers.read` does; InputError if they can't be had, or
    if all together are more than a reader would take.
    """
    records = tuple(definitions)
    named = {each.digest: each for record in records for each in documents_of(record)}
    papers = [
        {"digest": digest, "data": base64.b64encode(read(named[digest])).decode("ascii")}
        for digest in sorted(named)
    ]
    values = {
        "format": FORMAT,
        "version": VERSION,
        "definitions": [file_values(record) for record in records],
        "documents": papers,
    }
    data = json_text(values).encode()
    if len(data) > PARCEL_BYTES:
        what = f"with its documents it has more than {PARCEL_BYTES // 1_000_000} MB"
        raise InputError.single(what, records[0].id, "Make the scans smaller.")
    return data


def read_parcel(path: Path) -> Parcel:
    """Read a parcel; InputError says everything that is wrong with it."""
    return parse_parcel(read_text(path, PARCEL_BYTES), path)


def parse_parcel(text: str, path: Path) -> Parcel:
    """Read a parcel from text; `path` is only for the message."""
    values = parse_json(text, path)
    _check_head(values, path)
    definitions = _definitions(values, path)
    return Parcel(definitions, _papers(values, definitions, path))


def _check_head(values: Mapping[str, Any], path: Path) -> None:
    if values.get("format") != FORMAT:
        what = f"{str(values.get('format', 'nothing'))[:40]!r} is not the format of a parcel"
        raise InputError.single(what, f"{path}: format", f"Name a file that says {FORMAT}.")
    version = values.get("version")
    if type(version) is not int or not 1 <= version <= VERSION:
        what = f"the version {str(version)[:20]} is not one that this Cupwright reads"
        mend = f"Install a newer Cupwright, or have it made anew as version {VERSION}."
        raise InputError.single(what, f"{path}: version", mend)
    for key in values:
        if key not in _KEYS:
            what = f"the key {key[:40]!r} is not known here"
            raise InputError.single(what, f"{path}: {key[:40]}", did_you_mean(key, _KEYS))


def _definitions(values: Mapping[str, Any], path: Path) -> tuple[Definition, ...]:
    bodies = _tables(values, "definitions", path)
    if not 1 <= len(bodies) <= MOST_DEFINITIONS:
        what = f"it holds {len(bodies)} definitions, not 1 to {MOST_DEFINITIONS}"
        raise InputError.single(what, f"{path}: definitions", "Have it made anew.")
    records: list[Definition] = []
    problems: list[Problem] = []
    for at, body in enumerate(bodies, start=1):
        try:
            records.append(definition_from(body, path / f"definitions[#{at}]"))
        except InputError as error:
            problems.extend(error.problems)
    names = [(kind_name(record), record.id) for record in records]
    for kind, name in sorted({each for each in names if names.count(each) > 1}):
        what = f"the {kind} {name!r} stands twice"
        problems.append(Problem(what, f"{path}: definitions", "Have it made anew."))
    if problems:
        raise InputError(problems)
    return tuple(records)


def _papers(
    values: Mapping[str, Any], definitions: Iterable[Definition], path: Path
) -> dict[str, bytes]:
    """Return the bytes of the documents: each one that is named, and no other."""
    named = {each.digest: each for record in definitions for each in documents_of(record)}
    found: dict[str, bytes] = {}
    for at, body in enumerate(_tables(values, "documents", path), start=1):
        where = f"{path}: documents[#{at}]"
        paper = validated(_Paper, body, path / f"documents[#{at}]")
        if paper.digest not in named or paper.digest in found:
            what = "no definition in it names this document, or it stands twice"
            raise InputError.single(what, where, "Have it made anew.")
        found[paper.digest] = _decoded(paper.data, where)
        check_paper(named[paper.digest], found[paper.digest], where)
    for digest in named.keys() - found.keys():
        what = f"the document {named[digest].name} is named and not in it"
        raise InputError.single(what, f"{path}: documents", "Have it made anew.")
    return found


def _tables(values: Mapping[str, Any], key: str, path: Path) -> tuple[dict[str, Any], ...]:
    found = values.get(key, ())
    if not isinstance(found, tuple) or not all(isinstance(each, dict) for each in found):
        what = f"{key} is no list of objects"
        raise InputError.single(what, f"{path}: {key}", "Have it made anew.")
    return found


def _decoded(text: str, where: str) -> bytes:
    try:
        return base64.b64decode(text, validate=True)
    except (binascii.Error, ValueError):
        what = "the bytes of the document are not written in base64"
        raise InputError.single(what, where, "Have it sent again.") from None
