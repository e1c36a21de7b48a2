"""`connectors`: list, show, validate, compare."""

import json

import pytest

from planner.files.folders import library_folder
from planner.library.loading import shipped_folders
from tests.files.samples import CONNECTOR, PART


def test_the_list_has_every_kind(cupwright):
    out = cupwright("connectors").out
    for words in ("Connectors (", "Pinout records (", "Cables (", "Parts (", "  xlr-3-male "):
        assert words in out


def test_words_narrow_the_list(cupwright):
    out = cupwright("connectors", "list", "3.5", "two", "slim").out
    assert "jack-3.5-two-pole-slim" in out
    assert "xlr" not in out


def test_words_that_meet_nothing_say_so(cupwright):
    done = cupwright("connectors", "list", "zzzz")
    assert (done.status, done.out.split(".")[0]) == (0, "Nothing found")


def test_the_list_as_json_holds_whole_files(cupwright):
    values = json.loads(cupwright("connectors", "--json").out)
    assert {each["format"] for each in values} == {
        "cupwright-connector",
        "cupwright-pinout",
        "cupwright-cable",
        "cupwright-part",
    }


def test_a_broken_file_of_the_users_own_is_told_and_the_list_still_comes(cupwright):
    library_folder().mkdir(parents=True)
    (library_folder() / "bad.toml").write_text("id =")
    done = cupwright("connectors")
    assert done.status == 0
    assert "xlr-3-male" in done.out
    assert "bad.toml: line 1" in done.err


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("xlr-3-male", ["solder side", "pinout records", "clamp"]),
        ("aes59-analogue", ["carries", "1+", "source"]),
        ("star-quad", ["jacket", "shield round"]),
    ],
)
def test_one_is_shown(cupwright, name, words):
    done = cupwright("connectors", "show", name)
    assert [word for word in words if word not in done.out] == []


def test_everything_that_ships_is_shown_within_80_columns(cupwright):
    values = json.loads(cupwright("connectors", "--json").out)
    for name in {each["id"] for each in values}:
        done = cupwright("connectors", "show", name)
        assert done.status == 0
        assert [line for line in done.out.splitlines() if len(line) > 80] == []


def test_one_as_json_is_its_file(cupwright):
    values = json.loads(cupwright("connectors", "show", "xlr-3-male", "--json").out)
    assert (values["format"], values["id"]) == ("cupwright-connector", "xlr-3-male")


def test_a_misspelt_id_gets_a_guess(cupwright):
    done = cupwright("connectors", "show", "xlr-3-mael")
    assert done.status == 2
    assert "Did you mean 'xlr-3-male'?" in done.err


def test_good_files_are_valid(cupwright, tmp_path, plan_path):
    (tmp_path / "boot.toml").write_text(PART)
    done = cupwright("connectors", "validate", tmp_path / "boot.toml", plan_path)
    assert (done.status, done.err) == (0, "")
    assert done.out.count("valid     ") == 2


def test_every_file_that_ships_is_valid(cupwright):
    done = cupwright("connectors", "validate", *shipped_folders())
    assert (done.status, done.err) == (0, "")


def test_one_bad_file_among_good_ones_gives_3(cupwright, tmp_path):
    (tmp_path / "boot.toml").write_text(PART)
    (tmp_path / "plug.toml").write_text(CONNECTOR.replace("bore_mm = 7", "bore_mm = 0"))
    done = cupwright("connectors", "validate", tmp_path)
    assert done.status == 3
    assert done.out.splitlines() == [
        f"valid     {tmp_path}/boot.toml",
        f"not valid {tmp_path}/plug.toml",
    ]
    assert f"{tmp_path}/plug.toml: shell.bore_mm: 0 must be above 0." in done.err


def test_a_folder_without_definitions_is_told(cupwright, tmp_path):
    done = cupwright("connectors", "validate", tmp_path)
    assert done.status == 3
    assert "it holds no definitions" in done.err


def test_validation_as_json(cupwright, tmp_path):
    (tmp_path / "boot.toml").write_text(PART)
    done = cupwright("connectors", "validate", "--json", tmp_path)
    assert json.loads(done.out) == [{"path": f"{tmp_path}/boot.toml", "valid": True}]


def test_two_are_compared(cupwright):
    out = cupwright("connectors", "compare", "jack-3.5-two-pole", "jack-3.5-two-pole-slim").out
    assert "barrel.outside_mm" in out
    values = json.loads(
        cupwright(
            "connectors", "compare", "--json", "jack-3.5-two-pole", "jack-3.5-two-pole-slim"
        ).out
    )
    keys = {row["key"] for row in values["differences"]}
    assert "barrel.outside_mm" in keys
    assert "family" not in keys


def test_one_compared_with_itself_is_the_same(cupwright):
    assert "are the same" in cupwright("connectors", "compare", "xlr-3-male", "xlr-3-male").out


def test_two_kinds_are_not_compared(cupwright):
    shown = json.loads(cupwright("connectors", "--json").out)
    part = next(each["id"] for each in shown if each["format"] == "cupwright-part")
    done = cupwright("connectors", "compare", "xlr-3-male", part)
    assert done.status == 2
    assert "are of two kinds" in done.err


def test_a_folder_named_is_on_the_list(cupwright, tmp_path):
    (tmp_path / "boot.toml").write_text(PART)
    assert "bench-boot" in cupwright("connectors", "--folder", tmp_path).out
