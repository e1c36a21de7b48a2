"""What the library has newer than a plan, and what that means for its landings. Invented data."""

from planner.edits.definitions_of import update_definitions
from planner.library.collection import Library
from planner.model.source import Retired
from planner.services.library import meaning, newer, up_to_date
from tests.building import PHONES, PHONES_IN, lead

WIRES = ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S")
LEAD = lead({"A": PHONES, "B": PHONES_IN}, WIRES)
MIRRORED = PHONES_IN.pinout.evolve(
    revision=2, signals={"T": ("R+",), "R": ("L+",), "S": ("L-", "R-")}
)


def library(*pinouts):
    return Library([PHONES.connector], pinouts)


def test_what_is_the_same_is_not_newer():
    assert newer(LEAD, library(PHONES.pinout, PHONES_IN.pinout)) == ()
    assert newer(LEAD, Library()) == ()


def test_a_higher_revision_and_a_silent_change_are_newer_an_older_one_is_not():
    retitled = PHONES.pinout.evolve(title="Another title")
    (silent,) = newer(LEAD, library(retitled))
    assert (silent.carried, silent.known, silent.revised) == (PHONES.pinout, retitled, False)
    (revised,) = newer(LEAD, library(MIRRORED))
    assert revised.revised
    assert [(it.key, it.first, it.second) for it in revised.changes] == [
        ("signals.T", "L+", "R+"),
        ("signals.R", "R+", "L+"),
    ]
    ahead = update_definitions(LEAD, records=[MIRRORED])
    assert newer(ahead, library(PHONES_IN.pinout)) == ()


def test_landings_that_would_be_wrong_are_said():
    told = meaning(LEAD, [MIRRORED], library(PHONES.pinout, MIRRORED))
    assert told.lost == ()
    assert told.moved == (
        "B: RD lands on tip, which carries R+ instead of L+",
        "B: GN lands on ring, which carries L+ instead of R+",
    )
    assert [it.code for it in told.appeared] == ["crossed-channels"]
    assert (told.cured, told.harmless) == ((), False)


def test_taking_it_back_cures_the_finding():
    wrong = update_definitions(LEAD, records=[MIRRORED])
    told = meaning(wrong, [PHONES_IN.pinout], library(PHONES_IN.pinout))
    assert ([it.code for it in told.cured], told.appeared) == (["crossed-channels"], ())


def test_a_new_title_is_harmless():
    told = meaning(LEAD, [PHONES_IN.pinout.evolve(title="Inlet")], library())
    assert told.harmless


def test_a_contact_that_is_gone_is_said():
    jack = PHONES.connector
    short = jack.evolve(revision=2, contacts=tuple(it for it in jack.contacts if it.id != "R"))
    told = meaning(LEAD, [short], library())
    assert "A: GN is not landed any more, contact R is gone" in told.lost
    assert "A: the pinout phones-output does not fit its connector any more" in told.lost
    assert not told.harmless


def test_a_record_that_was_retired_meanwhile_is_newer_and_a_caution():
    gone = PHONES_IN.pinout.evolve(revision=2, retired=Retired(reason="mating side"))
    (found,) = newer(LEAD, library(gone))
    assert ("retired.reason", "", "mating side") in [
        (it.key, it.first, it.second) for it in found.changes
    ]
    told = meaning(LEAD, [gone], library(PHONES_IN.pinout))
    assert [it.code for it in told.appeared] == ["pinout-unconfirmed"]


def test_all_that_is_newer_is_taken_at_once():
    known = library(MIRRORED, PHONES.pinout.evolve(revision=3, title="Third"))
    after = up_to_date(LEAD, newer(LEAD, known))
    assert newer(after, known) == ()
    assert [it.revision for it in after.definitions.pinouts] == [2, 3]
