"""`layout`: the text, the JSON object, `--write`, the exit status."""

import json
import os
import subprocess
import sys

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan

DEMO = data_dir("resources") / "demo"
CUE, SPOILED = DEMO / "cue-desk-headphone-lead.json", DEMO / "spoiled-cue-desk.json"
END_KEYS = [
    "end", "turn_deg", "crossings", "least_gap_mm", "gaps", "best", "joints", "leads", "sleeves",
    "sleeved", "dabs", "liner", "uncured", "fits",
]  # fmt: skip


@pytest.fixture
def crossed(tmp_path):
    """The demo lead with its five-pole plug turned so that leads cross."""
    path = tmp_path / "lead.json"
    text = CUE.read_text(encoding="utf-8").replace('"turn_deg": 20', '"turn_deg": 200')
    path.write_text(text, encoding="utf-8")
    return path


def values(cupwright, *words):
    return json.loads(cupwright("layout", *words, "--json").out)


def test_the_json_is_the_object_of_the_formats_page(cupwright):
    found = values(cupwright, CUE)
    assert list(found) == ["plan", "written", "ends", "electrical"]
    assert [end["end"] for end in found["ends"]] == ["A", "L", "R"]
    assert all(list(end) == END_KEYS for end in found["ends"])
    page = (DEMO.parents[1] / "docs" / "formats" / "layout.md").read_text(encoding="utf-8")
    assert [key for key in END_KEYS if f"`{key}`" not in page] == []


def test_every_joint_is_soldered_once(cupwright):
    joints = values(cupwright, CUE)["ends"][0]["joints"]
    assert sorted(joint["contact"] for joint in joints) == ["R1", "R2", "R3", "S", "T"]
    assert [joint["order"] for joint in joints] == [1, 2, 3, 4, 5]


def test_the_same_plan_gives_the_same_bytes(cupwright):
    assert cupwright("layout", CUE, "--json").out == cupwright("layout", CUE, "--json").out


@pytest.mark.parametrize("command", ["layout", "check"])
def test_other_runs_give_the_same_bytes(command):
    """Sets come in another order where strings hash otherwise."""
    words = [sys.executable, "-m", "planner", command, str(SPOILED), "--json"]
    runs = [
        subprocess.run(words, check=False, env=environment, capture_output=True)
        for environment in (os.environ | {"PYTHONHASHSEED": seed} for seed in "17")
    ]
    assert [(run.returncode, run.stderr) for run in runs] == [(1, b"")] * 2
    assert runs[0].stdout == runs[1].stdout


def test_a_stop_in_the_plan_gives_1(cupwright):
    assert cupwright("layout", SPOILED).status == 1
    assert cupwright("layout", CUE).status == 0


def test_the_text_is_no_wider_than_80_columns(cupwright):
    text = cupwright("layout", CUE).out
    assert "End A, 4.4 five-pole, turned 20°" in text
    assert max(map(len, text.splitlines())) <= 80


def test_write_keeps_a_turn_without_crossings(cupwright, crossed):
    before = values(cupwright, crossed)["ends"][0]
    assert before["crossings"]
    assert cupwright("layout", crossed, "--write", "--end", "A").status == 0
    after = values(cupwright, crossed)["ends"][0]
    assert after["crossings"] == []
    assert after["turn_deg"] == before["best"]["turn_deg"]
    kept = read_plan(crossed).end_by_id["A"]
    assert kept.solder_order == tuple(joint["contact"] for joint in after["joints"])


def test_without_write_the_file_stays_as_it_is(cupwright, crossed):
    before = crossed.read_bytes()
    cupwright("layout", crossed)
    assert crossed.read_bytes() == before


def test_what_is_kept_is_the_best_already(cupwright, crossed):
    cupwright("layout", crossed, "--write")
    once = crossed.read_bytes()
    cupwright("layout", crossed, "--write")
    assert crossed.read_bytes() == once


def test_an_end_that_is_not_there_is_wrong_use(cupwright):
    done = cupwright("layout", CUE, "--end", "AA")
    assert done.status == 2
    assert "there is no end 'AA'" in done.err


def test_a_plan_with_nothing_landed_says_what_to_do(cupwright, tmp_path):
    path = tmp_path / "empty.json"
    path.write_text('{"format": "cupwright-plan", "version": 1, "title": "New"}', encoding="utf-8")
    done = cupwright("layout", path)
    assert done.status == 1, "no plan is clear before its connectors are chosen"
    assert "Nothing is landed yet" in done.out
