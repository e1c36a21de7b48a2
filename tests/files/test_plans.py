"""Plan files: stable bytes, readable, and refused when they do not hang together."""

import json
from pathlib import Path

import pytest

from planner.data import data_dir
from planner.files.plans import parse_plan, plan_bytes, read_plan, write_plan
from planner.model.plan import Plan
from planner.problem import InputError
from tests.files.samples import split_plan

HERE = Path("lead.json")


@pytest.fixture
def plan(tmp_path):
    return split_plan(tmp_path)


def test_a_plan_that_uses_everything_comes_back_the_same(tmp_path, plan):
    path = tmp_path / "lead.json"
    write_plan(path, plan)
    assert read_plan(path) == plan
    assert path.read_bytes() == plan_bytes(plan)


def test_an_empty_plan_is_a_file_too():
    assert plan_bytes(Plan()) == b'{"format": "cupwright-plan", "version": 1}\n'
    assert parse_plan(plan_bytes(Plan()).decode(), HERE) == Plan()


def test_short_groups_stand_on_a_line_each(plan):
    lines = plan_bytes(plan).decode().splitlines()
    assert '    {"end": "A", "conductor": "red", "contact": "T"},' in lines
    assert max(map(len, lines)) <= 140


def test_the_file_ends_with_a_newline_and_has_no_noise(plan):
    turned = plan.ends[0].evolve(turn_deg=0.1 + 0.2)
    text = plan_bytes(plan.evolve(ends=(turned, *plan.ends[1:]))).decode()
    assert text.endswith("}\n")
    assert '"turn_deg": 0.3}' in text


def test_the_keys_come_in_one_order_whatever_the_file_had(plan):
    values = json.loads(plan_bytes(plan))
    backwards = json.dumps(dict(reversed(values.items())))
    assert plan_bytes(parse_plan(backwards, HERE)) == plan_bytes(plan)


def test_the_copies_of_definitions_are_from_the_solder_side(plan):
    connector = plan.definitions.connectors[0].evolve(drawn_from="mating")
    held = plan.definitions.evolve(connectors=(connector,))
    text = plan_bytes(plan.evolve(definitions=held)).decode()
    assert '"drawn_from": "mating"' in text
    read = parse_plan(text, HERE).definitions.connectors[0]
    assert read.by_id["T"].terminal.x_mm == connector.by_id["T"].terminal.x_mm


def test_a_plan_that_does_not_hang_together_is_refused_with_its_place(plan):
    spoiled = plan_bytes(plan).decode().replace('"contact": "T"', '"contact": "TT"', 1)
    with pytest.raises(InputError) as caught:
        parse_plan(spoiled, HERE)
    (problem,) = caught.value.problems
    assert problem.where == "lead.json: landings[#1].contact"
    assert problem.what == "there is no contact on 'bench-three' called 'TT'"


@pytest.mark.parametrize(
    "path", sorted((data_dir("resources") / "demo").glob("*.json")), ids=lambda path: path.stem
)
def test_saving_a_demo_plan_again_changes_no_byte(path):
    assert plan_bytes(read_plan(path)) == path.read_bytes()
