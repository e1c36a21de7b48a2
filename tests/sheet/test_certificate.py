"""The pages of a unit: a certificate only where it passed, plain about what was not read."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.data import data_dir
from planner.drawing.primitives import Text
from planner.files.plans import plan_digest, read_plan
from planner.proving.expected import expected_sweep
from planner.proving.probing import isolation_plans
from planner.proving.reading import Meter, Reading, Readings
from planner.proving.units import (
    Attachment,
    Expected,
    Listening,
    Rework,
    UnitRecord,
    Wiggle,
    expected_of,
)
from planner.sheet.certificate import certificate_pages
from planner.sheet.certificate.contacts import in_ranges
from planner.sheet.lettering import BODY, SMALL
from planner.units import number
from planner.wiring.graph import Wiring
from tests.proving.unit_samples import AT, PLAN, SWEEP, all_good, unit
from tests.sheet.collisions import outside, overlapping, struck

LOOM = read_plan(data_dir("resources") / "demo" / "recording-rack-loom.json")
EVERYWHERE = pytest.mark.parametrize(
    ("paper", "language"), [("a4", "en"), ("a4", "de"), ("letter", "en"), ("letter", "de")]
)
LOG = {
    "remarks": "Spare boot in bag 4.",
    "attachments": (Attachment(name="joint.jpg", digest="a" * 64, size_bytes=9),),
    "rework": (Rework(at=AT, who="I. Marram", found="high joint on T at L", done="made anew"),),
    "listening": (Listening(tone="in-phase", heard="as-expected", note="mid-head"),),
}


def pages_of(record, plan=PLAN, **options):
    return certificate_pages(plan, record, **options)


def texts(pages):
    return [item.text for page in pages for item in page.items if isinstance(item, Text)]


def said(pages):
    """Return all that stands on the pages, the pieces of a line put together."""
    return " ".join(" ".join(texts(pages)).split())


def faults(pages):
    return [
        found
        for page in pages
        for found in (*overlapping(page.items), *outside(page), *struck(page.items))
    ]


def loom_unit(**changes):
    sweep = expected_sweep(LOOM, Wiring(LOOM))
    joined = [Reading(one=it.one, other=it.other, joined=True, ohm=0.4) for it in sweep.paths]
    nets = [net[0] for net in sweep.nets]
    apart = [
        Reading(one=one, other=other, joined=False)
        for place, one in enumerate(nets)
        for other in nets[place + 1 :]
    ]
    fields = {
        "plan_digest": plan_digest(LOOM),
        "readings": Readings(readings=(*joined, *apart)),
        "expected": expected_of(sweep),
        "wiggle": (),
    }
    return unit(3, **(fields | changes))


# -- what it says ---------------------------------------------------------------------------------


def test_a_unit_that_passed_has_a_certificate_to_sign():
    (page,) = pages_of(unit(12, **LOG), earlier=(unit(12, verdict="failed"),))
    words = said((page,))
    for text in (
        "UNIT 12",
        "Test certificate",
        "PASSED",
        "SP-0420",
        "I. Marram",
        "2026-03-14 15:09",
        "0.20 ohm",
        "Joined as planned: 4 of 4 paths.",
        "End L , 2026-03-14 15:09: steady.",
        "Both in phase: as expected. mid-head",
        "Found: high joint on T at L",
        "2026-03-14 15:09, I. Marram: failed, to revision 1.",
        "Spare boot in bag 4.",
        "joint.jpg, SHA-256 aaaa aaaa .",
        "Signature",
    ):
        assert text in words
    assert "no certificate" not in words


def test_each_path_stands_with_expected_shown_own_limit_and_outcome():
    path = SWEEP.paths[0]
    row = texts(pages_of(unit(1)))
    start = row.index(f"{path.ohm:.2f}")
    assert row[start : start + 5] == [
        f"{path.ohm:.2f}",
        "0.35",
        "0.15",
        f"{path.limit_ohm:.2f}",
        "good",
    ]


@pytest.mark.parametrize("verdict", ["failed", "unfinished"])
def test_what_has_not_passed_says_so_boldly_and_is_no_certificate(verdict):
    pages = pages_of(unit(1, verdict=verdict))
    words = said(pages)
    assert "no certificate" in words
    assert "Test certificate" not in words
    assert "Signature" not in words
    assert "Not to be signed for." in words
    bold = [item.text for item in pages[0].items if isinstance(item, Text) and item.bold]
    banner = {"failed": "FAILED", "unfinished": "NOT FINISHED"}[verdict]
    assert f"{banner}. This is no certificate." in bold


def test_one_pair_of_ten_read_apart_is_no_certificate():
    one, *others = (it for it in all_good().readings if not it.joined)
    paths = [it for it in all_good().readings if it.joined]
    words = said(pages_of(unit(1, readings=Readings(readings=(*paths, one)))))
    assert "NOT FINISHED. This is no certificate." in words
    assert f"{len(others)} pairs that were asked for were not read apart." in words


def test_a_loom_passes_to_a_stop_line_that_is_printed():
    isolation = isolation_plans(LOOM, Wiring(LOOM))[0]
    read = Readings(readings=tuple(it for it in loom_unit().readings.readings if it.joined))
    for pair in isolation.pairs:
        one, other = sorted(pair)
        read = read.taken(Reading(one=one, other=other, joined=False))
    stop, record = isolation.stop_after, loom_unit(readings=read)
    words = said(pages_of(record, LOOM))
    assert faults(pages_of(record, LOOM, paper="letter", language="de")) == []
    assert "PASSED to the stop line" in words
    for mm, ends in stop.ends_by_mm.items():
        assert f"{number(mm)} mm at {ends[0]}" in words
    assert f"Pairs beyond it: {stop.left}." in words
    assert f"{stop.left} pairs beyond the stop line were not read apart." in words
    assert "stop line" not in said(pages_of(unit(1)))


def test_limits_of_a_plan_that_has_changed_are_said_to_be_as_recorded():
    told = "Limits and pairs asked for are as recorded"
    assert told in said(pages_of(unit(1), PLAN.evolve(revision=2)))
    assert told not in said(pages_of(unit(1)))


def test_a_verdict_that_the_readings_do_not_bear_out_does_not_count():
    readings = all_good().taken(Reading(one=("A", "T"), other=("A", "R"), joined=True, ohm=0.4))
    words = said(pages_of(unit(1, readings=readings)))
    assert "FAILED. This is no certificate." in words
    assert "Bridge: A T and A R are joined, 0.40 ohm." in words
    assert "The record says passed. Its readings do not bear that out." in words


def test_what_was_not_measured_is_said_plainly():
    few = Readings(readings=all_good().readings[:1])
    words = said(pages_of(unit(1, readings=few, wiggle=())))
    for text in (
        "3 paths were not read:",
        "3 pairs that were asked for were not read apart.",
        "Not bent while it was metered: A, L, R.",
        "Not listened to.",
        "No meter shows left from right",
    ):
        assert text in words
    assert "NOT FINISHED" in words


def test_a_beep_is_no_figure():
    paths = tuple(it.evolve(ohm=None) if it.joined else it for it in all_good().readings)
    words = said(pages_of(unit(1, readings=Readings(readings=paths))))
    assert "4 paths only beeped: their resistance was not measured." in words


def test_an_older_revision_is_named_with_both_digests():
    newer = PLAN.evolve(revision=2, title="Pit headphone lead, longer")
    words = said(pages_of(unit(1), newer))
    old, new = plan_digest(PLAN), plan_digest(newer)
    assert "OF AN OLDER REVISION" in words
    assert f"proved to revision 1 , digest {old[:4]} {old[4:8]} ." in words
    assert f"The plan is now revision 2 , digest {new[:4]} {new[4:8]} ." in words
    assert "OF AN OLDER REVISION" not in said(pages_of(unit(1)))


def test_an_older_record_is_judged_by_what_it_was_held_against():
    bare = PLAN.evolve(landings=PLAN.landings[:2])
    assert "Joined as planned: 4 of 4 paths." in said(pages_of(unit(1), bare))
    lost = said(pages_of(unit(1, expected=Expected()), bare))
    assert "What the unit was held against is not kept with it." in lost
    assert "NOT FINISHED" in lost
    assert "4 of 4 paths" in said(pages_of(unit(1, expected=Expected())))


def test_a_spoilt_attachment_is_marked():
    record = unit(1, **LOG)
    assert "GONE OR CHANGED" in said(pages_of(record, spoilt=["a" * 64]))
    assert "GONE OR CHANGED" not in said(pages_of(record, spoilt=["b" * 64]))


def test_the_decimal_sign_is_that_of_the_language():
    words = said(pages_of(unit(1), language="de"))
    assert "0,35" in words
    assert "0.35" not in words


@pytest.mark.parametrize(
    ("names", "told"),
    [
        (["2", "3", "4", "6", "T", "7", "8"], ["2\u20134", "6", "T", "7", "8"]),
        (["01", "02", "03"], ["01", "02", "03"]),
        (["9", "10", "11", "12"], ["9\u201312"]),
        ([], []),
    ],
)
def test_many_numbers_in_a_row_are_a_range(names, told):
    assert in_ranges(names) == told


# -- how it looks ---------------------------------------------------------------------------------


@EVERYWHERE
@pytest.mark.parametrize("verdict", ["passed", "failed"])
def test_nothing_collides(paper, language, verdict):
    newer = PLAN.evolve(revision=2)
    pages = pages_of(
        unit(12, verdict=verdict, **LOG),
        newer,
        earlier=(unit(12),) * 3,
        spoilt=["a" * 64],
        paper=paper,
        language=language,
    )
    assert faults(pages) == []


@pytest.mark.parametrize(("paper", "language", "left"), [("a4", "en", 544), ("letter", "de", 60)])
def test_nothing_collides_on_a_loom_of_many_readings(paper, language, left):
    record = loom_unit()
    few = Readings(readings=record.readings.readings[:left])
    pages = pages_of(record.evolve(readings=few), LOOM, paper=paper, language=language)
    assert faults(pages) == []
    assert len(pages) <= 4


def test_nothing_at_the_bench_is_smaller_than_the_floor():
    for page in pages_of(loom_unit(), LOOM):
        small = [item for item in page.items if isinstance(item, Text) and item.size < BODY]
        assert {item.size for item in small} == {SMALL}
        body = (item.at[1] for item in small)
        assert all(y < 2800 or y > page.height - 1100 for y in body)


def test_there_are_only_black_white_and_grey():
    """The verdict survives a photocopy: it is told by words and shapes."""
    colours = {
        colour
        for page in pages_of(unit(1, verdict="failed"))
        for item in page.items
        for colour in (
            [item.colour] if isinstance(item, Text) else [item.style.fill, item.style.stroke]
        )
        if colour
    }
    assert all(len({colour[1:3], colour[3:5], colour[5:7]}) == 1 for colour in colours)


lines = st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), max_size=200)
blocks = st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), max_size=900)


@st.composite
def records(draw):
    readings = []
    for one in SWEEP.contacts[:4]:
        for other in SWEEP.contacts[4:]:
            if draw(st.booleans()):
                joined = draw(st.booleans())
                ohm = draw(st.none() | st.floats(0, 9999)) if joined else None
                readings.append(Reading(one=one, other=other, joined=joined, ohm=ohm))
    return UnitRecord(
        number=draw(st.integers(1, 999_999)),
        at=AT,
        who=draw(lines),
        verdict=draw(st.sampled_from(["passed", "failed", "unfinished"])),
        plan_digest=plan_digest(PLAN),
        plan_revision=draw(st.integers(1, 10**6)),
        readings=Readings(meter=Meter(name=draw(lines)), readings=tuple(readings)),
        expected=draw(st.sampled_from([Expected(), expected_of(SWEEP)])),
        remarks=draw(blocks),
        attachments=(Attachment(name=draw(lines) + "x", digest="0" * 64, size_bytes=1),),
        rework=(Rework(at=AT, who=draw(lines), found=draw(blocks), done=draw(blocks)),),
        wiggle=(Wiggle(end="A", state="broken", at=AT, note=draw(lines)),),
        listening=(Listening(tone="left", heard="otherwise", note=draw(lines)),),
    )


@settings(max_examples=15, deadline=None)
@given(record=records())
def test_whatever_a_record_says_nothing_collides_or_leaves_the_page(record):
    assert faults(pages_of(record)) == []


def test_a_text_of_many_pages_goes_on():
    rework = (Rework(at=AT, found="w\u00f6rter " * 550, done="x" * 4000),) * 2
    pages = pages_of(unit(1, rework=rework))
    assert faults(pages) == []
    assert len(pages) > 1
