"""`sheet --unit`: the pages of a unit, the summary of all, and what is told besides."""

import pytest

from planner.files.plans import write_plan
from planner.proving.reading_csv import read_readings
from planner.proving.unit_file import append_unit, units_path
from tests.proving.unit_samples import PLAN, all_good, unit


@pytest.fixture
def proved(tmp_path):
    path = tmp_path / "pit-lead.json"
    write_plan(path, PLAN)
    append_unit(path, unit(1))
    append_unit(path, unit(2, verdict="failed"))
    return path


def test_a_unit_that_passed_gives_its_certificate_and_0(cupwright, proved, tmp_path):
    done = cupwright("sheet", proved, "--unit", "1", "-o", tmp_path / "one.pdf")
    assert (done.status, done.out, done.err) == (0, f"{tmp_path}/one.pdf\n", "")
    assert (tmp_path / "one.pdf").read_bytes().startswith(b"%PDF-")


def test_one_that_has_not_gives_its_pages_and_1(cupwright, proved, tmp_path):
    path = tmp_path / "two.svg"
    options = ("--one-file", "--paper", "letter", "--language", "de")
    done = cupwright("sheet", proved, "--unit", "2", "-o", path, *options)
    assert (done.status, done.out) == (1, f"{path}\n")
    assert 'width="215.9mm"' in path.read_text("utf-8")
    assert "NICHT BESTANDEN" in path.read_text("utf-8")


def test_all_is_the_summary(cupwright, proved, tmp_path):
    done = cupwright("sheet", proved, "--unit", "all", "-o", tmp_path / "units.csv")
    assert done.status == 1  # one has failed
    rows = (tmp_path / "units.csv").read_text("utf-8").splitlines()
    assert [row.split(",")[0] for row in rows] == ["unit", "1", "2"]


def test_as_csv_the_readings_of_a_unit_can_be_read_again(cupwright, proved, tmp_path):
    path = tmp_path / "one.csv"
    done = cupwright("sheet", proved, "--unit", "1", "-o", path)
    assert (done.status, done.out) == (0, f"{path}\n")
    assert read_readings(path, PLAN) == all_good()


def test_a_unit_that_is_not_there_is_3(cupwright, proved, tmp_path):
    done = cupwright("sheet", proved, "--unit", "9", "-o", tmp_path / "nine.pdf")
    assert done.status == 3
    assert "there is no unit 9.\n  Kept are 1, 2." in done.err


def test_what_was_dropped_is_told(cupwright, proved, tmp_path):
    path = units_path(proved)
    path.write_bytes(path.read_bytes()[:-20])
    done = cupwright("sheet", proved, "--unit", "1", "-o", tmp_path / "one.pdf")
    assert done.status == 0
    assert "line 2: unit 2 was dropped: its line is torn." in done.err


@pytest.mark.parametrize(
    ("number", "name"),
    [("all", "a.pdf"), ("0", "a.pdf"), ("one", "a.pdf"), ("9" * 5000, "a.pdf")],
)
def test_wrong_use_is_2(cupwright, proved, tmp_path, number, name):
    done = cupwright("sheet", proved, "--unit", number, "-o", tmp_path / name)
    assert done.status == 2
    assert "--unit" in done.err
