"""Mends that are certain, as edits."""

from collections.abc import Iterable
from functools import reduce

from planner.checks.finding import Remedy
from planner.edits import landings
from planner.model.plan import Plan
from planner.wiring.exchanges import Arrival
from planner.wiring.graph import Wiring
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
