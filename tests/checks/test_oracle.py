"""Spoil good leads at random: check says stop exactly where a plain reading of the nets is wrong.

The reading shares nothing with the rules: networkx components, and the signals on each.
"""

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.model.plan import Landing
from planner.services.checking import check_plan
from tests.building import BALANCED, BALANCED_IN, CUP, LINE_IN, LINE_OUT, PHONES, PHONES_IN, lead

LEADS = {
    "four wires to cups": lead(
        {"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")},
        ("RD A.T L.T", "GN A.R1 L.S", "BU A.R2 R.T", "WH A.R3 R.S"),
    ),
    "four wires": lead(
        {"A": BALANCED, "B": BALANCED_IN},
        ("RD A.T B.T", "GN A.R1 B.R1", "BU A.R2 B.R2", "WH A.R3 B.R3"),
    ),
    "common sleeve to cups": lead(
        {"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")},
        ("RD A.T L.T", "GN A.S L.S", "BU A.R R.T", "WH A.S R.S"),
    ),
    "three wires": lead({"A": PHONES, "B": PHONES_IN}, ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S")),
    "line": lead({"A": LINE_OUT, "B": LINE_IN}, ("BK A.1 B.1", "RD A.2 B.2", "WH A.3 B.3")),
    "three ends": lead(
        {"A": BALANCED, "B": BALANCED_IN, "C": BALANCED_IN},
        ("RD A.T B.T C.T", "GN A.R1 B.R1 C.R1", "BU A.R2 B.R2 C.R2", "WH A.R3 B.R3 C.R3"),
    ),
}


@st.composite
def spoiled(draw, plan):
    """Draw up to four changes: a landing goes to another contact, or is lifted."""
    landings = list(plan.landings)
    for _ in range(draw(st.integers(0, 4))):
        if landings:
            index = draw(st.integers(0, len(landings) - 1))
            old = landings.pop(index)
            contacts = [contact.id for contact in plan.connector_of(old.end).contacts]
            new = draw(st.sampled_from([*contacts, ""]))
            if new:
                landings.append(Landing(end=old.end, conductor=old.conductor, contact=new))
    return plan.evolve(landings=tuple(landings))


@st.composite
def exchanged(draw, plan):
    """Draw another order of the contacts at one end: exchanges of every kind."""
    end = draw(st.sampled_from(plan.ends)).id
    here = [each for each in plan.landings if each.end == end]
    order = draw(st.permutations([each.contact for each in here]))
    moved = (each.evolve(contact=to) for each, to in zip(here, order, strict=True))
    others = [each for each in plan.landings if each.end != end]
    return plan.evolve(landings=(*others, *moved))


def carried(plan):
    """Return the signals of each contact node, bound by hand."""
    found = {}
    for end in plan.ends:
        for contact, signals in plan.pinout_of(end.id).signals.items():
            bound = {end.channel + each if each in {"+", "-"} else each for each in signals}
            found[end.id, contact] = bound
    return found


def is_right(plan):
    """Tell whether every signal arrives everywhere, and meets no other but at a common contact."""
    graph = nx.Graph()
    signals = carried(plan)
    graph.add_nodes_from(signals)
    graph.add_edges_from(((each.end, each.contact), each.conductor) for each in plan.landings)
    nets = [{node for node in net if node in signals} for net in nx.connected_components(graph)]
    common = set().union(*({frozenset(each)} for each in signals.values()))
    together = [frozenset().union(*(signals[node] for node in net)) for net in nets]
    apart = all(len(each) < 2 or each in common for each in together)
    return apart and all(_arrives(signal, nets, signals) for signal in set().union(*together))


def _arrives(signal, nets, signals):
    ends = {end for (end, _), carried in signals.items() if signal in carried}
    # A chassis contact need not be wired through.
    return signal == "chassis" or any(
        {end for end, contact in net if signal in signals[end, contact]} == ends for net in nets
    )


def agrees(plan):
    findings = check_plan(plan)
    codes = {each.code for each in findings if each.weight == "stop"}
    turned = any(each.code == "all-channels-reversed" for each in findings)
    assert bool(codes or turned) == (not is_right(plan)), codes


@pytest.mark.parametrize("name", sorted(LEADS))
def test_the_good_leads_are_right(name):
    assert is_right(LEADS[name])


@settings(max_examples=400, deadline=None)
@given(st.data())
def test_a_spoiled_lead_stops_and_a_right_one_does_not(data):
    plan = LEADS[data.draw(st.sampled_from(sorted(LEADS)))]
    agrees(data.draw(spoiled(plan)))


@settings(max_examples=400, deadline=None)
@given(st.data())
def test_an_exchange_stops_unless_it_changes_nothing(data):
    plan = LEADS[data.draw(st.sampled_from(sorted(LEADS)))]
    agrees(data.draw(exchanged(plan)))


@settings(max_examples=200, deadline=None)
@given(st.data())
def test_an_exchange_is_told_once_not_once_a_contact(data):
    """Each ring of exchanged contacts is told once; a ring of four may be crossed and reversed."""
    plan = data.draw(exchanged(LEADS["four wires"]))
    at = {
        end: {each.conductor: each.contact for each in plan.landings if each.end == end}
        for end in "AB"
    }
    graph = nx.DiGraph((at["A"][core], at["B"][core]) for core in at["A"])
    rings = [len(ring) for ring in nx.strongly_connected_components(graph) if len(ring) > 1]
    told = [each.code for each in check_plan(plan) if each.weight != "note"]
    told = [code for code in told if code != "leads-cross"]
    assert bool(told) == bool(rings)
    assert len(told) <= (3 if rings == [4] else len(rings)), (rings, told)
