"""What an end wants before there is a dry fit of it, and what to do next."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from planner.model.plan import Plan


@dataclass(frozen=True, slots=True)
class Wanting:
    """What is missing, and the next thing to do."""

    what: str
    do: str


def wanting(plan: "Plan", end: str) -> Wanting | None:
    """Return what is missing at an end; None where there is a dry fit."""
    if end not in plan.end_by_id:
        return Wanting("No end to fit", "Begin a plan: the lead\u2019s ends come with its shape.")
    if plan.connector_of(end) is None:
        return Wanting(
            f"No connector at {end} yet",
            f"Choose one from the shelf (press /), or drop one on {end} in Wire.",
        )
    section = plan.section_at.get(end)
    if section is None or plan.cable_of(section.id) is None:
        return Wanting(
            f"No cable at {end} yet",
            "Choose one from the shelf (press /): where its cores lie decides the turn.",
        )
    if not any(landing.end == end for landing in plan.landings):
        return Wanting(
            f"Nothing is landed at {end} yet",
            "Press G to land by signal, or land cores one by one in Wire (Alt+1).",
        )
    return None
