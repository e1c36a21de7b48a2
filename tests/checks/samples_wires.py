"""Samples for the rules of what goes into what. All figures are invented."""

from planner.data import data_dir
from planner.files.plans import read_plan
from tests.building import CUP, PHONES, PHONES_IN, lead
from tests.checks.samples import bad, good
from tests.checks.samples_fit import ENDS, WIRES, line, with_cable, with_plug
from tests.checks.samples_sleeves import sleeved, slender_cups


def with_strands(plan, **strands_mm):
    """Return the plan with solid cores of these diameters, all insulated to 1.2 mm."""
    cores = tuple(
        core.evolve(strands=1, strand_mm=strands_mm[core.id], insulation_mm=1.2)
        for core in plan.definitions.cables[0].cores
    )
    return with_cable(plan, cores=cores)


def two_returns(bore_mm):
    """Return a lead with two returns in the sleeve's cup at A, its cups of this bore."""
    wires = ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S", "BU A.S B.S")
    plan = lead({"A": PHONES, "B": PHONES_IN}, wires)
    first = plan.definitions.connectors[0]
    contacts = tuple(
        each.evolve(terminal=each.terminal.evolve(bore_mm=bore_mm)) for each in first.contacts
    )
    return with_strands(with_plug(plan, contacts=contacts), RD=0.5, GN=0.5, WH=0.5, BU=0.5)


@bad("strands-too-thick")
def two_wires_in_one_cup():
    """Two wires of 0.5 mm do not go into one cup of 0.99 mm, though each does."""
    return two_returns(0.99)


@good("strands-too-thick")
def two_wires_side_by_side():
    """The same two in a cup of 1 mm: they just do."""
    return two_returns(1.0)


@good("bundle-too-thick")
def three_cores_touching():
    """Three cores of 0.8 mm in 1.73 mm: touching each other they need 1.724 mm."""
    plan = line()
    barrel = plan.definitions.connectors[0].barrel
    return with_plug(plan, barrel=barrel.evolve(bore_mm=1.73))


@bad("bundle-too-thick")
def three_cores_a_hair_too_thick():
    """The same three in 1.72 mm: no arrangement of three is smaller than 1.724 mm."""
    plan = line()
    barrel = plan.definitions.connectors[0].barrel
    return with_plug(plan, barrel=barrel.evolve(bore_mm=1.72))


@bad("sleeve-too-tight")
def thick_cup_before_a_thin_core():
    """A cup 3.3 mm thick before a core of 0.8 mm: no sleeve passes the one and grips the other."""
    return sleeved(lead(ENDS, WIRES), "A", "RD")


@good("sleeve-too-tight")
def slender_cup_before_the_core():
    """A cup 1.2 mm thick before the same core: a size of heat-shrink does both."""
    return sleeved(slender_cups(), "A", "RD")


def coaxial_legs(insulation_mm):
    """Return a lead whose trunk of a pair is joined, in its split, to legs with so thick cores."""
    plan = read_plan(data_dir("resources") / "demo" / "stereo-to-two-mono.json")
    cables = tuple(
        cable.evolve(cores=tuple(core.evolve(insulation_mm=insulation_mm) for core in cable.cores))
        if cable.id == "coax-thin"
        else cable
        for cable in plan.definitions.cables
    )
    return plan.evolve(definitions=plan.definitions.evolve(cables=cables))


@bad("sleeve-too-tight")
def thick_legs_on_a_thin_pair():
    """In the split a core of 0.9 mm meets one of 2.7 mm: no size passes this and grips that."""
    return coaxial_legs(2.7)


@good("sleeve-too-tight")
def legs_little_thicker_than_the_pair():
    """In the split a core of 0.9 mm meets one of 1.5 mm: a size of heat-shrink does both."""
    return coaxial_legs(1.5)


def three_ends(clamp_mm):
    """Return a lead that splits; the clamps of its far ends grip up to so much."""
    wires = ("RD A.T L.T", "WH A.S L.S", "GN A.R R.T", "BU A.S R.S")
    plan = lead({"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")}, wires)
    far = plan.connector_of("L")
    narrow = far.evolve(clamp=far.clamp.evolve(min_mm=0.5, max_mm=clamp_mm))
    connectors = tuple(
        narrow if each.id == far.id else each for each in plan.definitions.connectors
    )
    return plan.evolve(definitions=plan.definitions.evolve(connectors=connectors))


@bad("jacket-outside-clamp")
def two_cores_too_thick_for_the_clamp():
    """Two cores of 0.8 mm come to an end without a jacket; its clamp grips up to 1.5 mm."""
    return three_ends(1.5)


@good("jacket-outside-clamp")
def two_cores_in_the_clamp():
    """The same two cores in a clamp that grips up to 1.6 mm."""
    return three_ends(1.6)
