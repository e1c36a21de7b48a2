"""`sweep`: the table, the JSON object, the empty form, the exit status."""

import json

import pytest

from planner.data import data_dir
from planner.files.plans import read_plan
from planner.proving.methods import METHODS
from planner.proving.reading_csv import readings_from_text

DEMO = data_dir("resources") / "demo"
CUE, SPOILED = DEMO / "cue-desk-headphone-lead.json", DEMO / "spoiled-cue-desk.json"
LOOM, STEREO = DEMO / "recording-rack-loom.json", DEMO / "stereo-to-two-mono.json"
PAGE = DEMO.parents[1] / "docs" / "formats" / "sweep.md"
KEYS = [
    "plan", "caution", "contacts", "paths", "limits", "short_leads", "continuity", "isolation",
    "methods",
]  # fmt: skip


def values(cupwright, *words):
    return json.loads(cupwright("sweep", *words, "--json").out)


def form(cupwright, *words):
    return cupwright("sweep", *words, "--csv").out


def keys_in(value):
    """Return every key of an object, however deep; the keys of `widest_mm` are ends."""
    found = set()
    for key, inner in value.items():
        found.add(key)
        for each in inner if isinstance(inner, list) else [inner]:
            if isinstance(each, dict) and key != "widest_mm":
                found |= keys_in(each)
    return found


def test_the_json_is_the_object_of_the_formats_page(cupwright):
    found = values(cupwright, LOOM)
    assert list(found) == KEYS
    page = PAGE.read_text(encoding="utf-8")
    assert [
        key for key in keys_in(found) if f"`{key}`" not in page and f'"{key}"' not in page
    ] == []


def test_every_path_has_a_limit_whose_rule_is_told(cupwright):
    found = values(cupwright, CUE)
    rules = {it["rule"] for it in found["limits"]}
    assert all(it["rule"] in rules and it["limit_ohm"] >= 1 for it in found["paths"])


@pytest.mark.parametrize("method", METHODS)
def test_the_count_is_that_of_the_methods_table(cupwright, method):
    found = values(cupwright, LOOM, "--method", method)
    counts = {it["method"]: it["count"] for it in found["methods"]}
    assert found["isolation"]["count"] == len(found["isolation"]["probes"]) == counts[method]


@pytest.mark.parametrize("plan", [CUE, LOOM, SPOILED, STEREO], ids=lambda path: path.stem)
@pytest.mark.parametrize("method", METHODS)
def test_the_text_is_no_wider_than_80_columns(cupwright, plan, method):
    text = cupwright("sweep", plan, "--method", method).out
    assert "UNPLUG EVERY END FIRST" in text
    assert max(map(len, text.splitlines())) <= 80
    assert "\x1b" not in text


def test_a_shield_in_the_path_makes_it_an_estimate(cupwright):
    text = cupwright("sweep", STEREO).out
    assert "about 0.0" in text
    assert "metal is estimated" in text


def test_the_form_reads_back_as_nothing_read(cupwright):
    found = readings_from_text(form(cupwright, CUE), read_plan(CUE), "form.csv")
    assert found.readings == ()


def test_the_form_reads_back_what_is_filled_in(cupwright):
    text = form(cupwright, CUE).replace(",,,,open", ",o,,,open").replace(",,0.2", ",0.41,0.2")
    found = readings_from_text(text, read_plan(CUE), "form.csv")
    figures = [it.ohm for it in found.readings if it.joined]
    assert figures == [0.41] * 4
    assert found.of(("A", "T"), ("A", "S")).joined is False


def test_the_form_of_a_clipped_method_has_continuity_only(cupwright):
    rows = form(cupwright, CUE, "--method", "gangs").splitlines()
    assert sum(not row.startswith("#") for row in rows) == 1 + 4
    assert any(row.startswith("# Isolation is by clips") for row in rows)


def test_a_stop_in_the_plan_gives_1_and_still_prints(cupwright):
    done = cupwright("sweep", SPOILED)
    assert (done.status, done.err) == (1, "")
    assert "THE PLAN HAS A STOP" in done.out
    assert cupwright("sweep", CUE).status == 0


def test_a_plan_without_connectors_says_what_to_do(cupwright, tmp_path):
    path = tmp_path / "empty.json"
    path.write_text('{"format": "cupwright-plan", "version": 1, "title": "New"}', encoding="utf-8")
    for shape in ((), ("--json",), ("--csv",)):
        done = cupwright("sweep", path, *shape)
        assert (done.status, done.err) == (1, "")
    assert "choose the connectors" in cupwright("sweep", path).out


def test_wrong_use_is_told(cupwright):
    assert cupwright("sweep", CUE, "--json", "--csv").status == 2
    done = cupwright("sweep", CUE, "--method", "pair")
    assert done.status == 2
    assert "Did you mean 'pairs'?" in done.err


def test_the_same_plan_gives_the_same_bytes(cupwright):
    assert cupwright("sweep", LOOM, "--json").out == cupwright("sweep", LOOM, "--json").out
