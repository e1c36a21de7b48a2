"""Which end is the source, and which contact is a return."""

import pytest

from planner.wiring.roles import is_return, role_of
from tests.building import (
    BALANCED,
    BALANCED_IN,
    CUP,
    JACK3,
    LINE_IN,
    LINE_OUT,
    PHONES,
    PHONES_IN,
    PHONO_IN,
    PHONO_OUT,
    fitting,
    lead,
)

TRS_LINE = fitting(JACK3, "jack-line", "T +, R -, S shield", drive="line")


def roles(one, other):
    plan = lead({"A": one, "B": other}, ())
    return role_of(plan, "A"), role_of(plan, "B")


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        (BALANCED, CUP, ("source", "load")),
        (PHONES, BALANCED_IN, ("source", "load")),
        (PHONO_OUT, PHONO_IN, ("source", "load")),
        # Common practice, no source: a female XLR on a cable mates with a male output.
        (LINE_OUT, LINE_IN, ("source", "load")),
        (LINE_IN, LINE_OUT, ("load", "source")),
        # A jack at line level says nothing by itself: it is the opposite of the other end.
        (TRS_LINE, LINE_IN, ("source", "load")),
        (LINE_OUT, TRS_LINE, ("source", "load")),
        (TRS_LINE, TRS_LINE, ("", "")),
    ],
)
def test_role(one, other, expected):
    assert roles(one, other) == expected


def test_what_the_end_says_comes_first():
    plan = lead({"A": LINE_IN, "B": LINE_OUT}, ())
    told = plan.evolve(ends=(plan.ends[0].evolve(role="source"), plan.ends[1]))
    assert role_of(told, "A") == "source"


def test_no_return_where_one_of_two_sources_is_driven_balanced():
    plan = lead({"A": PHONES, "B": BALANCED, "C": (CUP, "L")}, ())
    assert not is_return(plan, "C", "S")


def test_no_role_without_hardware():
    plan = lead({"A": LINE_IN, "B": LINE_OUT}, ())
    bare = plan.evolve(ends=tuple(end.evolve(connector="") for end in plan.ends))
    assert role_of(bare, "A") == ""


@pytest.mark.parametrize(
    ("one", "other", "contact", "expected"),
    [
        (PHONES, CUP, ("A", "S"), True),
        (PHONES, CUP, ("A", "T"), False),
        (PHONES, CUP, ("B", "S"), True),
        (BALANCED, CUP, ("A", "R1"), False),
        (BALANCED, CUP, ("B", "S"), False),
        (BALANCED, PHONES_IN, ("B", "S"), False),
        (LINE_OUT, LINE_IN, ("B", "3"), False),
        (PHONO_OUT, LINE_IN, ("B", "3"), False),
        (PHONO_OUT, LINE_IN, ("A", "S"), True),
        (LINE_OUT, PHONO_IN, ("B", "S"), False),
    ],
)
def test_return(one, other, contact, expected):
    assert is_return(lead({"A": one, "B": other}, ()), *contact) == expected
