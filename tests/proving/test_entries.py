"""What a builder types for a reading, and what is refused with a reason."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.proving.entries import BEEP, OPEN, Entry, EntryError, entry_text, parse_entry
from planner.proving.reading import OPEN_FROM_OHM


@pytest.mark.parametrize("text", ["o", "O", "open", "OL", "O.L", "o.l.", "inf", "∞", "--", " ol "])
def test_open(text):
    assert parse_entry(text) == OPEN


@pytest.mark.parametrize("text", ["b", "Beep", "yes", "y"])
def test_a_beep_without_a_figure(text):
    assert parse_entry(text) == BEEP


@pytest.mark.parametrize(
    ("text", "ohm"),
    [
        ("0.12", 0.12),
        ("0,12", 0.12),
        (".5", 0.5),
        ("3.", 3.0),
        ("0", 0.0),
        ("-0", 0.0),
        ("+2", 2.0),
        ("1.2k", 1200.0),
        ("1.2 kohm", 1200.0),
        ("0.3 ohm", 0.3),
        ("0.3 Ω", 0.3),
        ("0.3\u2126", 0.3),
        ("5R", 5.0),
        ("120m", 0.12),
        ("120 mΩ", 0.12),
        ("1e-2", 0.01),
        ("1.2E+3", 1200.0),
    ],
)
def test_a_figure_in_ohm(text, ohm):
    assert parse_entry(text) == Entry(joined=True, ohm=ohm)


@pytest.mark.parametrize(
    ("text", "ohm"), [("2R2", 2.2), ("R47", 0.47), ("47R0", 47.0), ("4k7", 4700.0), ("0R1", 0.1)]
)
def test_a_letter_for_the_point(text, ohm):
    """The code of IEC 60062, its examples from memory: R47 is 0.47 ohm, 4K7 is 4700 ohm."""
    assert parse_entry(text).ohm == ohm


@pytest.mark.parametrize("text", ["10k", "1M2", "0.5 M", "2G", "9e99", "9e999"])
def test_more_than_any_joint_has_is_open(text):
    assert parse_entry(text) == OPEN


def test_below_that_it_is_joined():
    assert parse_entry(str(OPEN_FROM_OHM - 1)).joined


@pytest.mark.parametrize("text", ["0.3.4", "1,200.5", "abc", "nan", "12 mH", "-", "0.3 x", "R"])
def test_what_is_no_reading_is_named_with_a_mend(text):
    with pytest.raises(EntryError) as error:
        parse_entry(text)
    assert error.value.what == f"{text!r} is no reading"
    assert "o for open" in error.value.mend


@pytest.mark.parametrize("text", ["-0.02", "\u22123", "-1k"])
def test_below_zero_is_refused(text):
    with pytest.raises(EntryError, match="below zero, which no resistance is") as error:
        parse_entry(text)
    assert "probes together" in error.value.mend


def test_nothing_typed_is_no_reading():
    with pytest.raises(EntryError, match="nothing is typed"):
        parse_entry("  ")


def test_a_long_text_is_shown_cut():
    with pytest.raises(EntryError) as error:
        parse_entry("9" * 10_000)
    assert len(error.value.what) < 80


@given(st.floats(min_value=0, max_value=OPEN_FROM_OHM, exclude_max=True))
def test_a_figure_is_written_back_without_loss(ohm):
    assert parse_entry(entry_text(Entry(joined=True, ohm=ohm))) == Entry(joined=True, ohm=ohm)


@pytest.mark.parametrize("entry", [OPEN, BEEP])
def test_open_and_a_beep_are_written_back(entry):
    assert parse_entry(entry_text(entry)) == entry


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text):
    with suppress(EntryError):
        ohm = parse_entry(text).ohm
        assert ohm is None or 0 <= ohm < OPEN_FROM_OHM
