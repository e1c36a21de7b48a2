"""Land shields: after their policy, nearest to their channel, or as a return without a core."""

import math

from planner.edits.changing import answered, reaches
from planner.edits.landings import land, occupants
from planner.edits.lines import Line, free_cores, open_lines
from planner.edits.routing import can_join
from planner.edits.shields import (
    channels_inside,
    cores_inside,
    policy_of,
    shield_contacts,
    wanted_ends,
)
from planner.model.connector import Connector
from planner.model.plan import Conductor, Plan
from planner.model.signals import GROUNDS, channel_of, leg_of
from planner.wiring.graph import Wiring
from planner.wiring.roles import is_return


def land_shields(plan: Plan) -> Plan:
    """Land each loose shield where its policy wants it and a contact that may take it has room."""
    for end in plan.ends:
        for shield, contact in _choices(plan, end.id).items():
            plan = land(plan, end=end.id, conductor=shield, contact=contact)
    return plan


def land_a_return(plan: Plan) -> Plan:
    """Let a shield carry the first return that no core is left for, at both its ends.

    The braid of a single core is the only way back, so the policy does not matter: it says where a
    shield that is no more than a shield lands. Isolated is obeyed.
    """
    wiring = Wiring(plan)
    for line in open_lines(wiring)[0]:
        ends = (line.near[0], line.far[0])
        shield = return_shield(wiring, line)
        if shield and not any(can_join(plan, it.id, ends) for it in free_cores(plan)):
            for end, contact in (line.near, line.far):
                plan = land(plan, end=end, conductor=shield, contact=contact)
            return plan
    return plan


def return_shield(wiring: Wiring, line: Line) -> str:
    """Return the shield that can be this line, one round its own channel first; empty if none."""
    if {leg_of(it) for it in line.signals} != {"-"}:
        return ""
    if not all(is_return(wiring.plan, *spot) for spot in (line.near, line.far)):
        return ""
    shields = [it for it in wiring.plan.conductors if _can_be(wiring, it, line)]
    channels = {channel_of(it) for it in line.signals}

    def strange(shield: Conductor) -> bool:
        ends = (line.near[0], line.far[0])
        return not any(channels & channels_inside(wiring, shield, end) for end in ends)

    return min(shields, key=strange).id if shields else ""


def _can_be(wiring: Wiring, shield: Conductor, line: Line) -> bool:
    plan = wiring.plan
    if shield.kind != "shield" or policy_of(plan, shield) == "isolated":
        return False
    return all(
        reaches(plan, end, shield.id)
        and contact in shield_contacts(wiring, end)
        and _may_lie(plan, shield.id, end, contact)
        and _agrees(wiring, shield, end, contact)
        for end, contact in (line.near, line.far)
    )


def _may_lie(plan: Plan, shield: str, end: str, contact: str) -> bool:
    """Tell whether a shield is on a contact, or is loose and finds room there."""
    landing = plan.landing_at.get((end, shield))
    if landing is not None:
        return landing.contact == contact
    return (end, shield) not in answered(plan) and bool(_room(plan, end, (contact,)))


def loose_shields(plan: Plan, end: str) -> tuple[Conductor, ...]:
    """Return the shields that the policy wants at an end and that are neither landed nor capped."""
    done = answered(plan)
    return tuple(
        it
        for it in plan.conductors
        if it.kind == "shield" and (end, it.id) not in done and end in wanted_ends(plan, it)
    )


def _choices(plan: Plan, end: str) -> dict[str, str]:
    """Choose contacts for the loose shields of an end: of their own channel, the nearest."""
    wiring, connector = Wiring(plan), plan.connector_of(end)
    room = _room(plan, end, shield_contacts(wiring, end))
    shields = loose_shields(plan, end)
    if connector is None or not room or not shields:
        return {}
    fits = {shield.id: certain_contacts(wiring, shield, end) for shield in shields}
    fits = {name: tuple(it for it in contacts if it in room) for name, contacts in fits.items()}
    cost = {
        (shield.id, contact): _distance_mm(connector, plan, end, shield, contact)
        for shield in shields
        for contact in fits[shield.id]
    }
    chosen = _matched(cost)
    for shield in shields:
        free = [it for it in fits[shield.id] if room[it] > list(chosen.values()).count(it)]
        if shield.id not in chosen and free:
            chosen[shield.id] = min(free, key=lambda it, name=shield.id: cost[name, it])  # type: ignore[misc] # mypy cannot type a default that binds the loop variable
    return chosen


def _room(plan: Plan, end: str, contacts: tuple[str, ...]) -> dict[str, int]:
    connector = plan.connector_of(end)
    if connector is None:
        return {}
    left = {
        it: connector.by_id[it].terminal.takes - len(occupants(plan, end, it)) for it in contacts
    }
    return {contact: room for contact, room in left.items() if room > 0}


def certain_contacts(wiring: Wiring, shield: Conductor, end: str) -> tuple[str, ...]:
    """Return the contacts that may take a shield at an end; none while it is not certain.

    Contacts that carry shield are all as good. Of several returns only that of the channel inside
    the shield will do.
    """
    found = shield_contacts(wiring, end)
    contacts = tuple(it for it in found if _agrees(wiring, shield, end, it))
    if len(contacts) < 2 or all("shield" in wiring.signals_at(end, it) for it in contacts):
        return contacts
    inside = channels_inside(wiring, shield, end)
    own = tuple(
        it for it in contacts if inside & {channel_of(one) for one in wiring.signals_at(end, it)}
    )
    return own if len(own) == 1 else ()


def _agrees(wiring: Wiring, shield: Conductor, end: str, contact: str) -> bool:
    """Tell whether a shield would join this return with no other one at another end.

    A joined return where it is landed already says all that it may join.
    """
    carried = wiring.signals_at(end, contact) - GROUNDS
    landed = [it for it in wiring.plan.landings if it.conductor == shield.id and it.end != end]
    elsewhere = [wiring.signals_at(it.end, it.contact) - GROUNDS for it in landed]
    if not carried or any(carried <= one for one in elsewhere):
        return True
    return all(one & carried for one in elsewhere if one)


def _distance_mm(
    connector: Connector, plan: Plan, end: str, shield: Conductor, contact: str
) -> float:
    """Return how far a contact is from those of the cores inside a shield, on average, mm."""
    landed = [plan.landing_at.get((end, core)) for core in cores_inside(plan, shield, end)]
    spots = [connector.by_id[it.contact].terminal for it in landed if it is not None]
    at = connector.by_id[contact].terminal
    away = [math.hypot(spot.x_mm - at.x_mm, spot.y_mm - at.y_mm) for spot in spots]
    return sum(away) / len(away) if away else 0.0


def _matched(cost: dict[tuple[str, str], float]) -> dict[str, str]:
    """Give each shield its own contact so that as many as can have one and the sum is least.

    The eight grounds of a 25-way loom lie so that each could serve two circuits; only the best sum
    over all gives each circuit the one of AES59.
    """
    if min(len({pair[side] for pair in cost}) for side in (0, 1)) < 2:
        return {}
    import networkx as nx  # noqa: PLC0415 - dear to import, and only this needs it

    graph: nx.Graph[tuple[str, str]] = nx.Graph()
    for (shield, contact), away_mm in cost.items():
        graph.add_edge(("shield", shield), ("contact", contact), weight=-away_mm)
    pairs = nx.max_weight_matching(graph, maxcardinality=True)
    chosen = dict(sorted(sorted(pair, reverse=True) for pair in pairs))
    return {shield[1]: contact[1] for shield, contact in chosen.items()}
