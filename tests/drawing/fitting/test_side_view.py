"""The side view: left stays left, heights to scale, words for heights."""

import pytest

from planner.drawing.bench.shapes import box_of
from planner.drawing.fitting.side import (
    height_word,
    laid_flat,
    side_height,
    side_view,
    side_width,
    wants_side_view,
)
from planner.drawing.looks import LIGHT, PRINT
from planner.drawing.primitives import Circle, Poly, Text
from planner.drawing.safe_svg import unsafe_parts
from planner.drawing.svg import svg_text
from tests.drawing.fitting.samples import connector_named, connectors, demo_fit, fit_of
from tests.sheet.collisions import overlapping

FIVE_POLE = connector_named("jack-4.4-five-pole")


def drawn(connector, fit, look=LIGHT, scale=12.0, **options):
    return side_view(connector, fit, origin=(10, 20), width=500, scale=scale, look=look, **options)


def test_left_stays_left_cut_at_the_top_of_the_face():
    assert [one.id for one in laid_flat(FIVE_POLE, 0)] == ["R1", "T", "S", "R3", "R2"]


def test_turning_the_plug_rolls_the_row_on():
    assert [one.id for one in laid_flat(FIVE_POLE, -72)] == ["T", "S", "R3", "R2", "R1"]


def test_a_plug_with_one_height_wants_no_side_view():
    assert wants_side_view(FIVE_POLE)
    assert not wants_side_view(connector_named("xlr-3-male"))


def test_words_tell_heights_only_where_they_differ():
    words = {one.id: height_word(FIVE_POLE, one) for one in FIVE_POLE.contacts}
    assert words == {"T": "low", "R1": "high", "R2": "low", "R3": "high", "S": "long"}
    plain = connector_named("xlr-3-male")
    assert {height_word(plain, one) for one in plain.contacts} == {""}


def test_heights_and_widths_are_to_scale():
    fit = fit_of(FIVE_POLE)
    ends = {}
    for lead in fit.leads:
        if lead.is_shield:
            continue
        body = LIGHT.core(lead.part.colours[0])[0]
        (core,) = [
            i
            for i in drawn(FIVE_POLE, fit)
            if i.owner == f"lead/{lead.landing.conductor}"
            and isinstance(i, Poly)
            and i.style.stroke == body
        ]
        assert core.style.width == pytest.approx(lead.part.insulation_mm * 12)
        ends[lead.landing.contact] = core.points[-1][1] + 12 * (lead.mouth[2] + lead.gap_mm)
    # All heights in mm are counted from one level.
    assert len(ends) == 4
    assert max(ends.values()) == pytest.approx(min(ends.values()))


def test_leads_are_broken_off_where_they_say_no_more_but_not_within_a_sleeve():
    plain, sleeved = fit_of(FIVE_POLE), fit_of(FIVE_POLE, sleeved={"k1"})
    assert side_height(FIVE_POLE, plain, 12, LIGHT) < side_height(FIVE_POLE, sleeved, 12, LIGHT)
    (sleeve,) = [i for i in drawn(FIVE_POLE, sleeved) if i.owner == "sleeve/k1"]
    core = [i for i in drawn(FIVE_POLE, sleeved) if i.owner == "lead/k1" and isinstance(i, Poly)]
    top = min(y for item in core for _, y in item.points)
    assert min(y for _, y in sleeve.points) > top
    (line,) = [i for i in drawn(FIVE_POLE, plain) if i.owner == "jacket"]
    assert len(line.points) > 2


def test_a_sleeve_is_as_long_as_said_and_only_where_there_is_one():
    fit = fit_of(FIVE_POLE, sleeved={"k0"})
    items = drawn(FIVE_POLE, fit, sleeves_mm={"k0": 4.0})
    (sleeve,) = [item for item in items if item.owner.startswith("sleeve/")]
    assert sleeve.owner == "sleeve/k0"
    ys = [y for _, y in sleeve.points]
    assert max(ys) - min(ys) == pytest.approx(4.0 * 12)


def test_the_discs_are_those_of_the_face():
    connector, fit = demo_fit("cue-desk-headphone-lead", "A")
    numbers = {
        item.owner.removeprefix("order/"): int(item.text)
        for item in drawn(connector, fit)
        if isinstance(item, Text) and item.owner.startswith("order/")
    }
    assert numbers == {contact: place for place, contact in enumerate(fit.order, start=1)}


@pytest.mark.parametrize("connector", connectors(), ids=lambda one: one.id)
@pytest.mark.parametrize(("look", "scale"), [(LIGHT, 9.0), (PRINT, 200.0)], ids=["light", "print"])
def test_every_connector_stays_in_its_box_with_its_words_apart(connector, look, scale):
    fit = fit_of(connector, sleeved={"k0", "SH"})
    width = side_width(connector, fit, scale, look) + 10
    items = side_view(connector, fit, origin=(0, 0), width=width, scale=scale, look=look)
    assert overlapping(items) == []
    left, top, right, bottom = box_of(items)
    air = 4 * look.line
    assert left >= -air
    assert right <= width + air
    assert top >= -air
    assert bottom <= side_height(connector, fit, scale, look) + air


def test_a_bar_of_whole_mm_tells_the_scale_on_the_screen():
    bar = [i for i in drawn(FIVE_POLE, fit_of(FIVE_POLE)) if i.owner == "scale"]
    (words,) = [item.text for item in bar if isinstance(item, Text)]
    ys = [y for item in bar if isinstance(item, Poly) for _, y in item.points]
    assert words == "5 mm"
    assert max(ys) - min(ys) == pytest.approx(5 * 12)
    assert not [i for i in drawn(FIVE_POLE, fit_of(FIVE_POLE), PRINT) if i.owner == "scale"]


def test_it_is_safe_svg():
    items = drawn(FIVE_POLE, fit_of(FIVE_POLE, sleeved={"k1"}))
    assert unsafe_parts(svg_text(items, width=520, height=400)) == ()
    assert not any(isinstance(item, Circle) and item.radius <= 0 for item in items)
