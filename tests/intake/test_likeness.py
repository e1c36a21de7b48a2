"""Differences told as one act of a person. The pinouts that are compared ship with the program;
their published sources stand in their files."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.intake.likeness import likenesses, usual_first
from planner.model.pinout import PinoutRecord
from planner.model.source import Source


def carried(record):
    return {name: frozenset(it) for name, it in record.signals.items()}


def nearest(shipped, connector, signals, only):
    found = likenesses(signals, shipped.connector(connector), [shipped.pinout(only)])
    return found[0]


def four_pole(shipped):
    return carried(shipped.pinout("jack-2.5-balanced-headphone"))


def test_the_same_is_the_same(shipped):
    found = nearest(
        shipped, "jack-2.5-four-pole", four_pole(shipped), "jack-2.5-balanced-headphone"
    )

    assert (found.kind, found.cost, found.differs) == ("same", 0, ())


def test_two_contacts_exchanged_are_named(shipped):
    signals = four_pole(shipped)
    signals["R1"], signals["R2"] = signals["R2"], signals["R1"]

    found = nearest(shipped, "jack-2.5-four-pole", signals, "jack-2.5-balanced-headphone")

    assert found.words == ("ring 1 and ring 2 exchanged",)
    assert found.pairs == (("R1", "R2"),)
    assert [it.contact for it in found.differs] == ["R1", "R2"]


def test_the_reverse_order_of_the_poles_is_one_act(shipped):
    signals = {"T": {"L-"}, "R1": {"L+"}, "R2": {"R+"}, "S": {"R-"}}
    signals = {name: frozenset(it) for name, it in signals.items()}

    found = nearest(shipped, "jack-2.5-four-pole", signals, "jack-2.5-balanced-headphone")

    assert found.words[0] == "counted from the other end"


@pytest.mark.parametrize(
    ("connector", "record"),
    [
        ("din-5-180-male", "din-5-amplifier-output"),
        ("xlr-4-male", "xlr-4-headphone"),
        ("dsub-25-male", "aes59-analogue"),
    ],
)
def test_taken_from_the_mating_side_is_seen(shipped, connector, record):
    hardware = shipped.connector(connector)
    by_place = {
        (round(it.terminal.x_mm, 2), round(it.terminal.y_mm, 2)): it.id for it in hardware.contacts
    }
    original = carried(shipped.pinout(record))
    seen = {}
    for name, signals in original.items():
        terminal = hardware.by_id[name].terminal
        image = by_place.get((round(-terminal.x_mm, 2) + 0.0, round(terminal.y_mm, 2)))
        seen[image] = signals

    found = nearest(shipped, connector, seen, record)

    assert found.told.startswith("mirrored") == (seen != original)
    assert found.cost <= 1


def test_left_and_right_and_one_channel_reversed(shipped):
    swapped = {
        name: frozenset(one.translate(str.maketrans("LR", "RL")) for one in it)
        for name, it in four_pole(shipped).items()
    }
    found = nearest(shipped, "jack-2.5-four-pole", swapped, "jack-2.5-balanced-headphone")
    assert found.told == "counted from the other end or left and right exchanged"

    reversed_right = {"T": {"R+"}, "R1": {"R-"}, "R2": {"L+"}, "S": {"L-"}}
    found = nearest(
        shipped,
        "jack-2.5-four-pole",
        {name: frozenset(it) for name, it in reversed_right.items()},
        "jack-2.5-balanced-headphone",
    )
    assert found.words == ("the right channel reversed: its plus and minus exchanged",)


def test_what_is_no_exchange_is_told_contact_by_contact(shipped):
    signals = four_pole(shipped) | {"S": frozenset({"shield"})}

    found = nearest(shipped, "jack-2.5-four-pole", signals, "jack-2.5-balanced-headphone")

    assert (found.kind, found.words) == ("other", ("sleeve carries shield, there L\u2212",))


def test_contacts_that_the_connector_lacks_are_compared_too(shipped):
    """A record may be written for a connector with more contacts, or name one wrongly."""
    signals = four_pole(shipped)
    more = signals | {"G": frozenset({"shield"})}

    found = nearest(shipped, "jack-2.5-four-pole", more, "jack-2.5-balanced-headphone")
    assert (found.kind, found.words) == ("other", ("G carries shield, there nothing",))

    moved = {"G" if name == "S" else name: it for name, it in signals.items()}
    found = nearest(shipped, "jack-2.5-four-pole", moved, "jack-2.5-balanced-headphone")
    assert found.words == ("sleeve and G exchanged",)

    turned = dict(zip(signals, reversed(signals.values()), strict=True))
    found = nearest(
        shipped,
        "jack-2.5-four-pole",
        turned | {"G": frozenset({"shield"})},
        "jack-2.5-balanced-headphone",
    )
    assert found.kind == "other"


@given(st.permutations(["T", "R1", "R2", "S"]))
def test_every_permutation_is_told_and_the_nearest_comes_first(shipped, order):
    original = four_pole(shipped)
    signals = dict(zip(order, original.values(), strict=True))
    found = likenesses(signals, shipped.connector("jack-2.5-four-pole"), shipped.pinouts())

    costs = [it.cost for it in found]
    assert costs == sorted(costs)
    for each in found:
        theirs = carried(each.record)
        wrong = [name for name in original if signals[name] != theirs.get(name, frozenset())]
        assert sorted(it.contact for it in each.differs) == sorted(wrong)
        assert (each.cost == 0) == (not wrong)


def test_the_standard_comes_first_however_far_it_is(shipped):
    standard = shipped.pinout("xlr-3-line")
    alike = PinoutRecord(
        id="alike",
        title="Alike",
        fits=("xlr-3-male",),
        use="line",
        drive="line",
        signals={"1": ("L+",), "2": ("R+",), "3": ("L-", "R-")},
        source=Source(kind="letter", reference="a letter, invented", date="1996-03-04"),
    )
    male = shipped.connector("xlr-3-male")
    nearest_first = likenesses(carried(alike), male, [standard, alike])

    assert [it.record.id for it in nearest_first] == ["alike", "xlr-3-line"]
    assert standard.source.kind == "standard"
    assert [it.record.id for it in usual_first(nearest_first)] == ["xlr-3-line", "alike"]
    assert usual_first(nearest_first[:1]) == nearest_first[:1]


def test_where_there_is_no_standard_common_practice_comes_first(shipped):
    connector = shipped.connector("jack-2.5-four-pole")
    odd = four_pole(shipped) | {"S": frozenset({"shield"})}
    usual = usual_first(likenesses(odd, connector, shipped.pinouts()))

    assert not any(it.is_standard for it in usual)
    assert usual[0].record.source.kind == "practice"
