"""The order of work: nothing too early, nothing forgotten, nothing twice, and it keeps still."""

from collections import Counter

import pytest

from planner.dryfit.fit import fit_end
from planner.dryfit.threading import thread
from planner.dryfit.work import movable, steps, usual_order
from planner.dryfit.work.alike import alike_ends
from planner.edits.landings import dab, sleeve
from planner.edits.work import move_step
from planner.model.plan import Cap, Plan
from planner.wiring.graph import Wiring
from tests.dryfit.threaded import bench, goal, lead, part, use
from tests.dryfit.work.leads import DEMO, demo, landed, shuffled, threaded_lead

SEEDS = range(160)
LEADS = [*DEMO, *range(12)]


def plan_of(name):
    return demo(name) if isinstance(name, str) else threaded_lead(name)


def done(plan):
    return steps(plan, Wiring(plan))


def ids(plan):
    return [step.id for step in done(plan)]


def mixed(plan, seed):
    """Return the plan with the steps wished in any order whatever."""
    return plan.evolve(step_order=shuffled(ids(plan), seed))


@pytest.mark.parametrize("name", LEADS)
@pytest.mark.parametrize("seed", [None, 1, 2])
def test_no_step_comes_before_what_it_needs(name, seed):
    plan = plan_of(name)
    found = done(plan if seed is None else mixed(plan, seed))
    place = {step.id: at for at, step in enumerate(found)}
    assert [it.id for it in found for need in it.needs if place[need] >= place[it.id]] == []
    assert sorted(place) == sorted(ids(plan))


@pytest.mark.parametrize("name", LEADS)
def test_every_joint_is_soldered_once(name):
    plan = plan_of(name)
    soldered = Counter(
        (end, contact) for step in done(plan) for end in step.ends for contact in step.contacts
    )
    assert soldered == {(it.end, it.contact): 1 for it in plan.landings}


@pytest.mark.parametrize("end", ["A", "L", "R"])
def test_joints_are_soldered_in_the_order_of_the_dry_fit(end):
    plan = demo("cue-desk-headphone-lead")
    soldered = [it for step in done(plan) if step.end == end for it in step.contacts]
    assert tuple(soldered) == fit_end(plan, Wiring(plan), end).order


def put_on(plan):
    """Return acts in the order of the steps: a part that is put on, or an end that is soldered."""
    acts = []
    for step in done(plan):
        if step.contacts:
            acts += [("solder", end) for end in step.ends]
        elif step.kind in {"thread", "thread_one", "late"}:
            acts += [("part", use) for use in step.parts]
    return acts


def replayed(plan):
    """Tell whether all parts get on and to their places, by the exhaustive simulator."""
    simulated, soldered, on, state = bench(plan), set(), [], ((),) * len(plan.sections)
    for act, name in put_on(plan):
        if act == "solder":
            soldered.add(name)
            continue
        on.append(name)
        after = goal(plan, on)
        if not simulated.reaches(after, soldered, state, {name}):
            return False
        state = after
    going = {it.use.id for it in thread(plan).routes if not it.part.opens}
    return set(on) == going


@pytest.mark.parametrize("seed", [None, 7])
def test_parts_get_to_their_places_in_any_order_that_is_allowed(seed):
    leads = [threaded_lead(it) for it in SEEDS]
    failed = [it for it in leads if not replayed(it if seed is None else mixed(it, seed))]
    print(f"{len(failed)} of {len(leads)} leads fail in the simulator")  # noqa: T201 - the proof
    assert failed == []


@pytest.mark.parametrize("seed", range(8))
def test_parts_from_two_sides_of_one_leg_keep_their_order(seed):
    plan = lead(
        "ABC",
        [2, 2, 2],
        [3, 3, 3],
        [part("far", 10, 11, kind="label"), part("near", 10, 13, kind="heat-shrink")],
        [use("far", "C", "B"), use("near", "C")],
    )
    order = ids(mixed(landed(plan), seed))
    assert order.index("B/thread") < order.index("C/thread")


def test_a_part_planned_for_later_goes_on_over_the_soldered_plug():
    plans = [threaded_lead(seed) for seed in SEEDS]
    late = 0
    for plan in plans:
        acts = put_on(plan)
        for route in thread(plan).routes:
            if route.after_joint and not route.part.opens:
                late += 1
                part_on = acts.index(("part", route.use.id))
                assert acts.index(("solder", route.comes_from)) < part_on
    assert late > 5


def test_threading_after_soldering_would_be_seen():
    leads = [threaded_lead(it) for it in SEEDS]
    assert any(not all_late(it) for it in leads)


def all_late(plan):
    """Replay with every joint made first."""
    simulated, on, state = bench(plan), [], ((),) * len(plan.sections)
    for name in [name for act, name in put_on(plan) if act == "part"]:
        on.append(name)
        after = goal(plan, on)
        if not simulated.reaches(after, set(plan.end_by_id), state, {name}):
            return False
        state = after
    return True


@pytest.mark.parametrize("seed", range(6))
def test_a_shield_is_metered_before_its_split_and_its_plug_close(seed):
    order = ids(mixed(demo("cue-desk-headphone-lead"), seed))
    metered = order.index("A/meter/split")
    assert order.index("A/solder/1") < metered
    assert metered < min(order.index("split/close/splitter-cover"), order.index("A/clamp"))


def _closed(order, place):
    """Return where the first step is that closes a place."""
    return next(at for at, name in enumerate(order) if name.startswith(f"{place}/close/"))


@pytest.mark.parametrize("seed", range(6))
def test_a_shield_that_stops_at_the_far_plug_is_metered_before_either_closes(seed):
    order = ids(mixed(demo("intercom-headset"), seed))
    assert order.index("A/meter/B") < min(_closed(order, "A"), _closed(order, "B"))


def test_shields_of_a_loom_are_metered_before_any_of_its_legs_closes():
    [step] = [it for it in done(demo("recording-rack-loom")) if it.kind == "meter_shield_end"]
    order = ids(demo("recording-rack-loom"))
    assert dict(step.values)["pairs"].count("SH") == 8
    assert order.index(step.id) < order.index("B1/clamp")


def test_stages_follow_one_another():
    stages = [step.stage for step in done(demo("cue-desk-headphone-lead"))]
    assert list(dict.fromkeys(stages)) == ["cut", "A", "L", "R", "split", "prove"]
    assert stages == sorted(stages, key=["cut", "A", "L", "R", "split", "prove"].index)


def test_cores_of_several_cables_are_joined_before_the_plugs():
    order = ids(demo("stereo-to-two-mono"))
    assert order.index("split/splice") < _closed(order, "split") < order.index("A/ready")


def test_nothing_landed_is_no_work():
    assert steps(Plan(), Wiring(Plan())) == ()


@pytest.mark.parametrize(
    ("field", "kind"), [("connector", "no_plug"), ("landings", "nothing_landed")]
)
def test_what_is_not_known_is_told(field, kind):
    plan = demo("cue-desk-headphone-lead")
    if field == "connector":
        ends = tuple(it.evolve(connector="") if it.id == "L" else it for it in plan.ends)
        plan = plan.evolve(ends=ends)
    else:
        plan = plan.evolve(landings=tuple(it for it in plan.landings if it.end != "L"))
    assert [step.kind for step in done(plan) if step.stage == "L"] == [kind]


def test_a_cable_that_is_not_known_is_told():
    plan = demo("intercom-headset")
    sections = tuple(it.evolve(cable="") for it in plan.sections)
    kinds = {step.kind for step in done(plan.evolve(sections=sections))}
    assert "no_cable" in kinds


def test_a_spare_core_is_capped_before_the_plug_closes():
    plan = demo("cue-desk-headphone-lead")
    landings = tuple(it for it in plan.landings if (it.end, it.conductor) != ("L", "BU"))
    plan = plan.evolve(landings=landings, caps=(Cap(end="L", conductor="BU"),))
    order = ids(plan)
    assert order.index("L/cap") < order.index("L/clamp")


def changed(plan):
    """Yield the plan after small edits."""
    ends = tuple(it.evolve(turn_deg=it.turn_deg + 15) for it in plan.ends)
    yield plan.evolve(ends=ends)
    longer = tuple(it.evolve(length_mm=it.length_mm + 70) for it in plan.sections)
    yield plan.evolve(sections=longer)
    yield sleeve(plan, end="A", conductor="BU", sleeved=True)
    yield dab(plan, end="A", conductor="WH", dabbed=True)


def moved(plan, count):
    """Return the plan after steps were moved as far as they go."""
    for place in range(0, count * 7, 7):
        name = ids(plan)[place % len(ids(plan))]
        free = movable(plan, Wiring(plan), name)
        plan = move_step(plan, step=name, to=free[0] if place % 2 else free[-1])
    return plan


@pytest.mark.parametrize("count", [0, 1, 5])
def test_a_small_edit_leaves_the_order_of_all_other_steps(count):
    plan = moved(demo("cue-desk-headphone-lead"), count)
    before = ids(plan)
    for after in changed(plan):
        both = set(before) & set(ids(after))
        assert [it for it in ids(after) if it in both] == [it for it in before if it in both]


def test_taken_back_a_wish_is_gone():
    plan = demo("cue-desk-headphone-lead")
    free = movable(plan, Wiring(plan), "A/hold")
    there = move_step(plan, step="A/hold", to=free[0])
    back = ids(plan).index("A/hold") + 1
    assert ids(there).index("A/hold") + 1 == free[0]
    assert move_step(there, step="A/hold", to=back) == plan
    assert usual_order(there, Wiring(there)) == tuple(ids(plan))


def test_movable_needs_a_step_that_is_there():
    plan = demo("cue-desk-headphone-lead")
    with pytest.raises(KeyError):
        movable(plan, Wiring(plan), "A/paint")


def test_eight_legs_of_a_loom_are_made_alike():
    legs = tuple(f"B{number}" for number in range(1, 9))
    assert alike_ends(demo("recording-rack-loom")) == (("A",), legs)


@pytest.mark.parametrize("name", DEMO)
def test_every_end_is_in_one_group(name):
    groups = alike_ends(demo(name))
    assert [end for group in groups for end in group] == [end.id for end in demo(name).ends]


@pytest.mark.parametrize(
    "change",
    [{"turn_deg": 10.0}, {"room_mm": 12.0}, {"solder_order": ("3", "2")}, {"connector": ""}],
)
def test_an_end_that_differs_is_alone(change):
    plan = demo("recording-rack-loom")
    ends = tuple(it.evolve(**change) if it.id == "B4" else it for it in plan.ends)
    assert ("B4",) in alike_ends(plan.evolve(ends=ends))


def test_a_leg_of_another_length_is_alone():
    plan = demo("recording-rack-loom")
    sections = tuple(it.evolve(length_mm=900) if it.id == "leg-B4" else it for it in plan.sections)
    assert ("B4",) in alike_ends(plan.evolve(sections=sections))


def test_a_leg_with_another_landing_is_alone():
    plan = demo("recording-rack-loom")
    landings = tuple(
        it.evolve(sleeved=True) if (it.end, it.contact) == ("B4", "2") else it
        for it in plan.landings
    )
    assert ("B4",) in alike_ends(plan.evolve(landings=landings))
