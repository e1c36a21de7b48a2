"""What laying out tells while it runs, and which ends it takes."""

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.services.laying_out import lay_out, taken
from tests.edits.test_sleeving import covered, crowded

CUE = data_dir("resources") / "demo" / "cue-desk-headphone-lead.json"


@pytest.mark.parametrize("work", [lay_out, taken])
def test_progress_rises_to_the_whole(work):
    told = []
    work(read_plan(CUE), progress=told.append)
    assert told == sorted(told)
    assert told[0] < 0.34
    assert 0.99 < told[-1] <= 1


def test_the_sleeves_that_are_needed_are_kept_too():
    after = taken(crowded(), only=["B"])
    assert {end for end, _ in covered(after)} == {"B"}


def test_only_the_ends_that_are_named_are_laid_out_and_changed():
    plan = read_plan(CUE)
    turned = plan.evolve(ends=tuple(it.evolve(turn_deg=90) for it in plan.ends))
    assert [it.fit.end for it in lay_out(turned, only=["L"]).ends] == ["L"]
    after = taken(turned, only=["A"])
    assert [it.id for it, was in zip(after.ends, turned.ends, strict=True) if it != was] == ["A"]
