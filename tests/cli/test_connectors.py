"""`connectors`: list, show, validate, compare."""

import json

import pytest

from planner.cli.connectors import RUNGS
from planner.cli.definitions_text import shown
from planner.files.folders import library_folder
from planner.library.loading import load_library, shipped_folders
from planner.library.store import NEW, Store
from planner.model.source import TRUST_LADDER
from tests.files.samples import CONNECTOR, PART, records


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


def test_everything_that_ships_is_shown_within_80_columns():
    library = load_library()
    for record in library.search(""):
        lines = shown(record, library).splitlines()
        assert lines[0].startswith(record.id)
        assert [line for line in lines if len(line) > 80] == []


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
    listed = json.loads(cupwright("connectors", "--json").out)
    part = next(each["id"] for each in listed if each["format"] == "cupwright-part")
    done = cupwright("connectors", "compare", "xlr-3-male", part)
    assert done.status == 2
    assert "are of two kinds" in done.err


def test_a_folder_named_is_on_the_list(cupwright, tmp_path):
    (tmp_path / "boot.toml").write_text(PART)
    assert "bench-boot" in cupwright("connectors", "--folder", tmp_path).out


LETTER = b"%PDF-1.4 an invented letter"


@pytest.fixture
def bench(tmp_path):
    """A shared folder with a connector and a pinout record that has its letter with it."""
    (tmp_path / "letter.pdf").write_bytes(LETTER)
    folder = tmp_path / "shared"
    folder.mkdir()
    store = Store(folder)
    made = records(tmp_path)
    store.save(made["connector"], NEW, who="Tilney")
    card = made["pinout"].evolve(
        documents=(store.add_document(tmp_path / "letter.pdf", "both pages"),),
        statements=({"contacts": ("S",), "kind": "hearsay", "reference": "told on the telephone"},),
        confirmations=({"who": "Okoro", "date": "2026-05-11", "how": "on the part, by meter"},),
        retired={"reason": "the maker changed it", "by": "Tilney"},
    )
    store.save(card, NEW, who="Tilney")
    return folder


def test_the_source_card_is_shown(cupwright, bench):
    out = cupwright("connectors", "show", "bench-three-phones", "--folder", bench).out
    assert [line for line in out.splitlines() if line.startswith("  ")][1:9] == [
        "  retired the maker changed it, Tilney",
        "  fits    bench-three",
        "  use     headphone",
        "  drive   load",
        "  source  letter: letter from the maker, 1996-03-04",
        "  but     S: hearsay, told on the telephone",
        "  with    letter.pdf, both pages",
        "  trust   confirmed",
    ]
    assert "  found   Okoro, 2026-05-11, on the part, by meter" in out


def test_the_list_is_narrowed_by_trust(cupwright, bench):
    assert RUNGS == TRUST_LADDER
    out = cupwright("connectors", "--trust", "hearsay", "--folder", bench).out
    assert "quillet-stowe-two-pin" in out
    assert "xlr-3-male" not in out
    assert "bench-three-phones" not in out
    assert "is not one of" in cupwright("connectors", "--trust", "rumour").err


def test_one_is_sent_and_taken_in_elsewhere(cupwright, bench, tmp_path):
    parcel = tmp_path / "letter.parcel.json"
    sent = cupwright("connectors", "export", "bench-three-phones", "--folder", bench, "-o", parcel)
    assert (sent.status, sent.out) == (0, f"{parcel} holds bench-three-phones, revision 1.\n")
    held = cupwright("connectors", "import", parcel)
    assert held.out.splitlines() == [
        "new      bench-three-phones: Headphones on the bench three-pole",
        "new      bench-three: Bench three-pole",
    ]
    assert not library_folder().exists()
    taken = cupwright("connectors", "import", "--save", parcel, "--who", "Okoro")
    assert "saved    bench-three-phones, revision 1" in taken.out
    document = load_library().pinout("bench-three-phones").documents[0]
    assert Store(library_folder()).papers.read(document) == LETTER


def test_what_differs_is_shown_and_taken_only_if_asked_for(cupwright, bench, tmp_path):
    parcel = tmp_path / "letter.parcel.json"
    cupwright("connectors", "export", "bench-three-phones", "--folder", bench, "-o", parcel)
    ours = records(tmp_path)["pinout"].evolve(use="cue desk")
    Store(library_folder()).save(ours, NEW, who="Okoro")
    out = cupwright("connectors", "import", parcel, "--save").out
    assert "differs  bench-three-phones" in out
    assert ["use", "cue", "desk", "headphone"] in [line.split() for line in out.splitlines()]
    assert [line for line in out.splitlines() if len(line) > 80] == []
    assert load_library().pinout("bench-three-phones") == ours
    done = cupwright("connectors", "import", parcel, "--next", "bench-three-phones", "--json")
    values = json.loads(done.out)
    assert values["saved"] == ["bench-three-phones"]
    assert {it["id"]: it["state"] for it in values["arrivals"]}["bench-three"] == "same"
    assert load_library().pinout("bench-three-phones").use == "headphone"


def test_a_hostile_parcel_is_refused_with_a_reason(cupwright, tmp_path):
    path = tmp_path / "stranger.parcel.json"
    path.write_text('{"format": "cupwright-parcel", "version": 9}')
    done = cupwright("connectors", "import", "--save", path)
    assert (done.status, done.out) == (3, "")
    assert "the version 9 is not one that this Cupwright reads" in done.err


def test_an_answer_about_what_is_not_in_the_parcel_is_wrong_use(cupwright, bench, tmp_path):
    parcel = tmp_path / "letter.parcel.json"
    cupwright("connectors", "export", "bench-three", "--folder", bench, "-o", parcel)
    done = cupwright("connectors", "import", parcel, "--beside", "bench-tree")
    assert done.status == 2
    assert "Did you mean 'bench-three'?" in done.err


def test_a_document_that_was_changed_is_not_sent(cupwright, bench, tmp_path):
    next((bench / "documents").iterdir()).write_bytes(b"%PDF-1.4 forged")
    done = cupwright("connectors", "export", "bench-three-phones", "--folder", bench)
    assert done.status == 3
    assert "not those that its digest names" in done.err


def mirrored(bench):
    """Save the next revision of the record: the letter was drawn from the mating side."""
    store = Store(bench)
    now = store.find("pinout", "bench-three-phones")
    signals = dict(now.record.signals) | {"T": ("R+",), "R": ("L+",)}
    return store.save(now.record.evolve(signals=signals, retired=None), now.digest, who="Okoro")


def test_what_is_newer_than_a_plan_is_said_with_its_meaning_and_taken(cupwright, bench, plan_path):
    mirrored(bench)
    said = cupwright("connectors", "newer", plan_path, "--folder", bench)
    lines = said.out.splitlines()
    assert "bench-three-phones: the plan has revision 1, the collection 2" in lines
    assert ["signals.T", "L+", "R+"] in [line.split() for line in lines]
    assert "A: red lands on tip, which carries R+ instead of L+" in lines
    assert lines[-1] == "Take them with --write."
    assert [line for line in lines if len(line) > 80] == []
    written = cupwright("connectors", "newer", plan_path, "--write", "--json", "--folder", bench)
    assert json.loads(written.out)["newer"][0]["collection"] == 2
    again = cupwright("connectors", "newer", plan_path, "--folder", bench)
    assert again.out == "The plan carries what the collection has.\n"


def test_the_plans_that_use_a_definition_are_listed(cupwright, bench, plan_path):
    words = ("connectors", "used", "bench-three", plan_path.parent, "--folder", bench)
    done = cupwright(*words)
    assert done.out.splitlines()[-1] == "1 of 1 plans use bench-three."
    assert "".join(done.out.split()).startswith(f"revision1{plan_path}")
    values = json.loads(cupwright(*words, "--json").out)
    assert values == [{"path": str(plan_path), "title": "Pit lead", "revision": 1}]
