"""`diagnose`: the text, the JSON object, the exit status (invented units)."""

import json
from typing import get_args

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.proving.diagnosing.records import FaultKind
from planner.proving.reading_csv import readings_text
from tests.proving.diagnosing.units import bench, read_all

DEMO = data_dir("resources") / "demo"
CUE, LOOM = DEMO / "cue-desk-headphone-lead.json", DEMO / "recording-rack-loom.json"
PAGE = DEMO.parents[1] / "docs" / "formats" / "diagnosis.md"
KEYS = [
    "plan", "readings", "verdict", "cost", "proved", "explanations", "more", "counted",
    "high_joints", "contradictions", "next", "look", "unseen", "remarks", "unread",
]  # fmt: skip


@pytest.fixture
def file(tmp_path):
    def write(text):
        path = tmp_path / "unit-7.csv"
        path.write_text(text, encoding="utf-8")
        return path

    return write


def unit(plan, spoil=lambda its: its.sound):
    """Return the readings of a unit, as a file has them."""
    return readings_text(read_all(spoil(bench(read_plan(plan)))))


def reversed_and_bridged(its):
    state = its.sound.exchanged(its.slot("R.RD"), its.slot("R.GN"))
    return state.bridged(its.place("A.T"), its.place("A.R1"))


def test_a_sound_unit(cupwright, file):
    done = cupwright("diagnose", CUE, file(unit(CUE)))
    assert (done.status, done.err) == (0, "")
    assert "SOUND" in done.out
    assert "A meter cannot see:" in done.out


def test_a_faulty_unit(cupwright, file):
    done = cupwright("diagnose", CUE, file(unit(CUE, reversed_and_bridged)))
    text = " ".join(done.out.split())
    assert (done.status, done.err) == (1, "")
    assert "The readings take 2 faults at least" in text
    assert "Right channel reversed: cores on ring 2 and ring 3 exchanged at one end." in text
    assert "Bridge between tip and ring 1 at A." in text
    assert "take the resistance; about" in text
    assert "Unplug every end" in text
    assert max(map(len, done.out.splitlines())) <= 80


def test_an_unfinished_unit_is_no_fault_and_asks_for_more(cupwright, file):
    text = "from_end,from_contact,to_end,to_contact,reading\nA,T,L,T,0.2\n"
    done = cupwright("diagnose", CUE, file(text))
    assert done.status == 0
    assert "Unplug every end" in done.out
    assert "NOT DONE YET" in done.out
    assert "next  Read ring 1 at A" in done.out


def test_the_form_of_sweep_filled_in_is_enough_for_sound(cupwright, file):
    form = cupwright("sweep", LOOM, "--csv").out
    filled = []
    for row in form.splitlines():
        cells = row.split(",")
        if len(cells) > 5 and cells[4] == "" and not row.startswith("#"):
            cells[4] = cells[5] or "open"
        filled.append(",".join(cells))
    text = "\n".join(filled)

    done = cupwright("diagnose", LOOM, file(text))
    assert (done.status, "SOUND" in done.out) == (0, True)
    assert "farther apart" in " ".join(done.out.split())
    strict = cupwright("diagnose", LOOM, file(text), "--every-pair")
    assert "NOT DONE YET" in strict.out


def test_a_spoiled_loom(cupwright, file):
    """Shifted by one at the 25-way end: one mistake, not two dozen."""

    def shifted(its):
        mistake = next(
            it for it in its.mistakes if (it.kind, it.ends, it.step) == ("shifted", ("A",), 1)
        )
        return its.sound.permuted(mistake.moves)

    done = cupwright("diagnose", LOOM, file(unit(LOOM, shifted)))
    assert done.status == 1
    assert "Shifted at A: every core one too far." in done.out


def test_the_json_is_the_object_of_the_formats_page(cupwright, file):
    found = json.loads(
        cupwright("diagnose", CUE, file(unit(CUE, reversed_and_bridged)), "--json").out
    )
    assert list(found) == KEYS
    assert (found["verdict"], found["cost"], found["proved"]) == ("faulty", 2, True)
    page = PAGE.read_text(encoding="utf-8")
    keys = {*KEYS, *found["explanations"][0], *found["explanations"][0]["faults"][0]}
    assert [key for key in keys if f"`{key}`" not in page] == []


def test_every_kind_of_fault_is_on_the_formats_page():
    page = PAGE.read_text(encoding="utf-8")
    assert [kind for kind in get_args(FaultKind) if f"`{kind}`" not in page] == []


@pytest.mark.parametrize("text", ["", "rubbish", "from,to,reading\nA.Q,L.T,0.1\n", "\0\0"])
def test_readings_that_are_not(cupwright, file, text):
    done = cupwright("diagnose", CUE, file(text))
    assert done.status == 3
    assert done.err.startswith("cupwright: ")
    assert "Traceback" not in done.err


def test_files_that_are_not_there(cupwright, file, tmp_path):
    assert cupwright("diagnose", CUE, tmp_path / "none.csv").status == 3
    assert cupwright("diagnose", tmp_path / "none.json", file(unit(CUE))).status == 3


@pytest.mark.parametrize("words", [[], [CUE], [CUE, CUE, CUE], [CUE, CUE, "--jason"]])
def test_wrong_use(cupwright, words):
    assert cupwright("diagnose", *words).status == 2


def test_the_same_readings_give_the_same_bytes(cupwright, file):
    path = file(unit(CUE, reversed_and_bridged))
    assert cupwright("diagnose", CUE, path).out == cupwright("diagnose", CUE, path).out
