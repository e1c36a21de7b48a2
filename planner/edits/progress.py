"""How far the landing has come: what must be landed, and what is still to land."""

from dataclasses import dataclass

from planner.edits.shields import shield_contacts, wanted_ends
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Progress:
    """How many landings a plan wants, and how many of those are made: 7 of 9 landed."""

    landed: int
    wanted: int


def wanted_landings(plan: Plan, wiring: Wiring | None = None) -> tuple[tuple[str, str], ...]:
    """Return (end, conductor) for all that must be landed.

    That is each core at each end where it comes out, unless capped; and each shield where its
    policy wants it and a contact can take it, or where it is landed.
    """
    wiring = wiring or Wiring(plan)
    capped = {(cap.end, cap.conductor) for cap in plan.caps}
    ends_for = {
        it.id: {end for end in wanted_ends(plan, it) if shield_contacts(wiring, end)}
        for it in plan.conductors
        if it.kind == "shield"
    }
    return tuple(
        (end, conductor.id)
        for end, pairs in plan.conductors_at.items()
        for conductor, _ in pairs
        if (end, conductor.id) in plan.landing_at
        or ((end, conductor.id) not in capped and end in ends_for.get(conductor.id, {end}))
    )


def left_to_land(plan: Plan, wiring: Wiring | None = None) -> tuple[tuple[str, str], ...]:
    """Return (end, conductor) for all that is still to land, in the plan's order."""
    return tuple(pair for pair in wanted_landings(plan, wiring) if pair not in plan.landing_at)


def progress(plan: Plan, wiring: Wiring | None = None) -> Progress:
    """Count what is landed of what must be."""
    wanted = wanted_landings(plan, wiring)
    return Progress(landed=sum(pair in plan.landing_at for pair in wanted), wanted=len(wanted))
