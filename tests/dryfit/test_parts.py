"""What is proposed for small leads with invented parts, and that it passes and grips."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.dryfit import parts as parts_module
from planner.dryfit.parts import lacks, proposals
from planner.dryfit.shrink_places import cut_mm, step_at
from planner.dryfit.sleeves import SleevePlan
from planner.dryfit.threading import thread
from planner.edits.parts import add_part
from planner.model.part import Part
from tests.dryfit.test_fit import plan
from tests.edits.leads import cue_lead

# The jacket of the line is 4 mm; its plug at B is 15 mm thick, 30 mm long, and grips 3 to 6 mm.
LINE = plan({"WH": "1"})


def part(name: str, kind: str, bore_mm: float, **more) -> Part:
    sizes = {"outside_mm": bore_mm + 0.5, "length_mm": 30.0} | more
    return Part(id=name, title=name, kind=kind, bore_mm=bore_mm, **sizes)


BOOT = part("boot", "boot", 5, outside_mm=15)
SHELL = part("shell", "shell", 12, outside_mm=15)
CLAMP = part("clamp", "clamp", 6, outside_mm=11.5)
LABEL = part("label", "label", 5)
SHRINK = part("shrink", "heat-shrink", 4.75, recovered_mm=1.0)
COVER = part("cover", "cover", 5)
STOCK = [BOOT, SHELL, CLAMP, LABEL, SHRINK, COVER]


def taken(lead, stock, **place):
    return [(it.part.id, it.at, it.comes_from) for it in proposals(lead, stock, **place)]


def test_an_end_gets_what_is_made_for_its_plug_and_passes_its_jacket():
    wanted = ["shell", "clamp", "boot", "shrink", "label"]
    assert taken(LINE, STOCK, end="B") == [(name, "B", "B") for name in wanted]


@pytest.mark.parametrize(
    "change",
    [
        {"bore_mm": 3.9},  # does not pass the jacket
        {"outside_mm": 19},  # made for a thicker plug
        {"maker": "Odalisk Audio"},  # made for that maker's plugs
    ],
)
def test_a_boot_that_does_not_do_is_not_proposed(change):
    assert taken(LINE, [BOOT.evolve(**change)], end="B") == []


def test_a_boot_too_narrow_is_told_with_both_figures():
    found = [it.why for it in lacks(LINE, [BOOT.evolve(bore_mm=3.9)], end="B") if it.kind == "boot"]
    assert len(found) == 1
    assert "4 mm" in found[0]
    assert "3.9 mm" in found[0]


def test_a_cable_thinner_than_the_clamp_gets_no_boot():
    thin = LINE.definitions.cables[0].evolve(jacket_mm=2.5)
    lead = LINE.evolve(definitions=LINE.definitions.evolve(cables=(thin,)))
    assert taken(lead, [BOOT, CLAMP], end="B") == []
    assert [it.kind for it in lacks(lead, [BOOT, CLAMP], end="B")] == [
        "clamp", "heat-shrink", "label",
    ]  # fmt: skip


def test_what_is_chosen_is_not_proposed_again():
    for one in proposals(LINE, STOCK):
        lead = add_part(LINE, part=one.part, at=one.at, comes_from=one.comes_from)
        left = [it for it in proposals(LINE, STOCK) if it != one]
        assert list(proposals(lead, STOCK)) == left


WIDE = COVER.evolve(outside_mm=27)


def with_tube(**place):
    """Return the cue lead with a tube that goes over everything but the cover, nor that over it."""
    return add_part(cue_lead(), part=part("tube", "heat-shrink", 26, recovered_mm=3.0), **place)


def test_a_cover_comes_over_the_legs_where_a_part_lies_in_its_way():
    """The tube comes over the legs to A before the cover lies there, and then A is shut."""
    lead = with_tube(at="A", comes_from="L")
    found = {it.part.id: it.comes_from for it in proposals(lead, [WIDE])}
    assert found == {"cover": "L"}
    assert {it.part.id: it.comes_from for it in proposals(cue_lead(), [WIDE])} == {"cover": "A"}
    taken = add_part(lead, part=WIDE, at="split", comes_from="L")
    assert thread(taken).hindrances == ()


def test_a_part_without_a_way_past_the_others_is_lacking():
    """The tube comes late over A to the split, where the cover would lie before it."""
    lead = with_tube(at="split", comes_from="A", after_joint=True)
    assert proposals(lead, [WIDE]) == ()
    assert "has no way to its place past" in [it.why for it in lacks(lead, [WIDE])][-1]


def test_a_split_gets_a_cover_over_the_trunk_from_the_trunks_end():
    found = taken(cue_lead(), STOCK)
    assert [it for it in found if it[0] == "cover"] == [("cover", "split", "A")]


def test_the_trunk_shows_its_split_and_a_leg_does_not():
    lead = cue_lead()
    trunk, leg = lead.sections[0].id, lead.sections[1].id
    assert "cover" in {name for name, _, _ in taken(lead, [COVER], section=trunk)}
    assert taken(lead, [COVER], section=leg) == []


def test_a_cover_so_wide_that_it_slips_is_not_proposed():
    assert taken(cue_lead(), [part("wide", "cover", 40)]) == []


def test_a_place_that_is_not_there_is_refused():
    with pytest.raises(KeyError):
        proposals(LINE, STOCK, end="Z")


@given(st.permutations(STOCK), st.lists(st.floats(1, 20), min_size=6, max_size=6))
def test_the_order_of_the_stock_plays_no_part_and_all_passes(stock, bores):
    sized = [it.evolve(bore_mm=bore) for it, bore in zip(STOCK, bores, strict=True)]
    shuffled = sorted(sized, key=lambda it: [each.id for each in stock].index(it.id))
    found = proposals(LINE, shuffled)
    assert found == proposals(LINE, sized)
    assert all(it.part.bore_mm >= 4 for it in found)


def test_shrink_that_would_stop_the_cover_is_not_proposed():
    """4.64 mm thick when shrunk on the jacket of 4 mm; the cover has a bore of 4.5 mm."""
    narrow = COVER.evolve(bore_mm=4.5)
    trunk = cue_lead().sections[0].id
    assert [it[0] for it in taken(cue_lead(), [SHRINK, COVER], section=trunk)] == [
        "cover",
        "shrink",
    ]
    assert [it[0] for it in taken(cue_lead(), [SHRINK, narrow], section=trunk)] == ["cover"]
    assert "4.64 mm" in lacks(cue_lead(), [SHRINK, narrow], section=trunk)[0].why


LINER = part("liner", "liner", 9, outside_mm=11.5)


@pytest.mark.parametrize(("wanted", "bore_mm", "found"), [
    (True, 9, ["liner"]),
    (False, 9, []),
    (True, 4.5, []),  # passes the jacket, not the joints round the plug's axis
])  # fmt: skip
def test_a_liner_where_the_joints_want_one_and_it_passes_them(monkeypatch, wanted, bore_mm, found):
    monkeypatch.setattr(parts_module, "sleeves_for", lambda *_: SleevePlan(liner=wanted))
    stock = [LINER.evolve(bore_mm=bore_mm)]
    assert [it[0] for it in taken(LINE, stock, end="B")] == found
    told = [it.why for it in lacks(LINE, stock, end="B") if it.kind == "liner"]
    assert len(told) == (wanted and not found)


def test_over_several_ends_of_the_trunks_side_the_nearest_is_named_and_all_must_pass():
    """A and B join at a split of their own; their jackets of 5 mm are 10 mm side by side."""
    lead = cue_lead()
    trunk, *legs = lead.sections
    thick = lead.definitions.cables[0].evolve(id="thick", jacket_mm=5)
    sides = [
        trunk.evolve(id=name, near=name, far="mid", cable="thick", length_mm=length)
        for name, length in (("A", 300), ("B", 200))
    ]
    lead = lead.evolve(
        definitions=lead.definitions.evolve(cables=(*lead.definitions.cables, thick)),
        ends=(*lead.ends, lead.ends[0].evolve(id="B")),
        splits=(*lead.splits, lead.splits[0].evolve(id="mid")),
        sections=(trunk.evolve(near="mid"), *sides, *legs),
    )
    covers = [part(f"cover-{bore}", "cover", bore) for bore in (9.9, 10.1)]
    told = [it.why for it in lacks(lead, covers, section=trunk.id) if it.at == "split"]
    assert "at least 10 mm" in told[0]  # wider than 6 mm it slips on the trunk of 4 mm
    fat = lead.definitions.cables[0].evolve(jacket_mm=8)
    lead = lead.evolve(definitions=lead.definitions.evolve(cables=(fat, thick)))
    assert ("cover-10.1", "split", "B") in taken(lead, covers, section=trunk.id)


def test_a_chosen_piece_of_shrink_keeps_its_cut_but_is_no_longer_than_in_stock():
    proposed = next(it for it in proposals(LINE, STOCK, end="B") if it.part is SHRINK)
    lead = add_part(LINE, part=SHRINK, at="B", comes_from="B")
    assert cut_mm(lead, lead.parts[0]) == proposed.cut_mm > 0
    short = add_part(LINE, part=SHRINK.evolve(length_mm=5), at="B", comes_from="B")
    assert cut_mm(short, short.parts[0]) == 5
    boot = add_part(LINE, part=BOOT, at="B", comes_from="B")
    assert cut_mm(boot, boot.parts[0]) == 0


def test_shrink_at_a_split_grips_the_thinner_side_and_laps_both():
    """Legs of cores, thinner than the trunk of 4 mm: overlaps 8 mm (two diameters) and 5 mm."""
    step = step_at(cue_lead(), "split")
    assert step.grips_mm < 4
    assert step.cover_mm >= 8 + 5
