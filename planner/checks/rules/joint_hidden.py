"""joint-hidden: in the order of soldering the iron does not reach a joint."""

from collections.abc import Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.registry import Found, rule
from planner.dryfit.access import Access, none_hidden, soldering_at
from planner.edits.soldering import take_best_order
from planner.model.place import Place
from planner.units import number
from planner.wording import listed


@rule(
    code="joint-hidden",
    title="Joint out of the iron's reach",
    why="An iron that has to lean on a neighbour melts it before the joint flows.",
    weight="caution",
)
def joint_hidden(context: Context) -> Iterator[Found]:
    """Report each joint that no direction of the iron reaches among what is there already."""
    for fit in context.fit:
        if none_hidden(fit.site, fit.turn_deg):
            continue
        hidden = [way for way in fit.access if way.margin_mm < 0]
        reached = _reached(context, fit.end) if hidden else frozenset()
        for way in hidden:
            yield _found(context, fit.end, way, better=way.contact in reached)


def _reached(context: Context, end: str) -> frozenset[str]:
    """Return the contacts that the iron reaches in the best order."""
    best = soldering_at(context.plan, context.wiring, end, own=False)
    return (
        frozenset(way.contact for way in best.access if way.margin_mm >= 0) if best else frozenset()
    )


def _found(context: Context, end: str, way: Access, *, better: bool) -> Found:
    joint, named = listed(way.conductors), partial(context.words.contact, end)
    by = named(way.blocking_contact) if way.blocking_contact else way.blocker
    mend = f"Bend {by} aside while you solder {joint}: no order of soldering helps."
    if way.blocking_contact:
        mend = f"Take a thinner tip for {joint}: no order of soldering helps."
    if better:
        mend = f"Solder {joint} before {by}, as in the best order."
    return Found(
        f"The joint of {joint} on {named(way.contact)} at {end} is hidden by {by}: "
        f"the iron would overlap it by {number(-way.margin_mm)} mm.",
        mend,
        (Place(end=end, contact=way.contact, conductor=way.conductors[0]),),
        remedy=Remedy("Take the best order", partial(take_best_order, end=end)) if better else None,
    )
