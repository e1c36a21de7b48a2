"""Nets against networkx's own components, paths, lit places, half-made plans."""

import subprocess
import sys
from itertools import pairwise

import networkx as nx
from hypothesis import given, settings

from planner.model.place import Place
from planner.model.plan import End, Landing, Plan
from planner.wiring.graph import Wiring
from tests.building import BALANCED, CUP, LINE_IN, PHONES, PHONO_OUT, lead
from tests.strategies import plans

CUPS = {"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")}
WIRES = ("RD A.T L.T", "GN A.R1 L.S", "BU A.R2 R.T", "WH A.R3 R.S")


@settings(deadline=None)
@given(plans())
def test_nets_are_the_connected_components(plan):
    wiring = Wiring(plan)
    expected = {frozenset(each) for each in nx.connected_components(wiring.graph)}
    assert set(wiring.nets) == expected


@settings(deadline=None)
@given(plans())
def test_graph_holds_every_landing_and_link(plan):
    graph = Wiring(plan).graph
    for landing in plan.landings:
        edge = ("contact", landing.end, landing.contact), ("conductor", landing.conductor)
        assert graph.edges[edge]["by"] == "landing"
    for link in plan.links:
        first, other = (("contact", link.end, each) for each in link.contacts)
        assert graph.has_edge(first, other)


@settings(deadline=None)
@given(plans())
def test_a_path_is_as_short_as_breadth_first_search_finds(plan):
    wiring = Wiring(plan)
    for net in wiring.nets:
        one, other = min(net), max(net)
        distances = nx.single_source_shortest_path_length(wiring.graph, one)
        path = wiring.path(one, other)
        assert (path[0], path[-1], len(path)) == (one, other, distances[other] + 1)
        assert all(wiring.graph.has_edge(*step) for step in pairwise(path))


def test_a_net_runs_from_contact_to_contact():
    wiring = Wiring(lead(CUPS, WIRES))
    assert wiring.net_of(("conductor", "RD")) == {
        ("contact", "A", "T"),
        ("conductor", "RD"),
        ("contact", "L", "T"),
    }


def test_nothing_joins_two_nets():
    assert Wiring(lead(CUPS, WIRES)).path(("contact", "A", "T"), ("contact", "A", "R1")) == ()


def test_a_link_joins_contacts():
    wiring = Wiring(lead({"A": PHONO_OUT, "B": LINE_IN}, ("GN A.S B.3",), links=("B 1 3",)))
    path = wiring.path(("contact", "B", "1"), ("contact", "A", "S"))
    assert path[1:3] == (("contact", "B", "3"), ("conductor", "GN"))


def test_signals_are_bound_by_the_channel_of_the_end():
    wiring = Wiring(lead(CUPS, WIRES))
    assert wiring.signals_at("R", "T") == {"R+"}
    assert wiring.signals_at("A", "S") == {"chassis"}
    assert wiring.signals_at("L", "no such contact") == frozenset()


def test_the_lit_places_are_contacts_and_the_conductor_at_both_ends():
    wiring = Wiring(lead(CUPS, WIRES))
    lit = {
        Place(end="A", contact="T"),
        Place(end="L", contact="T"),
        Place(end="A", conductor="RD"),
        Place(end="L", conductor="RD"),
    }
    assert wiring.net_places(Place(end="A", contact="T")) == lit
    assert wiring.net_places(Place(end="L", conductor="RD")) == lit
    assert wiring.net_places(Place(end="L")) == frozenset()


def test_joins_to_what_is_not_there_are_left_out():
    plan = Plan(
        ends=(End(id="A"),),
        landings=(
            Landing(end="A", conductor="RD", contact="T"),
            Landing(end="Z", conductor="RD", contact="T"),
        ),
    )
    assert Wiring(plan).nets == ()


def test_a_landing_can_be_left_out():
    plan = lead({"A": PHONES, "B": CUP}, ("RD A.T B.T",))
    wiring = Wiring(plan, without=plan.landings[:1])
    assert ("contact", "A", "T") not in wiring.net_of(("conductor", "RD"))


def test_no_check_imports_networkx():
    code = (
        "import sys; from tests.building import PHONES, PHONES_IN, lead\n"
        "from planner.services.checking import check_plan\n"
        "plan = lead({'A': PHONES, 'B': PHONES_IN}, ('RD A.T B.R',))\n"
        "print([each.code for each in check_plan(plan) if each.code == 'bridge'])\n"
        "print('networkx' in sys.modules)"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout == "['bridge']\nFalse\n"
