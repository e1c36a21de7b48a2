"""What holds for any lead and any sequence of edits."""

from collections import Counter
from pathlib import Path

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from planner.edits.by_signal import land_by_signal
from planner.edits.landings import exchange
from planner.edits.shields import shield_contacts
from planner.files.plans import parse_plan, plan_bytes
from planner.model.document import Document
from planner.model.integrity import integrity_problems
from planner.model.plan import Plan
from planner.problem import EditRefused
from planner.services.checking import check_plan
from planner.wiring.graph import Wiring
from tests.edits.relabelling import relabel_end
from tests.edits.strategies import edited, leads

some = settings(max_examples=60, deadline=None)
MOST_EDITS = 8


def after_edits(data, plan: Plan) -> Plan:
    for _ in range(data.draw(st.integers(0, MOST_EDITS), label="edits")):
        plan = data.draw(edited(plan))
    return plan


@some
@given(leads(), st.data())
def test_any_edits_then_undo_of_all_gives_the_same_bytes(plan, data):
    document, undo = Document(plan), []
    first = plan_bytes(plan)
    for _ in range(data.draw(st.integers(1, MOST_EDITS))):
        undo.append((document.plan, plan_bytes(document.plan)))
        document.replace(data.draw(edited(document.plan)))
    for before, wanted in reversed(undo):
        document.replace(before)
        assert plan_bytes(document.plan) == wanted
    assert plan_bytes(document.plan) == first


@some
@given(leads(), st.data())
def test_every_edit_keeps_the_plan_whole_and_readable(plan, data):
    assert integrity_problems(plan) == ()
    plan = after_edits(data, plan)
    assert integrity_problems(plan) == ()
    assert parse_plan(plan_bytes(plan).decode(), Path("any.json")) == plan


@some
@given(leads(), st.data())
def test_no_edit_crowds_a_contact_that_had_room(plan, data):
    after = after_edits(data, plan)
    counts = Counter((it.end, it.contact) for it in after.landings)
    for (end, contact), count in counts.items():
        assert count <= 3
        takes = after.connector_of(end).by_id[contact].terminal.takes
        changed = plan.end_by_id.get(end) != after.end_by_id[end]
        assert count <= takes or changed


@some
@given(leads(), st.data())
def test_landing_by_signal_twice_changes_nothing_and_says_nothing_new(plan, data):
    plan = after_edits(data, plan)
    end = data.draw(st.sampled_from(["", *(it.id for it in plan.ends)]))
    once, said = land_by_signal(plan, end=end)
    assert land_by_signal(once, end=end) == (once, said)


@some
@given(leads(), st.data())
def test_landing_by_signal_moves_nothing_and_stays_whole(plan, data):
    plan = after_edits(data, plan)
    after, _ = land_by_signal(plan)
    assert set(plan.landings) <= set(after.landings)
    assert (after.caps, integrity_problems(after)) == (plan.caps, ())


@some
@given(leads(), st.data())
def test_landing_by_signal_lands_on_no_other_signal(plan, data):
    plan = after_edits(data, plan)
    after, _ = land_by_signal(plan)
    wiring = Wiring(after)
    for landing in set(after.landings) - set(plan.landings):
        carried = wiring.signals_at(landing.end, landing.contact)
        if after.conductor_by_id[landing.conductor].kind == "shield":
            assert landing.contact in shield_contacts(wiring, landing.end)
            continue
        mine = [it for it in after.landings if it.conductor == landing.conductor]
        sets = [wiring.signals_at(it.end, it.contact) for it in mine]
        widest = max(sets, key=len)
        assert carried
        assert all(one & widest for one in sets)


@some
@given(leads())
def test_landing_a_bare_lead_by_signal_plants_no_fault(plan):
    faults = {
        "all-channels-reversed",
        "bridge",
        "crossed-channels",
        "crowded-contact",
        "joined-driven-returns",
        "one-channel-reversed",
        "shield-on-signal",
    }
    before = {it.code for it in check_plan(plan)}  # a record may contradict itself
    after = {it.code for it in check_plan(land_by_signal(plan)[0])}
    assert (after - before) & faults == set()


@some
@given(leads(), st.data())
def test_one_end_gets_what_the_whole_gets_there(plan, data):
    whole, _ = land_by_signal(plan)
    end = data.draw(st.sampled_from([it.id for it in plan.ends]))
    part, _ = land_by_signal(plan, end=end)
    assert part.landings == tuple(it for it in whole.landings if it.end == end)


@some
@given(leads(), st.data())
def test_exchanging_back_is_the_identity_where_contacts_hold_one(plan, data):
    plan, _ = land_by_signal(after_edits(data, plan))
    assume(plan.landings)
    landing = data.draw(st.sampled_from(plan.landings))
    contact = data.draw(st.sampled_from(list(plan.connector_of(landing.end).by_id)))
    counts = Counter((it.end, it.contact) for it in plan.landings)
    assume(counts[landing.end, landing.contact] == 1)
    try:
        there = exchange(plan, end=landing.end, conductor=landing.conductor, contact=contact)
        back = exchange(
            there, end=landing.end, conductor=landing.conductor, contact=landing.contact
        )
    except EditRefused:
        return
    assert back == plan


@some
@given(leads(), st.data())
def test_other_labels_land_alike(plan, data):
    plan = after_edits(data, plan)
    end = data.draw(st.sampled_from([it.id for it in plan.ends]))
    label = data.draw(st.sampled_from(["0", "Z"]))
    landed, said = land_by_signal(plan)
    other, other_said = land_by_signal(relabel_end(plan, end=end, label=label))
    assert other == relabel_end(landed, end=end, label=label)
    assert len(other_said) == len(said)
