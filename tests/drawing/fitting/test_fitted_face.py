"""The fitted face: true widths, what lies over what, discs in the order, words apart."""

import math

import pytest

from planner.drawing.fitting.face import fitted_face, fitting_scale
from planner.drawing.looks import DARK, LIGHT, PRINT
from planner.drawing.primitives import Circle, Path, Poly, Rect, Text
from planner.drawing.safe_svg import unsafe_parts
from planner.drawing.svg import svg_text
from tests.drawing.fitting.samples import connector_named, connectors, crowded, demo_fit, fit_of
from tests.sheet.collisions import overlapping

SIZE = (900, 560)
EVERY = pytest.mark.parametrize("connector", connectors(), ids=lambda one: one.id)


def drawn(connector, fit, look=LIGHT, **options):
    scale = fitting_scale(connector, *SIZE, look)
    signals = {contact.id: "shield" for contact in connector.contacts}
    return fitted_face(
        connector, fit, centre=(450, 280), scale=scale, look=look, signals=signals, **options
    )


def owned_by(items, owner):
    return [item for item in items if item.owner == owner]


def figures(item):
    if isinstance(item, Poly):
        return [x for point in item.points for x in point]
    if isinstance(item, Path):
        return [x for _, figures in item.commands for x in figures]
    if isinstance(item, Circle):
        return [*item.centre, item.radius]
    return [*(item.corner if isinstance(item, Rect) else item.at)]


@EVERY
@pytest.mark.parametrize("look", [LIGHT, PRINT], ids=lambda look: look.name)
def test_every_connector_is_drawn(connector, look):
    items = drawn(connector, crowded(connector), look)
    assert all(math.isfinite(figure) for item in items for figure in figures(item))
    assert {item.owner for item in items} >= {"shell", "jacket"}
    assert all(item.owner for item in items)


@EVERY
@pytest.mark.parametrize("turn_deg", [0, 137])
def test_no_words_lie_on_others(connector, turn_deg):
    fit = crowded(connector, turn_deg=turn_deg)
    items = drawn(connector, fit, DARK, iron=fit.order[0])
    assert overlapping(items) == []
    assert {item.size for item in items if isinstance(item, Text)} <= {12, 15} | small_figures(
        items
    )


def small_figures(items):
    """Figures of more than one digit in a disc or a diamond are set smaller to stay inside."""
    return {
        item.size
        for item in items
        if isinstance(item, Text) and item.text.isdigit() and 10 <= item.size <= 15
    }


@pytest.mark.parametrize(("name", "end"), [
    ("cue-desk-headphone-lead", "A"), ("cue-desk-headphone-lead", "L"),
    ("recording-rack-loom", "A"), ("recording-rack-loom", "B1"),
])  # fmt: skip
@pytest.mark.parametrize("size", [(900, 560), (700, 420), (460, 420)])
def test_no_words_lie_on_others_at_a_demo_end(name, end, size):
    connector, fit = demo_fit(name, end)
    scale = fitting_scale(connector, *size, LIGHT)
    signals = {contact.id: "shield" for contact in connector.contacts}
    items = fitted_face(
        connector, fit, centre=(0, 0), scale=scale, look=LIGHT, signals=signals, iron=fit.order[-1]
    )
    assert overlapping(items) == []


@pytest.mark.parametrize("scale", [10.0, 62.5])
def test_a_core_is_as_wide_as_it_is(scale):
    connector = connector_named("xlr-5-male")
    fit = fit_of(connector)
    items = fitted_face(connector, fit, centre=(0, 0), scale=scale, look=LIGHT)
    for lead in fit.leads:
        if lead.is_shield:
            continue
        body = LIGHT.core(lead.part.colours[0])[0]
        mine = owned_by(items, f"lead/{lead.landing.conductor}")
        widths = {i.style.width for i in mine if isinstance(i, Poly) and i.style.stroke == body}
        assert list(widths) == [pytest.approx(lead.part.insulation_mm * scale)]


def test_a_lead_is_drawn_from_its_exit_towards_its_terminal():
    connector = connector_named("xlr-3-male")
    fit = fit_of(connector, turn_deg=30)
    items = fitted_face(connector, fit, centre=(7, 9), scale=20, look=LIGHT)
    lead = fit.leads[0]
    body = LIGHT.core(lead.part.colours[0])[0]
    (core,) = [
        i
        for i in owned_by(items, f"lead/{lead.landing.conductor}")
        if isinstance(i, Poly) and i.style.stroke == body
    ]
    (x0, y0), (x1, y1) = core.points[0], core.points[-1]
    assert (x0, y0) == pytest.approx((7 + 20 * lead.exit[0], 9 - 20 * lead.exit[1]))
    way = (lead.mouth[0] - lead.exit[0], lead.exit[1] - lead.mouth[1])
    assert math.atan2(y1 - y0, x1 - x0) == pytest.approx(math.atan2(way[1], way[0]))


def test_the_discs_number_the_joints_in_the_order_of_soldering():
    connector, fit = demo_fit("recording-rack-loom", "A")
    items = drawn(connector, fit)
    numbers = {
        item.owner.removeprefix("order/"): int(item.text)
        for item in items
        if isinstance(item, Text) and item.owner.startswith("order/")
    }
    assert sorted(numbers, key=numbers.__getitem__) == list(fit.order)
    assert sorted(numbers.values()) == list(range(1, len(fit.order) + 1))


def test_withheld_numbers_are_open_octagons():
    connector, fit = demo_fit("cue-desk-headphone-lead", "A")
    marks = [i for i in drawn(connector, fit, withheld=True) if i.owner.startswith("order/")]
    assert {i.owner for i in marks} == {f"order/{contact}" for contact in fit.order}
    assert {len(i.points) for i in marks if isinstance(i, Poly)} == {8}
    assert not [i for i in marks if isinstance(i, Text)]


def test_a_sleeve_is_drawn_where_there_is_one_and_nowhere_else():
    connector = connector_named("jack-4.4-five-pole")
    fit = fit_of(connector, sleeved={"k1", "SH"}, dabbed={"k2"})
    items = drawn(connector, fit)
    owners = {item.owner for item in items}
    assert {o for o in owners if o.startswith("sleeve/")} == {"sleeve/k1", "sleeve/SH"}
    assert {o for o in owners if o.startswith("dab/")} == {"dab/k2"}
    # On a core it goes on after the joint: dashed. On a tail before: solid.
    assert all(i.style.dash for i in owned_by(items, "sleeve/k1"))
    assert not any(i.style.dash for i in owned_by(items, "sleeve/SH"))


def test_dimmed_leads_are_see_through():
    connector = connector_named("xlr-3-male")
    items = drawn(connector, fit_of(connector), dimmed={"k0"}, labels=False)
    assert {i.style.opacity < 0.5 for i in owned_by(items, "lead/k0")} == {True}
    assert {i.style.opacity == 1 for i in owned_by(items, "lead/k1")} & {True}


def test_gaps_have_halos_by_their_class():
    connector = connector_named("din-5-180-male")
    fit = crowded(connector)
    grades = {gap.grade for gap in fit.gaps}
    items = drawn(connector, fit)
    rings = [i for i in items if i.owner.startswith("halo/") and isinstance(i, Circle)]
    words = " ".join(i.text for i in items if isinstance(i, Text) and i.owner.startswith("halo/"))
    assert grades & {"watch", "sleeve", "touch"}
    smallest = min(fit.gaps, key=lambda gap: gap.gap_mm)
    assert f"{smallest.grade} {smallest.gap_mm:.2f} mm".replace("-", "\u2212") in words
    dashed = {bool(ring.style.dash) for ring in rings if ring.style.stroke}
    assert dashed <= {grade == "watch" for grade in grades}


def test_no_halo_is_drawn_where_it_is_not_wanted():
    connector = connector_named("din-5-180-male")
    items = drawn(connector, crowded(connector), halos=False)
    assert not any(item.owner.startswith("halo/") for item in items)


def test_the_iron_comes_from_its_direction():
    connector = connector_named("xlr-5-male")
    fit = fit_of(connector)
    way = fit.access[2]
    items = fitted_face(connector, fit, centre=(0, 0), scale=20, look=LIGHT, iron=way.contact)
    handle = [i for i in owned_by(items, f"iron/{way.contact}") if isinstance(i, Poly) and i.closed]
    points = handle[-1].points
    x, y = (sum(p[axis] for p in points) / len(points) for axis in (0, 1))
    terminal = connector.by_id[way.contact].terminal
    angle = math.degrees(math.atan2(-y - terminal.y_mm * 20, x - terminal.x_mm * 20))
    assert math.cos(math.radians(angle - way.direction_deg)) == pytest.approx(1, abs=1e-6)
    words = [i.text for i in owned_by(items, f"iron/{way.contact}") if isinstance(i, Text)]
    assert f"{way.margin_mm:.2f} mm" in words[0]


def test_turning_the_view_turns_plug_and_cable_together():
    connector = connector_named("xlr-3-male")
    fit = fit_of(connector)
    one = fitted_face(connector, fit, centre=(0, 0), scale=20, look=PRINT, labels=False)
    other = fitted_face(
        connector, fit, centre=(0, 0), scale=20, look=PRINT, labels=False, view_deg=180
    )
    for contact in connector.by_id:
        (x0, y0), (x1, y1) = (
            next(i.centre for i in owned_by(items, f"contact/{contact}") if isinstance(i, Circle))
            for items in (one, other)
        )
        assert (x1, y1) == (pytest.approx(-x0), pytest.approx(-y0))


@pytest.mark.parametrize("look", [LIGHT, PRINT], ids=lambda look: look.name)
def test_it_is_safe_svg(look):
    connector, fit = demo_fit("recording-rack-loom", "A")
    items = drawn(connector, fit, look, iron=fit.order[0])
    assert unsafe_parts(svg_text(items, width=900, height=560)) == ()
