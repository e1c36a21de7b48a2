"""What is written is read back the same, for each kind of file."""

import tomllib
from pathlib import Path

from hypothesis import given, settings

from planner.files.definitions import definition_text, parse_definition
from planner.files.plans import parse_plan, plan_bytes
from tests.files.strategies import DEFINITIONS, PLANS

HERE = Path("somewhere")


@settings(max_examples=150, deadline=None)
@given(DEFINITIONS)
def test_a_definition_comes_back_the_same(record):
    assert parse_definition(definition_text(record), HERE) == record


@settings(max_examples=100, deadline=None)
@given(DEFINITIONS)
def test_writing_a_definition_again_gives_the_same_text(record):
    text = definition_text(record)
    assert definition_text(parse_definition(text, HERE)) == text
    assert definition_text(record, earlier=text) == text


@settings(max_examples=60, deadline=None)
@given(DEFINITIONS, DEFINITIONS)
def test_an_edited_file_holds_the_new_values(before, after):
    if type(before) is type(after):
        text = definition_text(after, earlier=definition_text(before))
        assert tomllib.loads(text) == tomllib.loads(definition_text(after))


@settings(max_examples=40, deadline=None)
@given(PLANS)
def test_a_plan_comes_back_the_same_and_so_do_its_bytes(plan):
    written = plan_bytes(plan)
    read = parse_plan(written.decode(), HERE)
    assert read == plan
    assert plan_bytes(read) == written
