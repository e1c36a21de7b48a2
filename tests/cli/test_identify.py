"""`identify`: the report, the JSON object, exit status, bad input."""

import json

import pytest

from planner.data import data_dir

PAGE = data_dir("resources").parent / "docs" / "formats" / "sample.md"
HEADPHONE = "from,to,reading\nT,S,32.4\nR,S,31.8\nT,R,64\nshell,S,open\n"
KEYS = [
    "readings", "verdict", "contacts", "pairs_read", "drivers", "returns", "microphone", "shell",
    "unused", "joined", "margin", "chi_square", "chi_square_limit", "ways", "doubtful", "rivals",
    "next_reading", "read_again", "network", "words", "cautions",
]  # fmt: skip


@pytest.fixture
def file(tmp_path):
    def write(text, name="sample.csv"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8", newline="")
        return path

    return write


def test_a_settled_sample_is_told_with_status_0(cupwright, file):
    done = cupwright("identify", file(HEADPHONE))
    assert (done.status, done.err) == (0, "")
    assert "4 contacts, 4 of 6 pairs read" in done.out
    assert "S is the common return" in done.out
    assert "The shell is joined to nothing: it floats." in done.out
    assert "Left or right" in done.out
    assert "brief touch" in done.out
    assert max(map(len, done.out.splitlines()[1:])) <= 80


def test_what_is_not_settled_gives_1_with_rivals_and_the_next_reading(cupwright, file):
    done = cupwright("identify", file("from,to,reading\nT,S,32.4\nR,S,31.8\nX,S,\n"))
    assert done.status == 1
    assert "Not settled" in done.out
    assert "Unplug it from everything" in done.out
    assert "next (plus probe on" in done.out
    assert "Other ways to understand it:" in done.out


def test_a_contradiction_gives_1_and_names_what_to_read_again(cupwright, file):
    done = cupwright("identify", file("from,to,reading\na,b,0.1\nb,c,0.1\na,c,open\n"))
    assert done.status == 1
    assert "contradict each other. Read a to c, a to b or b to c again." in done.out


def test_the_json_is_the_object_of_the_formats_page(cupwright, file):
    done = cupwright("identify", file(HEADPHONE), "--json")
    found = json.loads(done.out)
    assert list(found) == KEYS
    assert (done.status, found["verdict"]) == (0, "identified")
    assert [(it["hot"], it["cold"]) for it in found["drivers"]] == [(["T"], ["S"]), (["R"], ["S"])]
    page = PAGE.read_text(encoding="utf-8")
    assert [key for key in KEYS if f"`{key}`" not in page] == []


def test_the_example_of_the_formats_page_is_read(cupwright, file):
    example = PAGE.read_text(encoding="utf-8").split("```csv\n")[1].split("```")[0]
    done = cupwright("identify", file(example), "--json")
    found = json.loads(done.out)
    assert done.status == 0
    assert found["microphone"]["differs_each_way"]
    assert found["shell"] == [{"contact": "G", "joined_to": ["S"], "floating": False}]


BAD = {
    "no file": (None, "there is no such file"),
    "empty": ("", "there are no readings in it"),
    "a cell too few": ("from,to,reading\nT,S\n", "row 2: the row has 2 cells, not 3"),
    "no reading": ("from,to,reading\nT,S,many\n", "row 2, column reading: 'many' is no reading"),
    "below zero": ("from,to,reading\nT,S,-3\n", "row 2, column reading: '-3' is below zero"),
    "itself": ("from,to,reading\nT,T,3\n", "row 2, column to: T is measured against itself"),
    "twice": ("from,to,reading\nT,S,3\nT,S,4\n", "row 3: T to S stands in row 2 already"),
    "markup": ("from,to,reading\n<b>,S,3\n", "row 2, column from: '<b>' can't be a contact"),
    "no contact": ("from,to,reading\n,S,3\n", "row 2, column from: the contact is missing"),
    "misspelt column": ("from,too,reading\nT,S,3\n", "Did you mean 'to'?"),
    "misspelt line": ("# shels: G\nfrom,to,reading\nT,S,3\n", "Did you mean '# shells:'?"),
    "bad meter": ("# percent: lots\nfrom,to,reading\nT,S,3\n", "row 1: percent is 'lots'"),
    "bad list": ("# shells: G <x>\nfrom,to,reading\nT,S,3\n", "row 1: '<x>' can't be a contact"),
    "many contacts": (
        "from,to,reading\n" + "".join(f"a{at},b{at},3\n" for at in range(40)),
        "there are 80 contacts, more than the 64",
    ),
    "one contact": ("# contacts: T\nfrom,to,reading\n", "a sample has two contacts at least"),
}  # fmt: skip


@pytest.mark.parametrize("case", BAD)
def test_a_bad_file_is_told_with_status_3(cupwright, file, tmp_path, case):
    text, told = BAD[case]
    path = tmp_path / "gone.csv" if text is None else file(text)
    done = cupwright("identify", path)
    assert (done.status, done.out) == (3, "")
    assert told in done.err
    assert "Traceback" not in done.err


def test_all_problems_are_told_at_once_in_the_order_of_rows(cupwright, file):
    done = cupwright("identify", file("# zero_ohm: x\nfrom,to,reading\nT,S,zz\nR,R,1\n"))
    rows = [line.split("row ")[1][0] for line in done.err.splitlines() if ": row " in line]
    assert rows == ["1", "3", "4"]


@pytest.mark.parametrize("separator", [";", "\t"])
def test_a_decimal_comma_and_other_separators(cupwright, file, separator):
    text = separator.join(("from", "to", "reading")) + "\r\n"
    text += "".join(
        separator.join(row) + "\r\n"
        for row in (("T", "S", "32,4"), ("R", "S", "31,8"), ("T", "R", "64,1"))
    )
    assert cupwright("identify", file(text)).status == 0


def test_a_file_without_a_head_is_read(cupwright, file):
    assert cupwright("identify", file("1,2,300\n3,4,301\n2,3,OL\n")).status == 0


def test_wrong_use(cupwright):
    done = cupwright("identify")
    assert done.status == 2
    assert "READINGS.csv" in done.err
