"""Reading and writing definitions: sides, sizes, comments."""

from pathlib import Path

import pytest

from planner.files.definitions import (
    cable_text,
    connector_text,
    parse_definition,
    part_text,
    pinout_text,
    read_cable,
    read_connector,
    read_part,
    read_pinout,
)
from planner.problem import InputError
from planner.units import awg_area_mm2
from tests.files.samples import CABLE, CONNECTOR, DEFINITIONS, PART, PINOUT

HERE = Path("bench.toml")


def places(connector):
    return [
        (contact.id, contact.terminal.x_mm, contact.terminal.opening_deg)
        for contact in connector.contacts
    ]


def problem_in(text):
    with pytest.raises(InputError) as caught:
        parse_definition(text, HERE)
    return caught.value.problems[0]


def test_each_kind_is_read_by_its_own_reader(tmp_path):
    readers = {
        "connector": read_connector,
        "pinout": read_pinout,
        "cable": read_cable,
        "part": read_part,
    }
    for kind, text in DEFINITIONS.items():
        path = tmp_path / f"{kind}.toml"
        path.write_text(text, encoding="utf-8")
        assert readers[kind](path) == parse_definition(text, path)


def test_each_kind_has_its_own_writer():
    writers = {
        CONNECTOR: connector_text,
        PINOUT: pinout_text,
        CABLE: cable_text,
        PART: part_text,
    }
    for text, write in writers.items():
        record = parse_definition(text, HERE)
        assert parse_definition(write(record), HERE) == record


def test_a_file_drawn_from_the_mating_side_is_mirrored_on_reading():
    drawn = parse_definition(CONNECTOR.replace('"solder"', '"mating"'), HERE)
    assert places(drawn) == [("T", -1.5, 150.0), ("R", 1.5, 30.0), ("S", 0.0, 90.0)]
    assert drawn.drawn_from == "mating"


def test_the_height_towards_the_cable_is_the_same_from_both_sides():
    drawn = parse_definition(CONNECTOR.replace('"solder"', '"mating"'), HERE)
    assert drawn.by_id["S"].terminal.z_mm == 6


def test_a_file_drawn_from_the_mating_side_is_written_as_it_was_drawn():
    text = CONNECTOR.replace('"solder"', '"mating"')
    drawn = parse_definition(text, HERE)
    assert connector_text(drawn, earlier=text) == text
    assert "x_mm = 1.5," in connector_text(drawn).split("[[contacts]]")[1]


def test_a_file_that_states_no_side_is_read_and_says_so():
    drawn = parse_definition(CONNECTOR.replace('view = "solder"\n', ""), HERE)
    assert drawn.drawn_from == "unstated"
    assert "view" not in connector_text(drawn)


def test_the_records_word_for_the_side_is_not_a_key_of_the_file():
    problem = problem_in(CONNECTOR.replace("view =", "drawn_from ="))
    assert (problem.where, problem.mend) == ("bench.toml: drawn_from", "Did you mean 'view'?")


def test_only_two_views_exist():
    problem = problem_in(CONNECTOR.replace('"solder"', '"unstated"'))
    assert problem.what == "'unstated' is not a view"


@pytest.mark.parametrize("view", ["[]", "{}", "1"])
def test_a_view_that_is_no_word_is_refused(view):
    problem = problem_in(CONNECTOR.replace('view = "solder"', f"view = {view}"))
    assert problem.what.endswith("is not a view")


def test_a_gauge_gives_the_metal_area():
    cable = parse_definition(CABLE, HERE)
    assert cable.core_by_id["RD"].area_mm2 == pytest.approx(awg_area_mm2(28), rel=1e-7)


def test_an_area_gives_the_metal_area():
    cable = parse_definition(CABLE.replace("awg = 28", "area_mm2 = 0.14"), HERE)
    assert cable.core_by_id["RD"].area_mm2 == pytest.approx(0.14, rel=1e-7)


@pytest.mark.parametrize("size", ['awg = "28"', "awg = 1000", "awg = [1]", "area_mm2 = -1"])
def test_a_size_that_makes_no_sense_is_a_problem_and_no_crash(size):
    problem = problem_in(CABLE.replace("awg = 28", size))
    assert problem.where == "bench.toml: cores[RD]"


def test_a_date_may_stand_without_quotes():
    assert parse_definition(PINOUT, HERE).source.date == "1996-03-04"


def test_an_edited_file_keeps_comments_order_and_what_was_not_touched():
    record = parse_definition(CONNECTOR, HERE)
    changed = connector_text(record.evolve(title="New name"), earlier=CONNECTOR)
    assert changed == CONNECTOR.replace("Bench three-pole", "New name")


def test_an_edited_core_keeps_its_gauge_until_its_size_changes():
    cable = parse_definition(CABLE, HERE)
    thicker = tuple(
        core.evolve(insulation_mm=1) if core.id == "RD" else core for core in cable.cores
    )
    assert "awg = 28  # as the maker says" in cable_text(cable.evolve(cores=thicker), CABLE)
    other = tuple(core.evolve(strand_mm=0.1) for core in cable.cores)
    assert "awg" not in cable_text(cable.evolve(cores=other), CABLE)


def test_a_contact_can_be_taken_out_of_a_file():
    record = parse_definition(CONNECTOR, HERE)
    fewer = record.evolve(contacts=record.contacts[:2])
    assert parse_definition(connector_text(fewer, CONNECTOR), HERE) == fewer
    assert "# taken from a letter" in connector_text(fewer, CONNECTOR)
