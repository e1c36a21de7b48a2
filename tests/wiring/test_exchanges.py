"""One cause, one result: crossings, reversals, what is left as bridges. Cases worked by hand."""

from planner.wiring.exchanges import Exchanges, mutual_groups
from planner.wiring.graph import Wiring
from planner.wiring.joins import Joins
from tests.building import (
    BALANCED,
    BALANCED_IN,
    CUP,
    JACK5,
    LINE_IN,
    LINE_OUT,
    PHONES,
    PHONES_IN,
    fitting,
    lead,
)

TWO = {"A": BALANCED, "B": BALANCED_IN}
THREE = {"A": BALANCED, "B": BALANCED_IN, "C": BALANCED_IN}


def found(ends, *wires, **more):
    """Return (crossed channels, reversed channels by end, all reversed, number of bridges)."""
    exchanges = Exchanges(Joins(Wiring(lead(ends, wires, **more))))
    crossed = [sorted({each.channel for each in group}) for group in exchanges.crossed]
    turned = [f"{each.end} {each.channel}" for each in exchanges.reversed]
    return crossed, turned, exchanges.all_reversed, len(exchanges.bridges)


RIGHT_WAY = ("RD A.T B.T", "GN A.R1 B.R1", "BU A.R2 B.R2", "WH A.R3 B.R3")


def test_right():
    assert found(TWO, *RIGHT_WAY) == ([], [], False, 0)


def test_nothing_landed():
    assert found(TWO, "RD") == ([], [], False, 0)


def test_channels_crossed():
    wires = ("RD A.T B.R2", "GN A.R1 B.R3", "BU A.R2 B.T", "WH A.R3 B.R1")
    assert found(TWO, *wires) == ([["L", "R"]], [], False, 0)


def test_channels_crossed_and_all_reversed():
    wires = ("RD A.T B.R3", "GN A.R1 B.R2", "BU A.R2 B.R1", "WH A.R3 B.T")
    assert found(TWO, *wires) == ([["L", "R"]], ["B L", "B R"], True, 0)


def test_crossing_seen_by_one_leg_each_way():
    assert found(TWO, "RD A.T B.R2", "BU A.R2 B.T") == ([["L", "R"]], [], False, 0)


def test_crossing_seen_one_way_only_is_a_bridge():
    assert found(TWO, "RD A.T B.R2", "GN A.R1 B.R1") == ([], [], False, 1)


def test_three_channels_in_a_ring():
    three = fitting(JACK5, "three-feeds", "T 1+, R1 2+, R2 3+, S 1- 2- 3-", drive="single-ended")
    wires = ("RD A.T B.R1", "GN A.R1 B.R2", "BU A.R2 B.T", "WH A.S B.S")
    assert found({"A": three, "B": three}, *wires) == ([["1", "2", "3"]], [], False, 0)


def test_one_channel_reversed():
    wires = (*RIGHT_WAY[:2], "BU A.R2 B.R3", "WH A.R3 B.R2")
    assert found(TWO, *wires) == ([], ["B R"], False, 0)


def test_half_a_reversal_with_the_other_leg_open():
    assert found(TWO, *RIGHT_WAY[:2], "BU A.R2 B.R3", "WH") == ([], ["B R"], False, 0)


def test_reversed_before_the_other_channel_is_landed():
    assert found(TWO, "BU A.R2 B.R3", "WH A.R3 B.R2") == ([], ["B R"], False, 0)


def test_all_channels_reversed():
    wires = ("RD A.T B.R1", "GN A.R1 B.T", "BU A.R2 B.R3", "WH A.R3 B.R2")
    assert found(TWO, *wires) == ([], ["B L", "B R"], True, 0)


def test_all_reversed_but_one_leg_still_open():
    wires = ("RD A.T B.R1", "GN A.R1 B.T", "BU A.R2 B.R3", "WH")
    assert found(TWO, *wires) == ([], ["B L", "B R"], False, 0)


def test_all_reversed_at_one_of_two_far_ends():
    wires = (
        "RD A.T B.R1 C.T",
        "GN A.R1 B.T C.R1",
        "BU A.R2 B.R3 C.R2",
        "WH A.R3 B.R2 C.R3",
    )
    assert found(THREE, *wires) == ([], ["B L", "B R"], True, 0)


def test_left_reversed_at_one_end_and_right_at_another():
    wires = (
        "RD A.T B.R1 C.T",
        "GN A.R1 B.T C.R1",
        "BU A.R2 B.R2 C.R3",
        "WH A.R3 B.R3 C.R2",
    )
    assert found(THREE, *wires) == ([], ["B L", "C R"], False, 0)


def test_a_reversal_does_not_hide_a_wrong_landing_at_another_end():
    wires = (
        "RD A.T B.R1 C.R2",
        "GN A.R1 B.T C.R1",
        "BU A.R2 B.R2",
        "WH A.R3 B.R3 C.R3",
    )
    assert found(THREE, *wires) == ([], ["B L"], False, 1)


def test_one_line_reversed_whole_and_half():
    line = {"A": LINE_OUT, "B": LINE_IN}
    assert found(line, "RD A.2 B.3", "WH A.3 B.2") == ([], [" ".join(("B", ""))], True, 0)
    assert found(line, "RD A.2 B.3") == ([], [], False, 1)


def test_two_legs_of_two_channels_exchanged_are_one_bridge():
    wires = ("RD A.T B.T", "GN A.R1 B.R3", "BU A.R2 B.R2", "WH A.R3 B.R1")
    assert found(TWO, *wires) == ([], [], False, 1)


def test_two_strays_are_two_bridges():
    wires = (*RIGHT_WAY, "BK A.T B.R1", "YE A.R2 B.R3")
    assert found(TWO, *wires) == ([], [], False, 2)


def test_tip_and_common_sleeve_exchanged_is_a_reversal():
    wires = ("RD A.T B.S", "GN A.R B.R", "WH A.S B.T")
    assert found({"A": PHONES, "B": PHONES_IN}, *wires) == ([], ["B L"], False, 0)


def test_a_signal_on_a_ground_contact_is_a_bridge():
    wires = ("RD A.2 B.1", "WH A.3 B.3")
    assert found({"A": LINE_OUT, "B": LINE_IN}, *wires) == ([], [], False, 1)


def test_cups_crossed_and_one_reversed():
    ends = {"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")}
    wires = ("RD A.R2 L.T", "GN A.R3 L.S", "BU A.T R.S", "WH A.R1 R.T")
    assert found(ends, *wires) == ([["L", "R"]], ["R R"], False, 0)


def test_the_hub_is_the_end_with_most_signals():
    plan = lead({"R": (CUP, "R"), "L": (CUP, "L"), "A": PHONES}, ())
    assert Exchanges(Joins(Wiring(plan))).hub == "A"


def test_mutual_groups():
    edges = [("a", "b"), ("b", "c"), ("c", "a"), ("c", "d"), ("e", "e")]
    assert mutual_groups(edges) == (frozenset("abc"),)
