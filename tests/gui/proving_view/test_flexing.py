"""The wiggle test under the keys."""

from PySide6.QtCore import Qt

from planner.proving.units import MOST_ENTRIES, Wiggle

ENTER, SPACE = Qt.Key.Key_Return, Qt.Key.Key_Space


class Watch:
    """A clock that stands still until it is told."""

    def __init__(self):
        self.now_s = 100.0

    def __call__(self):
        return self.now_s


def test_an_end_is_flexed_and_noted_with_its_breaks(prove):
    prove.begin()
    prove.acts["wiggle"].trigger()
    assert prove.shell.window.hints.context == "wiggle"
    watch = prove.view.flex.flexing.seconds = Watch()
    prove.key(ENTER)
    watch.now_s += 3
    prove.key(SPACE)
    watch.now_s += 2
    prove.key(ENTER)
    (entry,) = prove.state.unit.wiggle
    assert (entry.end, entry.state) == ("A", "broken")
    assert entry.note == "flexed for 5 s, broke at 3 s"
    assert prove.view.flex.flexing.end == "L"


def test_a_steady_end_is_steady_and_the_arrows_choose(prove):
    prove.begin()
    prove.acts["wiggle"].trigger()
    prove.key(Qt.Key.Key_Left)
    prove.key(ENTER)
    prove.key(ENTER)
    (entry,) = prove.state.unit.wiggle
    assert (entry.end, entry.state) == ("R", "steady")
    assert prove.view.flex.noted.shown[0][0] == "R  steady"


def test_escape_drops_what_is_flexed(prove):
    prove.begin()
    prove.acts["wiggle"].trigger()
    prove.key(ENTER)
    prove.key(SPACE)
    prove.key(Qt.Key.Key_Escape)
    assert prove.state.unit.wiggle == ()
    assert not prove.view.flex.flexing.running


def test_without_a_unit_nothing_is_noted_and_why_is_said(prove):
    prove.view.show_page("Wiggle")
    prove.view.flex.flexing.start()
    assert not prove.view.flex.flexing.running
    assert "Begin a unit first" in prove.view.flex.how.text()


def test_more_than_a_record_holds_is_not_noted_and_that_is_said(prove, qtbot):
    prove.begin()
    entry = Wiggle(end="A", state="steady", at=prove.state.now())
    full = prove.state.unit.evolve(wiggle=(entry,) * MOST_ENTRIES)
    prove.state.put_unit(full)
    prove.acts["wiggle"].trigger()
    with qtbot.waitSignal(prove.state.said) as said:
        prove.key(ENTER)
        prove.key(ENTER)
    assert said.args == ["A unit keeps 500 ends flexed at most: this one is not noted."]
    assert prove.state.unit is full
    kept = full.record(prove.workbench.plan, prove.state.facts, "unfinished", prove.state.now())
    assert len(kept.wiggle) == MOST_ENTRIES
