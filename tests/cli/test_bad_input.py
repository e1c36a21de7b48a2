"""Bad input: status 3, and a message with file, place, what and mend; nothing is lost."""

import json

import pytest

from planner.files.plans import plan_bytes
from planner.problem import InputError
from planner.services.opening import save_plan
from tests.files.samples import CABLE, CONNECTOR, PART, PINOUT, split_plan

COMMANDS_ON_PLANS = (("check",), ("sheet", "-o", "out.svg"), ("connectors", "validate"))


def spoiled(text, old, new):
    assert old in text
    return text.replace(old, new, 1)


BAD_DEFINITIONS = {
    "malformed": (
        spoiled(CONNECTOR, "[shell]", "[shell"),
        ": line 12, column 7",
        "malformed TOML",
        "Correct the TOML there",
    ),
    "unknown key": (
        spoiled(CONNECTOR, "takes=2", "tkaes = 2"),
        ": contacts[S].terminal.tkaes",
        "the key 'tkaes' is not known here",
        "Did you mean 'takes'?",
    ),
    "wrong format": (
        spoiled(PART, "cupwright-part", "cupwright-prat"),
        ": format",
        "'cupwright-prat' is no format of ours",
        "Did you mean 'cupwright-part'?",
    ),
    "version is text": (
        spoiled(PART, "version = 1", 'version = "1"'),
        ": version",
        "the version '1' is not a whole number",
        "Write 1.",
    ),
    "newer version": (
        spoiled(PART, "version = 1", "version = 7"),
        ": version",
        "written by a newer Cupwright: version 7, this one reads 1",
        "Install a newer Cupwright",
    ),
    "revision beyond all reason": (
        spoiled(PART, 'id = "', f'revision = 1{"0" * 30}\nid = "'),
        ": revision",
        "must be at most 1000000000",
        "",
    ),
    "duplicate contacts": (
        spoiled(CONNECTOR, 'id = "R"', 'id = "T"'),
        "",
        "contact 'T' stands twice",
        "Correct it there.",
    ),
    "duplicate key": (
        spoiled(PINOUT, 'R = ["R+"]', 'T = ["R+"]'),
        ": line 11, column",
        "malformed TOML",
        "Correct the TOML there",
    ),
    "negative size": (
        spoiled(CABLE, "jacket_mm = 3.2", "jacket_mm = -3.2"),
        ": jacket_mm",
        "-3.2 must be above 0",
        "Write a value above 0.",
    ),
    "negative length": (
        spoiled(PART, "length_mm = 22", "length_mm = -22"),
        ": length_mm",
        "-22 must be above 0",
        "Write a value above 0.",
    ),
    "not a number": (
        spoiled(PART, "length_mm = 22", "length_mm = inf"),
        ": length_mm",
        "inf is not a number that can be used",
        "Write a plain number.",
    ),
    "control character": (
        spoiled(PART, "Bench boot", "Bench \x1b[2Jboot"),
        ": line 4, column",
        "the control character U+001B is not allowed",
        "Delete that character.",
    ),
    "escaped control character": (
        spoiled(PART, "Bench boot", "Bench \\u0007boot"),
        ": title",
        "the control character U+0007 is not allowed",
        "Delete that character.",
    ),
    "markup in a name": (
        spoiled(PART, 'id = "bench-boot"', 'id = "<b>boot</b>"'),
        ": id",
        "'<b>boot</b>' can't be a name",
        "Use letters, digits, dot, hyphen and underscore",
    ),
    "path in a name": (
        spoiled(PART, 'id = "bench-boot"', 'id = "../../boot"'),
        ": id",
        "'../../boot' can't be a name",
        "Use letters, digits, dot, hyphen and underscore",
    ),
    "too large": ("#" * 1_000_001, "", "more than the 1 MB that are read", "the right file"),
    "empty": ("", ": format", "the key 'format' is missing", "Add one of cupwright-plan"),
}


@pytest.mark.parametrize("case", BAD_DEFINITIONS)
def test_a_bad_definition_is_told(cupwright, tmp_path, case):
    text, place, what, mend = BAD_DEFINITIONS[case]
    path = tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    done = cupwright("connectors", "validate", path)
    assert done.status == 3
    assert f"cupwright: {path}{place}" in done.err
    assert what in done.err
    assert mend in done.err
    assert "\x1b" not in done.err
    assert path.read_text(encoding="utf-8") == text


def good_plan(tmp_path):
    return plan_bytes(split_plan(tmp_path)).decode()


def first_landing(**changes):
    """Return what changes the first landing of a plan's text."""

    def spoil(text):
        values = json.loads(text)
        values["landings"][0] |= changes
        return json.dumps(values)

    return spoil


BAD_PLANS = {
    "malformed": (
        lambda text: text[:-40],
        ": line",
        "malformed JSON",
        "Correct the JSON there, or restore the file from a copy.",
    ),
    "empty": (lambda _text: "", ": line 1, column 1", "malformed JSON", "Correct the JSON there"),
    "a list": (lambda _text: "[]", ": line 1", "the file holds a list", "Name a build plan"),
    "duplicate key": (
        lambda text: text.replace('"order"', '"title"', 1),
        ": line 5, column 3",
        "the key 'title' stands twice in one object",
        "Keep one of the two.",
    ),
    "not a number": (
        lambda text: text.replace("1200", "NaN", 1),
        ": line",
        "NaN is not a number that can be used",
        "Write a plain number.",
    ),
    "unknown key": (
        lambda text: text.replace('"length_mm": 300', '"lenght_mm": 300', 1),
        ": sections[left].lenght_mm",
        "the key 'lenght_mm' is not known here",
        "Did you mean 'length_mm'?",
    ),
    "another format": (
        lambda text: text.replace("cupwright-plan", "cupwright-cable", 1),
        ": format",
        "this is a cable file, a plan is wanted",
        "Name a file that says cupwright-plan.",
    ),
    "version is not whole": (
        lambda text: text.replace('"version": 1', '"version": 1.5', 1),
        ": version",
        "the version 1.5 is not a whole number from 1 up",
        "Write 1.",
    ),
    "newer version": (
        lambda text: text.replace('"version": 1', '"version": 2', 1),
        ": version",
        "written by a newer Cupwright: version 2, this one reads 1",
        "Install a newer Cupwright, or save it there as version 1.",
    ),
    "duplicate contacts": (
        lambda text: text.replace(
            '"id": "R",\n            "name"', '"id": "T",\n            "name"', 1
        ),
        ": definitions.connectors[bench-three]",
        "contact 'T' stands twice",
        "Correct it there.",
    ),
    "negative length": (
        lambda text: text.replace('"length_mm": 300', '"length_mm": -300', 1),
        ": sections[left].length_mm",
        "-300 must be above 0",
        "Write a value above 0.",
    ),
    "endless number": (
        lambda text: text.replace('"length_mm": 300', '"length_mm": 1e999', 1),
        ": sections[left].length_mm",
        "inf is not a number that can be used",
        "Write a plain number.",
    ),
    "control character": (
        lambda text: text.replace("Pit lead", "Pit\\u0000lead", 1),
        ": title",
        "the control character U+0000 is not allowed",
        "Delete that character.",
    ),
    "half a character": (
        lambda text: text.replace("Pit lead", "Pit\\ud800lead", 1),
        ": title",
        "the control character U+D800 is not allowed",
        "Delete that character.",
    ),
    "markup in a name": (
        first_landing(contact="<script>"),
        ": landings[#1].contact",
        "'<script>' can't be a name",
        "Use letters, digits, dot, hyphen and underscore",
    ),
    "unknown end": (
        first_landing(end="AA"),
        ": landings[#1].end",
        "there is no end 'AA'",
        "Did you mean 'A'?",
    ),
    "unknown contact": (
        first_landing(contact="TT"),
        ": landings[#1].contact",
        "there is no contact on 'bench-three' called 'TT'",
        "Did you mean 'T'?",
    ),
    "too large": (
        lambda text: text + " " * 10_000_000,
        "",
        "the file has 10.0 MB, more than the 8 MB that are read",
        "Check that it is the right file.",
    ),
    "too deep": (
        lambda _text: '{"a":' * 5000 + "1" + "}" * 5000,
        "",
        "the values are nested more than 24 levels deep",
        "Check that it is the right file.",
    ),
}


@pytest.mark.parametrize("command", COMMANDS_ON_PLANS, ids=lambda words: words[0])
@pytest.mark.parametrize("case", BAD_PLANS)
def test_a_bad_plan_is_told(cupwright, tmp_path, monkeypatch, command, case):
    monkeypatch.chdir(tmp_path)
    spoil, place, what, mend = BAD_PLANS[case]
    good = good_plan(tmp_path)
    text = spoil(good)
    assert text != good
    path = tmp_path / "bad.json"
    path.write_text(text, encoding="utf-8")
    done = cupwright(*command, path)
    assert done.status == 3
    assert f"cupwright: {path}{place}" in done.err
    assert what in done.err
    assert mend in done.err
    assert path.read_text(encoding="utf-8") == text
    assert not (tmp_path / "out.svg").exists()


def test_markup_in_a_title_is_plain_text(cupwright, tmp_path):
    """A title may hold any printed sign; whoever draws it escapes it."""
    path = tmp_path / "marked.json"
    save_plan(path, split_plan(tmp_path).evolve(title="<b>&Pit</b>"))
    assert cupwright("check", path).out.startswith("<b>&Pit</b>\n")
    cupwright("sheet", path, "-o", tmp_path / "marked.svg", "--one-file")
    drawn = (tmp_path / "marked.svg").read_text(encoding="utf-8")
    assert "<b>" not in drawn
    assert "&lt;b&gt;&amp;Pit&lt;/b&gt;" in drawn


def test_bytes_that_are_no_text_are_told(cupwright, tmp_path):
    path = tmp_path / "bad.json"
    path.write_bytes(b'{"format": "\xff"}')
    done = cupwright("check", path)
    assert done.status == 3
    assert "byte 0xff is not text in UTF-8" in done.err


def test_a_failed_save_loses_nothing(tmp_path, monkeypatch):
    path, plan = tmp_path / "lead.json", split_plan(tmp_path)
    save_plan(path, plan)
    before = path.read_bytes()

    def fail(*_args, **_more):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pathlib.Path.replace", fail)
    with pytest.raises(InputError):
        save_plan(path, plan.evolve(title="other"))
    assert path.read_bytes() == before
    assert [each.name for each in tmp_path.iterdir()] == ["lead.json"]


def test_a_name_of_a_file_cannot_play_with_the_terminal(cupwright):
    done = cupwright("check", "\x1b[31mgone\x07.json")
    assert (done.status, "\x1b" in done.err, "\x07" in done.err) == (3, False, False)


def test_many_problems_are_cut_short(cupwright, tmp_path):
    values = json.loads(good_plan(tmp_path))
    values["landings"] = [{"end": "B", "conductor": "red", "contact": "T"}] * 30
    path = tmp_path / "bad.json"
    path.write_text(json.dumps(values))
    done = cupwright("check", path)
    assert done.err.count("there is no end 'B'") == 20
    assert "more problems are not shown" in done.err


@pytest.mark.parametrize("act", [["list", "--folder"], ["validate"], ["newer"], ["import"]])
def test_a_name_that_is_too_long_for_the_system_is_told(cupwright, act):
    done = cupwright("connectors", *act, "x" * 5000)
    assert "not foreseen" not in done.err
    assert done.status in {0, 3}
    assert done.err.startswith("cupwright: xxx")
