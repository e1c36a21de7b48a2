"""Properties of the checks over random plans, and small changes that must be noticed."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.checks.acceptance import acceptance_of
from planner.model.plan import Acceptance, Landing
from planner.services.checking import check_plan, verdict
from tests.building import BALANCED, BALANCED_IN, CUP, LINE_IN, PHONES, PHONO_OUT, lead
from tests.strategies import DEFINITIONS, plans

CUPS = {"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")}
WIRES = ("RD A.T L.T", "GN A.R1 L.S", "BU A.R2 R.T", "WH A.R3 R.S")


@settings(deadline=None)
@given(plans())
def test_any_plan_is_checked_without_a_crash(plan):
    findings = check_plan(plan, DEFINITIONS.pinouts)
    assert [each.what for each in findings if each.code == "rule-crashed"] == []
    assert list(findings) == sorted(findings, key=lambda each: each.sort_key)


@settings(deadline=None)
@given(plans())
def test_what_is_not_chosen_is_never_clear(plan):
    chosen = len(plan.ends) > 1 and all(
        plan.connector_of(end.id) and plan.pinout_of(end.id) for end in plan.ends
    )
    cabled = all(plan.cable_of(section.id) for section in plan.sections)
    if not (chosen and cabled):
        assert verdict(check_plan(plan)) == "stop"


@settings(deadline=None)
@given(plans(), st.data())
def test_order_of_landings_is_no_matter(plan, data):
    shuffled = tuple(data.draw(st.permutations(plan.landings)))
    assert _gist(check_plan(plan.evolve(landings=shuffled))) == _gist(check_plan(plan))


@settings(deadline=None)
@given(plans())
def test_relabelled_contacts_relabel_the_findings(plan):
    after = check_plan(_relabelled(plan))
    expected = [(each.code, each.weight, _renamed_places(each)) for each in check_plan(plan)]
    assert [(each.code, each.weight, each.where) for each in after] == expected


def _gist(findings):
    return sorted((each.code, each.weight, each.title, each.unfinished) for each in findings)


def _new(contact):
    """Rename so that the order stays: where two paths are as short, the first by name is shown."""
    return f"N{contact}" if contact else ""


def _renamed_places(finding):
    return tuple(replace(place, contact=_new(place.contact)) for place in finding.where)


def _relabelled(plan):
    held = plan.definitions
    connectors = tuple(
        each.evolve(contacts=tuple(c.evolve(id=_new(c.id)) for c in each.contacts))
        for each in held.connectors
    )
    pinouts = tuple(
        each.evolve(signals={_new(key): value for key, value in each.signals.items()})
        for each in held.pinouts
    )
    landings = tuple(each.evolve(contact=_new(each.contact)) for each in plan.landings)
    links = tuple(each.evolve(contacts=tuple(map(_new, each.contacts))) for each in plan.links)
    definitions = held.evolve(connectors=connectors, pinouts=pinouts)
    return plan.evolve(landings=landings, links=links, definitions=definitions)


def codes(plan):
    return sorted(each.code for each in check_plan(plan) if each.weight == "stop")


def moved(plan, conductor, end, contact):
    """Return the plan with one landing put elsewhere."""
    landings = (
        Landing(end=end, conductor=conductor, contact=contact)
        if (each.conductor, each.end) == (conductor, end)
        else each
        for each in plan.landings
    )
    return plan.evolve(landings=tuple(landings))


def test_taking_the_link_away_makes_the_bridge_appear():
    ends = {"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")}
    wires = ("RD A.T L.T", "GN A.S L.S", "BU A.R R.T", "WH A.S R.S", "BK A.T R.T")
    linked = lead(ends, wires, links=("A T R",))
    assert codes(linked) == []
    assert codes(linked.evolve(links=())) == ["bridge"]


def test_a_link_allows_its_own_contacts_only():
    wires = ("RD A.P B.2", "GN A.S B.3", "BK A.P B.3")
    ends = {"A": PHONO_OUT, "B": LINE_IN}
    assert codes(lead(ends, wires, links=("B 2 3",))) == []
    assert codes(lead(ends, wires, links=("B 1 3",))) == ["bridge"]


def test_a_link_does_not_make_driven_outputs_safe():
    assert codes(lead(CUPS, WIRES, links=("A R1 R3",))) == ["joined-driven-returns"]


@pytest.mark.parametrize("landing", range(8))
def test_each_landing_taken_off_is_noticed(landing):
    plan = lead(CUPS, WIRES)
    kept = plan.landings[:landing] + plan.landings[landing + 1 :]
    findings = check_plan(plan.evolve(landings=kept))
    assert sorted(each.code for each in findings) == ["loose-conductor", "open"]
    assert all(each.unfinished for each in findings)


@pytest.mark.parametrize("contact", ["T", "R1", "R3", "S"])
def test_each_wrong_contact_is_noticed(contact):
    plan = moved(lead(CUPS, WIRES), "BU", "A", contact)
    assert verdict(check_plan(plan)) == "stop"


def test_an_open_that_one_loose_core_mends_offers_to_land_it():
    plan = lead(CUPS, (*WIRES[:3], "WH A.R3 R."))
    remedy = next(each.remedy for each in check_plan(plan) if each.code == "open")
    assert remedy.label == "Land WH on S"
    assert codes(remedy.edit(plan)) == []


def titles(plan):
    return sorted(each.title for each in check_plan(plan) if each.weight == "stop")


def test_a_reversal_at_one_end_does_not_hide_what_another_lacks():
    ends = {"A": BALANCED, "B": BALANCED_IN, "C": BALANCED_IN}
    wires = ("RD A.T B.R1", "GN A.R1 B.T", "BU A.R2 B.R2 C.R2", "WH A.R3 B.R3 C.R3")
    assert titles(lead(ends, wires)) == [
        "L+ does not reach C",
        "Left channel reversed",
        "L− does not reach C",
    ]


def test_a_bridge_elsewhere_does_not_hide_what_an_end_lacks():
    ends = {"A": BALANCED, "B": BALANCED_IN, "C": (CUP, "L"), "D": (CUP, "R")}
    wires = ("RD A.T B.T", "GN A.R1 B.R1 C.S", "BU A.R2 B.R2", "WH A.R3 B.R3 D.S", "BK C.T D.T")
    assert titles(lead(ends, wires)) == [
        "L+ and R+ joined",
        "L+ does not reach C",
        "R+ does not reach D",
    ]


def test_verdict():
    findings = check_plan(lead(CUPS, (*WIRES, "BK")))
    assert verdict(findings) == "caution"
    assert verdict(()) == "clear"
    assert verdict(check_plan(lead(CUPS, WIRES[:3]))) == "stop"


def test_an_accepted_caution_is_found_by_code_and_places():
    plan = lead(CUPS, (*WIRES, "BK"))
    caution = next(each for each in check_plan(plan) if each.code == "loose-conductor")
    acceptance = Acceptance(code=caution.code, places=caution.place_keys, reason="cut back")
    assert acceptance_of(plan, caution) is None
    accepted = plan.evolve(acceptances=(acceptance,))
    assert acceptance_of(accepted, caution) == acceptance
    assert caution in check_plan(accepted)


def test_a_stop_is_never_accepted():
    plan = lead(CUPS, WIRES[:3])
    stop = next(each for each in check_plan(plan) if each.weight == "stop")
    acceptance = Acceptance(code=stop.code, places=stop.place_keys, reason="no")
    assert acceptance_of(plan.evolve(acceptances=(acceptance,)), stop) is None
