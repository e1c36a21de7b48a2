"""How often a definition is used in plans that lie about."""

import json

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan, write_plan
from planner.library.using import PlanUse, Uses
from tests.files.samples import split_plan


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "leads" / "pit.json"
    path.parent.mkdir()
    write_plan(path, split_plan(tmp_path))
    return path


def test_a_plan_uses_what_it_carries(path):
    for kind, name in (
        ("connector", "bench-three"),
        ("pinout", "bench-three-phones"),
        ("cable", "bench-two"),
        ("part", "bench-boot"),
    ):
        assert Uses([path]).of(kind, name) == (PlanUse(path, "Pit lead", 1),)
    assert Uses([path]).of("cable", "bench-three") == ()


def test_a_folder_is_looked_through_and_a_plan_named_twice_counts_once(path):
    assert len(Uses([path.parent, path]).of("part", "bench-boot")) == 1


def test_every_definition_of_the_demo_plans_is_found():
    demo = data_dir("resources") / "demo"
    uses = Uses([demo])
    assert uses.problems == []
    assert uses.plans == len(list(demo.glob("*.json"))) > 3
    for path in demo.glob("*.json"):
        for pinout in read_plan(path).definitions.pinouts:
            assert path in [it.path for it in uses.of("pinout", pinout.id)]


def test_what_is_no_plan_is_passed_over_and_what_can_t_be_read_is_told(path):
    (path.parent / "other.json").write_text('{"format": "cupwright-part", "version": 1}')
    (path.parent / "torn.json").write_text('{"format"')
    (path.parent / "odd.json").write_text(
        json.dumps({"format": "cupwright-plan", "definitions": {"parts": [1, {"revision": "x"}]}})
    )
    uses = Uses([path.parent, path.parent / "gone.json"])
    assert [problem.where.rpartition("/")[2].partition(":")[0] for problem in uses.problems] == [
        "torn.json",
        "gone.json",
    ]
    assert len(uses.of("part", "bench-boot")) == 1


def test_there_is_an_end_to_the_plans_that_are_looked_at(path, monkeypatch):
    write_plan(path.with_name("second.json"), read_plan(path))
    monkeypatch.setattr("planner.library.using.MOST_PLANS", 1)
    uses = Uses([path.parent])
    assert uses.plans == 1
    assert "more than 1 plans" in uses.problems[0].what
