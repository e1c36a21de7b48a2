"""The pages on readings and units: their examples are read, and they name every key."""

import re
from pathlib import Path

from planner.proving.reading import Meter, Reading, Readings
from planner.proving.reading_csv import readings_from_text
from planner.proving.unit_file import VERSION
from planner.proving.units import UnitRecord
from planner.services.units import COLUMNS
from tests import building
from tests.building import lead

PAGES = Path(__file__).parents[2] / "docs" / "formats"


def page(name):
    return (PAGES / f"{name}.md").read_text(encoding="utf-8")


def test_the_example_of_readings_is_read_as_the_page_says():
    text = re.search(r"```csv\n(.*?)```", page("readings"), re.DOTALL).group(1)
    plan = lead({"A": building.PHONES, "B": building.PHONES_IN}, ["RD A.T B.T"])
    assert readings_from_text(text, plan, "page") == Readings(
        meter=Meter(name="bench meter 2", zero_ohm=0.2),
        readings=(
            Reading(one=("A", "T"), other=("B", "T"), joined=True, ohm=0.35),
            Reading(one=("A", "R"), other=("B", "R"), joined=True),
            Reading(one=("A", "T"), other=("A", "R"), joined=False),
        ),
    )


def keys_of(model):
    """Return the keys of a record and of all records in it."""
    found = set()
    for part in (model.model_json_schema(), *model.model_json_schema()["$defs"].values()):
        found |= set(part["properties"])
    return found


def test_the_page_on_units_names_every_key_and_column():
    wanted = keys_of(UnitRecord) | set(COLUMNS)
    assert {key for key in wanted if f"`{key}`" not in page("units")} == set()


def test_the_page_on_units_has_a_history_up_to_the_version_written_now():
    history = page("units").partition("## History")[2]
    assert re.findall(r"^\| (\d+) \|", history, re.MULTILINE) == [
        str(version) for version in range(1, VERSION + 1)
    ]
