"""Findings about threaded parts: what closes each way to a part's place, and which way is open."""

from collections.abc import Iterator
from functools import reduce

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.dryfit.routes import Blocked
from planner.dryfit.threading import Hindrance, HindranceKind, Route, Threading
from planner.edits.routes_of_parts import set_route
from planner.model.place import Place
from planner.model.plan import Plan
from planner.units import number


def hindered(context: Context, kind: HindranceKind) -> Iterator[tuple[Hindrance, Place]]:
    """Yield what is hindered in this way, with its place."""
    for hindrance in context.threading.hindrances:
        if hindrance.kind == kind:
            use = hindrance.use
            end = use.at if use.at in context.plan.end_by_id else use.comes_from
            yield hindrance, Place(end=end, part=use.id)


def each_way(hindrance: Hindrance) -> str:
    """Say the part's bore, and for each side what is too thick for it there."""
    sides = easiest(hindrance)
    if len({(it.over, it.needs_mm) for it in sides}) == 1:
        return planned_way(hindrance)
    bore = f"{hindrance.part.title} has a bore of {number(hindrance.has_mm)} mm."
    return " ".join((bore, *(f"Over {names(it.ends)}: {_measures(it)}." for it in sides)))


def planned_way(hindrance: Hindrance) -> str:
    """Say the part's bore, and what is too thick for it on its planned way."""
    first = hindrance.ways[0]
    return f"{hindrance.part.title} has a bore of {number(first.has_mm)} mm; {_measures(first)}."


def _measures(closed: Blocked) -> str:
    return f"{closed.over} measures {number(closed.needs_mm)} mm"


def easiest(hindrance: Hindrance) -> tuple[Blocked, ...]:
    """Return for each side the way that asks for the smallest bore; the planned side first."""
    best: dict[frozenset[str], Blocked] = {}
    for closed in hindrance.ways:
        side = frozenset(closed.ends)
        if side not in best or closed.needs_mm < best[side].needs_mm:
            best[side] = closed
    return tuple(best.values())


def names(ends: tuple[str, ...]) -> str:
    """Say ends in a row: `A`, `L and R`, `B1, B2 and B3`."""
    *first, last = ends
    return f"{', '.join(first)} and {last}" if first else last


def rerouted(threading: Threading, hindrance: Hindrance) -> Remedy:
    """Offer the ways that are open: this part's, and what has to go elsewhere because of it."""
    changed = [route for route in threading.routes if _differs(route)]

    def edit(plan: Plan) -> Plan:
        return reduce(_set, changed, plan)

    own = [route for route in changed if route.use.id == hindrance.use.id]
    names_it = "it" if own else changed[0].part.title
    return Remedy(f"Thread {names_it} {_where(*own[:1] or changed[:1])}", edit)


def _where(route: Route) -> str:
    if route.comes_from == route.use.comes_from:
        return "before the joint"
    return f"over {names(route.ends)}"


def _differs(route: Route) -> bool:
    planned = (route.use.comes_from, route.use.after_joint)
    return planned != (route.comes_from, route.after_joint)


def _set(plan: Plan, route: Route) -> Plan:
    at_split = route.at not in plan.end_by_id
    section = route.sections[-1] if at_split and route.sections else ""
    return set_route(
        plan,
        use=route.use.id,
        comes_from=route.comes_from,
        after_joint=route.after_joint,
        section=section,
    )
