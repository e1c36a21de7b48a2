"""Parts in words: tag, where each rests, before which joint; and what can't go on, with figures."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.checks.hindered import easiest, names
from planner.dryfit.rework import instead
from planner.units import number
from planner.wording import listed

if TYPE_CHECKING:
    from planner.app.order_of_work.facts import WorkFacts
    from planner.dryfit.rework import Instead
    from planner.dryfit.threading import Hindrance, Route
    from planner.model.plan import Plan, Split


@dataclass(frozen=True, slots=True)
class PartRow:
    """One part: what stands in bold, what in small below it, whether it can't go on."""

    use: str
    text: str
    small: str
    stop: bool = False


def part_rows(plan: "Plan", facts: "WorkFacts") -> tuple[PartRow, ...]:
    """Return the parts that go on, in order, then those that do not.

    In a rework these say as well what to take instead.
    """
    stuck = {it.use.id: it for it in facts.threading.hindrances}
    going = [route for route in facts.threading.routes if route.use.id not in stuck]
    wanted = {it.use.id: _wanted(it) for it in _no_way(plan, facts)}
    return (
        *(PartRow(it.use.id, f"{it.tag}  {it.part.title}", _way(plan, it)) for it in going),
        *(
            PartRow(use, it.part.title, f"{_why(it)}{wanted.get(use, '')}", stop=True)
            for use, it in stuck.items()
        ),
    )


def _way(plan: "Plan", route: "Route") -> str:
    split = next((it for it in plan.splits if it.id == route.at), None)
    if route.part.opens:
        return f"laid round the cable at {_the_split(split) if split else route.at}, at any time"
    where = f"to {_the_split(split)}" if split else f"rests at {route.at}"
    if route.after_joint:
        when = "after the joint"
    elif route.before_joint_of:
        when = f"before {listed(route.before_joint_of)} is soldered"
    else:
        when = "at any time"
    return f"over {names(route.ends)}, {where}; {when}"


def _the_split(split: "Split") -> str:
    return f"the {split.name or 'split'}"


def _why(found: "Hindrance") -> str:
    """Say for each side what is in the way, with the bore that there is and the one needed."""
    sides = easiest(found)
    if not sides:
        return f"{found.over}: has {number(found.has_mm)} mm, needs {number(found.needs_mm)} mm"
    return "; ".join(
        f"over {names(it.ends)}: bore {number(it.has_mm)} mm, {it.over} {number(it.needs_mm)} mm"
        for it in sides
    )


def rework_said(plan: "Plan", facts: "WorkFacts") -> str:
    """Say how many parts a rework leaves no way for; nothing while no end stays on."""
    if not facts.stays_on:
        return ""
    kept, count = listed(sorted(facts.stays_on)), len(_no_way(plan, facts))
    if not count:
        return f"With {kept} soldered every part can still be threaded."
    parts = "1 part has" if count == 1 else f"{count} parts have"
    return f"With {kept} soldered {parts} no way left; the marked rows say what to take instead."


def _no_way(plan: "Plan", facts: "WorkFacts") -> "tuple[Instead, ...]":
    return instead(plan, facts.threading) if facts.stays_on else ()


def _wanted(part: "Instead") -> str:
    kinds = "one that opens"
    if part.may_shrink:
        bore, grips = number(part.passes_mm), number(part.grips_mm)
        kinds += f", or shrink from {bore} mm down to under {grips} mm"
    return f". Take {kinds}"
