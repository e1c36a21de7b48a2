"""Landing by signal: what is certain is landed, the rest is said."""

from planner.edits.by_signal import land_by_signal
from planner.edits.cables import choose_cable, set_shield_policy
from planner.edits.ends import choose_connector, choose_pinout, set_channel
from planner.edits.landings import cap, land
from planner.edits.shapes import one_to_one, one_to_two
from planner.model.cable import Shield
from planner.model.integrity import integrity_problems
from tests.edits.leads import (
    BRAID,
    CUP,
    CUP_IN,
    FIVE,
    FIVE_OUT,
    QUAD,
    THREE,
    THREE_OUT,
    TWO_PAIRS,
    cable,
    connector,
    cue_lead,
    landed,
    line_lead,
    pair_loom,
    pinout,
    ways,
)


def test_the_cue_lead_is_landed_whole():
    plan, left = land_by_signal(cue_lead())
    assert left == ()
    assert landed(plan) == {
        *("A:WH>T", "A:BU>R1", "A:RD>R2", "A:GN>R3", "A:SH>S"),
        *("L:WH>T", "L:BU>S", "R:RD>T", "R:GN>S"),
    }


def test_a_balanced_line_shields_both_ends_by_policy():
    plan, left = land_by_signal(line_lead())
    assert left == ()
    assert landed(plan) == {"A:RD>2", "A:BK>3", "A:SH>1", "B:RD>2", "B:BK>3", "B:SH>1"}


def test_pairs_keep_a_channel_together_and_their_shield_beside_it():
    # The shield contacts 3 and 6 are beside circuits 1 and 2; B1 and B2 make A the source.
    plan, left = land_by_signal(pair_loom())
    assert left == ()
    assert {"A:WH>1", "A:BU>2", "A:s1>3", "A:RD>4", "A:GN>5", "A:s2>6"} <= landed(plan)
    assert {"B1:WH>2", "B1:BU>3", "B2:RD>2", "B2:GN>3"} <= landed(plan)


def test_what_is_landed_decides_and_is_not_moved():
    start = land(cue_lead(), end="A", conductor="GN", contact="T")
    plan, left = land_by_signal(start)
    assert {"A:GN>T", "L:GN>T"} <= landed(plan)
    assert left == ()
    assert ways(plan)["GN"] == "trunk leg-L"


def test_a_wrongly_landed_core_stays_and_takes_the_contact():
    start = land(
        land(cue_lead(), end="R", conductor="GN", contact="T"),
        end="A",
        conductor="GN",
        contact="R3",
    )
    plan, left = land_by_signal(start)
    assert "R:GN>T" in landed(plan)
    assert "pin T at R is taken" in left


def test_one_end_alone_gets_the_same_as_with_the_whole():
    whole = landed(land_by_signal(cue_lead())[0])
    for end in ("A", "L", "R"):
        alone = landed(land_by_signal(cue_lead(), end=end)[0])
        assert alone == {it for it in whole if it.startswith(f"{end}:")}


def test_one_end_leads_the_cores_it_needs():
    start = land(cue_lead(), end="A", conductor="WH", contact="R2")
    plan, _ = land_by_signal(start, end="R")
    assert (ways(plan)["WH"], "R:WH>T" in landed(plan)) == ("trunk leg-R", True)


def test_capped_cores_are_left_alone():
    plan, left = land_by_signal(cap(cue_lead(), end="A", conductor="WH"))
    assert not any(":WH>" in it for it in landed(plan))
    assert "R\u2212 at R: no core is left for it" in left


def test_a_core_too_many_is_spare():
    plan = choose_cable(line_lead(), section="trunk", cable=QUAD)
    assert land_by_signal(plan)[1] == ("RD is spare", "GN is spare")


def test_the_right_channel_takes_the_red_core():
    """Left white, right red: CTA/CEDIA-863, as quoted in secondary pages."""
    plan = choose_connector(one_to_one(), end="A", connector=THREE, pinout=THREE_OUT)
    plan = choose_connector(
        plan,
        end="B",
        connector=THREE,
        pinout=pinout("in", "three", "load", T="L+", R="R+", S="L- R-"),
    )
    plan = choose_cable(plan, section="trunk", cable=cable("c", "RD BK WH"))
    plan, left = land_by_signal(plan)
    assert left == ()
    assert landed(plan) == {f"{end}:{it}" for end in "AB" for it in ("WH>T", "RD>R", "BK>S")}


def stereo_to_two(cores: str, *, takes: int, shields: tuple[Shield, ...] = ()):
    plug = connector("plug", "T R S", takes=takes)
    plan = one_to_two(policy="both-ends" if shields else None)
    plan = choose_connector(plan, end="A", connector=plug, pinout=THREE_OUT.evolve(fits=("plug",)))
    for end in ("L", "R"):
        plan = choose_connector(plan, end=end, connector=CUP, pinout=CUP_IN)
    return choose_cable(plan, section="trunk", cable=cable("c", cores, shields=shields))


def test_a_joined_return_takes_one_core_for_each_leg_where_it_has_room():
    plan, left = land_by_signal(stereo_to_two("WH BU RD GN", takes=2))
    assert left == ()
    assert {"A:BU>S", "A:GN>S", "L:BU>S", "R:GN>S"} <= landed(plan)


def test_a_joined_return_without_room_is_said():
    plan, left = land_by_signal(stereo_to_two("WH BU RD GN", takes=1))
    assert "A:BU>S" in landed(plan)
    assert left == ("pin S at A is taken", "GN is spare")


def test_shields_of_single_cores_are_the_returns_when_they_land_at_both_ends():
    around = (
        Shield(id="sw", kind="braid", around=("WH",), tail_mm=0.6),
        Shield(id="sr", kind="braid", around=("RD",), tail_mm=0.6),
    )
    plan, left = land_by_signal(stereo_to_two("WH RD", takes=2, shields=around))
    assert left == ()
    assert landed(plan) == {
        *("A:WH>T", "A:RD>R", "A:sw>S", "A:sr>S"),
        *("L:WH>T", "L:sw>S", "R:RD>T", "R:sr>S"),
    }


def test_a_signal_that_no_other_end_carries_is_said():
    odd = pinout("odd", "five", "driven-balanced", T="L+", R1="L-", R2="R+", R3="mic+", S="shield")
    plan = choose_pinout(cue_lead(), end="A", pinout=odd)
    left = land_by_signal(plan)[1]
    assert "mic+ at A: no other end carries it" in left
    assert "R\u2212 at R: no other end carries it" in left


def test_two_contacts_with_one_signal_are_left_and_said():
    double = connector("double", "1 2 3 4")
    pins = pinout("double-pins", "double", "load", _1="+", _2="-", _3="+", _4="-")
    plan = choose_connector(cue_lead(), end="L", connector=double, pinout=pins)
    plan, left = land_by_signal(plan)
    assert "L+ at L: pin 1 and pin 3 carry it, choose one" in left
    assert not any(it.startswith("L:") for it in landed(plan))
    assert "R:RD>T" in landed(plan) or "R:WH>T" in landed(plan)


def test_ends_without_pinout_and_sections_without_cable_are_said():
    plan = choose_connector(one_to_one(), end="A", connector=FIVE)
    assert land_by_signal(plan) == (
        plan,
        ("A has no pinout yet", "B has no connector yet", "trunk has no cable yet"),
    )


def test_a_shield_without_policy_is_left_and_said():
    plan, left = land_by_signal(set_shield_policy(cue_lead(), section="trunk", policy=None))
    assert (left, "A:SH>S" in landed(plan)) == (("SH: no shield policy is chosen",), False)


def test_an_isolated_shield_lands_nowhere():
    plan, left = land_by_signal(set_shield_policy(cue_lead(), section="trunk", policy="isolated"))
    assert (left, any("SH" in it for it in landed(plan))) == ((), False)


def test_a_shield_has_no_choice_of_two_returns():
    four = connector("four", "1 2 3 4", takes=2)
    out = pinout("pack", "four", "single-ended", _1="mic-", _2="mic+", _3="L-", _4="L+")
    into = pinout("set", "four", "load", _1="L+", _2="L-", _3="mic+", _4="mic-")
    plan = choose_connector(one_to_one(), end="A", connector=four, pinout=out)
    plan = choose_connector(plan, end="B", connector=four, pinout=into)
    plan, left = land_by_signal(choose_cable(plan, section="trunk", cable=QUAD))
    assert left == ("SH at A: pin 1 or pin 3, choose one",)
    assert len(plan.landings) == 8


def test_a_shield_does_not_join_returns_of_two_channels():
    one = connector("one", "1 2")
    left = pinout("left", "one", "single-ended", _1="L+", _2="L-")
    right = pinout("right", "one", "load", _1="R+", _2="R-")
    plan = choose_connector(one_to_one(policy="both-ends"), end="A", connector=one, pinout=left)
    plan = choose_connector(plan, end="B", connector=one, pinout=right)
    plan, said = land_by_signal(choose_cable(plan, section="trunk", cable=QUAD))
    assert landed(plan) == {"A:SH>2"}
    assert "SH at B: pin 2 is the return of another channel" in said


def test_spliced_legs_carry_one_common_return():
    plan = one_to_two(policy=None)
    plan = choose_connector(plan, end="A", connector=THREE, pinout=THREE_OUT)
    for end in ("L", "R"):
        plan = choose_connector(plan, end=end, connector=CUP, pinout=CUP_IN)
    plan = choose_cable(plan, section="trunk", cable=cable("t", "WH RD BK"))
    plan = choose_cable(plan, section="leg-L", cable=cable("l", "WH BK"))
    plan = choose_cable(plan, section="leg-R", cable=cable("r", "RD BK"))
    plan, left = land_by_signal(plan)
    assert left == ()
    assert landed(plan) == {
        *("A:WH>T", "A:RD>R", "A:BK>S"),
        *("L:WH>T", "L:BK>S", "R:RD>T", "R:BK>S"),
    }


def test_driven_minus_legs_are_not_joined():
    plan = choose_connector(one_to_one(), end="A", connector=FIVE, pinout=FIVE_OUT)
    into = pinout("in", "three", "load", T="L+", R="R+", S="L- R-")
    plan = choose_connector(plan, end="B", connector=THREE, pinout=into)
    plan, left = land_by_signal(choose_cable(plan, section="trunk", cable=QUAD))
    assert {it for it in landed(plan) if it[0] == "B"} == {"B:WH>T", "B:RD>R"}
    assert "pin S at B would join driven outputs, keep off" in left


def test_returns_are_joined_on_the_passive_side():
    plan = choose_connector(
        one_to_one(), end="A", connector=FIVE, pinout=FIVE_OUT.evolve(drive="load")
    )
    plan = choose_connector(plan, end="B", connector=THREE, pinout=THREE_OUT)
    plan, _ = land_by_signal(choose_cable(plan, section="trunk", cable=QUAD))
    assert {"A:BU>R1", "A:GN>R3", "B:BU>S", "B:GN>S"} <= landed(plan)


def test_a_channel_that_only_one_end_names_is_left():
    plan, left = land_by_signal(set_channel(cue_lead(), end="R", channel="5"))
    assert "5+ at R: no other end carries it" in left
    assert integrity_problems(plan) == ()


def test_pairs_of_the_cable_beat_its_order():
    plan = choose_connector(cue_lead(), end="A", connector=FIVE, pinout=FIVE_OUT)
    crossed = TWO_PAIRS.evolve(
        cores=tuple(TWO_PAIRS.cores[at] for at in (0, 2, 1, 3)), shields=(BRAID,)
    )
    plan, _ = land_by_signal(choose_cable(plan, section="trunk", cable=crossed))
    assert {"L:WH>T", "L:BU>S", "R:RD>T", "R:GN>S"} <= landed(plan)
