"""Resistance distance of small graphs, and back to conductances.

Published: Klein and Randic, J. Math. Chem. 12 (1993) 81-95; triangle 2/3, 4-ring 3/4 and 1,
K4 1/2, cube 7/12, 3/4, 5/6; Foster's sum over the edges is n - 1.
"""

import networkx as nx
import numpy as np
import pytest

from planner.proving.identifying.mesh import conductances
from tests.proving.identifying.devices import Device

PUBLISHED = {
    "triangle": (nx.complete_graph(3), [2 / 3]),
    "4-ring": (nx.cycle_graph(4), [3 / 4, 1]),
    "K4": (nx.complete_graph(4), [1 / 2]),
    "cube": (nx.convert_node_labels_to_integers(nx.hypercube_graph(3)), [7 / 12, 3 / 4, 5 / 6]),
}


def device_of(graph):
    """Make the tests' own simulated sample of a graph of 1 ohm resistors, or `ohm` where given."""
    names = {node: f"n{node}" for node in graph}
    edges = [(names[a], names[b], data.get("ohm", 1.0)) for a, b, data in graph.edges(data=True)]
    return Device(
        contacts=list(names.values()),
        node_of={name: name for name in names.values()},
        resistors=edges,
    )


def all_ohms(device):
    count = len(device.contacts)
    ohms = np.zeros((count, count))
    for row, one in enumerate(device.contacts):
        for column, other in enumerate(device.contacts):
            if row != column:
                ohms[row, column] = device.ohm(one, other)
    return ohms


@pytest.mark.parametrize("name", PUBLISHED)
def test_the_tests_solver_gives_the_published_values(name):
    graph, published = PUBLISHED[name]
    found = sorted({round(value, 9) for value in all_ohms(device_of(graph)).flat if value})
    assert found == pytest.approx(published)


@pytest.mark.parametrize("name", PUBLISHED)
def test_the_tests_solver_agrees_with_networkx(name):
    graph, _ = PUBLISHED[name]
    device, ohms = device_of(graph), all_ohms(device_of(graph))
    table = nx.resistance_distance(graph)
    for row, one in enumerate(graph):
        for column, other in enumerate(graph):
            assert ohms[row, column] == pytest.approx(table[one][other], abs=1e-9)
    assert device.contacts == [f"n{node}" for node in graph]


@pytest.mark.parametrize("name", PUBLISHED)
def test_foster_and_the_way_back(name):
    graph, _ = PUBLISHED[name]
    ohms = all_ohms(device_of(graph))
    found = conductances(ohms)
    assert found == pytest.approx(nx.to_numpy_array(graph), abs=1e-9)
    assert (found * ohms).sum() / 2 == pytest.approx(len(graph) - 1)


@pytest.mark.parametrize("seed", range(10))
def test_random_networks_come_back_from_networkx_distances(seed):
    rng = np.random.default_rng(seed)
    graph = nx.connected_watts_strogatz_graph(7, 4, 0.4, seed=seed)
    for _, _, data in graph.edges(data=True):
        data["ohm"] = float(rng.uniform(16, 600))
    table = nx.resistance_distance(graph, weight="ohm", invert_weight=True)
    ohms = np.array([[table[one][other] for other in graph] for one in graph])
    expected = nx.to_numpy_array(graph, weight="ohm")
    expected[expected > 0] = 1 / expected[expected > 0]
    assert conductances(ohms) == pytest.approx(expected, abs=1e-9)
    assert all_ohms(device_of(graph)) == pytest.approx(ohms, rel=1e-6)
