"""Where the diagnosis itself is at fault, or not ready yet: readings go on all the same."""

import threading

from planner.app.proving_view import judging, state
from planner.app.proving_view.facts import proof_facts
from tests.gui.proving_view.conftest import Meter


def test_a_diagnosis_that_fails_is_told_in_the_pane_and_readings_go_on(prove, monkeypatch, caplog):
    def broken(*_case, **_more):
        raise ArithmeticError("a fault made for this test")

    prove.begin()
    with monkeypatch.context() as patch:
        patch.setattr(judging, "diagnose", broken)
        meter = Meter(prove.workbench.plan)
        for count in (1, 2, 3):
            prove.type(f"{meter.shows(prove.state.row)}\n")
            prove.settle()
            assert len(prove.state.readings.readings) == count
            assert prove.view.verdict.verdict.text() == "Not judged"
            assert "a fault of this program" in prove.view.verdict.told.text()
        assert [it.getMessage() for it in caplog.records] == ["the diagnosis failed"]
        caplog.clear()
        prove.acts["finish_unit"].trigger()
        assert prove.view.verdict.finish.chosen == "unfinished"
    prove.view.show_page("Readings")
    prove.grid.setFocus()
    prove.read_all(meter)
    assert prove.view.verdict.verdict.text() == "Sound"


def test_what_is_typed_while_the_probes_are_worked_out_is_not_lost(prove, monkeypatch):
    plan, go_on = prove.workbench.plan, threading.Event()

    def slow(*case):
        go_on.wait(5)
        return proof_facts(*case)

    prove.workbench.open_plan(plan.evolve(landings=()))
    prove.settle()
    prove.view.readings.setFocus()
    monkeypatch.setattr(state, "proof_facts", slow)
    prove.workbench.open_plan(plan)
    assert prove.state.busy
    assert prove.view.readings.empty.text().startswith("Working out")
    prove.type("\n0.3\n0.5\n")
    assert prove.state.unit is None
    go_on.set()
    prove.settle()
    prove.bot.waitUntil(lambda: prove.state.unit is not None)
    prove.settle()
    assert prove.state.readings.meter.zero_ohm == 0.3
    assert [it.ohm for it in prove.state.readings.readings] == [0.5]
