"""Pinout records: the source card hangs together, and trust follows from it. Invented data."""

import pytest
from pydantic import ValidationError

from planner.model.pinout import PinoutRecord
from planner.model.source import Document, Retired, Source

DIGEST = "0" * 64


def record(kind="letter", **more):
    return PinoutRecord(
        id="inlet",
        title="Inlet",
        fits=("jack",),
        use="inlet",
        drive="load",
        signals={"T": ("L+",), "R": ("R+",), "S": ("L-", "R-")},
        source=Source(kind=kind, recorded_by=more.pop("by", "")),
        **more,
    )


def on_the_part(*people):
    return tuple({"who": who, "how": "on the part, by meter"} for who in people)


def scan(**more):
    return {"digest": DIGEST, "name": "letter.pdf", "media": "application/pdf"} | more


@pytest.mark.parametrize(
    ("kind", "rung"),
    [
        ("standard", "documented"),
        ("drawing", "documented"),
        ("letter", "documented"),
        ("practice", "documented"),
        ("hearsay", "hearsay"),
        ("memory", "hearsay"),
        ("measured", "confirmed"),
    ],
)
def test_the_rung_that_a_source_gives(kind, rung):
    assert record(kind).trust == rung


@pytest.mark.parametrize(
    ("people", "rung"),
    [
        (["Tilney"], "confirmed"),
        (["A. Tilney", "a.  tilney "], "confirmed"),
        (["Tilney", "Okoro"], "confirmed-by-two"),
    ],
)
def test_confirmations_lift_any_source(people, rung):
    for kind in ("hearsay", "letter", "standard"):
        confirmed = record(kind).evolve(confirmations=on_the_part(*people))
        assert (confirmed.trust, confirmed.confirmed) == (rung, True)


@pytest.mark.parametrize(
    ("by", "rung"), [("Tilney", "confirmed"), ("Okoro", "confirmed-by-two"), ("", "confirmed")]
)
def test_who_measured_counts_as_one_of_the_two(by, rung):
    assert record("measured", by=by, confirmations=on_the_part("Tilney")).trust == rung


def test_a_record_is_as_weak_as_its_weakest_statement_until_a_part_confirms_it():
    weak = record(statements=({"contacts": ("S",), "kind": "hearsay"},))
    assert weak.trust == "hearsay"
    assert weak.evolve(confirmations=on_the_part("Tilney")).trust == "confirmed"
    standard = record("standard", statements=({"contacts": ("S",), "kind": "memory"},))
    assert not standard.confirmed


def test_a_drawing_may_be_called_hearsay():
    assert record("drawing", trust="hearsay").trust == "hearsay"
    assert not record("measured", trust="hearsay").confirmed


@pytest.mark.parametrize("rung", ["confirmed", "confirmed-by-two"])
def test_older_records_state_a_rung_without_names(rung):
    assert record(trust=rung).trust == rung


def test_a_rung_above_what_the_names_give_is_refused():
    with pytest.raises(ValidationError, match="name who else confirmed it"):
        record(trust="confirmed-by-two", confirmations=on_the_part("Tilney"))


def test_a_retired_record_is_not_relied_on():
    sure = record("measured")
    assert sure.confirmed
    assert not sure.evolve(retired=Retired(reason="another make of part")).confirmed


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ({"documents": (scan(), scan())}, "one document stands twice"),
        ({"statements": ({"contacts": ("X",), "kind": "letter"},)}, "a statement names 'X'"),
        (
            {"statements": ({"contacts": ("T",), "kind": "letter", "document": DIGEST},)},
            "a statement names a document that is not here",
        ),
    ],
)
def test_a_card_that_does_not_hang_together_is_refused(more, said):
    with pytest.raises(ValidationError, match=said):
        record(**more)


@pytest.mark.parametrize("name", ["../a.pdf", "a/b.pdf", "a\\b.pdf", ".a", "C:a", "", "a\x00b"])
def test_a_document_has_a_plain_name(name):
    with pytest.raises(ValidationError):
        Document(**scan(name=name))


@pytest.mark.parametrize("digest", ["", "0" * 63, "G" * 64, "A" * 64, "../" + "0" * 61])
def test_a_digest_is_64_small_hexadecimal_digits(digest):
    with pytest.raises(ValidationError, match="is no digest"):
        Document(**scan(digest=digest))


def test_a_document_is_kept_under_its_digest_with_the_suffix_of_its_media():
    assert Document(**scan(media="image/jpeg", name="x.JPG.exe")).kept_as == DIGEST + ".jpg"
