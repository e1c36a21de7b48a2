"""Samples for the rules about definitions and pinout records. All of them are invented."""

from planner.model.source import Retired, Source
from tests.building import PHONES, PHONES_IN, Fitting, fitting, lead, plug, record
from tests.checks.samples import bad, good

WIRES = ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S")


def heard_of(trust="hearsay", kind="hearsay"):
    """Return a three-pole inlet known from such a source."""
    signals = "T L+, R R+, S L- R-"
    source = Source(kind=kind, reference="told at the bench")
    return fitting(PHONES_IN.connector, "odd-inlet", signals, source=source, trust=trust)


@bad("pinout-unconfirmed")
def hearsay():
    """The record at B is hearsay."""
    return lead({"A": PHONES, "B": heard_of()}, WIRES)


@good("pinout-unconfirmed")
def confirmed_on_the_part():
    """The same record after it was measured on the part."""
    return lead({"A": PHONES, "B": heard_of("confirmed", "letter")}, WIRES)


@good("pinout-conflict")
def the_other_was_retired():
    """The second record disagrees, but it was retired."""
    other = record("other-inlet", "three-pole-jack", "T R+, R L+, S L- R-", use="phones-inlet")
    retired = other.evolve(retired=Retired(reason="the part says otherwise"))
    return lead({"A": PHONES, "B": PHONES_IN}, WIRES), (PHONES_IN.pinout, retired)


@bad("pinout-conflict")
def two_records_disagree():
    """The library holds a second record for the same use, with tip and ring exchanged."""
    other = record("other-inlet", "three-pole-jack", "T R+, R L+, S L- R-", use="phones-inlet")
    return lead({"A": PHONES, "B": PHONES_IN}, WIRES), (PHONES_IN.pinout, other)


@good("pinout-conflict")
def two_records_agree():
    """The library holds a second record for the same use that says the same."""
    other = record("other-inlet", "three-pole-jack", "T L+, R R+, S R- L-", use="phones-inlet")
    return lead({"A": PHONES, "B": PHONES_IN}, WIRES), (PHONES_IN.pinout, other)


@good("pinout-conflict")
def another_use():
    """A record for another use may differ."""
    other = record("other-outlet", "three-pole-jack", "T R+, R L+, S L- R-", use="insert point")
    return lead({"A": PHONES, "B": PHONES_IN}, WIRES), (other,)


def sided(side):
    """Return a lead whose plug B was drawn from `side`."""
    jack = plug("bin-jack", "T R S", drawn_from=side)
    inlet = record("bin-inlet", "bin-jack", "T L+, R R+, S L- R-")
    return lead({"A": PHONES, "B": Fitting(jack, inlet)}, WIRES)


@bad("side-unstated")
def no_side():
    """The definition of plug B does not say from which side it was drawn."""
    return sided("unstated")


@good("side-unstated")
def mating_side():
    """The definition says that it was drawn from the mating side."""
    return sided("mating")
