"""What is offered for a sleeve that has no room to park."""

import pytest

from planner.services.checking import check_plan
from tests.checks.samples_sleeves import no_room_to_park


def deep_and_wide(spread):
    """Return the sample with posts 8 mm long, farther from the axis, and a sleeve on each."""
    plan = no_room_to_park()
    wide = plan.connector_of("B")
    contacts = tuple(
        it.evolve(
            terminal=it.terminal.evolve(
                x_mm=spread * it.terminal.x_mm, y_mm=spread * it.terminal.y_mm, depth_mm=8
            )
        )
        for it in wide.contacts
    )
    connectors = tuple(
        wide.evolve(contacts=contacts) if it is wide else it for it in plan.definitions.connectors
    )
    return plan.evolve(
        definitions=plan.definitions.evolve(connectors=connectors),
        workmanship=plan.workmanship.evolve(sleeve_overlap="six-mm"),
        landings=tuple(it.evolve(sleeved=it.end == "B") for it in plan.landings),
    )


@pytest.mark.parametrize("spread", [1.6, 1.6317, 1.85, 2.03])
def test_stripping_back_as_offered_lets_the_sleeve_park(spread):
    plan = deep_and_wide(spread)
    offers = [it for it in check_plan(plan) if it.remedy and it.remedy.label.startswith("Strip")]
    assert offers
    for offer in offers:
        left = {(it.code, it.where) for it in check_plan(offer.remedy.edit(plan))}
        assert (offer.code, offer.where) not in left
