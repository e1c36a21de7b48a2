"""A tester's file of readings: read in every dress, written back, and refused by row and column."""

import re
from contextlib import suppress

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.problem import InputError
from planner.proving.reading import OPEN_FROM_OHM, Meter, Reading, Readings
from planner.proving.reading_csv import (
    READINGS_BYTES,
    read_readings,
    readings_from_text,
    readings_text,
)
from tests import building
from tests.building import lead

HEAD = "from_end,from_contact,to_end,to_contact,reading\n"
PLAN = lead(
    {"A": building.PHONES, "L": (building.CUP, "L"), "R": (building.CUP, "R")},
    ["RD A.T L.T", "GN A.R R.T", "BK A.S L.S R.S"],
)
TIP = Reading(one=("A", "T"), other=("L", "T"), joined=True, ohm=0.12)


def read(text, plan=PLAN):
    return readings_from_text(text, plan, "f.csv")


def problems(text, plan=PLAN):
    with pytest.raises(InputError) as error:
        read(text, plan)
    return [str(problem) for problem in error.value.problems]


@pytest.mark.parametrize(
    "text",
    [
        HEAD + "A,T,L,T,0.12\n",
        HEAD + 'A,T,L,T,"0,12"\n',
        "A,T,L,T,0.12",
        "A;T;L;T;0,12",
        "A\tT\tL\tT\t0,12\r\n",
        "\ufeff" + HEAD.replace(",", ";").replace("\n", "\r\n") + "A;T;L;T;0,12\r\n",
        "reading,to_end,to_contact,from_end,from_contact\n0.12,L,T,A,T\n",
        "From end,From Contact,TO-END,to contact,Reading\nA,T,L,T,0.12\n",
        HEAD[:-1] + ",expected_ohm,limit_ohm,remark\nA,T,L,T,0.12,0.2,1.2,first\n",
        "# by hand, at 10:30\n\n" + HEAD + "\n# tip\nA,T,L,T,0.12\n,,,,\n",
        HEAD + "a, tip ,l,TIP,120 m\n",
        HEAD + "end A,t,end L,tip,R12\n",
        "# remark,,,,\n" + HEAD + "A,T,L,T,0.12\n",
    ],
)
def test_one_reading_in_every_dress(text):
    assert read(text).readings == (TIP,)


def test_the_meter_stands_in_lines_of_its_own():
    text = (
        "# meter: bench meter\n# zero_ohm: 0,2\n# Percent: 0.5 %\n# offset ohm: 0.05\nA,T,L,T,1\n"
    )
    meter = Meter(name="bench meter", zero_ohm=0.2, percent=0.5, offset_ohm=0.05)
    assert read(text).meter == meter


def test_a_spreadsheet_may_quote_and_fill_up_the_lines_of_the_meter():
    assert read('"# meter: one, ""two""",,,,\nA,T,L,T,1\n').meter.name == 'one, "two"'


def test_open_and_beeps():
    found = read(HEAD + "A,T,L,S,OL\nA,T,R,T,inf\nA,S,L,S,beep\n").readings
    assert [(one.joined, one.ohm) for one in found] == [(False, None), (False, None), (True, None)]


def test_an_empty_reading_was_not_read():
    assert read(HEAD + "A,T,L,T,\nA,S,L,S,1\n").of(("A", "T"), ("L", "T")) is None


def test_a_contact_goes_by_its_moulded_mark_and_an_exact_id_goes_first():
    xlr = building.XLR_F
    marks = {"1": "2", "2": "1", "3": "C"}
    contacts = tuple(each.evolve(moulded=marks[each.id]) for each in xlr.contacts)
    fitted = building.fitting(xlr.evolve(contacts=contacts), "odd-line", "1 shield, 2 +, 3 -")
    plan = lead({"A": fitted, "B": building.LINE_IN}, ["RD A.2 B.2"])
    found = read("A,1,B,1,1\nA,c,B,pin 3,2\n", plan).readings
    assert [one.one for one in found] == [("A", "1"), ("A", "3")]


# -- what is refused ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("A,T,L,T", "row 2: the row has 4 cells, not 5. Put commas between the cells"),
        (
            "A,T,L,T,0,12",
            "row 2: the row has 6 cells, not 5. Between commas a decimal comma stands",
        ),
        ("A", "row 2: the row has 1 cell, not 5"),
        ('A,T,L,"T,1', "row 2: a quote is not closed"),
        ("Q,T,L,T,1", "row 2, column from_end: the plan has no end 'Q'. Known are A, L, R."),
        (",T,L,T,1", "row 2, column from_end: the end is missing"),
        (
            "A,T,L,tpi,1",
            "row 2, column to_contact: end L has no contact 'tpi'. Did you mean 'tip'?",
        ),
        ("A,T,L,,1", "row 2, column to_contact: the contact is missing"),
        ("A,T,L,T,-3", "row 2, column reading: '-3' is below zero"),
        ("A,T,L,T,0.3.4", "row 2, column reading: '0.3.4' is no reading"),
        ("A,T,L,T,good", "row 2, column reading: 'good' is no reading"),
        ("A,T,A,T,1", "row 2, column to_contact: T at A is measured against itself"),
    ],
)
def test_what_is_wrong_is_named_by_row_and_column(row, said):
    (problem,) = problems(HEAD + row + "\n")
    assert problem.startswith(f"f.csv: {said}")


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        (
            "A,T,L,T,1\nA,T,L,T,open\n",
            "row 3, column reading: T at A to T at L is 1 in row 2 and open",
        ),
        (
            "A,T,L,T,1\nA,T,L,T,1.3\n",
            "row 3, column reading: T at A to T at L is 1 in row 2 and 1.3",
        ),
        (
            "A,T,L,T,1\nL,T,A,T,2\n",
            "row 3, column reading: T at A to T at L is 1 in row 2, and the other way round it is "
            "2",
        ),
        (
            "A,T,L,T,1\nA,S,L,S,1\nL,T,A,T,o\n",
            "row 4, column reading: T at A to T at L is 1 in row 2, and the other way round it is "
            "open",
        ),
    ],
)
def test_a_contradiction_names_both_rows(rows, said):
    (problem,) = problems(HEAD + rows)
    assert problem.startswith(f"f.csv: {said}")


def test_of_readings_that_agree_the_later_counts():
    """1 ohm and 1.2 ohm are each good to 1 % and 0.1 ohm: the meter can show both of one wire."""
    found = read(HEAD + "A,T,L,T,1\nL,T,A,T,1.2\n")
    assert [(one.one, one.ohm) for one in found.readings] == [(("L", "T"), 1.2)]


def test_a_beep_does_not_take_the_place_of_a_figure():
    found = read(HEAD + "A,T,L,T,1\nA,T,L,T,beep\nA,S,L,S,beep\nA,S,L,S,2\n")
    assert [one.ohm for one in found.readings] == [1, 2]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "f.csv: there are no readings in it"),
        ("# only this\n", "f.csv: there are no readings in it"),
        (
            HEAD.replace("from_end", "form_end"),
            "f.csv: row 1, column 1: the column 'form_end' is not known here. "
            "Did you mean 'from_end'?",
        ),
        (
            HEAD[:-1] + ",celsius\n",
            "f.csv: row 1, column 6: the column 'celsius' is not known here.",
        ),
        (
            HEAD[:-1] + ",reading\n",
            "f.csv: row 1, column 6: the column 'reading' stands twice. Keep one of the two.",
        ),
        (
            HEAD.replace(",reading", ""),
            "f.csv: row 1: the column 'reading' is missing. Add it to the head.",
        ),
    ],
)
def test_the_head_says_what_is_what(text, said):
    assert any(problem.startswith(said) for problem in problems(text))


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("# zero_ohms: 0.2", "row 1: the line '# zero_ohms:' is not known here. Did you mean"),
        ("# zero_ohm: nought", "row 1: zero_ohm is 'nought', which is no number"),
        ("# zero_ohm: -1", "row 1: zero_ohm can't be '-1'"),
        ("# percent: 90", "row 1: percent can't be '90'"),
        ("# zero_ohm: 1\n# zero_ohm: 2", "row 2: the line '# zero_ohm:' stands twice"),
    ],
)
def test_a_slip_in_the_meter_is_no_remark(line, said):
    (problem,) = problems(f"{line}\n{HEAD}A,T,L,T,1\n")
    assert problem.startswith(f"f.csv: {said}")


def test_all_that_is_wrong_is_said_at_once_in_the_order_of_the_rows():
    found = problems(HEAD + "A,T,L,T,1\nA,T,L\nQ,T,L,T,x\nA,T,L,T,open\n")
    assert [re.match(r"f\.csv: row (\d+)", one).group(1) for one in found] == ["3", "4", "4", "5"]


def test_of_very_many_the_rest_is_a_number():
    found = problems(HEAD + "A,T,L,T,x\n" * 1000)
    assert len(found) == 201
    assert found[-1].startswith("f.csv: there are 800 more problems.")


def test_an_end_without_a_connector_says_so():
    bare = PLAN.evolve(ends=(PLAN.ends[0].evolve(connector=""), *PLAN.ends[1:]))
    (problem,) = problems("A,T,L,T,1\n", bare)
    assert "end A has no connector yet" in problem


def test_a_name_that_two_ends_share_is_asked_about():
    ends = tuple(end.evolve(name="ear cup") if end.id != "A" else end for end in PLAN.ends)
    (problem,) = problems("A,T,Ear Cup,T,1\n", PLAN.evolve(ends=ends))
    assert "the end 'Ear Cup' may be L and R" in problem


# -- files ----------------------------------------------------------------------------------------


def test_a_megabyte_of_readings_is_read(tmp_path):
    path = tmp_path / "much.csv"
    row = "A,T,L,T,0.12,as the tester on the bench showed it\n"
    path.write_text(HEAD[:-1] + ",remark\n" + row * 22_000, encoding="utf-8")
    assert path.stat().st_size > 1_000_000
    assert read_readings(path, PLAN).readings == (TIP,)


def test_beyond_the_limit_it_is_refused_with_a_sentence(tmp_path):
    path = tmp_path / "more.csv"
    path.write_bytes(b"A,T,L,T,1\n" * (READINGS_BYTES // 10 + 1))
    with pytest.raises(InputError, match="more than the 4 MB that are read"):
        read_readings(path, PLAN)


@pytest.mark.parametrize("data", [b"\xff\xfeA\x00", b"A,T,L,T,1\n\x00", b"A,T,L,T,\x1b[31m1\n"])
def test_what_is_no_plain_text_is_refused(tmp_path, data):
    path = tmp_path / "odd.csv"
    path.write_bytes(data)
    with pytest.raises(InputError):
        read_readings(path, PLAN)


# -- properties -----------------------------------------------------------------------------------

CONTACTS = [
    (end.id, contact.id) for end in PLAN.ends for contact in PLAN.connector_of(end.id).contacts
]
ohms = st.floats(min_value=0, max_value=OPEN_FROM_OHM, exclude_max=True)
names = st.text(st.characters(categories=("L", "N", "Zs", "P")), max_size=20).filter(
    lambda text: not text.endswith((",", ";"))
)


@st.composite
def some_readings(draw):
    pairs = draw(
        st.lists(
            st.lists(st.sampled_from(CONTACTS), min_size=2, max_size=2, unique=True),
            unique_by=frozenset,
            min_size=1,
            max_size=12,
        )
    )
    meter = Meter(name=draw(names), zero_ohm=draw(ohms), percent=draw(st.floats(0, 50)))
    found = []
    for one, other in pairs:
        joined = draw(st.booleans())
        ohm = draw(st.none() | ohms) if joined else None
        found.append(Reading(one=one, other=other, joined=joined, ohm=ohm))
    return Readings(meter=meter, readings=tuple(found))


@settings(max_examples=60, deadline=None)
@given(some_readings())
def test_readings_are_written_and_read_back_the_same(readings):
    assert read(readings_text(readings)) == readings


@settings(max_examples=100, deadline=None)
@given(st.text(max_size=120) | st.text(st.sampled_from('AT,LS;\t"#:0.1\n '), max_size=120))
def test_any_text_is_read_or_refused_with_problems(text):
    with suppress(InputError):
        assert {one.one[0] for one in read(text).readings} <= set(PLAN.end_by_id)
