"""`sheet -o FILE.csv`: the cut list, for one lead or a run."""

import csv

import pytest

from planner.data import data_dir

DEMO = data_dir("resources") / "demo"
SPOILED, CLEAR = DEMO / "spoiled-cue-desk.json", DEMO / "stage-left-balanced-line.json"


def cells(path, column):
    with path.open(encoding="utf-8", newline="") as stream:
        return [row[column] for row in csv.DictReader(stream)]


def test_a_clear_plan_gives_its_cut_list_and_0(cupwright, tmp_path):
    path = tmp_path / "line.CSV"
    done = cupwright("sheet", CLEAR, "-o", path)
    assert (done.status, done.out, done.err) == (0, f"{path}\n", "")
    assert set(cells(path, "pieces")) == {"1", "2"}


def test_a_run_of_leads_reaches_the_list(cupwright, tmp_path):
    cupwright("sheet", CLEAR, "-o", tmp_path / "run.csv", "--leads", "12")
    # One of each a lead, two of what is at both plugs.
    assert set(cells(tmp_path / "run.csv", "pieces")) == {"12", "24"}


def test_a_run_of_leads_reaches_the_sheet(cupwright, tmp_path):
    for leads in ("1", "12"):
        path = tmp_path / f"{leads}.svg"
        cupwright("sheet", CLEAR, "-o", path, "--one-file", "--leads", leads)
    assert (tmp_path / "1.svg").read_bytes() != (tmp_path / "12.svg").read_bytes()


def test_a_plan_with_a_stop_gives_its_stops_and_1(cupwright, tmp_path):
    done = cupwright("sheet", SPOILED, "-o", tmp_path / "bad.csv")
    assert done.status == 1
    assert set(cells(tmp_path / "bad.csv", "list")) == {"stop"}


@pytest.mark.parametrize("leads", ["0", "-3", "10001", "many", "1.5"])
def test_a_run_that_can_not_be_is_wrong_use(cupwright, tmp_path, leads):
    done = cupwright("sheet", CLEAR, "-o", tmp_path / "run.csv", "--leads", leads)
    assert done.status == 2
    assert "--leads" in done.err
    assert not (tmp_path / "run.csv").exists()


def test_another_ending_is_wrong_use(cupwright, tmp_path):
    done = cupwright("sheet", CLEAR, "-o", tmp_path / "line.txt")
    assert done.status == 2
    assert ".svg, .pdf or .csv" in done.err
