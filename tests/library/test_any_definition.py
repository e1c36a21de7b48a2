"""Whatever is taken in is saved, read, sent and landed the same."""

import tempfile
from pathlib import Path

from hypothesis import given, settings

from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector
from planner.edits.landings import land
from planner.edits.shapes import one_to_one
from planner.files.definitions import read_definition
from planner.files.plans import parse_plan, plan_bytes
from planner.library.parcel import parcel_bytes, parse_parcel
from planner.library.store import NEW, Store
from planner.model.integrity import integrity_problems
from tests.edits.leads import QUAD
from tests.files.strategies import CONNECTORS, PINOUTS


@settings(max_examples=8, deadline=None)
@given(CONNECTORS, PINOUTS)
def test_any_connector_with_any_pinout_goes_all_the_way(connector, pinout):
    connector = connector.evolve(documents=())
    names = [contact.id for contact in connector.contacts]
    carried = list(pinout.signals.values())
    signals = {name: carried[at % len(carried)] for at, name in enumerate(names)}
    pinout = pinout.evolve(fits=(connector.id,), documents=(), statements=(), signals=signals)
    with tempfile.TemporaryDirectory() as place:
        store = Store(Path(place))
        saved = [store.save(record, NEW, who="Tilney") for record in (connector, pinout)]
        assert [read_definition(it.path) for it in saved] == [connector, pinout]

    sent = parcel_bytes([pinout, connector], lambda _document: b"")
    assert parse_parcel(sent.decode(), Path("sent")).definitions == (pinout, connector)

    plan = choose_cable(one_to_one(), section="trunk", cable=QUAD)
    plan = choose_connector(plan, end="A", connector=connector, pinout=pinout)
    for conductor, contact in zip(("WH", "BU", "RD", "GN"), names, strict=False):
        plan = land(plan, end="A", conductor=conductor, contact=contact)
    assert integrity_problems(plan) == ()
    assert parse_plan(plan_bytes(plan).decode(), Path("lead")) == plan
