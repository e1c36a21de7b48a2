"""Colourings against brute force and networkx."""

import random
from itertools import combinations, product

import networkx as nx
import pytest

from planner.proving.colouring import coloured


def random_graph(dice, most):
    count = dice.randint(1, most)
    share = dice.random()
    return count, [pair for pair in combinations(range(count), 2) if dice.random() < share]


def fewest(count, pairs):
    """Return the chromatic number by trying every colouring."""
    for colours in range(1, count + 1):
        for tried in product(range(colours), repeat=count):
            if all(tried[one] != tried[other] for one, other in pairs):
                return colours
    return 0


def test_as_few_colours_as_brute_force_finds():
    dice = random.Random(1)
    for _ in range(150):
        count, pairs = random_graph(dice, 6)
        found = coloured(count, pairs)
        assert all(found.colours[one] != found.colours[other] for one, other in pairs)
        assert found.proved
        assert found.count == fewest(count, pairs)


def test_never_more_colours_than_networkx_finds():
    dice = random.Random(2)
    for _ in range(40):
        count, pairs = random_graph(dice, 40)
        graph = nx.Graph(pairs)
        graph.add_nodes_from(range(count))
        theirs = max(nx.greedy_color(graph, "DSATUR").values()) + 1
        assert coloured(count, pairs).count <= theirs


@pytest.mark.parametrize(("count", "colours"), [(5, 3), (6, 2), (7, 3)])
def test_a_ring_takes_two_or_three(count, colours):
    ring = [(at, (at + 1) % count) for at in range(count)]
    assert coloured(count, ring).count == colours


def test_a_graph_without_triangles_may_take_four():
    """Groetzsch's graph, as networkx makes it: no triangle, four colours (Mycielski 1955)."""
    graph = nx.mycielski_graph(4)
    found = coloured(len(graph), graph.edges)
    assert (found.count, found.proved) == (4, True)


def test_a_search_that_is_cut_short_says_so():
    graph = nx.mycielski_graph(5)
    found = coloured(len(graph), graph.edges, looks=20)
    assert not found.proved
    assert found.at_least < found.count


def test_nothing_takes_no_colour():
    assert coloured(0, []).count == 0
