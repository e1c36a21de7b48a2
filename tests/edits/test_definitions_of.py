"""Newer definitions taken into a plan: what stays, what is dropped, what is said."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.edits.definitions_of import lost, update_definitions
from planner.edits.landings import land, link
from planner.edits.refusal import NotThere
from planner.model.integrity import integrity_problems
from tests.edits.leads import CUP, CUP_IN, FIVE, FIVE_OUT, QUAD, THREE, cable, cue_lead, landed
from tests.edits.strategies import CABLES, CONNECTORS, edited, leads, records


def wired():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    plan = land(plan, end="A", conductor="BU", contact="R1")
    return land(plan, end="L", conductor="WH", contact="T")


def without(connector, *names):
    left = tuple(it for it in connector.contacts if it.id not in names)
    return connector.evolve(revision=2, contacts=left)


def test_a_newer_copy_takes_the_place_of_the_older_and_landings_stay():
    newer = FIVE.evolve(revision=2, title="Five, measured")
    plan = update_definitions(wired(), records=[newer])
    assert plan.connector_of("A") == newer
    assert landed(plan) == landed(wired())
    assert lost(wired(), plan) == ()


def test_landings_and_links_on_contacts_that_are_gone_are_dropped_and_said():
    plan = link(wired(), end="A", contacts=("R2", "R3"))
    short = without(FIVE, "R1", "R3")
    pinout = FIVE_OUT.evolve(revision=2, signals={"T": FIVE_OUT.signals["T"]})
    after = update_definitions(plan, records=[short, pinout])
    assert landed(after) == landed(wired()) - {"A:BU>R1"}
    assert after.pinout_of("A") == pinout
    assert lost(plan, after) == (
        "A: BU is not landed any more, contact R1 is gone",
        "A: the link of R2, R3 is not whole any more",
    )
    assert integrity_problems(after) == ()


def test_a_pinout_that_names_a_contact_that_is_gone_is_dropped_and_said():
    after = update_definitions(wired(), records=[without(FIVE, "R3")])
    assert after.pinout_of("A") is None
    assert lost(wired(), after) == ("A: the pinout five-out does not fit its connector any more",)


def test_a_record_that_names_its_channels_now_leaves_none_at_the_end():
    named = CUP_IN.evolve(revision=2, signals={"T": ("L+",), "S": ("L-",)})
    after = update_definitions(wired(), records=[named])
    assert {end.channel for end in after.ends} == {""}
    again = update_definitions(after, records=[CUP_IN])
    assert [end.channel for end in again.ends] == [end.channel for end in wired().ends]


def test_a_cable_with_other_cores_is_laid_again():
    other = cable("quad", "WH RD", shields=QUAD.shields).evolve(revision=2)
    after = update_definitions(wired(), records=[other])
    assert "A:WH>T" in landed(after)
    assert "the cable has no BU any more" in lost(wired(), after)
    assert integrity_problems(after) == ()


def test_a_cable_of_other_figures_only_leaves_the_conductors_alone():
    thicker = QUAD.evolve(revision=2, jacket_mm=4.4)
    after = update_definitions(wired(), records=[thicker])
    assert after.conductors == wired().conductors
    assert after.cable_of("trunk").jacket_mm == 4.4


def test_what_the_plan_does_not_use_is_refused():
    with pytest.raises(NotThere, match="does not use three"):
        update_definitions(wired(), records=[THREE])


def test_nothing_newer_changes_nothing():
    assert update_definitions(wired(), records=[]) == wired()
    assert update_definitions(wired(), records=[FIVE, CUP, FIVE_OUT]) == wired()


@settings(max_examples=60, deadline=None)
@given(leads(), st.data())
def test_any_update_leaves_the_plan_whole(plan, data):
    for _ in range(data.draw(st.integers(0, 5))):
        plan = data.draw(edited(plan))
    held = plan.definitions
    changes = []
    for connector in held.connectors:
        other = data.draw(st.sampled_from(CONNECTORS))
        changes.append(connector.evolve(contacts=other.contacts))
    for pinout in held.pinouts:
        other = data.draw(records(data.draw(st.sampled_from(CONNECTORS))))
        changes.append(pinout.evolve(signals=other.signals))
    for known in held.cables:
        other = data.draw(st.sampled_from(CABLES))
        changes.append(known.evolve(cores=other.cores, shields=other.shields))
    after = update_definitions(plan, records=changes)
    assert integrity_problems(after) == ()
    gone = {(it.end, it.conductor) for it in plan.landings} - set(after.landing_at)
    assert bool(lost(plan, after)) or not gone
