"""Connector, pinout, channel, name and turn of an end."""

import pytest

from planner.edits.ends import (
    choose_connector,
    choose_pinout,
    rename_end,
    set_channel,
    set_role,
    set_room,
    turn_end,
)
from planner.edits.landings import land, link
from planner.edits.refusal import DoesNotFit, NotAllowed, NotThere
from planner.edits.shapes import one_to_many, one_to_two
from planner.edits.texts import accept
from planner.model.integrity import integrity_problems
from tests.edits.leads import CUP, CUP_IN, FIVE, FIVE_OUT, LINE, THREE, THREE_OUT, cue_lead, landed
from tests.edits.relabelling import relabel_end


def test_the_plan_carries_copies_of_what_it_uses_and_nothing_else():
    plan = choose_connector(cue_lead(), end="A", connector=THREE, pinout=THREE_OUT)
    assert [it.id for it in plan.definitions.connectors] == ["cup", "three"]
    assert [it.id for it in plan.definitions.pinouts] == ["cup-in", "three-out"]


def test_landings_stay_where_the_new_connector_has_the_contact():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    plan = land(plan, end="A", conductor="BU", contact="R1")
    plan = choose_connector(plan, end="A", connector=THREE)
    assert landed(plan) == {"A:WH>T"}
    assert integrity_problems(plan) == ()


def test_links_and_order_lose_contacts_that_are_gone():
    plan = link(cue_lead(), end="A", contacts=("R1", "R3"))
    first = plan.ends[0].evolve(solder_order=("R1", "T"))
    plan = plan.evolve(ends=(first, *plan.ends[1:]))
    plan = choose_connector(plan, end="A", connector=THREE)
    assert (plan.links, plan.ends[0].solder_order) == ((), ("T",))


def test_a_pinout_that_does_not_fit_is_dropped_or_refused():
    plan = choose_connector(cue_lead(), end="A", connector=THREE)
    assert plan.pinout_of("A") is None
    with pytest.raises(DoesNotFit, match="five-out is not for three"):
        choose_pinout(plan, end="A", pinout=FIVE_OUT)


def test_a_pinout_needs_a_connector():
    with pytest.raises(NotThere, match="A has no connector yet"):
        choose_pinout(one_to_two(), end="A", pinout=FIVE_OUT)


def test_another_revision_of_a_shared_record_holds_at_every_end():
    newer = CUP.evolve(revision=2, contacts=CUP.contacts[:1])
    plan = land(cue_lead(), end="R", conductor="GN", contact="S")
    plan = choose_connector(plan, end="L", connector=newer)
    assert landed(plan) == set()
    assert integrity_problems(plan) == ()


def test_a_one_channel_pinout_takes_the_channel_from_the_end():
    assert [end.channel for end in cue_lead().ends] == ["", "L", "R"]


@pytest.mark.parametrize(
    ("name", "channel"), [("left cup", "L"), ("stage right", "R"), ("spare", "")]
)
def test_the_channel_is_read_from_the_name_of_an_end(name, channel):
    plan = relabel_end(one_to_two(), end="L", label="X")
    plan = rename_end(plan, end="X", name=name)
    plan = choose_connector(plan, end="X", connector=CUP, pinout=CUP_IN)
    assert plan.end_by_id["X"].channel == channel


def test_legs_of_a_loom_take_their_number():
    plan = one_to_many(3)
    for end in ("B1", "B2", "B3"):
        plan = choose_connector(plan, end=end, connector=CUP, pinout=CUP_IN)
    assert [end.channel for end in plan.ends] == ["", "1", "2", "3"]


def test_numbered_legs_of_a_stereo_plug_take_left_and_right():
    plan = choose_connector(one_to_many(2), end="A", connector=FIVE, pinout=FIVE_OUT)
    for end in ("B1", "B2"):
        plan = choose_connector(plan, end=end, connector=CUP, pinout=CUP_IN)
    assert [end.channel for end in plan.ends] == ["", "L", "R"]


def test_a_channel_that_was_set_stays_with_another_pinout():
    plan = set_channel(cue_lead(), end="L", channel="5")
    plan = choose_pinout(plan, end="L", pinout=CUP_IN.evolve(id="other"))
    assert plan.end_by_id["L"].channel == "5"


def test_role_name_and_turn_are_set_and_bad_ones_refused():
    plan = set_role(cue_lead(), end="A", role="load")
    plan = turn_end(rename_end(plan, end="A", name="desk"), end="A", turn_deg=380)
    end = plan.end_by_id["A"]
    assert (end.role, end.name, end.turn_deg) == ("load", "desk", 20.0)
    with pytest.raises(NotAllowed, match="control characters"):
        rename_end(plan, end="A", name="a\tb\x07c")


def test_relabelling_an_end_reaches_everything():
    plan = land(cue_lead(), end="A", conductor="WH", contact="T")
    plan = link(plan, end="A", contacts=("R1", "R3"))
    plan = accept(plan, finding_code="crowded-contact", places=("A/T//",), reason="tried")
    new = relabel_end(plan, end="A", label="desk")
    assert integrity_problems(new) == ()
    assert relabel_end(new, end="desk", label="A") == plan
    assert new.acceptances[0].places == ("desk/T//",)
    with pytest.raises(NotAllowed, match="There is L already"):
        relabel_end(plan, end="A", label="L")


def test_choosing_a_connector_for_no_end_is_refused():
    with pytest.raises(NotThere, match="There is no end Z"):
        choose_connector(cue_lead(), end="Z", connector=LINE)


def test_room_for_the_cores_is_kept_and_0_takes_the_proposed_one():
    plan = cue_lead()
    kept = set_room(plan, end="A", room_mm=9.5)
    assert kept.end_by_id["A"].room_mm == 9.5
    assert set_room(kept, end="A", room_mm=0) == plan


def test_more_room_than_the_barrel_is_long_is_refused():
    with pytest.raises(NotAllowed, match="barrel"):
        set_room(cue_lead(), end="A", room_mm=190)
