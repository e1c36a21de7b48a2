"""Units in the window: finished, reworked, attached to, kept through a kill, imported, written."""

from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent

from planner.app.proving_view import keeping, state
from planner.app.proving_view.state import Proving
from planner.app.proving_view.units_book import UnitsBook
from planner.edits.landings import exchange
from planner.proving.reading_csv import readings_text
from planner.proving.unit_file import load_units
from tests.gui.proving_view.conftest import LOOM, Meter


def sound(prove):
    prove.begin()
    prove.read_all(Meter(prove.workbench.plan))


def reversed_right(prove):
    plan = prove.workbench.plan
    here, there = (it for it in plan.landings if it.end == "R")
    return exchange(plan, end="R", conductor=here.conductor, contact=there.contact)


def test_a_sound_unit_passes_with_one_key_and_the_next_has_the_next_number(prove, plan_path):
    sound(prove)
    prove.acts["finish_unit"].trigger()
    record = load_units(plan_path()).latest[1]
    assert (record.verdict, record.plan_revision) == ("passed", 3)
    assert record.expected.paths
    assert prove.state.unit is None
    assert "recorded as passed" in prove.shell.window.notice.text
    prove.acts["next_unit"].trigger()
    assert prove.state.unit.number == 2
    assert prove.state.readings.meter.zero_ohm == 0.2


def test_a_faulty_unit_asks_for_its_reason_and_proposes_one(prove, plan_path):
    prove.begin()
    prove.read_all(Meter(reversed_right(prove)))
    prove.acts["finish_unit"].trigger()
    box = prove.view.verdict.finish
    assert prove.state.unit is not None
    assert "right channel reversed" in box.reason.text()
    box.reason.clear()
    prove.type("\n")
    assert "Write why it failed" in box.wrong.text()
    prove.type("reversed\n")
    record = load_units(plan_path()).latest[1]
    assert (record.verdict, record.remarks) == ("failed", "reversed")


def test_what_was_not_shown_does_not_pass(prove, plan_path):
    prove.begin()
    prove.type("0.4\n")
    prove.settle()
    box = prove.view.verdict.finish
    box.verdict.show_value("passed")
    box.finish()
    assert "not shown right yet" in box.wrong.text()
    assert not load_units(plan_path()).records


def test_rework_unreads_what_was_mended_and_stays_in_the_record(prove, plan_path):
    prove.begin()
    prove.read_all(Meter(reversed_right(prove)))
    prove.view.verdict.rework.line.setFocus()
    prove.type("cores exchanged at R\n")
    assert 0 < prove.state.count()[0] < 14
    prove.read_all(Meter(prove.workbench.plan))
    assert prove.diagnosis.verdict == "sound"
    prove.acts["finish_unit"].trigger()
    (entry,) = load_units(plan_path()).latest[1].rework
    assert entry.done == "cores exchanged at R"
    assert "right channel reversed" in entry.found


def test_a_recorded_unit_is_taken_up_again_and_its_history_kept(prove, plan_path):
    sound(prove)
    prove.acts["finish_unit"].trigger()
    prove.view.units.again.click()
    assert prove.state.unit.number == 1
    prove.settle()
    prove.view.verdict.finish.verdict.show_value("unfinished")
    prove.view.verdict.finish.finish()
    assert [it.verdict for it in load_units(plan_path()).history(1)] == ["passed", "unfinished"]


def test_one_unit_at_a_time(prove):
    prove.begin()
    prove.type("0.4\n")
    prove.acts["next_unit"].trigger()
    assert prove.state.unit.number == 1
    assert "finish it" in prove.shell.window.notice.text


def test_readings_under_way_are_on_disk_at_once_and_found_by_the_next_window(prove, plan_path):
    prove.begin()
    prove.type("0.4\no\n")
    prove.bot.waitUntil(lambda: len(_kept(plan_path()) or ()) == 2)
    prove.settle()
    kept = prove.state.unit
    book = UnitsBook(Proving(prove.workbench, prove.view), prove.shell.bench.session, prove.view)
    book.open()  # as a window that begins after a kill does
    assert book.proving.unit == kept


def test_readings_under_way_wait_while_another_plan_is_open(prove, plan_path):
    prove.begin()
    prove.type("0.4\n")
    session = prove.shell.bench.session
    assert session.open(plan_path(LOOM))
    assert prove.state.unit is None
    assert session.open(plan_path())
    assert prove.state.count()[0] == 1
    assert prove.shell.window.notice.text.startswith("Unit 1 of this plan is under way, 1 reading")


def _kept(path):
    unit = keeping.kept(keeping.key_of(None, path))
    return None if unit is None else unit.readings.readings


def test_what_is_recorded_is_no_longer_under_way(prove, plan_path):
    sound(prove)
    prove.acts["finish_unit"].trigger()
    assert _kept(plan_path()) is None


def test_an_older_revision_is_said(prove):
    sound(prove)
    prove.acts["finish_unit"].trigger()
    assert "revision" not in prove.view.units.list.shown[0][1]
    prove.workbench.do("Title", lambda plan: plan.evolve(title="Another"))
    assert prove.view.units.list.shown[0][1].endswith("the plan was changed since")
    prove.workbench.do("Revision", lambda plan: plan.evolve(revision=4))
    assert "as of revision 3" in prove.view.units.list.shown[0][1]


def test_an_edit_in_another_view_waits_for_no_unit(prove, monkeypatch):
    sound(prove)
    prove.acts["finish_unit"].trigger()
    prove.acts["wire"].trigger()
    digested = []
    monkeypatch.setattr(state, "plan_digest", lambda plan: digested.append(plan) or "another")
    prove.workbench.do("Remark", lambda plan: plan.evolve(remarks="spare shrink in the drawer"))

    assert digested == []
    prove.acts["prove"].trigger()
    prove.view.show_page("Units")
    assert len(digested) == 1
    assert prove.view.units.list.shown[0][1].endswith("the plan was changed since")


def test_import_is_one_step_and_goes_by_row_and_column(prove, tmp_path):
    prove.begin()
    meter = Meter(prove.workbench.plan)
    prove.read_all(meter)
    text = readings_text(prove.state.readings)
    prove.answers.file = tmp_path / "tester.csv"
    prove.answers.file.write_text(text, encoding="utf-8")
    while prove.state.undo_stack.canUndo():
        prove.state.undo_stack.undo()
    assert prove.state.count()[0] == 0
    prove.acts["import_readings"].trigger()
    prove.settle()
    assert prove.state.count() == (14, 14)
    assert prove.state.undo_stack.index() == 1
    assert prove.diagnosis.verdict == "sound"


def test_a_bad_file_is_told_by_row_and_changes_nothing(prove, tmp_path):
    prove.answers.file = tmp_path / "bad.csv"
    prove.answers.file.write_text(
        "from_end,from_contact,to_end,to_contact,reading\nA,TT,L,T,0.3\nA,R1,L,S,-4\n",
        encoding="utf-8",
    )
    prove.acts["import_readings"].trigger()
    ((headline, problems),) = prove.answers.troubles
    assert headline == "bad.csv can\u2019t be taken in"
    told = " ".join(map(str, problems))
    assert "row 2, column from_contact" in told
    assert "row 3, column reading" in told
    assert prove.state.unit is None


def test_pairs_besides_the_plan_are_shown_too(prove, tmp_path):
    prove.answers.file = tmp_path / "more.csv"
    prove.answers.file.write_text(
        "from_end,from_contact,to_end,to_contact,reading\nL,T,R,S,open\n", encoding="utf-8"
    )
    prove.acts["import_readings"].trigger()
    prove.settle()
    assert prove.state.rows[-2].title == "Besides the plan"
    assert prove.words(len(prove.state.rows) - 1)[-2:] == ["open", "good"]


def test_an_empty_form_is_written_and_taken_in_again(prove, tmp_path):
    prove.answers.target = prove.answers.file = tmp_path / "form.csv"
    prove.acts["empty_form"].trigger()
    assert "Unplug every end" in prove.answers.target.read_text(encoding="utf-8")
    prove.acts["import_readings"].trigger()
    prove.settle()
    assert prove.state.readings.readings == ()
    assert prove.answers.troubles == []


def test_a_file_is_attached_by_its_digest(prove, plan_path, tmp_path):
    prove.begin()
    prove.answers.file = tmp_path / "photo.png"
    prove.answers.file.write_bytes(b"an invented photo")
    prove.acts["attach"].trigger()
    (kept,) = prove.state.unit.attachments
    folder = plan_path().with_name(f"{plan_path().stem}.units")
    assert (folder / kept.file_name).read_bytes() == b"an invented photo"


def test_certificate_and_summary_are_written(prove, tmp_path):
    sound(prove)
    prove.acts["finish_unit"].trigger()
    prove.answers.target = tmp_path / "unit 1.pdf"
    prove.acts["certificate"].trigger()
    assert prove.answers.target.read_bytes().startswith(b"%PDF")
    prove.answers.target = tmp_path / "units.csv"
    prove.acts["unit_summary"].trigger()
    assert "passed" in prove.answers.target.read_text(encoding="utf-8")


def test_a_spoilt_line_of_the_units_is_told_and_the_others_load(open_prove, plan_path):
    path = plan_path().with_name(f"{plan_path().stem}.units.jsonl")
    path.write_bytes(b'{"format":"cupwright-unit","version":1,"sha256":"00')
    prove = open_prove()
    assert prove.answers.troubles[0][0] == "Some units could not be read"
    assert prove.state.number == 1


def test_the_number_is_proposed_and_may_be_another_that_is_free(prove):
    sound(prove)
    prove.acts["finish_unit"].trigger()
    prove.begin()
    number = prove.view.verdict.number
    assert number.line.text() == "2"
    for typed, wrong in (("1", "is recorded"), ("0", "whole number"), ("x", "whole number")):
        number.line.setFocus()
        number.line.selectAll()
        prove.type(f"{typed}\n")
        assert wrong in number.error.text()
        assert prove.state.unit.number == 2
    number.line.selectAll()
    prove.type("17\n")
    assert prove.state.unit.number == 17
    assert number.error.text() == ""


def test_the_error_of_the_meter_is_read_and_goes_with_it_to_the_next_unit(prove):
    prove.begin()
    error = prove.view.verdict.error
    error.line.setFocus()
    error.line.selectAll()
    prove.type("2\n")
    assert "no error of a meter" in error.error.text()
    error.line.selectAll()
    prove.type("0,5 % + 0.02\n")
    meter = prove.state.meter
    assert (meter.percent, meter.offset_ohm) == (0.5, 0.02)
    prove.state.take_up(None)
    prove.state.begin()
    assert prove.state.meter == meter


def test_a_plan_that_was_changed_meanwhile_is_said(prove):
    prove.begin()
    changed = prove.view.verdict.changed
    assert not changed.isVisibleTo(prove.view.verdict)
    prove.workbench.do("Title", lambda plan: plan.evolve(title="Another"))
    prove.settle()
    assert changed.isVisibleTo(prove.view.verdict)


def test_no_unit_of_a_plan_with_a_stop_passes(open_prove, plan_path):
    prove = open_prove("spoiled-cue-desk")
    sound(prove)
    assert prove.diagnosis.verdict == "sound"
    assert prove.view.verdict.stopped.isVisibleTo(prove.view.verdict)
    box = prove.view.verdict.finish
    assert box.chosen == "unfinished"
    box.verdict.show_value("passed")
    box.finish()
    assert "The plan has a stop" in box.wrong.text()
    assert not load_units(plan_path("spoiled-cue-desk")).records


def test_finishing_waits_for_the_verdict_on_the_last_reading(prove, plan_path):
    prove.begin()
    meter = Meter(prove.workbench.plan)
    while prove.state.next_unread(prove.state.at - 1) >= 0:
        prove.type(f"{meter.shows(prove.state.row)}\n")
    assert prove.state.unsettled
    prove.acts["finish_unit"].trigger()
    assert prove.state.unit is not None
    prove.bot.waitUntil(lambda: prove.state.unit is None)
    assert load_units(plan_path()).latest[1].verdict == "passed"


def test_a_verdict_on_the_plan_as_it_was_does_not_count(prove, plan_path):
    sound(prove)
    prove.acts["wire"].trigger()
    plan = prove.workbench.plan
    prove.workbench.do("Lift", lambda it: it.evolve(landings=plan.landings[1:]))
    prove.acts["finish_unit"].trigger()
    prove.settle()
    assert prove.diagnosis.verdict == "faulty"
    assert prove.state.unit is not None
    assert not load_units(plan_path()).records


def test_a_file_of_readings_is_dropped_on_the_rows_and_a_plan_is_not(prove, tmp_path):
    pane = prove.view.readings
    path = tmp_path / "dropped.csv"
    path.write_text(
        "from_end,from_contact,to_end,to_contact,reading\nA,T,L,T,0.4\n", encoding="utf-8"
    )
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path))])
    assert pane.dropped_file(mime) == path
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    pane.dropEvent(QDropEvent(QPointF(9, 9), Qt.DropAction.CopyAction, mime, left, none))
    assert len(prove.state.readings.readings) == 1
    mime.setUrls([QUrl.fromLocalFile(str(tmp_path / "plan.json"))])
    assert pane.dropped_file(mime) is None
