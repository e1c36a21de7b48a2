"""The summary holds every figure of the shipped leads, each finite or said to be not known."""

import dataclasses
import math

import pytest

from planner.data import data_dir
from planner.electrical.summary import electrical_summary
from planner.files.plans import read_plan
from planner.wiring.graph import Wiring

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
