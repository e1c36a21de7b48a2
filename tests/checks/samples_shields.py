"""Samples for the rules about shields. All hardware and records are invented."""

from tests.building import BALANCED, CUP, LINE_IN, LINE_OUT, PHONES, PHONO_IN, PHONO_OUT, lead
from tests.checks.samples import bad, good

LINE = {"A": LINE_OUT, "B": LINE_IN}
PAIR = ("RD A.2 B.2", "WH A.3 B.3")


@good("shield-on-signal")
@good("shield-floating")
@good("shield-both-ends")
@good("shield-one-end")
@good("shield-missing")
def line_with_both_ends_landed():
    """A balanced line whose shield lands on pin 1 at both ends, as its policy says."""
    return lead(LINE, (*PAIR, "SH A.1 B.1"), policy="both-ends")


@good("shield-on-signal")
def shield_is_the_return():
    """A coaxial lead between phono plugs: the shield is the return, and lands on both shells."""
    return lead({"A": PHONO_OUT, "B": PHONO_IN}, ("RD A.P B.P", "SH A.S B.S"), policy="both-ends")


@good("shield-both-ends")
def shield_is_the_return_whatever_the_policy():
    """The policy says the source end only; the shield is the return, which has to arrive."""
    return lead({"A": PHONO_OUT, "B": PHONO_IN}, ("RD A.P B.P", "SH A.S B.S"), policy="source-end")


@good("shield-both-ends")
@good("shield-one-end")
@good("shield-floating")
def shield_at_the_source():
    """The shield lands at the source end only, as its policy says."""
    return lead(LINE, (*PAIR, "SH A.1 B."), policy="source-end")


@good("shield-floating")
def shield_isolated():
    """The policy says that the shield is isolated, and it lands nowhere."""
    return lead(LINE, (*PAIR, "SH"), policy="isolated")


@bad("shield-on-signal")
def shield_on_pin_3():
    """The shield lands on pin 3 of the input, which carries the minus leg."""
    return lead(LINE, (*PAIR, "SH A.1 B.3"), policy="both-ends")


@bad("shield-on-signal")
def shield_on_a_driven_minus():
    """The shield lands on a minus leg of a driven-balanced source, which is no return."""
    wires = ("RD A.T L.T", "GN A.R1 L.S", "BU A.R2 R.T", "WH A.R3 R.S", "SH A.R1")
    return lead({"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")}, wires)


@bad("shield-floating")
def shield_forgotten():
    """The shield is cut back at both ends, and no policy says so."""
    return lead(LINE, (*PAIR, "SH"), policy="both-ends")


@bad("shield-both-ends")
def shield_at_both_against_policy():
    """The policy says the source end only, and the shield lands at both."""
    return lead(LINE, (*PAIR, "SH A.1 B.1"), policy="source-end")


@bad("shield-both-ends")
def isolated_shield_landed():
    """The policy says that the shield is isolated, and it lands at both ends."""
    return lead(LINE, (*PAIR, "SH A.1 B.1"), policy="isolated")


@bad("shield-one-end")
def shield_at_one_against_policy():
    """The policy says both ends, and the shield lands at the source only."""
    return lead(LINE, (*PAIR, "SH A.1"), policy="both-ends")


@bad("shield-one-end")
def shield_at_the_wrong_end():
    """The policy says the load end only, and the shield lands at the source only."""
    return lead(LINE, (*PAIR, "SH A.1"), policy="load-end")


@bad("shield-missing")
def policy_without_a_shield():
    """The plan wants a shield at the source end, and the cable has none."""
    wires = ("RD A.T L.T", "GN A.S L.S", "BU A.R R.T", "WH A.S R.S")
    return lead({"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")}, wires, policy="source-end")
