"""Single faults told in the builder's words, with where to look (invented units)."""

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.proving.diagnosing import diagnose
from tests.building import BALANCED, BALANCED_IN, PHONES, PHONES_IN, fitting, lead, plug
from tests.proving.diagnosing.leads import BALANCED_HEADPHONES, FIVE, JOINED_RETURNS, LINE
from tests.proving.diagnosing.units import bench, read_all

DEMO = data_dir("resources") / "demo"
CUE = bench(read_plan(DEMO / "cue-desk-headphone-lead.json"))
LOOM = bench(read_plan(DEMO / "recording-rack-loom.json"))


def told(its, unit):
    """Return every explanation of a unit read in full, in words."""
    return [it.words for it in diagnose(its.plan, its.wiring, read_all(unit)).explanations]


def exchanged(its, one, other):
    return its.sound.exchanged(its.slot(one), its.slot(other))


def mistaken(its, kind, end, step=0):
    """Return a unit with a named mistake at an end."""
    found = [it for it in its.mistakes if it.kind == kind and it.ends[0] == end]
    return its.sound.permuted(next(it for it in found if it.step == step).moves)


def test_exchanged_cores():
    its = bench(LINE.plan)
    found = diagnose(its.plan, its.wiring, read_all(exchanged(its, "B.SH", "B.RD")))
    (fault,) = found.best.faults
    assert fault.words == "cores on pin 1 and pin 2 exchanged at one end"
    assert fault.look == (
        "Look at the colours at A: shield SH belongs on pin 1, RD belongs on pin 2. "
        "Right there? Then they are exchanged at B."
    )
    assert (fault.end, fault.ends) == ("A", ("A", "B"))


def test_a_core_is_named_as_it_is_marked_at_its_end_and_elsewhere():
    """The trunk's red core goes on as the right leg's white one: `leg-R.WH` in the plan."""
    its = bench(read_plan(DEMO / "stereo-to-two-mono.json"))
    unit = its.sound.opened(its.slot("A.leg-R.WH"))
    (fault,) = diagnose(its.plan, its.wiring, read_all(unit)).best.faults
    assert fault.words == "RD (WH of leg R) is open: ring at A or tip at R"

    unit = exchanged(its, "R.leg-R.WH", "R.SH")
    (fault,) = diagnose(its.plan, its.wiring, read_all(unit)).best.faults
    assert "WH (RD of trunk) belongs on tip" in fault.look
    assert "leg-R" not in fault.look


def test_a_reversed_channel():
    words = "right channel reversed: cores on ring 2 and ring 3 exchanged at one end"
    assert told(CUE, exchanged(CUE, "A.RD", "A.GN")) == [words]
    words = "channel 3 reversed: cores on pin 21 and pin 9 exchanged at one end"
    assert told(LOOM, exchanged(LOOM, "B3.3a", "B3.3b")) == [words]


def test_left_and_right_exchanged():
    its = bench(JOINED_RETURNS.plan)
    words = "left and right exchanged: cores on tip and ring exchanged at one end"
    assert told(its, exchanged(its, "A.WH", "A.RD")) == [words]


def test_plus_legs_of_two_channels_exchanged_are_not_whole_channels():
    assert told(CUE, exchanged(CUE, "A.WH", "A.RD")) == ["cores on tip and ring 2 exchanged at A"]


def test_counted_from_the_mating_side():
    assert "counted from the mating side at A" in told(CUE, mistaken(CUE, "mirrored", "A"))


def test_the_mating_side_of_a_d_connector():
    """The numbering of a D seen from the other side runs the other way in each row (geometry)."""
    mistake = next(it for it in LOOM.mistakes if it.kind == "mirrored" and it.ends == ("A",))
    names = LOOM.sound.board.contacts
    steps = {names[one][1]: names[other][1] for one, other in mistake.moves.items()}
    wanted = {str(it): str(14 - it) for it in range(1, 14)}
    assert steps == wanted | {str(it): str(39 - it) for it in range(14, 26)}
    assert told(LOOM, LOOM.sound.permuted(mistake.moves)) == ["counted from the mating side at A"]


@pytest.mark.parametrize(("step", "words"), [(1, "one too far"), (-1, "one short")])
def test_shifted_by_one(step, words):
    unit = mistaken(LOOM, "shifted", "A", step)
    assert told(LOOM, unit) == [f"shifted at A: every core {words}"]


def test_all_channels_reversed_and_channels_exchanged():
    its = bench(FIVE.plan)
    assert "all channels reversed at B" in told(its, mistaken(its, "polarity", "B"))
    assert "left and right exchanged at A" in told(its, mistaken(its, "channels", "A"))


def test_two_legs_on_each_others_end():
    words = "ends B2 and B5 exchanged: each has what belongs on the other"
    mistake = next(it for it in LOOM.mistakes if it.ends == ("B2", "B5"))
    assert words in told(LOOM, LOOM.sound.permuted(mistake.moves))


def test_an_open_core_is_looked_for_at_both_joints():
    its = bench(LINE.plan)
    found = diagnose(its.plan, its.wiring, read_all(its.sound.opened(its.slot("B.BU"))))
    assert [it.words for it in found.explanations] == ["BU is open: pin 3 at A or pin 3 at B"]
    assert found.look.startswith("Tug the core and warm the joint on pin 3 at A, then on")


def test_a_shield_that_is_not_landed():
    its = bench(LINE.plan)
    words = "shield not landed: shield SH on pin 1 at A or pin 1 at B"
    assert told(its, its.sound.opened(its.slot("A.SH"))) == [words]


def test_a_bridge_is_told_at_either_end_the_nearer_metal_first():
    unit = CUE.sound.bridged(CUE.place("A.R2"), CUE.place("A.R3"))
    found = diagnose(CUE.plan, CUE.wiring, read_all(unit))
    assert {it.words for it in found.explanations} == {
        "bridge between ring 2 and ring 3 at A",
        "bridge between tip and S at R",
    }
    assert found.next_probe.words.startswith("Read ring 2 at A to ring 3 at A: take the resistance")


def test_where_no_reading_tells_it_says_what_to_look_at():
    found = diagnose(CUE.plan, CUE.wiring, read_all(mistaken(CUE, "mirrored", "A")))
    assert found.next_probe is None
    assert len(found.explanations) == 1
    its = bench(FIVE.plan)
    found = diagnose(its.plan, its.wiring, read_all(mistaken(its, "polarity", "A")))
    assert found.look.startswith("No reading tells these apart. Look at the colours at A")


def test_a_link_left_out():
    its = bench(
        lead(
            {"A": PHONES, "B": PHONES_IN},
            ["WH A.T B.T", "RD A.R B.R", "BU A.S B.S"],
            links=["B T R"],
        )
    )
    assert told(its, its.sound.unlinked(0)) == ["no link at B: tip and ring"]


def test_a_core_on_an_empty_contact():
    four = fitting(plug("four", "1 2 3 4"), "use-four", "1 L+,2 L-")
    its = bench(lead({"A": four, "B": four}, ["WH A.1 B.1", "RD A.2 B.2"]))
    unit = its.sound.moved(its.slot("A.RD"), its.place("A.4"))
    assert told(its, unit) == ["RD on pin 4 instead of pin 2 at A"]


def test_cores_that_changed_round():
    its = bench(
        lead({"A": BALANCED, "B": BALANCED_IN}, ["WH A.T B.T", "BU A.R1 B.R1", "RD A.R2 B.R2"])
    )
    unit = exchanged(its, "A.WH", "A.BU").exchanged(its.slot("A.BU"), its.slot("A.RD"))
    assert any("changed round at one end" in it for it in told(its, unit))


def test_an_exchange_marks_the_contacts_of_both_ends():
    its = bench(BALANCED_HEADPHONES.plan)
    found = diagnose(its.plan, its.wiring, read_all(exchanged(its, "A.RD", "A.GN")))
    (fault,) = found.best.faults
    assert fault.contacts == (("A", "R2"), ("A", "R3"), ("R", "T"), ("R", "S"))
    assert (("A", "R2"), ("A", "R3")) in fault.moves
    assert (("R", "S"), ("R", "T")) in fault.moves


def test_the_sleeve_contact_is_called_s():
    """The word sleeve is for the insulating one."""
    its = bench(JOINED_RETURNS.plan)
    (words, *_) = told(its, its.sound.bridged(its.place("A.R"), its.place("A.S")))
    assert "S at" in words
    assert "sleeve" not in words
