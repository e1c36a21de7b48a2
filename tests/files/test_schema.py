"""The schemas, judged by an independent validator, agree with the reader."""

import json

import jsonschema
import pytest

from planner.data import data_dir
from planner.files.definitions import parse_definition
from planner.files.envelope import KINDS
from planner.files.plans import plan_bytes
from planner.files.schema import schema
from planner.files.syntax import parse_toml, read_json, read_toml
from planner.problem import InputError
from tests.files.samples import CABLE, CONNECTOR, DEFINITIONS, PART, PINOUT, split_plan

FOLDERS = {
    "connector": data_dir("connector_defs"),
    "pinout": data_dir("resources") / "pinouts",
    "cable": data_dir("resources") / "cable",
    "part": data_dir("resources") / "parts",
}


def complaints(kind, values):
    validator = jsonschema.Draft202012Validator(schema(kind))
    return [error.message for error in validator.iter_errors(json.loads(json.dumps(values)))]


@pytest.mark.parametrize("kind", KINDS)
def test_each_schema_is_a_valid_schema(kind):
    jsonschema.Draft202012Validator.check_schema(schema(kind))


@pytest.mark.parametrize("kind", FOLDERS)
def test_every_shipped_definition_meets_its_schema(kind):
    paths = sorted(FOLDERS[kind].rglob("*.toml"))
    assert paths
    assert {str(path): complaints(kind, read_toml(path)) for path in paths} == {
        str(path): [] for path in paths
    }


def test_every_demo_plan_meets_the_schema():
    paths = sorted((data_dir("resources") / "demo").glob("*.json"))
    assert len(paths) >= 6
    assert {str(path): complaints("plan", read_json(path)) for path in paths} == {
        str(path): [] for path in paths
    }


def test_a_plan_that_uses_everything_meets_the_schema(tmp_path):
    assert complaints("plan", json.loads(plan_bytes(split_plan(tmp_path)))) == []


@pytest.mark.parametrize("kind", DEFINITIONS)
def test_the_samples_meet_their_schemas(tmp_path, kind):
    assert complaints(kind, parse_toml(DEFINITIONS[kind], tmp_path)) == []


@pytest.mark.parametrize(
    ("kind", "text", "old", "new"),
    [
        ("connector", CONNECTOR, "bore_mm = 7", "bore_mm = -7"),
        ("connector", CONNECTOR, "bore_mm = 7", "bore_mm = 7\nbor_mm = 7"),
        ("connector", CONNECTOR, 'view = "solder"', 'view = "front"'),
        ("connector", CONNECTOR, 'view = "solder"', 'drawn_from = "solder"'),
        ("connector", CONNECTOR, "version = 1", "version = 2"),
        ("connector", CONNECTOR, 'id = "bench-three"', 'id = "bench three"'),
        ("pinout", PINOUT, '"R+"', '"Q+"'),
        ("pinout", PINOUT, 'drive = "load"', 'drive = "lod"'),
        ("cable", CABLE, "awg = 28", "awg = 28\narea_mm2 = 0.1"),
        ("cable", CABLE, "awg = 28", ""),
        ("cable", CABLE, '"WH"', '"WT"'),
        ("part", PART, "cupwright-part", "cupwright-cable"),
        ("part", PART, 'kind = "boot"\n', ""),
    ],
)
def test_schema_and_reader_refuse_the_same_spoiled_files(tmp_path, kind, text, old, new):
    assert old in text
    spoiled = text.replace(old, new, 1)
    assert complaints(kind, parse_toml(spoiled, tmp_path))
    with pytest.raises(InputError):
        parse_definition(spoiled, tmp_path)


def test_an_unknown_kind_is_told():
    with pytest.raises(InputError, match="Did you mean 'cable'"):
        schema("cabel")
