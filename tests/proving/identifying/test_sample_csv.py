"""A sample's readings as CSV: round trips, and what names a contact. Bad files: tests/cli."""

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.proving.identifying import SampleReading, SampleReadings
from planner.proving.identifying.sample_csv import sample_from_text, sample_text
from planner.proving.reading import OPEN_FROM_OHM, Meter

NAMES = ("1", "2", "R1", "shell", "G.2")
PAIRS = st.sampled_from([(a, b) for a in NAMES for b in NAMES if a != b])
SHOWN = st.one_of(
    st.just((False, None)),
    st.just((True, None)),
    st.tuples(st.just(True), st.floats(0, OPEN_FROM_OHM, exclude_max=True)),
)


@given(st.dictionaries(PAIRS, SHOWN, max_size=8), st.floats(0, 9), st.sampled_from(["", "old one"]))
@settings(max_examples=60, deadline=None)
def test_readings_come_back(readings, zero, name):
    sample = SampleReadings(
        contacts=NAMES,
        readings=tuple(
            SampleReading(one=one, other=other, joined=joined, ohm=ohm)
            for (one, other), (joined, ohm) in readings.items()
        ),
        meter=Meter(name=name, zero_ohm=zero),
        shells=("G.2",),
    )
    # A head needs a row below it only where nothing else says what is what.
    assert sample_from_text(sample_text(sample), "again.csv") == sample


def test_an_empty_reading_names_its_contacts_only():
    sample = sample_from_text("from,to,reading\nT,S,32\nG,X,\n", "x.csv")
    assert sample.contacts == ("T", "S", "G", "X")
    assert len(sample.readings) == 1


def test_both_ways_round_are_two_readings_of_one_pair():
    sample = sample_from_text("M,S,900\nS,M,1.7k\n", "x.csv")
    assert [seen.figures for seen in sample.seen.values()] == [(900.0, 1700.0)]
