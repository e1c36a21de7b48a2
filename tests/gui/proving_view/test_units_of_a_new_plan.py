"""Readings under way stay with their own plan: one that gets its first file, one that is left."""

from functools import partial

from planner.app.proving_view import keeping
from planner.app.proving_view.state import Proving
from planner.app.proving_view.units_book import UnitsBook
from planner.edits.texts import set_order
from tests.gui.proving_view.conftest import LOOM


def _kept(path):
    unit = keeping.kept(keeping.key_of(None, path))
    return None if unit is None else unit.readings.readings


def test_a_plan_made_in_a_new_window_keeps_its_readings_under_the_file_it_gets(prove, tmp_path):
    prove.begin()
    prove.type("0.4\n")
    session, unit = prove.shell.bench.session, prove.state.unit
    prove.state.put_unit(None)
    session.path, prove.answers.to_save = None, tmp_path / "made.json"
    proving = Proving(prove.workbench, prove.view)
    book = UnitsBook(proving, session, prove.view)  # that never saw a plan opened
    assert session.save()
    proving.put_unit(unit)
    book.keep()
    assert len(_kept(session.path)) == 1


def test_a_changed_plan_that_is_left_takes_its_readings_along_to_no_other(prove, plan_path):
    prove.begin()
    prove.type("0.4\n")
    prove.workbench.do("Order", partial(set_order, order="SP-0001"))
    assert prove.shell.bench.session.open(plan_path(LOOM))
    assert prove.state.unit is None
    assert len(_kept(plan_path())) == 1
    assert _kept(plan_path(LOOM)) is None
