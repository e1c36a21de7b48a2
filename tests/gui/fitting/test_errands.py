"""Errands: their word comes in the UI thread, once, and never after they are called off."""

import gc
import threading
from weakref import finalize

import pytest

from planner.app.fitting.errands import Errands


@pytest.fixture
def errands(qapp):
    made = Errands()
    yield made
    made.let_go()


@pytest.fixture
def heard(errands):
    said = []
    errands.done.connect(lambda made: said.append((made, threading.current_thread())))
    return said


def test_what_is_made_comes_back_in_the_ui_thread(errands, heard, qtbot):
    errands.start(lambda _progress, _off: threading.current_thread())
    assert errands.busy
    qtbot.waitUntil(lambda: bool(heard))
    made, told_in = heard[0]
    assert made is not threading.main_thread()
    assert told_in is threading.main_thread()
    assert not errands.busy


def test_a_later_errand_drops_the_one_before(errands, heard, qtbot):
    gate = threading.Event()
    errands.start(lambda _progress, _off: gate.wait(5) and "first")
    errands.start(lambda _progress, _off: "second")
    gate.set()
    qtbot.waitUntil(lambda: bool(heard))
    qtbot.wait(30)
    assert [made for made, _ in heard] == ["second"]


def test_what_is_called_off_hears_it_and_says_nothing_more(errands, heard, qtbot):
    off = threading.Event()

    def work(progress, called_off):
        while not called_off():
            progress(0.1)
        off.set()
        return "late"

    errands.start(work)
    errands.call_off()
    assert off.wait(2)
    qtbot.wait(30)
    assert heard == []
    assert not errands.busy


def test_progress_is_told(errands, qtbot):
    shares = []
    errands.progressed.connect(shares.append)
    errands.start(lambda progress, _off: [progress(share / 4) for share in range(5)])
    qtbot.waitUntil(lambda: not errands.busy)
    assert shares == [0.0, 0.25, 0.5, 0.75, 1.0]


def test_letting_go_waits_for_the_thread(errands):
    done = threading.Event()

    def work(_progress, called_off):
        while not called_off():
            pass
        done.set()

    errands.start(work)
    errands.let_go()
    assert done.is_set()


def test_a_run_that_nobody_waits_for_never_goes_in_its_own_thread(qapp):
    gate, where = threading.Event(), []
    left = Errands()
    left.start(lambda _progress, _off: gate.wait(5))
    run = left._run
    thread = run.thread_of_work
    finalize(run, lambda: where.append(threading.current_thread()))
    del left, run
    gc.collect()
    gate.set()
    thread.join(5)
    assert where == []
    later = Errands()
    later.start(lambda _progress, _off: None)
    later.let_go()
    gc.collect()
    assert where == [threading.main_thread()]
