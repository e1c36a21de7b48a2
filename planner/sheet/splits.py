"""What is joined inside a split: a core of one cable spliced to a core of another."""

from collections.abc import Iterator

from planner.model.cable import Core
from planner.model.plan import Conductor, Plan, Run


def split_lines(plan: Plan) -> Iterator[str]:
    """Yield a sentence for each splice; cores that only leave their jacket are not joined."""
    for split in plan.splits:
        for conductor in plan.conductors:
            pieces = _pieces(plan, conductor, split.id)
            if len(pieces) > 1:
                name = split.name or "split"
                yield f"In the {name}, join {', '.join(pieces)}"


def _pieces(plan: Plan, conductor: Conductor, split: str) -> list[str]:
    """Return the cores of different cables that meet at a split, with where each goes."""
    found = []
    for run in conductor.runs:
        section = plan.section_by_id[run.section]
        if split in {section.near, section.far} and not section.fan_of:
            other = section.far if section.near == split else section.near
            found.append(f"{_code(plan, run)} of {other}")
    return found


def _code(plan: Plan, run: Run) -> str:
    part = plan.part_of(run)
    return part.code if isinstance(part, Core) else "SHIELD"
