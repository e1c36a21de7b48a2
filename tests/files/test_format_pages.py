"""The examples on the pages about file formats are valid, and the pages name every key."""

import re
from pathlib import Path

import pytest

from planner.files.definitions import parse_definition
from planner.files.envelope import KINDS, VERSIONS
from planner.files.plans import parse_plan, plan_bytes
from planner.files.schema import schema

PAGES = Path(__file__).parents[2] / "docs" / "formats"


def page(kind):
    return (PAGES / f"{kind}.md").read_text(encoding="utf-8")


def example(kind, language):
    return re.search(rf"```{language}\n(.*?)```", page(kind), re.DOTALL).group(1)


@pytest.mark.parametrize("kind", ["connector", "pinout", "cable", "part"])
def test_the_example_of_a_definition_is_valid(kind):
    assert parse_definition(example(kind, "toml"), PAGES).id


def test_the_example_of_a_plan_is_as_it_is_written():
    text = example("plan", "json")
    assert plan_bytes(parse_plan(text, PAGES)).decode() == text


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_names_every_key_of_its_kind(kind):
    body = schema(kind)
    keys = set(body["properties"])
    if kind != "plan":
        keys |= {key for part in body.get("$defs", {}).values() for key in part["properties"]}
    assert {key for key in keys if not re.search(rf"\b{key}\b", page(kind))} == set()


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_has_a_history_up_to_the_version_written_now(kind):
    assert re.findall(r"^\| (\d+) \|", page(kind).partition("## History")[2], re.MULTILINE) == [
        str(version) for version in range(1, VERSIONS[kind] + 1)
    ]
