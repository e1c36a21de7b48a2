"""Whatever connector is made in the editor validates, round-trips, and can be landed in a plan."""

from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector
from planner.edits.landings import land
from planner.edits.shapes import one_to_one
from planner.files.definitions import connector_text, parse_definition
from planner.geometry.placing import Grid, Ring
from planner.intake import shaping
from planner.intake.connector_draft import ConnectorDraft, finished
from planner.intake.live_checks import remarks
from planner.model.connector import Connector
from planner.services.checking import check_plan

counts = st.integers(1, 9)
lengths = st.floats(1.0, 9.0).map(lambda mm: round(mm, 1))
rings = st.builds(
    Ring,
    count=counts,
    circle_mm=lengths,
    start_deg=st.integers(-180, 180).map(float),
    clockwise=st.booleans(),
)
grids = st.builds(
    Grid,
    counts=st.lists(counts, min_size=1, max_size=3).map(tuple),
    pitch_mm=lengths,
    row_mm=lengths,
)
sides = st.sampled_from(["solder", "mating"])
genders = st.sampled_from(["male", "female"])


@st.composite
def made(draw):
    """A connector as an owner makes it: by a rule, then one contact dragged and one typed."""
    draft = ConnectorDraft(id="made", title="Made", family="made")
    draft = draft.evolve(seen_from=draw(sides), gender=draw(genders))
    draft = shaping.place_by_rule(draft, draw(st.one_of(rings, grids)), ())
    if draw(st.booleans()):
        place = (draw(lengths), -draw(lengths))
        draft = shaping.add_contact(draft, place, shaping.next_number(draft))
    names = (draft.contacts[0].id,)
    return shaping.nudge(draft, names=names, by_mm=(draw(lengths), draw(lengths)))


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(made(), st.data())
def test_it_lands_in_a_plan_and_is_checked(shipped, draft, data):
    remarks(draft, shipped.connectors())
    connector = finished(draft)
    again = parse_definition(connector_text(connector), Path("made.toml"))
    assert isinstance(again, Connector)
    assert again == connector

    plan = choose_connector(one_to_one(), end="A", connector=again)
    plan = choose_cable(plan, section="trunk", cable=shipped.cable("pair-foil"))
    contact = data.draw(st.sampled_from(sorted(again.by_id)))
    core = plan.cable_of("trunk").cores[0].code
    plan = land(plan, end="A", conductor=core, contact=contact)

    assert [it.contact for it in plan.landings] == [contact]
    places = {place.contact for it in check_plan(plan) for place in it.where} - {""}
    assert places <= set(again.by_id)
