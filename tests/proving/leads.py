"""Random leads to prove: cores, shields and links at random, with and without a laid end."""

import random
from itertools import combinations

import networkx as nx

from planner.proving.expected import expected_sweep
from planner.wiring.graph import Wiring, contact_node
from tests.electrical.leads import random_lead


def proved(seed):
    """Return a random lead with its wiring and sweep."""
    plan = random_lead(seed)
    wiring = Wiring(plan)
    return plan, wiring, expected_sweep(plan, wiring)


def joined_of(wiring, contacts):
    """Return the lead as a networkx graph of its contacts and conductors: what a meter sees."""
    graph = nx.Graph()
    graph.add_nodes_from(contact_node(*it) for it in contacts)
    graph.add_edges_from(wiring.graph.edges)
    return graph


def reads_joined(graph, probe, *, shorts=()):
    """Tell whether a probe finds its two sides joined, by networkx; clips join each side."""
    clipped = graph.copy()
    clipped.add_edges_from((contact_node(*one), contact_node(*other)) for one, other in shorts)
    for side in (probe.one, probe.other):
        nx.add_path(clipped, [contact_node(*it) for it in side])
    return nx.has_path(clipped, contact_node(*probe.one[0]), contact_node(*probe.other[0]))


def bridges(plan, sweep):
    """Return every two contacts of one end that must stay apart."""
    return [
        (one, other)
        for one, other in combinations(sweep.contacts, 2)
        if one[0] == other[0] and not sweep.joined(one, other)
    ]


def some(seed, things, most):
    """Return at most so many of the things, chosen by the seed."""
    return random.Random(seed).sample(things, min(most, len(things)))
