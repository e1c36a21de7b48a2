"""`sheet`: which files are written, and the exit status."""

import pytest

from planner.data import data_dir

DEMO = data_dir("resources") / "demo"
SPOILED, CLEAR = DEMO / "spoiled-cue-desk.json", DEMO / "stage-left-balanced-line.json"


def test_a_clear_plan_gives_a_sheet_and_0(cupwright, tmp_path):
    done = cupwright("sheet", CLEAR, "-o", tmp_path / "line.svg", "--one-file")
    assert (done.status, done.out, done.err) == (0, f"{tmp_path}/line.svg\n", "")
    assert (tmp_path / "line.svg").read_text().startswith("<?xml")


def test_a_plan_with_a_stop_gives_its_sheet_and_1(cupwright, tmp_path):
    done = cupwright("sheet", SPOILED, "-o", tmp_path / "bad.pdf")
    assert (done.status, done.out) == (1, f"{tmp_path}/bad.pdf\n")
    assert (tmp_path / "bad.pdf").read_bytes().startswith(b"%PDF-")


def test_paper_and_date_reach_the_sheet(cupwright, tmp_path):
    path = tmp_path / "line.svg"
    cupwright("sheet", CLEAR, "-o", path, "--one-file", "--paper", "letter", "--date", "6 May 2031")
    drawn = path.read_text()
    assert 'width="215.9mm"' in drawn
    assert "6 May 2031" in drawn


def test_the_same_plan_gives_the_same_bytes(cupwright, tmp_path):
    for name in ("a.svg", "b.svg"):
        cupwright("sheet", CLEAR, "-o", tmp_path / name, "--one-file")
    assert (tmp_path / "a.svg").read_bytes() == (tmp_path / "b.svg").read_bytes()


@pytest.mark.parametrize("name", ["gone/line.svg", "gone/line.pdf"])
def test_a_folder_that_is_not_there_is_told(cupwright, tmp_path, name):
    done = cupwright("sheet", CLEAR, "-o", tmp_path / name)
    assert done.status == 3
    assert "it can't be written: no such file or directory" in done.err
