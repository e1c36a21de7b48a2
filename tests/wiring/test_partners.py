"""What must beep with what: landings, links, joined returns, shields where they land."""

import networkx as nx
import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.model.plan import Link
from planner.wiring.graph import Wiring, contact_node
from planner.wiring.partners import contacts_of, expected_partners, holds

DEMOS = sorted((data_dir("resources") / "demo").glob("*.json"))


def demo(name):
    return read_plan(next(path for path in DEMOS if path.stem == name))


def partners(plan):
    return expected_partners(Wiring(plan))


def test_a_balanced_line_is_one_to_one_and_nothing_else():
    # XLR-3, AES14: 1 to 1, 2 to 2, 3 to 3; the shield lands at both ends here.
    found = partners(demo("stage-left-balanced-line"))
    assert {contact: found["A", contact] for contact in "123"} == {
        contact: (("B", contact),) for contact in "123"
    }


def test_joined_returns_beep_at_both_other_ends():
    found = partners(demo("stereo-to-two-mono"))
    assert found["A", "S"] == (("L", "S"), ("R", "S"))
    assert found["L", "S"] == (("A", "S"), ("R", "S"))


def test_a_shield_that_stops_short_has_no_partner():
    assert partners(demo("cue-desk-headphone-lead"))["A", "S"] == ()


def test_a_link_joins_contacts_of_one_end():
    plan = demo("cue-desk-headphone-lead")
    linked = plan.evolve(links=(Link(end="A", contacts=("R1", "R3")),))
    assert partners(linked)["A", "R1"] == (("A", "R3"), ("L", "S"), ("R", "S"))


def test_the_loom_follows_aes59():
    # AES59-2012, circuit: + and - on the 25-way D; XLR-3: 2 is +, 3 is - (AES14).
    circuits = {1: (24, 12), 2: (10, 23), 3: (21, 9), 4: (7, 20)}
    circuits |= {5: (18, 6), 6: (4, 17), 7: (15, 3), 8: (1, 14)}
    found = partners(demo("recording-rack-loom"))
    for circuit, (plus, minus) in circuits.items():
        assert found["A", str(plus)] == ((f"B{circuit}", "2"),)
        assert found["A", str(minus)] == ((f"B{circuit}", "3"),)
    assert found["A", "13"] == ()


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_partners_are_what_networkx_says_is_joined(path):
    wiring = Wiring(read_plan(path))
    for contact, found in expected_partners(wiring).items():
        joined = nx.node_connected_component(wiring.graph, contact_node(*contact))
        contacts = {node[1:] for node in joined if node[0] == "contact"}
        assert set(found) == contacts - {contact}


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_every_contact_is_held_or_touched_once(path):
    wiring = Wiring(read_plan(path))
    told = [contact for hold in holds(wiring) for contact in hold.all]
    assert sorted(told) == sorted(contacts_of(wiring))
