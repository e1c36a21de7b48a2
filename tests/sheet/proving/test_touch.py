"""Where to touch shows the open front: published handedness of the mating faces."""

import pytest

from planner.drawing.primitives import Text
from planner.edits.shapes import one_to_one
from planner.sheet.leaf import Making
from planner.sheet.proving.touch import touch_column
from tests.sheet.samples import library, with_parts


def spots(connector):
    """Return where each contact's name stands, for a lead that has this connector at one end."""
    known = library()
    plan = with_parts(one_to_one(), {"A": (connector, "")}, known.cables()[0].id)
    plan = plan.evolve(ends=plan.ends[:1])
    items, _ = touch_column(Making(plan, ()), 19000)
    names = {contact.id for contact in plan.connector_of("A").contacts}
    return {item.text: item.at for item in items if isinstance(item, Text) and item.text in names}


def left_to_right(found, names):
    return sorted(names, key=lambda name: found[name][0])


def ids(gender, family):
    return [c.id for c in library().connectors() if c.gender == gender and family in c.id]


@pytest.mark.parametrize(("gender", "row"), [("male", range(1, 14)), ("female", range(13, 0, -1))])
def test_the_25_way_d_runs_as_published(gender, row):
    # D-sub 25, male mating face, long row up: 1 to 13 left to right; female right to left.
    names = [str(number) for number in row]
    (connector,) = ids(gender, "dsub-25")
    assert left_to_right(spots(connector), names) == names


def test_xlr_pins_1_and_2_change_sides_between_male_and_female():
    # XLR-3 (IEC 61076-2-103): pins 1 and 2 change sides between the two mating faces.
    (male, *_), (female, *_) = ids("male", "xlr-3"), ids("female", "xlr-3")
    assert left_to_right(spots(male), ["1", "2"]) != left_to_right(spots(female), ["1", "2"])
