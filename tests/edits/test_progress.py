"""How many landings are made and wanted."""

from planner.edits.by_signal import land_by_signal
from planner.edits.cables import set_shield_policy
from planner.edits.landings import cap, land, lift
from planner.edits.progress import Progress, left_to_land, progress
from tests.edits.leads import cue_lead


def test_the_cue_lead_wants_eight_cores_and_one_shield():
    assert progress(cue_lead()) == Progress(landed=0, wanted=9)


def test_what_is_lifted_is_left_to_land():
    plan = land_by_signal(cue_lead())[0]
    plan = lift(lift(plan, end="A", conductor="BU"), end="L", conductor="BU")
    assert progress(plan) == Progress(landed=7, wanted=9)
    assert left_to_land(plan) == (("A", "BU"), ("L", "BU"))


def test_a_capped_core_counts_no_more():
    assert progress(cap(cue_lead(), end="A", conductor="WH")) == Progress(landed=0, wanted=8)


def test_a_shield_counts_where_its_policy_wants_it_or_where_it_is_landed():
    isolated = set_shield_policy(cue_lead(), section="trunk", policy="isolated")
    assert progress(isolated).wanted == 8
    assert progress(land(isolated, end="A", conductor="SH", contact="S")) == Progress(1, 9)
