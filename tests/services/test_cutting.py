"""The cut list as CSV: read back it is the list; nothing in it runs as a formula."""

import csv
import io

import pytest

from planner.checks.finding import Finding
from planner.data import data_dir
from planner.dryfit.cutting import batch, cut_list
from planner.files.plans import read_plan
from planner.problem import InputError
from planner.services.cutting import COLUMNS, cut_csv, guarded, write_cut_list

PLANS = sorted((data_dir("resources") / "demo").glob("*.json"))
LOOM = data_dir("resources") / "demo" / "recording-rack-loom.json"


def rows_of(text):
    return list(csv.DictReader(io.StringIO(text, newline="")))


def listed(text, name):
    return [row for row in rows_of(text) if row["list"] == name]


def figure(cell):
    return float(cell) if cell else 0.0


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
@pytest.mark.parametrize("leads", [1, 6])
def test_read_back_it_is_the_list(path, leads):
    plan = read_plan(path)
    text, cuts = cut_csv(plan, (), leads=leads), cut_list(plan)
    assert [
        (r["kind"], r["item"], r["stock"], figure(r["length_mm"]), int(r["pieces"]), r["for"])
        for r in listed(text, "cut")
    ] == [
        (it.kind, it.title, it.stock, it.length_mm, it.count * leads, " ".join(it.where))
        for it in cuts.lines
    ]
    assert [figure(row["total_mm"]) for row in listed(text, "cut")] == [
        it.length_mm * it.count * leads for it in cuts.lines
    ]
    assert [
        (r["for"], r["item"], figure(r["length_mm"]), figure(r["strip_mm"]), int(r["pieces"]))
        for r in listed(text, "strip")
        if r["kind"] in {"core", "shield", "spare"}
    ] == [(it.end, it.conductor, it.cut_mm, it.strip_mm, leads) for it in cuts.strips]
    assert [
        (r["stock"], int(r["pieces"]), figure(r["total_mm"])) for r in listed(text, "total")
    ] == [(it.stock, it.count, it.length_mm) for it in batch(plan, leads).totals]


def test_openings_and_jackets_are_in_it():
    kept = {
        (r["kind"], r["for"]): r["length_mm"] for r in listed(cut_csv(read_plan(LOOM), ()), "strip")
    }
    # The legs of the loom have no jacket of their own.
    assert [place for kind, place in kept if kind == "jacket"] == ["A"]
    assert kept["opening", "split"] == "3065"


def test_it_is_commas_points_and_crlf_under_one_header():
    text = cut_csv(read_plan(LOOM), ())
    assert text.splitlines()[0] == ",".join(COLUMNS)
    assert text.count("\r\n") == text.count("\n") == len(rows_of(text)) + 1
    assert "19.5" in text


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@SUM(A1)", "＝1", "＋1", "－1", "＠x", '=HYPERLINK("http://x")']
)
def test_a_formula_in_a_users_text_is_made_plain(text):
    plan = read_plan(LOOM)
    cables = tuple(it.evolve(title=text) for it in plan.definitions.cables)
    evil = plan.evolve(definitions=plan.definitions.evolve(cables=cables))
    cells = [row["item"] for row in rows_of(cut_csv(evil, ())) if row["kind"] == "cable"]
    assert cells == [f"'{text}"] * 2


@pytest.mark.parametrize("text", ["", "Cable, 4 cores", "4+1", "a=b", "'x"])
def test_what_is_no_formula_stays(text):
    assert guarded(text) == text


def test_with_a_stop_there_is_nothing_to_cut():
    stop = Finding("open", "stop", "L+ does not reach L.", "No sound.", "Land it.", ())
    caution = Finding("unused-contact", "caution", "Empty.", "Why.", "Mend.", ())
    rows = rows_of(cut_csv(read_plan(LOOM), (caution, stop)))
    assert [(r["list"], r["kind"], r["item"], r["note"]) for r in rows] == [
        ("stop", "open", "L+ does not reach L.", "Land it.")
    ]
    assert cut_csv(read_plan(LOOM), (caution,)) == cut_csv(read_plan(LOOM), ())


def test_the_file_is_the_text_as_utf_8_and_the_same_each_time(tmp_path):
    plan, path = read_plan(LOOM), tmp_path / "loom.csv"
    assert write_cut_list(plan, (), path, leads=6) == (path,)
    assert path.read_bytes() == cut_csv(plan, (), leads=6).encode("utf-8")


def test_a_folder_that_is_not_there_is_told(tmp_path):
    with pytest.raises(InputError, match="can't be written"):
        write_cut_list(read_plan(LOOM), (), tmp_path / "gone" / "loom.csv")
