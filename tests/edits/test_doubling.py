"""Cores meant to be doubled: the opposite cores of a star quad on one contact."""

import pytest

from planner.edits.by_signal import land_by_signal
from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector
from planner.edits.landings import cap, land
from planner.edits.shapes import one_to_one
from tests.demo.make_plans import shipped_library
from tests.edits.leads import BRAID, FIVE, FIVE_OUT, LINE, LINE_MALE, cable, landed, line_lead

# In the order of the spool both halves of a leg lie side by side: only the groups tell.
STAR = cable("star", "WH WHRD BU BURD", shields=(BRAID,), pairs=True).evolve(groups="doubled")
DOUBLED = {"WH>2", "WHRD>2", "BU>3", "BURD>3", "SH>1"}


def quad_lead(takes=2):
    """A balanced line over a star quad; every contact takes as many cores as `takes`."""
    plan = line_lead()
    for end, plug in (("A", LINE), ("B", LINE_MALE)):
        contacts = tuple(
            it.evolve(terminal=it.terminal.evolve(takes=takes)) for it in plug.contacts
        )
        plan = choose_connector(plan, end=end, connector=plug.evolve(contacts=contacts))
    return choose_cable(plan, section="trunk", cable=STAR)


def test_opposite_cores_land_together_at_both_ends():
    """Star quad: the opposite cores are joined for one leg. Common practice, no source."""
    plan, left = land_by_signal(quad_lead())
    assert left == ()
    assert landed(plan) == {f"{end}:{it}" for end in "AB" for it in DOUBLED}
    assert land_by_signal(plan)[0] == plan


def test_without_room_the_second_pair_stays_loose_and_says_why():
    plan, left = land_by_signal(quad_lead(takes=1))
    assert landed(plan) == {f"{end}:{it}" for end in "AB" for it in ("WH>2", "BU>3", "SH>1")}
    why = "pin 2 at A takes one core"
    assert left == tuple(f"{core} stays loose, to be capped: {why}" for core in ("WHRD", "BURD"))


def test_one_contact_without_room_keeps_both_legs_alike():
    plan = quad_lead()
    plug = plan.connector_of("B")
    tight = plug.contacts[2].evolve(terminal=plug.contacts[2].terminal.evolve(takes=1))
    plug = plug.evolve(contacts=(*plug.contacts[:2], tight))
    plan, left = land_by_signal(choose_connector(plan, end="B", connector=plug))
    assert not any("WHRD" in it or "BURD" in it for it in landed(plan))
    assert "WHRD stays loose, to be capped: pin 3 at B takes one core" in left


def test_what_a_builder_began_decides_where_the_other_half_goes():
    start = land(quad_lead(), end="A", conductor="BURD", contact="2")
    plan, left = land_by_signal(start)
    assert left == ()
    assert {"A:BU>2", "B:BU>2", "B:BURD>2", "A:WH>3", "A:WHRD>3"} <= landed(plan)


def test_a_capped_half_stays_capped():
    plan, _ = land_by_signal(cap(quad_lead(), end="A", conductor="WHRD"))
    assert not any("WHRD" in it for it in landed(plan))


def test_four_signals_take_the_four_cores_one_by_one():
    plan = one_to_one()
    record = FIVE_OUT.evolve(drive="line")
    for end in ("A", "B"):
        plan = choose_connector(plan, end=end, connector=FIVE, pinout=record)
    plan, _ = land_by_signal(choose_cable(plan, section="trunk", cable=STAR))
    assert len({it.contact for it in plan.landings if it.end == "A" and it.contact != "S"}) == 4


@pytest.mark.parametrize("policy", ["both-ends", "source-end"])
def test_the_shipped_star_quad_fills_shipped_line_plugs(policy):
    library = shipped_library()
    plan = one_to_one(policy=policy)
    for end, plug in (("A", "xlr-3-female"), ("B", "xlr-3-male")):
        hardware, record = library.connector(plug), library.pinout("xlr-3-line")
        plan = choose_connector(plan, end=end, connector=hardware, pinout=record)
    quad = library.cable("star-quad")
    plan, left = land_by_signal(choose_cable(plan, section="trunk", cable=quad))
    assert left == ()
    assert {f"A:{it}" for it in DOUBLED} <= landed(plan)
