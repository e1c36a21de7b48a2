"""Samples for figures that do not go together, and for bodies near the shell. All invented."""

from planner.model.connector import Shell, Terminal
from tests.building import PHONES, fitting, lead, plug
from tests.checks.samples import bad, good
from tests.checks.samples_fit import WIRES, line, with_cable, with_plug


def with_terminal(plan, which, **changes):
    """Return the plan with one terminal of its first connector changed."""
    contacts = list(plan.definitions.connectors[0].contacts)
    old = contacts[which]
    contacts[which] = old.evolve(terminal=old.terminal.evolve(**changes))
    return with_plug(plan, contacts=tuple(contacts))


@bad("odd-geometry")
def overlapping_cups():
    """The cups of ring and tip, 3 mm wide inside, stand 2.5 mm apart."""
    tip = line().definitions.connectors[0].contacts[0].terminal
    return with_terminal(line(), 1, x_mm=tip.x_mm, y_mm=tip.y_mm + 2.5)


@bad("odd-geometry")
def cup_outside_the_shell():
    """Cups on a circle of 20 mm in a shell with a bore of 30 mm."""
    return with_plug(line(), shell=Shell(bore_mm=30))


@bad("odd-geometry")
def core_outside_the_jacket():
    """Cores 2 mm from the middle of a cable with a jacket of 3 mm."""
    return with_cable(line(), jacket_mm=3)


@good("odd-geometry")
def a_touch_of_room():
    """Cups on a circle of 20 mm in a shell with a bore of 45 mm."""
    return with_plug(line(), shell=Shell(bore_mm=45))


def beside_the_wall(bore_mm):
    """Return a lead whose near plug has three posts 3 mm from its axis; strands of 1.8 mm."""
    three = plug("near-posts", "T R S")
    places = ((3.0, 0.0), (-1.5, 2.6), (-1.5, -2.6))
    contacts = tuple(
        it.evolve(terminal=Terminal(kind="post", x_mm=x, y_mm=y, width_mm=0.5, depth_mm=2))
        for it, (x, y) in zip(three.contacts, places, strict=True)
    )
    three = three.evolve(contacts=contacts, shell=Shell(bore_mm=bore_mm))
    signals = "T L+, R R+, S L- R-"
    near = fitting(three, "near-inlet", signals)
    plan = lead({"A": PHONES, "B": near}, WIRES)
    cores = plan.definitions.cables[0].cores
    return with_cable(plan, cores=tuple(it.evolve(strand_mm=0.6, insulation_mm=2) for it in cores))


@bad("gap-small")
def strands_near_the_wall():
    """Thick strands on posts that leave 0.8 mm to the shell."""
    return beside_the_wall(7.6)


@good("gap-small")
def strands_far_from_the_wall():
    """The same strands and posts in a wider shell."""
    return beside_the_wall(12)
