"""What is said of a small gap, and that taking the mend that is offered mends it."""

import pytest

from planner.checks.gap_words import gap_words
from planner.dryfit.bodies import Capsule
from planner.dryfit.gaps import Gap
from planner.services.checking import check_plan
from tests.checks.samples import all_samples

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
        gap_words(Gap(JOINT, other, gap_mm, 0.7, 0.35), tolerance_mm)
        == f"the joint on 2 and {said}"
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
