"""The collection: by id, by title, and by typed words."""

import pytest

from planner.library.collection import Library
from planner.library.loading import load_library
from tests.files.samples import records


@pytest.fixture
def small(tmp_path):
    made = records(tmp_path)
    return Library([made["connector"]], [made["pinout"]], [made["cable"]], [made["part"]])


@pytest.fixture(scope="module")
def shipped():
    return load_library()


def ids(found):
    return [record.id for record in found]


def test_records_are_found_by_id(small):
    assert small.connector("bench-three").title == "Bench three-pole"
    assert small.pinout("bench-three-phones").use == "headphone"
    assert small.cable("bench-two").title == "Two cores, braid"
    assert small.part("bench-boot").kind == "boot"
    assert small.connector("bench-two") is None


def test_of_two_with_one_id_the_later_counts(tmp_path):
    first = records(tmp_path)["part"]
    assert Library(parts=[first, first.evolve(title="Later")]).part(first.id).title == "Later"


def test_records_come_by_title_whatever_the_case(tmp_path):
    part = records(tmp_path)["part"]
    three = [part.evolve(id=title, title=title) for title in ("b", "C", "a")]
    assert ids(Library(parts=three).parts()) == ["a", "b", "C"]


def test_the_records_for_a_connector(small):
    assert ids(small.pinouts_for("bench-three")) == ["bench-three-phones"]
    assert small.pinouts_for("other") == ()


@pytest.mark.parametrize(
    "words",
    [
        "3.5",
        "3,5 THREE",
        "three-pole",
        "ferrow",
        "jack male",
        "bench pole",
        "  3.5   jack ",
        "3-pole",
    ],
)
def test_a_connector_is_found_by_size_poles_family_and_maker(small, words):
    assert ids(small.search(words, "connector")) == ["bench-three"]


@pytest.mark.parametrize("words", ["6.35", "3.5 four", "xlr", "female", "z"])
def test_other_words_do_not_find_it(small, words):
    assert small.search(words, "connector") == ()


@pytest.mark.parametrize("words", ["L+ R-", "headphone", "letter", "bench-three load"])
def test_a_record_is_found_by_signals_use_and_source(small, words):
    assert "bench-three-phones" in ids(small.search(words))


@pytest.mark.parametrize("words", ["two braid", "shielded", "2-core"])
def test_a_cable_is_found_by_cores_and_shield(small, words):
    assert ids(small.search(words, "cable")) == ["bench-two"]


def test_no_words_find_everything_of_the_kind(small):
    assert ids(small.search("")) == ["bench-three", "bench-three-phones", "bench-two", "bench-boot"]
    assert ids(small.search("", "part")) == ["bench-boot"]


@pytest.mark.parametrize(
    ("words", "first"),
    [
        ("3.5 two", "jack-3.5-two-pole"),
        ("xlr 3 female", "xlr-3-female"),
        ("4.4", "jack-4.4-five-pole"),
        ("d-sub 25 male", "dsub-25-male"),
        ("din 5", "din-5-180-male"),
    ],
)
def test_the_best_of_what_ships_comes_first(shipped, words, first):
    assert ids(shipped.search(words, "connector"))[0] == first


def test_a_word_in_the_title_weighs_more_than_one_elsewhere(tmp_path):
    part = records(tmp_path)["part"]
    elsewhere = part.evolve(id="a", title="A", maker="Odalisk")
    in_title = part.evolve(id="z", title="Odalisk boot")
    assert ids(Library(parts=[elsewhere, in_title]).search("odalisk")) == ["z", "a"]


def care(tmp_path):
    """Three invented records: hearsay, retired, confirmed by two."""
    one = records(tmp_path)["pinout"]
    heard = one.evolve(id="heard", source={"kind": "hearsay"})
    gone = one.evolve(id="gone", retired={"reason": "wrong"})
    sure = one.evolve(
        id="sure", confirmations=tuple({"who": who, "how": "by meter"} for who in "AB")
    )
    return Library([records(tmp_path)["connector"]], [heard, gone, sure])


@pytest.mark.parametrize(
    ("wanted", "found"),
    [
        ({"trust": "confirmed-by-two"}, ["sure"]),
        ({"trust": "hearsay"}, ["heard"]),
        ({"source": "letter"}, ["gone", "sure"]),
        ({"source": "letter", "retired": False}, ["sure"]),
        ({"retired": True}, ["gone"]),
        ({"retired": False, "kind": "pinout"}, ["heard", "sure"]),
        ({"text": "headphone", "trust": "documented"}, ["gone"]),
        ({"retired": False, "kind": "connector"}, ["bench-three"]),
    ],
)
def test_the_collection_is_narrowed_by_trust_source_and_retirement(tmp_path, wanted, found):
    assert ids(care(tmp_path).search(**({"text": ""} | wanted))) == found


def test_a_retired_record_is_offered_for_no_connector(tmp_path):
    assert ids(care(tmp_path).pinouts_for("bench-three")) == ["heard", "sure"]


def test_a_definition_is_found_by_kind_and_tells_its_file(small, shipped):
    assert small.of_kind("cable", "bench-two") is small.cable("bench-two")
    assert small.of_kind("part", "bench-two") is None
    assert small.file_of(small.cable("bench-two")) is None
    record = shipped.connectors()[0]
    assert shipped.file_of(record).stem == record.id
