"""Titles, and cautions accepted with a reason."""

import pytest

from planner.edits.refusal import NotAllowed, NotThere
from planner.edits.texts import accept, set_order, set_remarks, set_revision, set_title, withdraw
from planner.model.plan import Plan


def test_words_are_set_and_trimmed():
    plan = set_title(set_order(Plan(), order="SP-1"), title="  Pit lead ")
    plan = set_revision(set_remarks(plan, remarks="two\nlines"), revision=4)
    assert (plan.title, plan.order, plan.remarks, plan.revision) == (
        "Pit lead",
        "SP-1",
        "two\nlines",
        4,
    )


def test_a_title_that_is_too_long_is_refused():
    with pytest.raises(NotAllowed, match="title"):
        set_title(Plan(), title="x" * 201)


def test_a_second_acceptance_takes_the_place_of_the_first():
    plan = accept(Plan(), finding_code="gap-small", places=["A/T//"], reason="sleeved")
    plan = accept(plan, finding_code="gap-small", places=["A/T//"], reason="glued", by="bench")
    assert [(it.reason, it.by) for it in plan.acceptances] == [("glued", "bench")]
    assert withdraw(plan, finding_code="gap-small", places=["A/T//"]).acceptances == ()


@pytest.mark.parametrize("weight", ["stop", "note"])
def test_only_cautions_are_accepted(weight):
    with pytest.raises(NotAllowed):
        accept(Plan(), finding_code="open", places=(), reason="because", weight=weight)


def test_a_reason_is_required():
    with pytest.raises(NotAllowed, match="accepted with a reason"):
        accept(Plan(), finding_code="gap-small", places=(), reason="  ")


def test_what_is_not_accepted_cannot_be_withdrawn():
    with pytest.raises(NotThere):
        withdraw(Plan(), finding_code="gap-small", places=())
