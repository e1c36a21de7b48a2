"""Open and save plans: what the window and the command line both do."""

from pathlib import Path

from planner.files.plans import read_plan, write_plan
from planner.model.plan import Plan


def open_plan(path: Path) -> Plan:
    """Read a plan; InputError lists every problem with file, place and mend."""
    return read_plan(path)


def save_plan(path: Path, plan: Plan) -> None:
    """Save a plan in one step; InputError leaves the older file as it was."""
    write_plan(path, plan)
