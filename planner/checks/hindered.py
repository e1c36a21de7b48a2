"""Findings about threaded parts: three rules share this one reading of the dry fit."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found
from planner.dryfit.threading import Hindrance, hindrances
from planner.model.place import Place
from planner.units import number


def hindered(context: Context, kind: str, mend: str) -> Iterator[Found]:
    """Yield a finding for every part of the plan that is hindered in this way."""
    for hindrance in hindrances(context.plan):
        if hindrance.kind == kind:
            use = hindrance.use
            end = use.at if use.at in context.plan.end_by_id else use.comes_from
            yield Found(_what(hindrance), mend, (Place(end=end, part=use.id),))


def _what(hindrance: Hindrance) -> str:
    has, needs = number(hindrance.has_mm), number(hindrance.needs_mm)
    size = "recovers to" if hindrance.kind == "shrink-misfit" else "has a bore of"
    return f"{hindrance.part.title} {size} {has} mm; {hindrance.over} measures {needs} mm."
