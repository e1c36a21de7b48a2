"""The eight-way loom proved at the keyboard: a sound one, and one that was spoiled at the bench.

What the meter shows is worked out from the lead as built by `expected_sweep`, which has its own
tests against published resistances; the faults are invented.
"""

from planner.edits.landings import exchange
from planner.model.place import Place
from planner.proving.judging import Judgement, Judging
from planner.proving.unit_file import unit_line
from planner.proving.units import asked_of
from tests.gui.proving_view.conftest import LOOM, Meter


def test_a_sound_loom_is_read_by_keys_and_passes(open_prove):
    prove = open_prove(LOOM)
    prove.begin()
    prove.read_all(Meter(prove.workbench.plan))
    assert len(prove.probes) == 16 + 62
    assert prove.state.count() == (78, 78)
    assert prove.diagnosis.verdict == "sound"
    assert prove.view.verdict.verdict.text() == "Sound"
    prove.acts["finish_unit"].trigger()
    record = prove.view.book.units.latest[1]
    assert record.verdict == "passed"
    assert len(record.readings.readings) == 78
    isolation = prove.state.facts.isolation("pairs")
    assert record.asked == asked_of(isolation)
    assert Judging(prove.workbench.plan).judged(record).verdict == "passed"
    assert Judgement(record).stop == isolation.stop_after


def test_a_loom_read_by_gangs_gives_a_small_record(open_prove):
    prove = open_prove(LOOM)
    prove.state.set_method("gangs")
    prove.begin()
    prove.read_all(Meter(prove.workbench.plan))
    prove.acts["finish_unit"].trigger()
    record = prove.view.book.units.latest[1]
    assert (record.isolation, record.asked) == ("gangs", None)
    assert Judging(prove.workbench.plan).judged(record).verdict == "passed"
    assert len(unit_line(record)) < 40_000  # bytes; a line may have 4 MB


def test_a_loom_with_one_circuit_reversed_is_diagnosed_and_marked(open_prove):
    prove = open_prove(LOOM)
    plan = prove.workbench.plan
    cores = [it.conductor for it in plan.landings if it.end == "B3" and it.contact in {"2", "3"}]
    built = exchange(plan, end="B3", conductor=cores[0], contact=_other(plan, cores[0]))
    prove.begin()
    prove.read_all(Meter(built))
    best = prove.diagnosis.best
    assert best.cost == 1
    fault = best.faults[0]
    assert fault.kind in {"polarity", "exchange"}
    assert "B3" in fault.ends or fault.end == "B3"
    assert [card.place for card in prove.view.verdict.cards][:1] == [0]
    assert set(prove.view.faces.ends()) >= {fault.end}


def test_a_bridge_at_the_plug_is_found_and_the_reason_is_proposed(open_prove):
    prove = open_prove(LOOM)
    prove.begin()
    meter = Meter(prove.workbench.plan)
    bridged = prove.probes[-1]
    while prove.state.next_unread(prove.state.at - 1) >= 0:
        row = prove.state.row
        prove.type(f"{'0.3' if row == bridged else meter.shows(row)}\n")
    prove.settle()
    fault = prove.diagnosis.best.faults[0]
    assert fault.kind == "bridge"
    assert {*bridged.ones, *bridged.others} == {*fault.contacts}
    box = prove.view.verdict.finish
    assert box.chosen == "failed"
    assert fault.words in box.reason.text()


def _other(plan, conductor):
    here = plan.landing_at["B3", conductor].contact
    return "3" if here == "2" else "2"


def test_selecting_elsewhere_does_not_disturb_the_readings(open_prove):
    prove = open_prove(LOOM)
    prove.begin()
    prove.type("0.4\n")
    prove.workbench.select(Place(end="B5"))
    assert prove.state.count()[0] == 1
    prove.settle()


def test_each_way_to_read_isolation_says_its_count_and_what_it_leaves_out(open_prove):
    box = open_prove(LOOM).view.readings.method.box
    assert [box.itemText(at) for at in range(box.count())] == [
        "Pairs, the nearest first: 62, 466 pairs left out",
        "Each against the rest: 32",
        "Gangs, clipped together: 6",
        "Gangs of those that are near: 2, 466 pairs left out",
    ]
    assert "A bridge between joints farther apart" in box.accessibleDescription()
