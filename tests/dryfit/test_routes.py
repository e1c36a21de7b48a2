"""Ways, tags, waiting rows and what closes a way, on leads with invented figures."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.dryfit.threading import hindrances, thread
from tests.dryfit.threaded import lead, part, random_lead, use

SHRINK = {"kind": "heat-shrink", "outside_mm": 8}


def line(parts, uses, plugs_mm=(15, 15)):
    """Return an I with a jacket of 4 mm."""
    return lead("AB", (4, 4), plugs_mm, parts, uses)


def fork(parts, uses, plugs_mm=(15, 6, 6)):
    """Return a Y: the leg of A is 4 mm thick, those of B and C 2 mm."""
    return lead("ABC", (4, 2, 2), plugs_mm, parts, uses)


@pytest.mark.parametrize(
    ("figures", "more", "kinds"),
    [
        ({"bore_mm": 5}, {}, []),
        ({"bore_mm": 4}, {}, []),
        ({"bore_mm": 3.5}, {}, ["cannot-pass"]),
        ({"bore_mm": 5}, {"after_joint": True}, ["threaded-too-late"]),
        ({"bore_mm": 16}, {"after_joint": True}, []),
        ({"bore_mm": 5, "opens": True}, {"after_joint": True}, []),
        ({"bore_mm": 3, "opens": True}, {}, []),
        (SHRINK | {"bore_mm": 6.35, "recovered_mm": 3.18}, {}, []),
        (SHRINK | {"bore_mm": 9.53, "recovered_mm": 4.75}, {}, ["shrink-misfit"]),
        (SHRINK | {"bore_mm": 9.53, "recovered_mm": 4}, {}, ["shrink-misfit"]),
    ],
)
def test_what_hinders_a_part(figures, more, kinds):
    """NASA-STD-8739.4 9.8.1: recovered heat-shrink is smaller than what it grips."""
    plan = line([part("p", **figures)], [use("p", "B", **more)])
    assert [it.kind for it in hindrances(plan)] == kinds


def test_a_part_goes_on_from_the_far_end_over_the_whole_cable():
    plan = line([part("p", 5)], [use("p", "B", "A", after_joint=False)])
    (route,) = thread(plan).routes
    assert (route.ends, route.sections, route.before_joint_of) == (("A",), ("a",), ("A",))


def test_a_joint_is_waited_for_only_where_the_plug_is_too_thick():
    plan = line([part("p", 15), part("q", 14.9)], [use("p", "A"), use("q", "B")])
    assert [it.before_joint_of for it in thread(plan).routes] == [(), ("B",)]


def test_a_part_on_a_leg_comes_over_both_other_ends_where_its_own_is_on():
    plan = fork([part("p", 7)], [use("p", "B")], plugs_mm=(15, 8, 6))
    (route,) = thread(plan, stays_on=frozenset("B")).routes
    assert (route.ends, route.sections) == (("A", "C"), ("a", "b"))
    assert route.before_joint_of == ("A", "C")


@pytest.mark.parametrize(("bore_mm", "goes"), [(7.9, False), (8, True)])
def test_the_second_end_goes_through_beside_the_first_leg(bore_mm, goes):
    """C's plug of 6 mm passes beside the leg of B, 2 mm."""
    plan = fork([part("p", bore_mm)], [use("p", "A")])
    found = thread(plan, stays_on=frozenset("ABC"))
    assert bool(found.routes) == goes


def test_cannot_pass_says_for_each_side_what_is_too_thick():
    plan = fork([part("p", 7)], [use("p", "A")])
    (hindrance,) = thread(plan, stays_on=frozenset("ABC")).hindrances
    closed = {(it.ends, it.over, it.has_mm, it.needs_mm) for it in hindrance.ways}
    beside = "with what lies beside it"
    assert closed == {
        (("A",), "plug A", 7, 15),
        (("B", "C"), f"plug C {beside}", 7, 8),
        (("C", "B"), f"plug B {beside}", 7, 8),
    }


def test_tags_count_from_the_end_in_threading_order():
    parts = [part("boot", 5), part("liner", 5, kind="liner"), part("far", 5)]
    uses = [use("liner", "A"), use("boot", "A"), use("far", "B")]
    tags = {it.use.id: it.tag for it in thread(line(parts, uses)).routes}
    assert tags == {"boot": "A1", "liner": "A2", "far": "B1"}


def test_the_tag_of_a_numbered_end_keeps_the_numbers_apart():
    plan = line([part("p", 5)], [use("p", "A")])
    ends = (plan.ends[0].evolve(id="B8"), plan.ends[1])
    sections = (plan.sections[0].evolve(near="B8"),)
    moved = plan.parts[0].evolve(at="B8", comes_from="B8")
    plan = plan.evolve(ends=ends, sections=sections, parts=(moved,))
    assert thread(plan).routes[0].tag == "B8.1"


def test_what_rests_at_the_split_goes_on_before_what_rests_at_the_end():
    parts = [part("boot", 5), part("cover", 5, kind="cover"), part("shrink", 5, **SHRINK_KIND)]
    uses = [use("boot", "A"), use("cover", "Y", "A"), use("shrink", "Y", "A")]
    assert [it.use.id for it in thread(fork(parts, uses)).at_end("A")] == [
        "shrink",
        "cover",
        "boot",
    ]


SHRINK_KIND = {"kind": "heat-shrink", "recovered_mm": 2}


def test_of_two_alike_the_first_listed_goes_on_first():
    for at, end in (("A", "A"), ("Y", "A"), ("B", "B"), ("Y", "B")):
        plan = fork([part("p", 5), part("q", 5)], [use("p", at, end), use("q", at, end)])
        assert [it.use.id for it in thread(plan).routes] == ["p", "q"]


def test_at_a_split_the_section_may_be_named():
    plan = fork([part("p", 5)], [use("p", "Y", "B", section="a")])
    (route,) = thread(plan).routes
    assert (route.ends, route.sections) == (("B", "C"), ("b", "a"))


def test_a_planned_way_that_works_is_kept():
    """Both boots would be nearer to their own ends."""
    plan = line([part("p", 5)], [use("p", "B", "A")])
    assert [it.comes_from for it in thread(plan).routes] == ["A"]


def test_two_parts_that_would_have_to_pass_each_other_are_told_apart():
    parts = [part("p", 5, 9), part("q", 6, 9)]
    found = thread(line(parts, [use("p", "B", "A"), use("q", "A", "B")]))
    assert [(it.use.id, it.kind) for it in found.hindrances] == [("q", "threaded-too-late")]
    (closed,) = found.hindrances[0].ways
    assert (closed.over, closed.has_mm, closed.needs_mm) == ("part p in its way", 6, 9)
    assert {it.use.id: it.comes_from for it in found.routes} == {"p": "A", "q": "A"}


def test_what_is_to_come_after_a_joint_can_shut_out_what_has_to_come_before():
    """The part farther in comes last, and neither goes over the other: it has to come earlier."""
    parts = [part("deep", 16, 17), part("boot", 5, 16.5)]
    found = thread(line(parts, [use("deep", "A", after_joint=True), use("boot", "A")]))
    (hindrance,) = found.hindrances
    closed = hindrance.ways[0]
    assert (hindrance.use.id, hindrance.kind) == ("boot", "threaded-too-late")
    assert (closed.over, closed.has_mm, closed.needs_mm) == ("plug A", 5, 15)
    assert [(it.use.id, it.after_joint) for it in found.routes] == [
        ("deep", False),
        ("boot", False),
    ]


def row(length_mm, **figures):
    """Return the one row of a line of this length with two parts at A."""
    parts = [part("boot", 5, length_mm=30), part("inner", 5, length_mm=20, **figures)]
    plan = line(parts, [use("boot", "A"), use("inner", "A")])
    section = plan.sections[0].evolve(length_mm=length_mm)
    (found,) = thread(plan.evolve(sections=(section,))).parked
    return found


def test_parts_wait_in_a_row_nearest_first():
    found = row(50, kind="liner")
    assert (found.end, found.uses, found.needs_mm, found.fits) == ("A", ("inner", "boot"), 50, True)
    assert not row(49.9, kind="liner").fits


def test_heat_shrink_waits_clear_of_the_iron():
    """50 mm from the iron: common practice, no source."""
    assert row(100, kind="heat-shrink", recovered_mm=3).needs_mm == 50 + 20 + 30


def test_what_need_not_be_on_before_a_joint_does_not_wait():
    plan = line([part("p", 16)], [use("p", "A")])
    assert thread(plan).parked == ()


def test_a_lead_without_sections_or_parts_is_no_fault():
    plan = line([part("p", 5)], [use("p", "A")])
    assert thread(plan.evolve(sections=())).hindrances == ()
    assert thread(plan.evolve(parts=())).routes == ()


def kinds(plan):
    """Return which parts have no way."""
    return {it.use.id for it in hindrances(plan) if it.kind == "cannot-pass"}


def with_part(plan, at, **changes):
    """Return the plan with one of its parts changed."""
    parts = list(plan.definitions.parts)
    parts[at] = parts[at].evolve(**changes)
    return plan.evolve(definitions=plan.definitions.evolve(parts=tuple(parts)))


@settings(max_examples=60, deadline=None)
@given(seed=st.integers(0, 10**6), more_mm=st.floats(0, 5))
def test_a_larger_bore_never_hurts_the_part(seed, more_mm):
    plan = random_lead(seed)
    at = seed % len(plan.parts)
    wider = with_part(plan, at, bore_mm=plan.definitions.parts[at].bore_mm + more_mm)
    assert kinds(wider) & {plan.parts[at].id} <= kinds(plan)


@settings(max_examples=60, deadline=None)
@given(seed=st.integers(0, 10**6))
def test_a_part_that_opens_never_hurts(seed):
    plan = random_lead(seed)
    assert kinds(with_part(plan, seed % len(plan.parts), opens=True)) <= kinds(plan)


def relabelled(plan, names):
    """Return the plan with its ends called otherwise."""
    return plan.evolve(
        ends=tuple(it.evolve(id=names[it.id]) for it in plan.ends),
        sections=tuple(
            it.evolve(near=names[it.near], far=names.get(it.far, it.far)) for it in plan.sections
        ),
        parts=tuple(
            it.evolve(at=names.get(it.at, it.at), comes_from=names[it.comes_from])
            for it in plan.parts
        ),
    )


@settings(max_examples=40, deadline=None)
@given(seed=st.integers(0, 10**6))
def test_other_names_for_the_ends_give_the_same_plan_in_other_names(seed):
    plan = random_lead(seed)
    names = {"A": "Q", "B": "K", "C": "F"}
    found, other = thread(plan), thread(relabelled(plan, names))
    named = [(it.use.id, tuple(names[end] for end in it.ends)) for it in found.routes]
    assert [(it.use.id, it.ends) for it in other.routes] == named
    assert [it.kind for it in other.hindrances] == [it.kind for it in found.hindrances]
