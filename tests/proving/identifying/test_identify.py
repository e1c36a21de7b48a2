"""Samples that are understood, those that can't be, and what is asked next."""

import pytest
from pydantic import ValidationError

from planner.library.loading import load_library
from planner.problem import InputError
from planner.proving.identifying import (
    SampleReadings,
    cautions,
    identify,
    sample_of,
    sentences,
)
from planner.proving.identifying.identifying import SURE_MARGIN, chi_square_limit
from planner.proving.reading import Meter
from tests.proving.identifying.devices import sample

HEADPHONE = {("T", "S"): 32.4, ("R", "S"): 31.8, ("T", "R"): 64.0}


def told(readings, **more):
    return identify(sample(readings, **more))


def ends(identified):
    return {("+".join(it.hot), "+".join(it.cold)) for it in identified.drivers}


def test_a_common_return_of_three_contacts():
    found = told(HEADPHONE)
    assert found.certain
    assert ends(found) == {("T", "S"), ("R", "S")}
    assert [it.contacts for it in found.returns] == [("S",)]
    assert found.margin >= SURE_MARGIN


def test_the_wire_of_a_return_is_half_of_what_the_sums_differ_by():
    """The formula for three contacts: r = (R_ab + R_ac - R_bc) / 2."""
    found = told({("a", "b"): 33.0, ("a", "c"): 34.0, ("b", "c"): 64.0}, meter=Meter(percent=0.1))
    common = found.returns[0]
    assert common.contacts == ("a",)
    assert common.series_ohm == pytest.approx((33 + 34 - 64) / 2, abs=0.02)
    assert not common.below_reach


def test_a_return_below_the_reach_of_the_meter_is_said_with_its_error():
    text = " ".join(sentences(told({("a", "b"): 601.0, ("a", "c"): 600.0, ("b", "c"): 1200.0})))
    assert (
        "a is the common return; its own wire is below this meter's reach (1 ± 9 Ω, so at most 9 Ω)"
        in text
    )


def test_two_drivers_apart_leave_the_rest_to_follow():
    found = told({("1", "2"): 300, ("3", "4"): 301, ("2", "3"): None})
    assert found.certain
    assert ends(found) == {("1", "2"), ("3", "4")}
    assert (found.returns, found.unused) == ((), ())


def test_a_shell_joined_to_the_return_and_one_that_floats():
    joined = told({**HEADPHONE, ("shell", "S"): 0.3})
    assert [(it.contact, it.joined_to) for it in joined.shell] == [("shell", ("S",))]
    floating = told({**HEADPHONE, ("shell", "S"): None})
    assert [it.floating for it in floating.shell] == [True]


def test_a_contact_named_as_shell_is_one():
    found = told({**HEADPHONE, ("G", "S"): None}, shells=("G",))
    assert found.unused == ()
    assert "The shell, G, is joined to nothing: it floats." in sentences(found)


def test_an_unused_contact():
    assert told({**HEADPHONE, ("X", "S"): None}).unused == ("X",)


def test_a_contact_that_was_not_read_is_in_doubt_and_not_unused():
    found = identify(sample(HEADPHONE, contacts=("T", "R", "S", "X")))
    assert not found.certain
    assert "X" in found.doubtful
    assert "X" in {found.next_reading.one, found.next_reading.other}


def test_a_microphone_reads_differently_each_way():
    found = told({**HEADPHONE, ("M", "S"): 900.0, ("S", "M"): 1700.0})
    assert found.certain
    assert (found.microphone.hot, found.microphone.cold) == (("M",), ("S",))
    assert found.microphone.shown
    assert any("reads differently each way" in line for line in sentences(found))


def test_a_microphone_that_conducts_one_way_only():
    found = told({**HEADPHONE, ("M", "S"): 900.0, ("S", "M"): None})
    assert (found.microphone.hot, found.microphone.shown) == (("M",), True)


def test_one_way_round_a_microphone_is_a_guess_and_the_other_way_is_asked_for():
    found = told({**HEADPHONE, ("M", "S"): 1500.0, ("M", "T"): 1540.0, ("R", "M"): 1525.0})
    assert found.microphone is not None
    assert not found.microphone.shown
    assert any("Read it the other way round" in line for line in sentences(found))


def test_a_microphone_has_the_figure_that_was_read():
    apart = told({**HEADPHONE, ("M", "N"): 1200.0})
    assert apart.microphone.ohm == pytest.approx(1200)
    assert any("1200 Ω" in line for line in sentences(apart))

    once = told({("1", "2"): 1200.0}, contacts=("1", "2", "3", "4", "5"))
    assert once.microphone.ohm == pytest.approx(1200)

    shared = told({**HEADPHONE, ("M", "S"): 900.0, ("S", "M"): 1700.0})
    wire = shared.returns[0].series_ohm
    assert shared.microphone.ohm == pytest.approx((900 + 1700) / 2 - wire)


def test_a_driver_that_was_read_badly_is_not_settled_as_a_microphone():
    """Figures of an invented headphone under a meter ten times worse than it says."""
    readings = {
        ("1", "2"): 207.3, ("4", "1"): 187.6, ("1", "shell"): 0.0,
        ("2", "4"): 396.9, ("shell", "2"): 206.8, ("shell", "4"): 201.2,
    }  # fmt: skip
    found = told(readings, meter=Meter(zero_ohm=0.3))
    assert found.microphone is not None
    assert found.verdict == "ambiguous"
    asked = found.next_reading
    assert (asked.one, asked.other) not in readings
    assert (asked.other, asked.one) in readings
    assert "4" in {asked.one, asked.other}
    assert "as well, the other way round" in asked.words


def test_the_zero_of_the_meter_is_taken_off():
    plain = told(HEADPHONE)
    shifted = told({pair: ohm + 3.5 for pair, ohm in HEADPHONE.items()}, meter=Meter(zero_ohm=3.5))
    assert [round(it.ohm, 6) for it in plain.drivers] == [
        round(it.ohm, 6) for it in shifted.drivers
    ]


def test_fingers_on_the_probes_read_as_open():
    assert told({**HEADPHONE, ("X", "S"): 250_000.0}).unused == ("X",)


@pytest.mark.parametrize("ohm", [4.0, 8.0])
def test_a_driver_of_low_impedance_is_no_short(ohm):
    found = told({("a", "c"): ohm, ("b", "c"): ohm, ("a", "b"): 2 * ohm})
    assert ends(found) == {("a", "c"), ("b", "c")}


def test_a_beep_joins_without_saying_how():
    found = told({("T", "S"): 32.0, ("R", "S"): 31.5, ("G", "S"): "beep"})
    assert not found.certain
    assert "G" in found.doubtful


def test_readings_that_contradict_each_other_name_what_to_read_again():
    found = told({("a", "b"): 0.2, ("b", "c"): 0.2, ("a", "c"): None})
    assert found.verdict == "contradictory"
    assert set(found.suspects) == {("a", "b"), ("a", "c"), ("b", "c")}
    assert sentences(found) == (
        "The readings contradict each other. Read a to c, a to b or b to c again.",
    )


def test_one_false_figure_is_found_among_six():
    """Two drivers in star with a microphone of 1 kohm would give 1032; 332 fits nothing."""
    good = {**HEADPHONE, ("X", "S"): 0.2, ("X", "T"): 32.3, ("X", "R"): 332.0}
    found = told(good)
    assert found.verdict == "contradictory"
    assert found.suspects[0] == ("R", "X")


def test_a_triangle_of_drivers_is_told_as_a_point_that_no_contact_reaches():
    found = told({("a", "b"): 64, ("a", "c"): 64, ("b", "c"): 64})
    assert [it.cold for it in found.drivers] == [(), (), ()]
    assert any("triangle, which reads the same" in line for line in sentences(found))


def test_a_ring_of_four_drivers_is_no_usual_wiring_and_told_as_a_network():
    """A ring of four equal resistors: 3/4 beside, 1 across (networkx's resistance distance)."""
    beside, across = 75.0, 100.0
    found = told(
        {
            ("a", "b"): beside, ("b", "c"): beside, ("c", "d"): beside, ("a", "d"): beside,
            ("a", "c"): across, ("b", "d"): across,
        },
        meter=Meter(percent=0.5),
    )  # fmt: skip
    assert found.verdict == "contradictory"
    assert {(it.one, it.other): round(it.ohm) for it in found.mesh} == {
        ("a", "b"): 100, ("b", "c"): 100, ("c", "d"): 100, ("a", "d"): 100,
    }  # fmt: skip


def test_three_drivers_in_a_row():
    row = {("a", "b"): 50, ("b", "c"): 50, ("c", "d"): 50, ("a", "c"): 100, ("b", "d"): 100}
    found = told(row | {("a", "d"): 150})
    assert found.found.in_a_row
    assert ends(found) == {("a", "b"), ("b", "c"), ("c", "d")}


def test_nothing_conducts():
    found = told({("a", "b"): None, ("b", "c"): None, ("a", "c"): None})
    assert found.certain
    assert sentences(found)[1].startswith("No driver was found: broken")
    assert found.unused == ("a", "b", "c")


def test_one_driver_and_an_unused_contact_may_be_a_broken_return():
    text = " ".join(sentences(told({("a", "b"): 64, ("a", "c"): None, ("b", "c"): None})))
    assert "whose common return is broken would read like this" in text


def test_left_right_and_polarity_are_always_said_not_to_be_known():
    for found in (told(HEADPHONE), told({("a", "b"): None}), identify(sample({}, contacts="abc"))):
        assert "are not in the resistance" in cautions(found)[0]
    assert any("brief touch" in line for line in cautions(told(HEADPHONE)))


def test_a_sample_of_a_connector_has_its_contacts_and_its_shell():
    phono = sample_of(load_library().connector("phono-male"), Meter())
    assert (phono.contacts, phono.shells, phono.readings) == (("1", "2"), ("2",), ())


def test_a_connector_of_one_contact_is_no_sample():
    phono = load_library().connector("phono-male")
    with pytest.raises(InputError, match="a sample has 2 to 64 contacts, this connector has 1"):
        sample_of(phono.evolve(contacts=phono.contacts[:1]), Meter())


@pytest.mark.parametrize(
    ("readings", "words"),
    [
        ({}, "Read 1 to 2 first."),
        ({("1", "2"): None}, "some ohm"),
        ({("1", "2"): 32.0, ("2", "3"): 32.5}, "about 64 Ω"),
        ({("1", "2"): 32.0, ("1", "3"): None}, "open"),
    ],
)
def test_the_next_reading_says_what_is_expected_of_it(readings, words):
    found = identify(sample(readings, contacts=("1", "2", "3", "4")))
    assert words in found.next_reading.words


def test_many_contacts_unread_still_get_a_next_reading():
    found = identify(SampleReadings(contacts=tuple(f"p{at}" for at in range(1, 27))))
    assert found.verdict == "too-little"
    assert found.next_reading is not None


def test_the_limit_of_chi_square_against_the_published_table():
    """0.999 quantiles: 10.828, 20.515, 29.588, 45.315 for 1, 5, 10, 20 (any table; from memory)."""
    for count, value in ((1, 10.828), (5, 20.515), (10, 29.588), (20, 45.315)):
        assert chi_square_limit(count) == pytest.approx(value, rel=0.035)


@pytest.mark.parametrize(
    "fields",
    [
        {"contacts": ("a",)},
        {"contacts": ("a", "a")},
        {"contacts": ("a", "b"), "shells": ("c",)},
        {"contacts": ("a", "b"), "readings": ({"one": "a", "other": "a", "joined": True},)},
        {"contacts": ("a", "b"), "readings": ({"one": "a", "other": "z", "joined": True},)},
        {"contacts": ("a", "<b>")},
    ],
)
def test_readings_that_can_not_be_are_refused(fields):
    with pytest.raises(ValidationError):
        SampleReadings(**fields)
