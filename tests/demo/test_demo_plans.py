"""The demo plans: what check finds in each, no more and no fewer."""

import pytest

from planner.checks.acceptance import acceptance_of
from planner.data import data_dir
from planner.edits.progress import left_to_land
from planner.files.plans import plan_bytes, read_plan
from planner.services.checking import check_plan, verdict
from tests.demo.make_plans import PLANS, shipped_library

FOLDER = data_dir("resources") / "demo"
PLANTED = [
    "joined-driven-returns",
    "one-channel-reversed",
    "open",
    "shield-floating",
    "threaded-too-late",
]
FOUND = {
    "cue-desk-headphone-lead": ("caution", ["pinout-unconfirmed"]),
    "stage-left-balanced-line": ("clear", []),
    "stereo-to-two-mono": ("clear", []),
    "recording-rack-loom": ("caution", ["leads-cross"]),
    "intercom-headset": (
        "caution",
        ["pinout-conflict", "pinout-unconfirmed", "pinout-unconfirmed"],
    ),
    "spoiled-cue-desk": ("stop", PLANTED),
}


@pytest.fixture(scope="module")
def library():
    return shipped_library()


@pytest.fixture(params=sorted(FOUND))
def name(request):
    return request.param


@pytest.fixture
def plan(name):
    return read_plan(FOLDER / f"{name}.json")


def test_every_demo_plan_is_looked_at():
    assert {path.stem for path in FOLDER.glob("*.json")} == set(FOUND) == set(PLANS)


def test_check_finds_what_is_expected_and_nothing_else(name, plan, library):
    findings = check_plan(plan, library.pinouts())
    assert (verdict(findings), sorted(it.code for it in findings)) == FOUND[name]


def test_every_acceptance_answers_a_finding(plan, library):
    answered = [acceptance_of(plan, it) for it in check_plan(plan, library.pinouts())]
    assert [it for it in plan.acceptances if it not in answered] == []


def test_nothing_is_left_to_land_in_a_good_plan(name, plan):
    expected = (("A", "SH"),) if name == "spoiled-cue-desk" else ()
    assert left_to_land(plan) == expected


def test_the_files_are_what_the_collection_and_the_edits_make(name, library):
    """Where this fails, a definition has changed: run `python -m tests.demo.make_plans`."""
    assert (FOLDER / f"{name}.json").read_bytes() == plan_bytes(PLANS[name](library))


def test_the_loom_lands_each_drain_on_the_ground_of_its_own_circuit():
    """AES59-2012 pins of the grounds, circuits 1 to 8; as quoted in two agreeing pages."""
    loom = read_plan(FOLDER / "recording-rack-loom.json")
    grounds = ["25", "11", "22", "8", "19", "5", "16", "2"]
    landed = [loom.landing_at["A", f"{circuit}s"].contact for circuit in range(1, 9)]
    assert landed == grounds


def test_the_balanced_plug_is_landed_pole_by_pole():
    """4.4 five-pole: tip L+, ring 1 L-, ring 2 R+, ring 3 R-, sleeve ground (JEITA RC-8141)."""
    lead = read_plan(FOLDER / "cue-desk-headphone-lead.json")
    at_plug = {it.contact: it.conductor for it in lead.landings if it.end == "A"}
    assert at_plug == {"T": "WH", "R1": "BU", "R2": "RD", "R3": "GN", "S": "SH"}


def test_the_mono_plugs_have_the_shield_for_their_return():
    """Unbalanced line: the shield is the return, landed at both ends. Common practice."""
    lead = read_plan(FOLDER / "stereo-to-two-mono.json")
    shields = {it.id for it in lead.conductors if it.kind == "shield"}
    landed = {(it.end, it.contact) for it in lead.landings if it.conductor in shields}
    assert landed == {("A", "S"), ("L", "S"), ("R", "S")}
    assert {end.connector for end in lead.ends} == {"jack-3.5-three-pole", "jack-6.35-two-pole"}
