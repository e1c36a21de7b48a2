"""What must hold for any sample: names and order don't matter, what is apart changes nothing."""

import random

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.proving.identifying import SampleReadings, identify
from tests.proving.identifying.devices import POOR, is_right, read_all, simulated

SEEDS = st.integers(0, 10_000)


def plain(found, names=None):
    """Return an understanding without figures, as sets, its contacts renamed."""
    renamed = names or {}

    def net(contacts):
        return frozenset(renamed.get(name, name) for name in contacts)

    def ends(driver):
        return frozenset({net(driver.hot), net(driver.cold)})

    return (
        {ends(it) for it in found.drivers},
        {net(it.contacts) for it in found.returns},
        found.microphone and ends(found.microphone),
        {net(group) for group in found.groups},
        net(found.unused),
    )


def partly_read(seed):
    rng = random.Random(seed)
    sample = read_all(simulated(rng), POOR, rng)
    return sample.evolve(readings=tuple(it for it in sample.readings if rng.random() < 0.8)), rng


@given(SEEDS)
@settings(max_examples=25, deadline=None)
def test_other_names_give_the_same_under_other_names(seed):
    sample, rng = partly_read(seed)
    order = list(sample.contacts)
    rng.shuffle(order)
    # A shell keeps its name: that is what tells it from another contact.
    names = {name: name if sample.is_shell(name) else f"c{at}" for at, name in enumerate(order)}
    renamed = SampleReadings(
        contacts=tuple(names[name] for name in order),
        readings=tuple(
            it.evolve(one=names[it.one], other=names[it.other]) for it in sample.readings[::-1]
        ),
        meter=sample.meter,
    )
    first, second = identify(sample), identify(renamed)
    assert first.verdict == second.verdict
    assert round(first.margin, 5) == round(second.margin, 5)
    if first.certain:
        assert plain(first.found, names) == plain(second.found)


@given(SEEDS)
@settings(max_examples=25, deadline=None)
def test_an_unused_contact_that_is_read_open_changes_nothing_else(seed):
    rng = random.Random(seed)
    device = simulated(rng)
    before = identify(read_all(device, POOR, random.Random(seed)))
    device.contacts.append("far")
    device.node_of["far"] = "far"
    device.unused.add("far")
    after = identify(read_all(device, POOR, random.Random(seed)))
    assert not after.certain or is_right(device, after.found)
    if before.certain and after.certain:
        assert plain(after.found)[:4] == plain(before.found)[:4]


@given(SEEDS)
@settings(max_examples=15, deadline=None)
def test_the_same_readings_give_the_same_answer(seed):
    sample, _ = partly_read(seed)
    assert identify(sample) == identify(SampleReadings.model_validate(sample.model_dump()))


@given(SEEDS, st.floats(0, 3))
@settings(max_examples=15, deadline=None)
def test_a_zero_taken_off_is_no_matter(seed, zero):
    sample, _ = partly_read(seed)
    shifted = sample.evolve(
        meter=sample.meter.evolve(zero_ohm=sample.meter.zero_ohm + zero),
        readings=tuple(
            it if it.ohm is None or it.ohm >= 1e5 else it.evolve(ohm=it.ohm + zero)
            for it in sample.readings
        ),
    )
    first, second = identify(sample), identify(shifted)
    # A reading below the zero is cut at none, so compare only where none was.
    if all(it.ohm is None or it.ohm > sample.meter.zero_ohm for it in sample.readings):
        assert first.verdict == second.verdict
        assert not first.certain or plain(first.found) == plain(second.found)
