"""Samples for the rules on resistance: balance of channels, crosstalk. All figures are invented."""

from tests.building import BALANCED, BALANCED_IN, CUP, PHONES, PHONES_IN, lead
from tests.checks.samples import bad, good

SPLIT_ENDS = {"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")}
SPLIT_WIRES = ("RD A.T L.T", "GN A.R1 L.S", "BU A.R2 R.T", "WH A.R3 R.S")
JOINED = ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S")
APART = {"A": BALANCED, "B": BALANCED_IN}
APART_WIRES = ("RD A.T B.T", "GN A.R1 B.R1", "BU A.R2 B.R2", "WH A.R3 B.R3")


def with_length(plan, section, length_mm):
    """Return the plan with one section made as long as that."""
    sections = tuple(
        it.evolve(length_mm=length_mm) if it.id == section else it for it in plan.sections
    )
    return plan.evolve(sections=sections)


@bad("channel-unbalanced")
def one_long_leg():
    """The right leg is twice as long as the left."""
    return with_length(lead(SPLIT_ENDS, SPLIT_WIRES), "leg-R", 600)


@good("channel-unbalanced")
def equal_legs():
    """Both legs are equally long."""
    return lead(SPLIT_ENDS, SPLIT_WIRES)


@bad("return-crosstalk")
def long_thin_return():
    """Three metres of thin cable, in which both channels come back through one core."""
    return with_length(lead({"A": PHONES, "B": PHONES_IN}, JOINED), "trunk", 3000)


@good("return-crosstalk")
def return_of_its_own():
    """The same length, with a return for each channel."""
    return with_length(lead(APART, APART_WIRES), "trunk", 3000)
