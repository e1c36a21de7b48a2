"""What is said of a small gap, and that taking the mend that is offered mends it."""

from dataclasses import replace

import pytest

from planner.checks.context import Context
from planner.checks.gap_words import gap_words
from planner.checks.rules.gap_small import gap_small
from planner.dryfit.bodies import Capsule
from planner.dryfit.gaps import Gap
from planner.services.checking import check_plan
from planner.wiring.graph import Wiring
from tests.checks.samples import all_samples
from tests.dryfit.test_sleeves import end, gap

JOINT = Capsule((0, 0, 0), (0, 0, 1), 0.5, "joint", "2", "", bare=True)
TAIL = Capsule((2, 0, 0), (2, 0, 1), 0.3, "tail", "1", "SH", bare=True)
SHELL = Capsule((5, 0, 0), (5, 0, 0), 0.0, "shell", "", "", bare=True)


@pytest.mark.parametrize(
    ("other", "gap_mm", "tolerance_mm", "said"),
    [
        (TAIL, 0.2, 0.0, "the bare pigtail SH are 0.2 mm apart; the limit here is 0.7 mm."),
        (SHELL, 0.0, 0.0, "the shell touch; the limit here is 0.7 mm."),
        (
            SHELL,
            -0.1,
            0.05,
            "the shell touch and reach 0.1 mm into each other; the limit here is 0.7 mm, "
            "leads taken 0.05 mm thicker all round.",
        ),
    ],
)
def test_both_bodies_gap_limit_and_tolerance(other, gap_mm, tolerance_mm, said):
    assert (
        gap_words(Gap(JOINT, other, gap_mm, 0.7, 0.35), tolerance_mm, "pin {}".format)
        == f"the joint on pin 2 and {said}"
    )


def offers():
    for sample in all_samples():
        for found in sample.findings if sample.is_bad else ():
            if found.code in {"gap-small", "drain-unsleeved"} and found.remedy:
                yield sample, found


def test_the_offered_mend_takes_the_finding_away():
    labels = set()
    for sample, found in offers():
        labels.add(found.remedy.label)
        after = check_plan(found.remedy.edit(sample.plan), sample.known)
        assert (found.code, found.where) not in {(it.code, it.where) for it in after}
    assert labels >= {"Sleeve it", "Dab it"}


def found_with(*gaps):
    """Return what the rule finds where the fit has these gaps."""
    plan, fit = end()
    context = Context(plan, Wiring(plan))
    context.__dict__["fit"] = (replace(fit, gaps=gaps),)
    return plan, list(gap_small(context))


def test_what_is_offered_is_what_is_advised():
    """A dab on c1 is for the gap to c0: for the one to c4 the advice is a sleeve on c4."""
    plan, found = found_with(
        gap("c0", "c1", 0.05),
        *(gap(*pair) for pair in (("c0", "c2"), ("c0", "c3"), ("c1", "c4"), ("c4", "c5"))),
    )
    dab, _, _, mend, _ = found
    assert (dab.remedy.label, mend.remedy.label) == ("Dab it", "Sleeve it")
    assert mend.mend.endswith("over the joint on pin c4.")
    after = mend.remedy.edit(plan)
    assert {it.contact for it in after.landings if it.end == "A" and it.sleeved} == {"c4"}
    assert not any(it.dabbed for it in after.landings)


def test_metal_in_metal_is_not_told_to_be_sleeved():
    _, (found,) = found_with(gap("c0", "c1", -0.2))
    assert found.mend.startswith("Land one of the two on another contact")
    assert found.remedy is None
