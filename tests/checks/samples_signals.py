"""Samples for the rules about signals, channels and legs. All hardware and records are invented."""

from planner.model.plan import Plan
from tests.building import (
    BALANCED,
    BALANCED_IN,
    CUP,
    HEADSET,
    LINE_IN,
    LINE_OUT,
    PHONES,
    PHONES_IN,
    PHONO_OUT,
    fitting,
    lead,
)
from tests.checks.samples import bad, good

CUPS = {"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")}
PHONE_CUPS = {"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")}
PHONE_LINE = {"A": PHONES, "B": PHONES_IN}
LINE = {"A": LINE_OUT, "B": LINE_IN}
LEFT = ("RD A.T L.T", "GN A.R1 L.S")
RIGHT = ("BU A.R2 R.T", "WH A.R3 R.S")


@good("open")
@good("one-channel-reversed")
@good("crossed-channels")
@good("all-channels-reversed")
@good("joined-driven-returns")
@good("loose-conductor")
def four_wires_to_two_cups():
    """A balanced plug to two cups, every leg on a core of its own."""
    return lead(CUPS, (*LEFT, *RIGHT))


@good("bridge")
def four_wires_on_a_common_sleeve():
    """The sleeve's record carries both minus legs: four cup wires join on the passive side."""
    return lead(PHONE_CUPS, ("RD A.T L.T", "GN A.S L.S", "BU A.R R.T", "WH A.S R.S"))


@good("bridge")
def linked_pins():
    """An unbalanced source to a balanced input: a link ties pin 3 to pin 1 at the plug."""
    return lead({"A": PHONO_OUT, "B": LINE_IN}, ("RD A.P B.2", "GN A.S B.3"), links=("B 1 3",))


@good("bridge")
def minus_and_shield_on_a_return():
    """Minus and shield of a balanced input meet on a phono plug's shell, which is the return."""
    wires = ("RD A.P B.2", "GN A.S B.3", "SH A.S B.1")
    return lead({"A": PHONO_OUT, "B": LINE_IN}, wires, policy="both-ends")


@bad("open")
def core_on_an_idle_contact():
    """The right plus core is landed on the ring at A, but on an idle contact at B."""
    idle = fitting(HEADSET.connector, "odd-inlet", "T L+, R1 R+, S L- R-")
    return lead({"A": PHONES, "B": idle}, ("RD A.T B.T", "GN A.R B.R2", "WH A.S B.S"))


@bad("open")
def core_missing():
    """The cable has two cores for three contacts: nothing reaches the right ear."""
    return lead(PHONE_LINE, ("RD A.T B.T", "WH A.S B.S"))


@bad("bridge")
def stray_core():
    """A third core joins the left and the right contact."""
    return lead(PHONE_LINE, ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S", "BU A.T B.R"))


@bad("bridge")
def two_minus_legs_exchanged():
    """The minus legs of left and right are exchanged: no channel is whole, so none is crossed."""
    return lead(
        {"A": BALANCED_IN, "B": BALANCED},
        ("RD A.T B.T", "GN A.R1 B.R3", "BU A.R2 B.R2", "WH A.R3 B.R1"),
    )


@bad("bridge")
def link_of_signals_elsewhere():
    """A link allows pins 1 and 3 to join, and does not allow pin 2 to join them."""
    wires = ("RD A.P B.2", "GN A.S B.3", "BU A.S B.2")
    return lead({"A": PHONO_OUT, "B": LINE_IN}, wires, links=("B 1 3",))


@bad("crossed-channels")
def cups_exchanged():
    """Left and right cores are exchanged at the source plug."""
    return lead(CUPS, ("RD A.R2 L.T", "GN A.R3 L.S", "BU A.T R.T", "WH A.R1 R.S"))


@bad("crossed-channels")
def tip_and_ring_exchanged():
    """Tip and ring are exchanged between two three-pole plugs; the common sleeve is right."""
    return lead(PHONE_LINE, ("RD A.T B.R", "GN A.R B.T", "WH A.S B.S"))


@bad("one-channel-reversed")
def right_cup_reversed():
    """The two cores of the right cup are exchanged."""
    return lead(CUPS, (*LEFT, "BU A.R2 R.S", "WH A.R3 R.T"))


@bad("one-channel-reversed")
def right_cup_reversed_on_a_common_sleeve():
    """As above with a three-pole plug, whose sleeve carries both minus legs."""
    return lead(PHONE_CUPS, ("RD A.T L.T", "GN A.S L.S", "BU A.R R.S", "WH A.S R.T"))


@bad("all-channels-reversed")
def both_cups_reversed():
    """The cores are exchanged in both cups alike."""
    return lead(CUPS, ("RD A.T L.S", "GN A.R1 L.T", "BU A.R2 R.S", "WH A.R3 R.T"))


@bad("all-channels-reversed")
def line_reversed():
    """A balanced line of one channel with pins 2 and 3 exchanged."""
    return lead(LINE, ("BK A.1 B.1", "RD A.2 B.3", "WH A.3 B.2"))


@bad("joined-driven-returns")
def balanced_output_to_common_sleeve():
    """A driven-balanced plug to a three-pole inlet: both minus legs meet on its sleeve."""
    return lead(
        {"A": BALANCED, "B": PHONES_IN}, ("RD A.T B.T", "GN A.R1 B.S", "BU A.R2 B.R", "WH A.R3 B.S")
    )


@bad("joined-driven-returns")
def driven_minus_grounded():
    """One minus leg of a driven-balanced source is landed on the chassis contact of the inlet."""
    return lead(
        {"A": BALANCED, "B": BALANCED_IN},
        ("RD A.T B.T", "GN A.R1 B.S", "BU A.R2 B.R2", "WH A.R3 B.R3"),
    )


@bad("joined-driven-returns")
def driven_minus_on_a_common_ground():
    """A driven-balanced source feeds two single-ended inputs, whose shells are ground."""
    single = fitting(PHONO_OUT.connector, "unit-input", "P +, S -", drive="single-ended")
    ends = {"A": BALANCED, "L": (single, "L"), "R": (single, "R")}
    plan = lead(ends, ("RD A.T L.P", "GN A.R1 L.S", "BU A.R2 R.P", "WH A.R3 R.S"))
    loads = tuple(end.evolve(role="load") for end in plan.ends[1:])
    return plan.evolve(ends=(plan.ends[0], *loads))


@good("joined-driven-returns")
def passive_side_join():
    """The harmless direction: a four-wire headphone socket to a three-pole single-ended plug."""
    return lead(
        {"A": PHONES, "B": BALANCED_IN},
        ("RD A.T B.T", "GN A.S B.R1", "BU A.R B.R2", "WH A.S B.R3"),
    )


@bad("loose-conductor")
def spare_core_left_loose():
    """A fourth core of the cable lands nowhere at either end."""
    return lead(PHONE_LINE, ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S", "BU"))


@good("loose-conductor")
def spare_core_capped():
    """The same core, marked as spare and capped at both ends."""
    return lead(PHONE_LINE, ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S", "BU A.! B.!"))


@bad("unused-contact")
def microphone_contact():
    """A headset plug on a lead whose far end has no microphone."""
    return lead(
        {
            "A": fitting(
                HEADSET.connector, "headset", "T L+, R1 R+, R2 L- R-, S mic+", drive="single-ended"
            ),
            "B": PHONES_IN,
        },
        ("RD A.T B.T", "GN A.R1 B.R", "WH A.R2 B.S"),
    )


@good("unused-contact")
def every_contact_used():
    """Every contact that carries a signal has a core."""
    return lead(PHONE_LINE, ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S"))


@bad("crowded-contact")
def three_cores_in_a_cup():
    """Three cores on a sleeve that takes two."""
    wires = ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S", "BU A.S B.S", "BK A.S B.!")
    return lead(PHONE_LINE, wires)


@good("crowded-contact")
def two_cores_in_a_cup():
    """Two cores on a sleeve that takes two."""
    return lead(PHONE_LINE, ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S", "BU A.S B.S"))


def unwired(**changes):
    """Return a lead with nothing landed and no core drawn in, and with a change at end B."""
    plan = lead(PHONE_LINE, ("RD",)).evolve(conductors=())
    return plan.evolve(ends=(plan.ends[0], plan.ends[1].evolve(**changes)))


@bad("open")
def no_connector_yet():
    """End B has no connector yet."""
    return unwired(connector="", pinout="")


@bad("open")
def no_pinout_yet():
    """End B has no pinout yet."""
    return unwired(pinout="")


@bad("open")
def no_cable_yet():
    """The cable is not chosen yet."""
    plan = unwired()
    return plan.evolve(sections=(plan.sections[0].evolve(cable=""),))


@bad("open")
def channel_not_bound():
    """The cup at R was not told which channel it carries."""
    ends = {"A": PHONES, "L": (CUP, "L"), "R": CUP}
    return lead(ends, ("RD A.T L.T", "GN A.S L.S", "BU A.R R.T", "WH A.S R.S"))


@bad("open")
def no_ends_yet():
    """A plan that holds nothing is not clear."""
    return Plan()
