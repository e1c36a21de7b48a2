"""The bench drawing: what is in it, that nothing lies over anything, where things are hit."""

from dataclasses import replace
from itertools import combinations

import pytest

from planner.data import data_dir
from planner.drawing.bench import BenchLayout, Layer, Settings
from planner.drawing.bench.shapes import box_of, boxes_meet, moved_box
from planner.drawing.looks import DARK, LIGHT
from planner.drawing.primitives import Text
from planner.edits import landings, shapes
from planner.files.plans import read_plan

DEMOS = (
    "cue-desk-headphone-lead",
    "stage-left-balanced-line",
    "recording-rack-loom",
    "intercom-headset",
    "stereo-to-two-mono",
    "spoiled-cue-desk",
)


def demo(name):
    return read_plan(data_dir("resources") / "demo" / f"{name}.json")


def drawn(plan, **changes):
    return BenchLayout().bench(plan, Settings(LIGHT, **changes))


def texts(bench, *layers):
    return [
        (item.text, moved_box(box_of((item,)), group.origin))
        for group in bench.groups.values()
        if group.layer in layers
        for item in group.items
        if isinstance(item, Text)
    ]


@pytest.fixture(scope="module")
def cue():
    return demo("cue-desk-headphone-lead")


@pytest.mark.parametrize("zoom", [0.2, 0.27, 0.35, 0.5, 0.75, 0.98, 1.6])
@pytest.mark.parametrize("name", DEMOS)
def test_no_words_lie_over_other_words(name, zoom):
    found = texts(drawn(demo(name), zoom=zoom), Layer.LABEL, Layer.LINK)
    over = [(a, b) for (a, one), (b, other) in combinations(found, 2) if boxes_meet(one, other)]
    assert over == []


# Canvases of windows of 720 by 450, 1024 by 700, 1280 by 800 and 1440 by 900 px, and a large one.
SIZES = [(720, 294), (712, 520), (760, 444), (920, 544), (1500, 900)]


def fitted(name, size):
    layout, (width, height) = BenchLayout(), size
    settings = Settings(LIGHT, width=width, height=height)
    zoom = layout.fit_zoom(demo(name), settings)
    return layout.bench(demo(name), replace(settings, zoom=zoom)), zoom


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("size", SIZES)
def test_no_words_lie_over_other_words_where_the_lead_is_fitted(name, size):
    found = texts(fitted(name, size)[0], Layer.LABEL, Layer.LINK)
    over = [(a, b) for (a, one), (b, other) in combinations(found, 2) if boxes_meet(one, other)]
    assert over == []


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("size", SIZES)
def test_no_head_lies_over_cores_or_legs(name, size):
    bench, _ = fitted(name, size)
    heads = [(k, moved_box(g.box, g.origin)) for k, g in bench.groups.items() if "head/" in k]
    for key, (left, top, right, bottom) in heads:
        for run in bench.sections.values():
            inside = [
                (x, y)
                for way in run.ways.values()
                for x, y in way
                if left < x + run.width / 2 and x - run.width / 2 < right and top < y < bottom
            ]
            assert (key, inside) == (key, [])
        cores = [
            moved_box(group.box, group.origin)
            for group in bench.groups.values()
            if group.layer in {Layer.CORE, Layer.LOOSE}
        ]
        assert not any(boxes_meet((left, top, right, bottom), core) for core in cores)


def test_the_cue_lead_is_fitted_at_about_77_percent_where_the_window_is_compact():
    _, zoom = fitted("cue-desk-headphone-lead", (712, 520))
    assert zoom >= 0.75


def test_where_height_is_short_heads_have_one_line_and_still_mark_a_doubt():
    bench, zoom = fitted("cue-desk-headphone-lead", (760, 444))
    assert zoom >= 0.75
    head = bench.ends["L"].block.head
    assert len([item for item in head if isinstance(item, Text)]) <= 3
    assert any(
        getattr(item, "style", None) and item.style.fill == LIGHT.caution_fill for item in head
    )


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("size", SIZES)
def test_no_head_lies_over_a_split_or_a_jacket(name, size):
    bench, _ = fitted(name, size)
    heads = [(key, g) for key, g in bench.groups.items() if key.startswith("head/")]
    cable = [(key, g) for key, g in bench.groups.items() if g.layer == Layer.JACKET and g.items]
    over = [
        (one, other)
        for one, head in heads
        for other, part in cable
        if boxes_meet(moved_box(head.box, head.origin), moved_box(part.box, part.origin))
    ]
    assert over == []


@pytest.mark.parametrize("name", DEMOS)
def test_no_plate_lies_over_another(name):
    bench = drawn(demo(name))
    for placed in bench.ends.values():
        plates = [strand.plate for strand in placed.block.strands.values() if strand.plate]
        assert not any(boxes_meet(one, other) for one, other in combinations(plates, 2))


@pytest.mark.parametrize("name", DEMOS)
def test_everything_lies_inside_the_box(name):
    bench = drawn(demo(name))
    left, top, right, bottom = bench.box
    for group in bench.groups.values():
        box = moved_box(group.box, group.origin)
        if group.items:
            assert left - 2 <= box[0]
            assert top - 2 <= box[1]
            assert box[2] <= right + 2
            assert box[3] <= bottom + 2


@pytest.mark.parametrize("name", DEMOS)
def test_the_zoom_that_fits_leaves_the_margins(name):
    layout, settings = BenchLayout(), Settings(LIGHT, width=920, height=544)
    zoom = layout.fit_zoom(demo(name), settings)
    box = layout.bench(demo(name), Settings(LIGHT, zoom=zoom, width=920, height=544)).box
    assert box[0] >= 8
    assert box[1] >= 8
    assert box[2] <= 912
    assert box[3] <= 536


def test_a_wider_room_allows_no_smaller_zoom(cue):
    layout = BenchLayout()
    zooms = [
        layout.fit_zoom(cue, Settings(LIGHT, width=width, height=600)) for width in (500, 700, 1200)
    ]
    assert zooms == sorted(zooms)


def test_the_smallest_terminal_is_about_27_px_at_100_percent(cue):
    for end, placed in drawn(cue).ends.items():
        least = min(c.terminal.across_mm for c in cue.connector_of(end).contacts)
        assert 26.9 <= least * placed.block.scale <= 34


def test_one_scale_is_the_same_at_every_end(cue):
    scales = {placed.block.scale for placed in drawn(cue, one_scale=True).ends.values()}
    assert len(scales) == 1


def test_a_landed_core_ends_on_its_contact(cue):
    bench = drawn(cue)
    for landing in cue.landings:
        tip = bench.tips[landing.end, landing.conductor]
        assert tip == pytest.approx(bench.contacts[landing.end, landing.contact])


def test_a_loose_core_ends_short_of_the_face(cue):
    plan = landings.lift(cue, end="A", conductor="BU")
    bench = drawn(plan)
    assert bench.ends["A"].block.strands["BU"].contact == ""
    assert bench.contact_at(bench.tips["A", "BU"]) is None


def test_the_source_end_lies_left_of_the_loads(cue):
    bench = drawn(cue)
    assert bench.ends["A"].block.facing == 1
    assert bench.ends["A"].origin[0] < bench.ends["L"].origin[0]


def test_the_mating_side_is_the_mirror_of_the_solder_side():
    line = demo("stage-left-balanced-line")
    solder, mating = drawn(line), drawn(line, side="mating")
    for end in ("A", "B"):
        for contact, (x, y) in solder.ends[end].block.contacts.items():
            assert mating.ends[end].block.contacts[contact] == pytest.approx((-x, y))


def test_the_mating_side_has_no_cores_and_says_so(cue):
    bench = drawn(cue, side="mating")
    assert bench.tips == {}
    said = [text for text, _ in texts(bench, Layer.LABEL)]
    assert said.count("Mating side, mirrored") == 3
    assert "Solder side" not in said


def test_a_plan_without_connectors_says_what_to_choose():
    bench = drawn(shapes.one_to_two())
    said = [text for text, _ in texts(bench, Layer.FACE)]
    asked = [text for text in said if text.startswith("Choose")]
    assert asked == ["Choose A", "Choose L", "Choose R"]


def test_lengths_and_the_shield_that_ends_are_written(cue):
    said = [text for text, _ in texts(drawn(cue), Layer.LINK)]
    assert sorted(said) == ["0.60 m", "0.60 m", "1.20 m", "braid ends in the split"]


def test_the_length_of_many_equal_legs_is_written_once():
    said = [text for text, _ in texts(drawn(demo("recording-rack-loom")), Layer.LINK)]
    assert said == ["3.00 m", "legs 8 × 0.50 m"]


def test_words_keep_their_size_at_every_zoom(cue):
    sizes = {
        item.size
        for zoom in (0.3, 1.0, 3.0)
        for group in drawn(cue, zoom=zoom).groups.values()
        for item in group.items
        if isinstance(item, Text)
    }
    assert sizes == {12, 13, 15}


def test_the_nearest_contact_wins_where_targets_meet(cue):
    bench = drawn(cue, zoom=0.15)
    for key, centre in bench.contacts.items():
        assert bench.contact_at(centre) == key


def test_a_core_is_hit_on_its_stroke_and_plate_and_not_beside(cue):
    bench = drawn(cue)
    placed = bench.ends["L"]
    strand = placed.block.strands["WH"]
    plate = strand.plate
    middle = ((plate[0] + plate[2]) / 2, (plate[1] + plate[3]) / 2)
    assert bench.strand_at(placed.at(strand.points[12])) == ("L", "WH")
    assert bench.strand_at(placed.at(middle)) == ("L", "WH")
    assert bench.strand_at((placed.origin[0], placed.origin[1] - 400)) is None


def test_an_edit_draws_only_what_it_changes_anew(cue):
    layout, settings = BenchLayout(), Settings(LIGHT)
    before = layout.bench(cue, settings)
    after = layout.bench(landings.lift(cue, end="L", conductor="WH"), settings)
    assert after.ends["R"].block is before.ends["R"].block
    changed = {
        key
        for key in after.groups.keys() & before.groups.keys()
        if after.groups[key].items is not before.groups[key].items
    }
    assert "end/L/contact/T" in changed
    assert "conductor/L/WH" in changed
    assert "end/L/face" not in changed


def test_the_same_plan_gives_the_same_drawing(cue):
    assert drawn(cue).groups == drawn(cue).groups


def test_another_look_changes_colours_and_no_place(cue):
    light, dark = drawn(cue), BenchLayout().bench(cue, Settings(DARK))
    assert light.contacts == dark.contacts
    assert light.groups["end/A/face"].items != dark.groups["end/A/face"].items


def test_a_long_connector_stands_upright_and_the_bench_says_so():
    bench = drawn(demo("recording-rack-loom"))
    left, top, right, bottom = bench.ends["A"].block.face_box
    assert bottom - top > 2 * (right - left)
    said = [text for text, _ in texts(bench, Layer.LABEL)]
    assert "shown turned 90°" in said


@pytest.mark.parametrize("name", DEMOS)
def test_a_drawing_kept_through_edits_equals_one_from_nothing(name):
    layout, plan = BenchLayout(), demo(name)
    settings = Settings(LIGHT, width=920, height=544)
    layout.bench(plan, settings)
    for landing in plan.landings[:: max(len(plan.landings) // 6, 1)]:
        plan = landings.lift(plan, end=landing.end, conductor=landing.conductor)
        kept, afresh = layout.bench(plan, settings), BenchLayout().bench(plan, settings)
        assert kept.groups == afresh.groups


def test_a_lifted_drain_wants_its_own_contact_and_leaves_the_fan_as_it_was():
    layout, plan = BenchLayout(), demo("recording-rack-loom")
    settings = Settings(LIGHT)
    before = layout.bench(plan, settings).ends["A"].block
    drains = [name for name, fact in before.materials.items() if fact.is_shield]
    at = plan.landing_at["A", drains[3]].contact
    block = (
        layout.bench(landings.lift(plan, end="A", conductor=drains[3]), settings).ends["A"].block
    )
    assert block.materials[drains[3]].wanted == at
    assert block.ties == before.ties
