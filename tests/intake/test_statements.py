"""What some contacts rest on, where that is another word than the record's own source."""

import pytest

from planner.intake.pinout_draft import PinoutDraft
from planner.intake.statements import contacts_from, state, unstate
from planner.model.source import Statement
from planner.problem import EditRefused


@pytest.fixture
def five_pole(shipped):
    return shipped.connector("jack-4.4-five-pole")


SAID = PinoutDraft(signals={"T": ("L+",), "R1": ("R+",), "R2": ("L-",)})


@pytest.mark.parametrize("text", ["R1, R2", "r1 r2", "ring 1; ring 2", "ring 1, r2, R1"])
def test_contacts_are_read_as_a_person_writes_them(five_pole, text):
    assert contacts_from(text, five_pole) == ("R1", "R2")


@pytest.mark.parametrize(("text", "told"), [("", "no contact is named"), ("R9", "no contact 'r9'")])
def test_what_is_no_contact_is_refused(five_pole, text, told):
    with pytest.raises(EditRefused, match=told):
        contacts_from(text, five_pole)


def test_the_later_word_on_a_contact_replaces_the_one_before():
    first = state(SAID, Statement(contacts=("T", "R1"), kind="hearsay"))
    after = state(first, Statement(contacts=("R1",), kind="drawing", reference="sheet 2"))

    assert [(it.contacts, it.kind) for it in after.statements] == [
        (("T",), "hearsay"),
        (("R1",), "drawing"),
    ]
    assert unstate(after, ("T", "R1")).statements == ()


def test_of_a_contact_that_carries_nothing_nothing_is_stated():
    with pytest.raises(EditRefused, match="what R3 carries"):
        state(SAID, Statement(contacts=("R3",), kind="hearsay"))
