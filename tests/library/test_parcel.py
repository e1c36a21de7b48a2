"""One file to send: what goes in comes out, and what a stranger tries is refused with a reason."""

import base64
import hashlib
import json
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.library.parcel import Parcel, parcel_bytes, parse_parcel, read_parcel
from planner.problem import InputError
from tests.files.samples import records
from tests.files.strategies import DEFINITIONS
from tests.library.parcels import LETTER, documented, letter, packed, parcel_of

HERE = Path("stranger.parcel.json")


@pytest.fixture
def values(tmp_path):
    return json.loads(packed(documented(tmp_path), records(tmp_path)["connector"]))


def refused(values):
    text = values if isinstance(values, str) else json.dumps(values)
    with pytest.raises(InputError) as caught:
        parse_parcel(text, HERE)
    assert all(it.what and it.where and it.mend for it in caught.value.problems)
    return caught.value.problems[0].what


def with_bytes(values, data):
    """Put other bytes into the parcel's document, with a digest that is right."""
    digest = hashlib.sha256(data).hexdigest()
    values["definitions"][0]["documents"][0]["digest"] = digest
    values["documents"] = [{"digest": digest, "data": base64.b64encode(data).decode()}]
    return values


def test_a_definition_travels_with_its_documents(tmp_path):
    record = documented(tmp_path)
    path = tmp_path / "letter.parcel.json"
    path.write_bytes(packed(record))
    assert read_parcel(path) == Parcel((record,), {letter().digest: LETTER})


def test_the_same_definitions_give_the_same_bytes(tmp_path):
    first, second = documented(tmp_path), records(tmp_path)["connector"]
    assert packed(first, second) == packed(first, second)
    again = parcel_of(tmp_path, first, second)
    assert packed(*again.definitions) == packed(first, second)


# Documents of random digests have no bytes; that case is the one above.
BARE = DEFINITIONS.map(
    lambda it: it.evolve(documents=(), statements=()) if hasattr(it, "statements") else it
).map(lambda it: it.evolve(documents=()) if hasattr(it, "documents") else it)


@settings(max_examples=40, deadline=None)
@given(BARE)
def test_any_definition_travels_unchanged(record):
    data = parcel_bytes([record], lambda _document: b"")
    assert parse_parcel(data.decode(), HERE).definitions == (record,)
    assert parcel_bytes([record], lambda _document: b"") == data


def test_what_is_no_parcel_is_refused(values, tmp_path):
    assert "is not the format of a parcel" in refused(values | {"format": "cupwright-plan"})
    assert "is not the format of a parcel" in refused("{}")
    assert "malformed JSON" in refused("PK\x03\x04".replace("\x03\x04", "34"))
    assert "holds a list" in refused("[]")


@pytest.mark.parametrize("version", [0, 2, True, "1", 1.0, None, 10**30])
def test_an_unknown_version_is_refused(values, version):
    assert "is not one that this Cupwright reads" in refused(values | {"version": version})


@pytest.mark.parametrize("key", ["definitions", "documents"])
@pytest.mark.parametrize("value", ["x", {}, [1], 7, None])
def test_other_shapes_are_refused(values, key, value):
    assert "is no list of objects" in refused(values | {key: value})


def test_unknown_keys_are_refused_at_every_depth(values):
    assert "'run' is not known here" in refused(values | {"run": "rm"})
    values["definitions"][0]["source"]["run"] = "rm"
    assert "'run' is not known here" in refused(values)


def test_none_too_many_and_twice_the_same_are_refused(values):
    one = values["definitions"][1]
    assert "holds 0 definitions" in refused(values | {"definitions": []})
    assert "holds 51 definitions" in refused(values | {"definitions": [one] * 51})
    assert "stands twice" in refused(values | {"definitions": [one, one], "documents": []})


def test_a_plan_in_a_parcel_is_refused(values):
    plan = {"format": "cupwright-plan", "version": 1}
    assert "a definition is wanted" in refused(values | {"definitions": [plan], "documents": []})


def test_deep_nesting_is_refused(values):
    deep = "[" * 100_000 + "]" * 100_000
    text = json.dumps(values).replace('"definitions": [', f'"definitions": [{deep}, ', 1)
    assert "nested more than" in refused(text)


def test_a_huge_file_is_refused_before_it_is_parsed(tmp_path, monkeypatch):
    path = tmp_path / "huge.parcel.json"
    with path.open("wb") as stream:
        stream.truncate(60_000_001)
    monkeypatch.setattr("planner.library.parcel.parse_json", None)
    with pytest.raises(InputError, match="more than the 60 MB that are read"):
        read_parcel(path)


@pytest.mark.parametrize("name", ["../../x.pdf", "/etc/x.pdf", "C:\\x.pdf", "..", "", ".x"])
def test_path_tricks_in_names_are_refused(values, name):
    values["definitions"][0]["documents"][0]["name"] = name
    assert "is no plain file name" in refused(values)


@pytest.mark.parametrize("record_id", ["../x", "a/b", "", "C:x", "a\\b", "x" * 65, "\u202ex"])
def test_path_tricks_in_ids_are_refused(values, record_id):
    values["definitions"][1]["id"] = record_id
    assert refused(values)


@pytest.mark.parametrize("digest", ["../" + "0" * 61, "0" * 63, "", "Z" * 64])
def test_path_tricks_in_digests_are_refused(values, digest):
    values["definitions"][0]["documents"][0]["digest"] = digest
    assert "is no digest" in refused(values)


@pytest.mark.parametrize("mark", ["\x07", "\u202e", "\u2066", "\x1b[31m", "\ud800"])
def test_control_characters_are_refused(values, mark):
    values["definitions"][0]["title"] = f"inlet{mark}"
    assert "control character" in refused(values)


def test_bytes_that_are_not_those_of_the_digest_are_refused(values):
    values["documents"][0]["data"] = base64.b64encode(LETTER + b"!").decode()
    assert "not those that its digest names" in refused(values)


@pytest.mark.parametrize("data", ["*", "AAA", "AA ==", "\u00e9AAA", "A" * 5])
def test_bytes_that_are_not_written_well_are_refused(values, data):
    values["documents"][0]["data"] = data
    assert "not written in base64" in refused(values)


def test_a_program_called_a_letter_is_refused(values):
    assert "does not begin as a file of the kind" in refused(with_bytes(values, b"MZ\x90\x00"))


def test_a_document_that_is_too_large_is_refused(values, monkeypatch):
    monkeypatch.setattr("planner.library.papers.DOCUMENT_BYTES", 100)
    assert "more than the" in refused(with_bytes(values, b"%PDF-" + b"0" * 200))


def test_documents_and_records_must_name_each_other(values):
    assert "letter 1996.pdf is named and not in it" in refused(values | {"documents": []})
    twice = values["documents"] * 2
    assert "names this document, or it stands twice" in refused(values | {"documents": twice})
    other = {"digest": "0" * 64, "data": ""}
    assert "names this document" in refused(values | {"documents": [other]})


def test_every_definition_that_is_wrong_is_told(values):
    for body in values["definitions"]:
        body["title"] = ""
    with pytest.raises(InputError) as caught:
        parse_parcel(json.dumps(values), HERE)
    assert [it.where for it in caught.value.problems] == [
        f"{HERE}/definitions[#1]: title",
        f"{HERE}/definitions[#2]: title",
    ]


def test_a_parcel_that_nobody_could_read_is_not_made(tmp_path, monkeypatch):
    monkeypatch.setattr("planner.library.parcel.PARCEL_BYTES", 100)
    with pytest.raises(InputError, match="Make the scans smaller"):
        packed(documented(tmp_path))


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner),
    max_leaves=6,
)


@st.composite
def spoilt(draw, values):
    """A parcel with any one value in it replaced by anything, or deleted."""
    places = list(_places(values))
    *way, last = draw(st.sampled_from(places))
    target = values
    for step in way:
        target = target[step]
    if draw(st.booleans()):
        target[last] = draw(JSON)
    else:
        del target[last]
    return values


def _places(value, way=()):
    items = value.items() if isinstance(value, dict) else enumerate(value)
    for key, inner in items:
        yield (*way, key)
        if isinstance(inner, dict | list):
            yield from _places(inner, (*way, key))


@settings(max_examples=100, deadline=None)
@given(st.data())
def test_any_spoilt_parcel_is_read_or_refused_with_a_reason(tmp_path_factory, data):
    """Never another error, whatever a stranger writes in place of a value."""
    source = tmp_path_factory.mktemp("parcel")
    values = json.loads(packed(documented(source), records(source)["connector"]))
    text = json.dumps(data.draw(spoilt(values)))
    assert _read_or_refused(text)


def _read_or_refused(text):
    """Return the definitions, or the reasons why there are none."""
    try:
        return parse_parcel(text, HERE).definitions
    except InputError as error:
        return [it for it in error.problems if it.what and it.where and it.mend]
