"""`check`: the table, the JSON object, the exit status."""

import json

import pytest

from planner.checks.finding import Finding
from planner.cli.findings_text import findings_table, findings_values
from planner.data import data_dir
from planner.files.plans import read_plan, write_plan
from planner.model.place import Place
from planner.model.plan import Acceptance, Plan

DEMO = data_dir("resources") / "demo"
SPOILED, CLEAR = DEMO / "spoiled-cue-desk.json", DEMO / "stage-left-balanced-line.json"


def finding(weight="stop", **more):
    values = {
        "code": "open",
        "what": "left is open",
        "why": "no sound",
        "mend": "land it",
        "where": (Place(end="A", contact="T", conductor="red"), Place(part="boot")),
    }
    return Finding(weight=weight, **{**values, **more})


def test_a_plan_with_a_stop_gives_1_and_one_without_gives_0(cupwright):
    assert cupwright("check", SPOILED).status == 1
    assert cupwright("check", CLEAR).status == 0


def test_the_json_is_the_object_of_the_contract(cupwright):
    done = cupwright("check", SPOILED, "--json")
    values = json.loads(done.out)
    assert list(values) == ["plan", "verdict", "findings"]
    assert (values["plan"], values["verdict"]) == (str(SPOILED), "stop")
    for found in values["findings"]:
        assert list(found) == ["code", "weight", "what", "why", "mend", "where"]
        for place in found["where"]:
            assert place.keys() <= {"end", "contact", "conductor", "part"}


def test_the_findings_come_by_weight_code_and_place(cupwright):
    found = json.loads(cupwright("check", SPOILED, "--json").out)["findings"]
    order = ["stop", "caution", "note"]
    keys = [(order.index(each["weight"]), each["code"]) for each in found]
    assert keys == sorted(keys)
    assert keys[0][0] == 0


def test_a_place_has_only_what_it_names():
    (one,) = findings_values("p", [finding()])["findings"]
    assert one["where"] == [{"end": "A", "contact": "T", "conductor": "red"}, {"part": "boot"}]


def test_the_table_has_a_finding_in_columns():
    lines = findings_table("lead.json", Plan(title="Pit lead"), [finding()]).splitlines()
    assert lines == [
        "Pit lead",
        "",
        "stop     open                  left is open",
        "                               at A: contact T, red; boot",
        "                               why no sound",
        "                               mend land it",
        "",
        "1 stop. NOT CLEAR TO SOLDER: mend every stop first.",
    ]


@pytest.mark.parametrize("path", sorted(DEMO.glob("*.json")), ids=lambda path: path.stem)
def test_no_line_is_wider_than_80(cupwright, path):
    lines = cupwright("check", path).out.splitlines()
    assert [line for line in lines if len(line) > 80] == []


def test_a_long_word_is_broken():
    table = findings_table("p", Plan(), [finding(what="x" * 200)])
    assert max(map(len, table.splitlines())) <= 80


def test_an_accepted_caution_shows_its_reason():
    caution = finding("caution")
    accepted = Acceptance(code="open", places=caution.place_keys, reason="measured", by="Bench")
    table = findings_table("p", Plan(acceptances=(accepted,)), [caution])
    assert "accepted measured (Bench)" in table


@pytest.mark.parametrize(
    ("weights", "closing"),
    [
        ([], "No findings. Clear to solder."),
        (["note"], "1 note. Clear to solder."),
        (
            ["caution", "caution", "note"],
            "2 cautions, 1 note. No stop. Mend each caution, or accept it with a reason.",
        ),
    ],
)
def test_the_closing_line_counts_and_tells_the_verdict(weights, closing):
    table = findings_table("p", Plan(), [finding(weight) for weight in weights])
    assert table.splitlines()[-1] == closing


def test_a_folder_of_more_records_counts(cupwright, tmp_path):
    done = cupwright("check", CLEAR, "--folder", tmp_path)
    assert done.status == 0


def test_there_is_no_colour(cupwright):
    assert "\x1b" not in cupwright("check", SPOILED).out


def test_a_check_leaves_the_plan_as_it_is(cupwright, tmp_path):
    path = tmp_path / "lead.json"
    write_plan(path, read_plan(SPOILED))
    before = path.read_bytes()
    cupwright("check", path)
    assert path.read_bytes() == before
