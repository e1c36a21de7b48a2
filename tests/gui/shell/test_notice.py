"""The notice: where it lies, and when it goes."""

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton

from planner.app.notice import SHOWN_MS
from planner.app.notice_room import covered, spots
from planner.edits.landings import lift

WRITTEN = "The bench sheet is written: /home/ann/leads/SP-0417 cue desk headphone lead.svg"


@pytest.fixture
def bench_shell(make_shell, plan_file):
    shell = make_shell(plan_file)
    shell.window.notice.say(WRITTEN)
    return shell


def test_a_short_notice_is_no_wider_than_its_words(shell):
    notice = shell.window.notice
    notice.say("Landed 9 by signal.")
    assert notice.width() < 260
    notice.say("word " * 200)
    assert 320 <= notice.width() <= 640
    assert notice.parentWidget().rect().contains(notice.geometry())


def test_of_all_spots_the_one_liked_best_that_covers_nothing_is_free():
    room, foot = QRect(0, 0, 900, 500), QRect(0, 400, 900, 100)
    all_spots = list(spots(room, [(300, 40)]))
    assert all_spots[0] == QRect(300, 444, 300, 40)
    assert all(room.contains(spot) for spot in all_spots)
    best = min(all_spots, key=lambda spot: covered(spot, [foot]))
    assert covered(best, [foot]) == 0
    assert best.center().x() == room.center().x()


@pytest.mark.parametrize("size", [(1440, 900), (1024, 700)])
def test_it_covers_no_field_and_no_button_of_the_guide(make_shell, size):
    shell = make_shell(size=size)
    QApplication.processEvents()
    notice, guide = shell.window.notice, shell.bench.guide
    notice.say(WRITTEN)
    stops = [guide.length, guide.leg_length, guide.policy, guide.order, guide.start]
    stops += [*guide.shapes.values(), *guide.sketch.buttons.values()]
    boxes = [QRect(stop.mapTo(notice.parentWidget(), QPoint()), stop.size()) for stop in stops]
    assert covered(notice.geometry(), boxes) == 0


@pytest.mark.parametrize("size", [(1440, 900), (1024, 700)])
def test_it_covers_no_contact_of_the_bench(make_shell, plan_file, size):
    shell = make_shell(plan_file, size=size)
    QApplication.processEvents()
    shell.window.notice.say(WRITTEN)
    canvas = shell.bench.canvas
    spots_hit = [
        contact
        for contact, at in canvas.bench_scene.bench.contacts.items()
        if shell.window.notice.geometry().contains(canvas.mapFromScene(*at))
    ]
    assert spots_hit == []


@pytest.mark.parametrize("act", ["an edit", "undo", "new", "demo"])
def test_it_goes_at_the_next_act(bench_shell, answers, act):
    answers.about_unsaved = "discard"
    bench, notice = bench_shell.bench.workbench, bench_shell.window.notice
    bench.do("Lift WH", lambda plan: lift(plan, end="A", conductor="WH"))
    if act != "an edit":
        notice.say(WRITTEN)
        bench_shell.window.acts[act].trigger()
    assert not notice.isVisible()


def test_escape_closes_it_but_first_puts_back_what_is_in_hand(bench_shell):
    bench, notice = bench_shell.bench.workbench, bench_shell.window.notice
    canvas = bench_shell.bench.canvas
    canvas.setFocus()
    bench.pick_up("A", "WH")
    QTest.keyClick(canvas, Qt.Key.Key_Escape)
    assert (bench.hand, notice.isVisible()) == (None, True)
    QTest.keyClick(canvas, Qt.Key.Key_Escape)
    assert not notice.isVisible()
    bench.pick_up("A", "WH")
    QTest.keyClick(canvas, Qt.Key.Key_Escape)
    assert bench.hand is None


@pytest.mark.parametrize("panel", ["canvas", "landings", "findings", "in_hand", "shelf", "band"])
def test_escape_closes_it_from_every_panel(bench_shell, panel):
    bench_shell.window.regions.enter(panel)
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape)
    assert not bench_shell.window.notice.isVisible()


def test_what_informs_goes_after_eight_seconds(bench_shell):
    notice = bench_shell.window.notice
    assert (notice.timer.isActive(), notice.timer.interval()) == (True, SHOWN_MS)
    assert SHOWN_MS == 8000
    notice.timer.timeout.emit()
    assert not notice.isVisible()


def test_it_stays_while_the_pointer_or_the_focus_is_on_it(bench_shell):
    notice = bench_shell.window.notice
    notice.setAttribute(Qt.WidgetAttribute.WA_UnderMouse, True)
    notice.timer.timeout.emit()
    assert (notice.isVisible(), notice.timer.isActive()) == (True, True)
    notice.setAttribute(Qt.WidgetAttribute.WA_UnderMouse, False)
    notice.findChild(QPushButton).setFocus()
    notice.timer.timeout.emit()
    assert notice.isVisible()
    bench_shell.bench.canvas.setFocus()
    notice.timer.timeout.emit()
    assert not notice.isVisible()


def test_what_land_by_signal_left_stays_until_the_next_edit(make_shell, cue_plan, library):
    shell = make_shell()
    bare = cue_plan.evolve(landings=(), ends=tuple(it.evolve(pinout="") for it in cue_plan.ends))
    shell.bench.workbench.open_plan(bare)
    shell.window.acts["land_by_signal"].trigger()
    notice = shell.window.notice
    assert notice.text.startswith("Nothing more is certain by signal. ")
    assert (notice.isVisible(), notice.timer.isActive()) == (True, False)
    shell.bench.workbench.land("A", "WH", "T")
    assert not notice.isVisible()
