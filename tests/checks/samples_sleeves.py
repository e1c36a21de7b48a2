"""Samples for the rule of sleeves. All figures are invented."""

from tests.building import PHONES, lead
from tests.checks.samples import bad, good
from tests.checks.samples_fit import ENDS, WIRES, posts


def sleeved(plan, end, *conductors):
    """Return the plan with sleeves on conductors at an end."""
    return plan.evolve(
        landings=tuple(
            each.evolve(sleeved=(each.end, each.conductor) in {(end, it) for it in conductors})
            for each in plan.landings
        )
    )


def on_posts():
    """Return a lead with posts of 0.5 mm at B, 10 mm below the jacket's cut end."""
    return lead({"A": PHONES, "B": posts(0.5)}, WIRES)


@bad("sleeve-no-room")
def no_room_to_park():
    """A sleeve of 8 mm on a core that leaves the jacket 10 mm above its post."""
    return sleeved(on_posts(), "B", "RD")


def slender_cups():
    """Return a lead with cups of 0.9 mm at both ends, 24 mm below the jacket's cut end."""
    plan = lead(ENDS, WIRES)
    connectors = tuple(
        each.evolve(
            contacts=tuple(
                it.evolve(terminal=it.terminal.evolve(bore_mm=0.9)) for it in each.contacts
            )
        )
        for each in plan.definitions.connectors
    )
    return plan.evolve(definitions=plan.definitions.evolve(connectors=connectors))


@good("sleeve-no-room")
def room_to_park():
    """A sleeve of 10 mm on a core of 24 mm, over a cup 1.2 mm thick."""
    return sleeved(slender_cups(), "A", "RD")


@good("sleeve-no-room")
def dabbed():
    """A dab of insulating compound where a sleeve would have no room."""
    plan = on_posts()
    return plan.evolve(landings=tuple(it.evolve(dabbed=it.end == "B") for it in plan.landings))
