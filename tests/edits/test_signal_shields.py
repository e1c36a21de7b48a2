"""Shields landed by signal: the braid as the only return, and a contact that has no room for it."""

import pytest

from planner.edits.by_signal import land_by_signal
from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector
from planner.edits.landings import cap, land
from planner.edits.shapes import one_to_one, one_to_two
from planner.model.cable import Shield
from planner.services.checking import check_plan
from tests.edits.leads import (
    BRAID,
    CUP,
    CUP_IN,
    LINE,
    THREE,
    THREE_OUT,
    cable,
    connector,
    landed,
    line_lead,
    pinout,
)

CUP_OUT = pinout("cup-out", "cup", "single-ended", T="+", S="-")
COAX = cable("coax", "WH", shields=(BRAID,))
WHOLE = {"A:WH>T", "A:SH>S", "B:WH>T", "B:SH>S"}
BEYOND = "SH is the return, so it lands at both ends: make that its policy"


def mono_lead(policy, wire=COAX):
    """A single-ended output to an input, over one core and its braid."""
    plan = choose_connector(one_to_one(policy=policy), end="A", connector=CUP, pinout=CUP_OUT)
    plan = choose_connector(plan, end="B", connector=CUP, pinout=CUP_IN)
    return choose_cable(plan, section="trunk", cable=wire)


@pytest.mark.parametrize(
    ("policy", "said"),
    [("both-ends", ()), ("source-end", (BEYOND,)), ("load-end", (BEYOND,)), (None, (BEYOND,))],
)
def test_the_braid_of_a_single_core_is_the_return_whatever_the_policy(policy, said):
    """An unbalanced line in coaxial cable: core to the plus, braid to the return. Practice."""
    plan, left = land_by_signal(mono_lead(policy))
    assert (landed(plan), left) == (WHOLE, said)
    assert "open" not in [it.code for it in check_plan(plan)]


def test_it_lands_the_same_a_second_time():
    plan, _ = land_by_signal(mono_lead("source-end"))
    assert land_by_signal(plan)[0] == plan


def test_an_isolated_braid_is_no_return():
    plan, left = land_by_signal(mono_lead("isolated"))
    assert landed(plan) == {"A:WH>T", "B:WH>T"}
    assert left == ("\u2212 at B: no core is left for it",)


def test_a_capped_braid_is_left_alone():
    plan, _ = land_by_signal(cap(mono_lead("source-end"), end="B", conductor="SH"))
    assert landed(plan) == {"A:WH>T", "A:SH>S", "B:WH>T"}


def test_a_braid_with_a_ground_contact_of_its_own_is_no_return():
    three = connector("three-way", "1 2 3")
    grounded = pinout("grounded", "three-way", "load", _1="+", _2="-", _3="shield")
    plan = choose_connector(mono_lead("source-end"), end="B", connector=three, pinout=grounded)
    plan, left = land_by_signal(plan)
    assert landed(plan) == {"A:WH>T", "A:SH>S", "B:WH>1"}
    assert left == ("pin S at A is taken",)


def test_a_core_goes_before_the_braid():
    plan, left = land_by_signal(mono_lead("source-end", cable("two", "WH BU", shields=(BRAID,))))
    assert {"A:BU>S", "B:BU>S"} <= landed(plan)
    assert "B:SH>S" not in landed(plan)
    assert left == ("SH at A: pin S takes one core and is full with BU; " + EXCHANGE,)


EXCHANGE = "exchange them if the shield may be the return, or make the shield isolated"


def test_a_balanced_line_never_takes_the_shield_for_a_leg():
    plan = choose_cable(line_lead(), section="trunk", cable=COAX)
    plan, left = land_by_signal(plan)
    assert landed(plan) == {"A:WH>2", "A:SH>1", "B:WH>2", "B:SH>1"}
    assert left == ("\u2212 at B: no core is left for it",)


def test_the_return_takes_the_shield_round_its_own_channel():
    four = connector("four", "1 2 3 4")
    pins = {"_1": "L+", "_2": "L-", "_3": "R+", "_4": "R-"}
    plan = one_to_one(policy="source-end")
    for end, drive in (("A", "single-ended"), ("B", "load")):
        record = pinout(drive, "four", drive, **pins)
        plan = choose_connector(plan, end=end, connector=four, pinout=record)
    shields = (
        Shield(id="sr", kind="spiral", around=("RD",), tail_mm=0.6),
        Shield(id="sw", kind="spiral", around=("WH",), tail_mm=0.6),
    )
    twin = cable("twin", "WH RD", shields=shields)
    plan, _ = land_by_signal(choose_cable(plan, section="trunk", cable=twin))
    assert landed(plan) == {
        f"{end}:{it}" for end in "AB" for it in ("WH>1", "sw>2", "RD>3", "sr>4")
    }


def test_a_braid_spliced_to_two_legs_is_the_common_return():
    """Two cores in one braid to two single cores: the braid is the return of both. Practice."""
    plan = one_to_two(policy="both-ends")
    plan = choose_connector(plan, end="A", connector=THREE, pinout=THREE_OUT)
    for end in ("L", "R"):
        plan = choose_connector(plan, end=end, connector=CUP, pinout=CUP_IN)
    plan = choose_cable(plan, section="trunk", cable=cable("t", "WH RD", shields=(BRAID,)))
    for leg, core in (("leg-L", "WH"), ("leg-R", "RD")):
        plan = choose_cable(plan, section=leg, cable=cable(leg, core, shields=(BRAID,)))
    plan, left = land_by_signal(plan)
    assert left == ()
    spots = ("A:WH>T", "A:RD>R", "A:SH>S", "L:WH>T", "L:SH>S", "R:RD>T", "R:SH>S")
    assert landed(plan) == set(spots)


HEADSET = {"T": "L+", "R1": "R+"}


def headset_lead(**order):
    """A headset socket to a headset over four cores and a braid; only the sleeve takes two."""
    plug = connector("four-pole", "T R1 R2 S")
    roomy = plug.contacts[3].terminal.evolve(takes=2)
    sleeve = plug.contacts[3].evolve(terminal=roomy)
    plug = plug.evolve(contacts=(*plug.contacts[:3], sleeve))
    plan = one_to_one(policy="source-end")
    for end, drive in (("A", "single-ended"), ("B", "load")):
        record = pinout(drive, "four-pole", drive, **HEADSET, **order)
        plan = choose_connector(plan, end=end, connector=plug, pinout=record)
    return choose_cable(plan, section="trunk", cable=cable("quad", "WH BU RD GN", shields=(BRAID,)))


def test_a_headset_shield_lands_on_the_sleeve_beside_the_return():
    plan, left = land_by_signal(headset_lead(R2="mic+", S="L- R- mic-"))
    assert left == ()
    assert {it.conductor for it in plan.landings if (it.end, it.contact) == ("A", "S")} == {
        *("GN", "SH")
    }


def test_a_headset_return_that_takes_one_core_says_so_and_what_to_do():
    plan, left = land_by_signal(headset_lead(R2="L- R- mic-", S="mic+"))
    assert left == ("SH at A: pin R2 takes one core and is full with GN; " + EXCHANGE,)
    assert not any(":SH>" in it for it in landed(plan))


def test_a_shield_by_policy_alone_is_not_called_a_return():
    plan, left = land_by_signal(line_lead())
    assert left == ()
    two = choose_connector(line_lead(), end="A", connector=LINE)
    assert all("return" not in it for it in land_by_signal(two)[1])
    assert "A:SH>1" in landed(land(plan, end="A", conductor="SH", contact="1"))
