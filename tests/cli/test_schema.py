"""`schema KIND` prints the schema."""

import json

import pytest

from planner.cli.schema import KINDS
from planner.files.envelope import KINDS as FILE_KINDS
from planner.files.schema import schema


def test_every_kind_of_file_has_a_schema():
    assert KINDS == FILE_KINDS


@pytest.mark.parametrize("kind", KINDS)
def test_the_schema_is_printed_as_json(cupwright, kind):
    done = cupwright("schema", kind)
    assert (done.status, json.loads(done.out)) == (0, schema(kind))
