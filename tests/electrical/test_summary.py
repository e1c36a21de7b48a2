"""The summary holds every figure of the shipped leads, each finite or said to be not known."""

import dataclasses
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.data import data_dir
from planner.electrical.summary import electrical_summary
from planner.files.plans import read_plan
from planner.wiring.graph import Wiring
from tests.electrical.leads import random_lead
from tests.strategies import plans

DEMO = sorted((data_dir("resources") / "demo").glob("*.json"))


def figures(value):
    if dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from figures(getattr(value, field.name))
    elif isinstance(value, tuple):
        for each in value:
            yield from figures(each)
    elif isinstance(value, float):
        yield value


@pytest.mark.parametrize("path", DEMO, ids=lambda path: path.stem)
def test_no_figure_is_endless_or_not_a_number(path):
    plan = read_plan(path)
    summary = electrical_summary(plan, Wiring(plan))
    found = list(figures(summary))
    assert found
    assert all(math.isfinite(each) for each in found)
    assert [it.conductor for it in summary.conductors] == [it.id for it in plan.conductors]


def test_the_same_plan_gives_the_same_figures():
    plan = read_plan(DEMO[0])
    assert electrical_summary(plan, Wiring(plan)) == electrical_summary(plan, Wiring(plan))


@given(plans())
def test_any_plan_has_figures_that_can_be_printed(plan):
    assert all(math.isfinite(each) for each in figures(electrical_summary(plan, Wiring(plan))))


EXTREME = st.sampled_from([1e-300, 1e-9, 1e-3, 0.1, 1.0, 5.0])


@given(st.integers(0, 500), EXTREME, EXTREME, st.sampled_from([1e-300, 1e-9, 1.0, 1e6]))
def test_absurd_sizes_are_not_known_rather_than_endless(seed, length, strand_mm, gear_ohm):
    plan = random_lead(seed)
    cable = plan.definitions.cables[0].evolve(permittivity=2.3)
    first, *others = cable.cores
    cores = (first.evolve(strand_mm=strand_mm, insulation_mm=20), *others)
    sections = (plan.sections[0].evolve(length_mm=length * 1e5), *plan.sections[1:])
    odd = plan.evolve(
        sections=sections,
        definitions=plan.definitions.evolve(cables=(cable.evolve(cores=cores),)),
        assumed=plan.assumed.evolve(load_ohm=gear_ohm, source_ohm=gear_ohm),
    )
    assert all(math.isfinite(each) for each in figures(electrical_summary(odd, Wiring(odd))))


@given(st.integers(0, 500))
def test_the_order_of_conductors_and_landings_does_not_matter(seed):
    plan = random_lead(seed)
    other = plan.evolve(conductors=plan.conductors[::-1], landings=plan.landings[::-1])
    mine, theirs = (electrical_summary(it, Wiring(it)) for it in (plan, other))
    assert [it.ohm for it in mine.loops] == pytest.approx([it.ohm for it in theirs.loops])
    assert [it.db for it in mine.crosstalks] == pytest.approx([it.db for it in theirs.crosstalks])
