"""Random leads with unlike lengths and sizes, and a second, plain way to their network."""

import random
from itertools import combinations

import networkx as nx

from planner.model.plan import Link
from tests import building
from tests.building import lead

CORES = ("RD", "GN", "BU", "WH", "BK", "YE", "SH", "SH1")
ENDS = ("A", "B", "C", "D")


def random_lead(seed, *, unknown=0.0):
    """Return a lead of two to four ends with its cores landed, doubled and linked at random."""
    dice = random.Random(seed)
    names = ENDS[: dice.randint(2, 4)]
    wires = [_wire(dice, core, names) for core in dice.sample(CORES, dice.randint(2, len(CORES)))]
    plan = lead(dict.fromkeys(names, building.HEADSET), wires)
    cable = plan.definitions.cables[0]
    cores = tuple(it.evolve(strand_mm=dice.uniform(0.05, 0.2)) for it in cable.cores)
    wide = cable.evolve(cores=tuple(it.evolve(insulation_mm=2.0) for it in cores))
    links = tuple(
        Link(end=end, contacts=tuple(dice.sample(["T", "R1", "R2", "S"], 2)))
        for end in names
        if dice.random() < 0.3
    )
    sections = tuple(_section(dice, it, unknown) for it in plan.sections)
    definitions = plan.definitions.evolve(cables=(wide,))
    return plan.evolve(definitions=definitions, sections=sections, links=links)


def _wire(dice, core, names):
    stops = [f"{name}.{dice.choice(['T', 'R1', 'R2', 'S'])}" for name in names]
    kept = [stop for stop in stops[1:] if dice.random() < 0.8]
    return " ".join([core, stops[0], *kept])


def _section(dice, section, unknown):
    lost = {"cable": "", "fan_of": ""} if dice.random() < unknown else {}
    return section.evolve(length_mm=dice.uniform(50, 5000), **lost)


def spots(plan):
    """Return the contacts of the lead as (end, contact)."""
    return [(end.id, it.id) for end in plan.ends for it in plan.connector_of(end.id).contacts]


def plain_network(plan, ohm_of):
    """Return the lead as a networkx multigraph of its own, and the node of each contact.

    `ohm_of(section, core)` gives the resistance of a run.
    """
    joined = nx.Graph()
    joined.add_nodes_from(("spot", *spot) for spot in spots(plan))
    for landing in plan.landings:
        joined.add_edge(
            ("wire", landing.conductor, landing.end), ("spot", landing.end, landing.contact)
        )
    for link in plan.links:
        joined.add_edges_from(
            (("spot", link.end, one), ("spot", link.end, other))
            for one, other in combinations(link.contacts, 2)
        )
    sections = {it.id: it for it in plan.sections}
    runs = [(it.id, run.core, sections[run.section]) for it in plan.conductors for run in it.runs]
    for wire, _, section in runs:
        joined.add_nodes_from((("wire", wire, section.near), ("wire", wire, section.far)))
    name = {
        node: place for place, group in enumerate(nx.connected_components(joined)) for node in group
    }
    graph = nx.MultiGraph()
    graph.add_nodes_from(name.values())
    for wire, core, section in runs:
        near, far = name["wire", wire, section.near], name["wire", wire, section.far]
        if near != far:
            graph.add_edge(near, far, weight=ohm_of(section, core))
    return graph, {spot: name["spot", *spot] for spot in spots(plan)}


def plain_ohm(graph, one, other):
    """Return the resistance between two nodes by networkx, infinite where apart."""
    if one == other:
        return 0.0
    piece = nx.node_connected_component(graph, one)
    if other not in piece:
        return float("inf")
    return nx.resistance_distance(graph.subgraph(piece), one, other, "weight", invert_weight=True)
