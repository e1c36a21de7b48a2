"""JSON Schema of each kind of file, in the form that a file has."""

from typing import Any

from pydantic import BaseModel

from planner.files.envelope import KINDS, VERSIONS, Kind, format_name
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.problem import InputError, did_you_mean

_MODELS: dict[Kind, type[BaseModel]] = {
    "plan": Plan,
    "connector": Connector,
    "pinout": PinoutRecord,
    "cable": Cable,
    "part": Part,
}
_DIALECT = "https://json-schema.org/draft/2020-12/schema"
_SIZES = ("strand_mm", "awg", "area_mm2")


def schema(kind: str) -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of a kind's file; InputError for an unknown kind.

    A TOML file is meant as its values; a date in it as its text.
    """
    if kind not in _MODELS:
        raise InputError.single(
            f"there is no kind {kind!r}", "the kind of file", did_you_mean(kind, KINDS)
        )
    body = _MODELS[kind].model_json_schema(mode="validation")
    _strip_titles(body)
    _add_sizes(body)
    if kind == "connector":
        _add_view(body)
    return {"$schema": _DIALECT, "title": f"Cupwright {kind}"} | _with_head(body, kind)


def _with_head(body: dict[str, Any], kind: Kind) -> dict[str, Any]:
    head = {
        "format": {"const": format_name(kind)},
        "version": {"const": VERSIONS[kind], "type": "integer"},
    }
    required = ["format", "version", *body.get("required", [])]
    return body | {"properties": head | body["properties"], "required": required}


def _strip_titles(node: object) -> None:
    """Drop the titles that repeat a field's name; a property called `title` is no text."""
    if isinstance(node, list):
        for item in node:
            _strip_titles(item)
    if isinstance(node, dict):
        if isinstance(node.get("title"), str):
            del node["title"]
        for item in node.values():
            _strip_titles(item)


def _add_sizes(body: dict[str, Any]) -> None:
    """Let a core give its size as one of three keys, as the reader does."""
    core = body.get("$defs", {}).get("Core")
    if core is None:
        return
    core["properties"] |= {
        "awg": {
            "description": "gauge of the whole conductor; 0 to -3 are 0 to 0000",
            "type": "number",
            "minimum": -3,
            "maximum": 60,
        },
        "area_mm2": {
            "description": "metal area of the whole conductor",
            "type": "number",
            "exclusiveMinimum": 0,
        },
    }
    core["required"] = [name for name in core["required"] if name not in _SIZES]
    core["oneOf"] = [{"required": [name]} for name in _SIZES]


def _add_view(body: dict[str, Any]) -> None:
    properties = body["properties"]
    properties.pop("drawn_from")
    properties["view"] = {
        "description": "the side that positions are given from; without it they are unproven",
        "enum": ["solder", "mating"],
    }
