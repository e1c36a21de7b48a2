"""Random leads to prove, and what a meter shows on them, by networkx."""

import random
from itertools import combinations

import networkx as nx

from planner.proving.expected import expected_sweep
from planner.proving.nearness import contact_gaps_mm
from planner.wiring.graph import Wiring, contact_node
from tests.electrical.leads import random_lead


def proved(seed):
    """Return a random lead with its wiring and sweep."""
    return _with_sweep(random_lead(seed))


def _with_sweep(plan):
    wiring = Wiring(plan)
    return plan, wiring, expected_sweep(plan, wiring)


def many_nets(plan, seed):
    """Return a plan with the landings of its first end moved among each other at random."""
    dice = random.Random(seed)
    first = plan.ends[0].id
    moved = [it for it in plan.landings if it.end == first]
    contacts = [it.contact for it in moved]
    dice.shuffle(contacts)
    landed = [it.evolve(contact=to) for it, to in zip(moved, contacts, strict=True)]
    rest = [it for it in plan.landings if it.end != first]
    return _with_sweep(plan.evolve(landings=(*landed, *rest)))


def graph_of(wiring, contacts):
    """Return the lead as a networkx graph of its contacts and conductors."""
    graph = nx.Graph()
    graph.add_nodes_from(contact_node(*it) for it in contacts)
    graph.add_edges_from(wiring.graph.edges)
    return graph


def metered(graph):
    """Return the number of the connected piece of each contact: what a meter sees."""
    return {
        node[1:]: number
        for number, piece in enumerate(nx.connected_components(graph))
        for node in piece
        if node[0] == "contact"
    }


def whole(wiring, sweep):
    """Return what a meter sees of the lead as planned."""
    return metered(graph_of(wiring, sweep.contacts))


def broken_at(wiring, sweep, contact):
    """Return what a meter sees with one contact cut off from its net, the rest of that whole."""
    graph = graph_of(wiring, sweep.contacts)
    nx.add_path(graph, [contact_node(*it) for it in sweep.partners[contact]])
    graph.remove_edges_from([*graph.edges(contact_node(*contact))])
    return metered(graph)


def reads_joined(seen, probe, *, shorts=()):
    """Tell whether a probe finds its two sides joined, by networkx; clips join each side."""
    clipped = nx.Graph()
    clipped.add_nodes_from(seen[it] for side in (probe.one, probe.other) for it in side)
    clipped.add_edges_from((seen[one], seen[other]) for one, other in shorts)
    for side in (probe.one, probe.other):
        nx.add_path(clipped, [seen[it] for it in side])
    return nx.has_path(clipped, seen[probe.one[0]], seen[probe.other[0]])


def bridges(plan, sweep):
    """Return every two contacts of one end that must stay apart."""
    return [
        (one, other)
        for one, other in combinations(sweep.contacts, 2)
        if one[0] == other[0] and not sweep.joined(one, other)
    ]


def within_reach(isolation, plan, wiring, sweep):
    """Return a function that tells whether a plan says that it sees a bridge of two contacts.

    That is by the stop line as told, not by the readings themselves.
    """
    if isolation.stop_after is None:
        return lambda short: True
    near = {
        frozenset((sweep.net_of[end.id, one], sweep.net_of[end.id, other]))
        for end in plan.ends
        for (one, other), gap_mm in contact_gaps_mm(plan, wiring, end.id).items()
        if round(gap_mm, 2) <= isolation.stop_after.mm_by_end[end.id]
    }
    return lambda short: frozenset(sweep.net_of[it] for it in short) in near


def some(seed, things, most):
    """Return at most so many of the things, chosen by the seed."""
    return random.Random(seed).sample(things, min(most, len(things)))
