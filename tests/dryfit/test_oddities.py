"""Hostile connectors and cables: each gives a finding with its figures, never a crash, NaN, inf."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.dryfit.fit import fit_plan
from planner.dryfit.identity import ById
from planner.dryfit.measuring import measured
from planner.dryfit.oddities import cable_oddities, connector_oddities
from planner.library.loading import load_library
from planner.model.connector import Shell, Terminal
from planner.services.checking import check_plan
from planner.wiring.graph import Wiring
from tests.dryfit.crowds import site
from tests.dryfit.moving import moving_gap_mm
from tests.dryfit.test_fit import cable, connector, plan
from tests.strategies import plans

FLAT = Shell(shape="d", width_mm=12, height_mm=7)


def kinds(hardware):
    return [(it.kind, it.names) for it in connector_oddities(ById(hardware))]


@pytest.mark.parametrize(
    ("places", "odd"),
    [
        ({"1": (0, 0), "2": (0, 0)}, [("terminals-overlap", ("1", "2"))]),
        ({"1": (0, 0), "2": (1.4, 0)}, [("terminals-overlap", ("1", "2"))]),
        ({"1": (0, 0), "2": (1.5, 0)}, [("terminals-overlap", ("1", "2"))]),
        ({"1": (0, 0), "2": (1.6, 0)}, []),
        ({"1": (0, 5.5)}, [("outside-shell", ("1",))]),
        ({"1": (0, 5.2)}, []),
        ({"1": (0, 0)}, []),
    ],
)
def test_terminals_of_1_5_mm_in_a_bore_of_12_mm(places, odd):
    assert kinds(connector(places)) == odd


def test_a_flat_shell_has_sides():
    assert kinds(connector({"1": (0, 3)}).evolve(shell=FLAT)) == [("outside-shell", ("1",))]
    assert kinds(connector({"1": (5, 0)}).evolve(shell=FLAT)) == []


def test_cores_in_one_place_or_outside_the_jacket():
    first, second = cable().cores
    stacked = cable().evolve(cores=(first, second.evolve(x_mm=first.x_mm)))
    assert [it.kind for it in cable_oddities(ById(stacked))] == ["cores-overlap"]
    outside = cable().evolve(cores=(first, second.evolve(x_mm=2.5)))
    assert [it.kind for it in cable_oddities(ById(outside))] == ["outside-jacket"]
    assert cable_oddities(ById(cable())) == ()


def test_nothing_that_is_built_in_is_odd():
    library = load_library()
    odd = [it.id for it in library.connectors() if connector_oddities(ById(it))]
    odd += [it.id for it in library.cables() if cable_oddities(ById(it))]
    assert odd == []


HOSTILE = {
    "all in one place": connector(dict.fromkeys("123", (0.0, 0.0))),
    "all outside": connector({"1": (50, 0), "2": (-50, 0), "3": (0, 99)}),
    "one contact in the middle": connector({"1": (0, 0)}),
    "wider than the shell": connector(bore_mm=20),
    "no wider than a hair": connector(bore_mm=1e-9),
    "a D with no bore": connector().evolve(shell=FLAT),
    "a shell of nothing": connector().evolve(shell=Shell(bore_mm=1e-6)),
}


def figures(sample):
    """Return every figure of the fit of end B at some turns."""
    each = site(sample)
    for turn in (0.0, 90.0, -359.0):
        gaps, least = measured(each, turn)
        yield from (least, moving_gap_mm(each, turn))
        for it in gaps:
            yield from (it.gap_mm, it.limit_mm, *it.first.start, *it.second.start)
        for body in each.at(turn):
            yield from (*body.start, *body.end, body.radius_mm)


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_connectors_give_figures_and_words(name):
    hardware = HOSTILE[name]
    landed = dict(zip(("WH", "RD", "SH"), (it.id for it in hardware.contacts), strict=False))
    sample = plan(landed, hardware)
    assert not any(math.isnan(x) for x in figures(sample))
    said = [f"{it.what} {it.mend}" for it in check_plan(sample, ())]
    assert not [text for text in said if "nan" in text.split() or "inf" in text.split()]
    assert [text for text in said if "stopped short" in text] == []


def test_cups_in_one_place_are_found_and_named():
    sample = plan({"WH": "1"}, HOSTILE["all in one place"])
    (odd,) = [it for it in check_plan(sample, ()) if it.code == "odd-geometry"]
    assert "contacts 1 and 2, 0 mm apart, reach 1.5 mm into each other" in odd.what


def test_no_cable_chosen_is_no_fit():
    sample = plan({"WH": "1"})
    section = sample.sections[0].evolve(cable="")
    assert fit_plan(sample.evolve(sections=(section,)), Wiring(sample)) == ()


SIZES = st.floats(1e-6, 20)
TERMINALS = st.builds(
    Terminal,
    kind=st.sampled_from(["cup", "lug", "post"]),
    x_mm=st.floats(-100, 100),
    y_mm=st.sampled_from([0.0, 1e-12, 3.0, -100.0]),
    z_mm=st.floats(-100, 100),
    bore_mm=SIZES,
    width_mm=SIZES,
    depth_mm=st.floats(1e-6, 50),
    opening_deg=st.floats(-360, 360),
)


@given(st.lists(TERMINALS, min_size=1, max_size=3), st.floats(-360, 360))
@settings(max_examples=60, deadline=None)
def test_any_terminals_give_figures(terminals, turn_deg):
    contacts = tuple(
        it.evolve(terminal=terminal)
        for it, terminal in zip(connector().contacts, terminals, strict=False)
    )
    hardware = connector().evolve(contacts=contacts)
    landed = dict(zip(("WH", "RD", "SH"), (it.id for it in contacts), strict=False))
    assert not any(math.isnan(x) for x in figures(plan(landed, hardware, turn_deg=turn_deg)))


@given(plans())
@settings(max_examples=60, deadline=None)
def test_any_plan_has_a_fit_of_figures(sample):
    for fit in fit_plan(sample, Wiring(sample)):
        assert not math.isnan(fit.least_gap_mm)
        assert all(math.isfinite(gap.gap_mm) for gap in fit.gaps)
