"""Mends that are certain, as edits."""

from collections.abc import Iterable, Sequence
from functools import partial, reduce

from planner.checks.finding import Remedy
from planner.edits import landings
from planner.model.plan import Plan
from planner.wiring.exchanges import Arrival
from planner.wiring.graph import Node, Wiring
from planner.wiring.joins import Joins

Swap = tuple[str, str, str]  # end, contact, other contact


def exchange(wiring: Wiring, swaps: Iterable[Swap]) -> Remedy | None:
    """Offer to exchange what is on pairs of contacts; None unless each pair is one core a contact.

    One contact of a pair may be empty: then the core moves over.
    """
    moves = [_move(wiring, swap) for swap in swaps]
    if not moves or None in moves:
        return None

    def edit(plan: Plan) -> Plan:
        return reduce(_exchanged, (move for move in moves if move is not None), plan)

    return Remedy("Exchange them", edit)


def unlink(plan: Plan, path: Sequence[Node]) -> Remedy | None:
    """Offer to take off the link that is the whole of a path, if one is."""
    contacts = {node[2] for node in path if node[0] == "contact"}
    if len(contacts) != len(path):
        return None
    for link in plan.links:
        if link.end == path[0][1] and contacts <= set(link.contacts):
            edit = partial(landings.unlink, end=link.end, contacts=link.contacts)
            return Remedy("Take the link off", edit)
    return None


def leg_swaps(joins: Joins, arrivals: Iterable[Arrival]) -> list[Swap]:
    """Return the contacts of plus and minus of each channel, where each leg has one contact."""
    swaps = set()
    for each in arrivals:
        legs = [joins.contacts_of(each.end, each.channel + leg) for leg in "+-"]
        if all(len(contacts) == 1 for contacts in legs):
            swaps.add((each.end, legs[0][0], legs[1][0]))
    return sorted(swaps)


def _move(wiring: Wiring, swap: Swap) -> Swap | None:
    """Return (end, conductor, contact to put it on)."""
    end, one, other = swap
    first, second = wiring.landed_on(end, one), wiring.landed_on(end, other)
    if len(first) == 1 and len(second) <= 1:
        return end, first[0], other
    if not first and len(second) == 1:
        return end, second[0], one
    return None


def _exchanged(plan: Plan, move: Swap) -> Plan:
    end, conductor, contact = move
    return landings.exchange(plan, end=end, conductor=conductor, contact=contact)
