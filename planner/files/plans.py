"""Read and write build plans: JSON, the same bytes for the same plan."""

import hashlib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from planner.files.atomic import write_atomic
from planner.files.definitions import validated
from planner.files.envelope import head, opened
from planner.files.json_text import json_text
from planner.files.syntax import parse_json, read_json
from planner.model.integrity import integrity_problems
from planner.model.plan import Plan
from planner.problem import InputError, Problem


def read_plan(path: Path) -> Plan:
    """Read a plan; InputError lists what is malformed, not valid, or does not hang together."""
    return plan_from(read_json(path), path)


def parse_plan(text: str, path: Path) -> Plan:
    """Read a plan from text; `path` is only for the message."""
    return plan_from(parse_json(text, path), path)


def plan_from(values: Mapping[str, Any], path: Path) -> Plan:
    """Make a plan of a file's values; InputError if they are not valid."""
    plan = validated(Plan, opened(values, "plan", path), path)
    problems = integrity_problems(plan)
    if problems:
        raise InputError(
            Problem(found.what, f"{path}: {found.where}", found.mend) for found in problems
        )
    return plan


def plan_values(plan: Plan) -> dict[str, Any]:
    """Return a plan's plain values: fields in the model's order, defaults left out."""
    return head("plan") | plan.model_dump(exclude_defaults=True)


def plan_bytes(plan: Plan) -> bytes:
    """Return the file of a plan in UTF-8, the same bytes for the same plan."""
    return json_text(plan_values(plan)).encode()


def plan_digest(plan: Plan) -> str:
    """Return the SHA-256 of a plan's file: 64 figures that change with anything in the plan."""
    return hashlib.sha256(plan_bytes(plan)).hexdigest()


def write_plan(path: Path, plan: Plan) -> None:
    """Replace the file of a plan in one step; InputError if it can't be written."""
    write_atomic(path, plan_bytes(plan))
