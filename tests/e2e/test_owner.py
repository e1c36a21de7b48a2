"""The owner takes in a maker's odd pinout: from a letter to a clear plan, by mouse and by keys.

The letter, its maker and the headset are invented. What the meter shows between two contacts is
worked out by networkx from the headset's wiring, not by the program.
"""

import networkx as nx
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton, QScrollArea

from planner.app.dialogs.newer import NewerDialog
from planner.app.intake.confirm_dialog import ConfirmDialog
from planner.app.panels.choosing import targets
from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector
from planner.edits.landings import land
from planner.edits.shapes import one_to_one
from planner.files.plans import write_plan
from planner.library.loading import load_library
from tests.e2e.hands import CTRL, ENTER

LETTER = """Tarn & Wicket, 3 May 2009. To the Saltmarsh Playhouse.
The headset of our Beacon station, seen from the front of its plug, the side that mates: pin 1 is
the screen, 2 the return of all, 3 the microphone, 4 the RIGHT ear and 5 the LEFT ear.
"""
CONTACTS = {"1": "shield", "2": "return mic-", "3": "mic+", "4": "right plus", "5": "left plus"}
SIGNALS = {
    "1": ("shield",),
    "2": ("L-", "R-", "mic-"),
    "3": ("mic+",),
    "4": ("R+",),
    "5": ("L+",),
}
ANSWERS = {"ear": {"4": "R", "5": "L"}, "plus": {"4": "4", "5": "5"}}
RECORD = "tarn-wicket-xlr-5-female"
TAB, SPACE, DOWN = Qt.Key.Key_Tab, Qt.Key.Key_Space, Qt.Key.Key_Down


def headset():
    """Two ears of 64 ohm and a microphone of 1.2 k, all back to 2; nothing hangs on 1."""
    wiring = nx.Graph()
    wiring.add_nodes_from("12345")
    wiring.add_edge("4", "2", ohm=64.0)
    wiring.add_edge("5", "2", ohm=64.0)
    wiring.add_edge("3", "2", ohm=1200.0)
    return wiring


def shown_by_meter(pair):
    wiring, (one, other) = headset(), pair
    if not nx.has_path(wiring, one, other):
        return "o"
    part = wiring.subgraph(nx.node_connected_component(wiring, one))
    return f"{nx.resistance_distance(part, one, other, weight='ohm'):.1f}"


@pytest.fixture
def own(tmp_path, monkeypatch):
    """Where the owner's definitions go."""
    monkeypatch.setenv("CUPWRIGHT_DATA", str(tmp_path / "data"))
    (tmp_path / "letter.txt").write_text(LETTER, encoding="utf-8")
    return tmp_path / "data"


@pytest.fixture
def owner(own, hands):
    """Hands on the window, in which the plan of an extension lead lies: no pinouts yet."""
    hands.shell.bench.begin(write_extension(own.parent / "extension.json"), demo=False)
    return Owner(hands)


def write_extension(path):
    known, plan = load_library(), one_to_one(title="Headset extension", length_mm=2000)
    for end, connector in (("A", "xlr-5-female"), ("B", "xlr-5-male")):
        plan = choose_connector(plan, end=end, connector=known.connector(connector))
    plan = choose_cable(plan, section="trunk", cable=known.cable("star-quad"))
    for end in "AB":
        for conductor, contact in (("WH", "5"), ("BU", "4"), ("WHRD", "3"), ("BURD", "2")):
            plan = land(plan, end=end, conductor=conductor, contact=contact)
    write_plan(path, land(plan, end="A", conductor="SH", contact="1"))
    return path


class Owner:
    """Hands on the owner's window."""

    def __init__(self, hands):
        self.hands, self.bench = hands, hands.shell.bench

    @property
    def window(self):
        return self.bench.library.window

    def cautions(self):
        return {it.code for it in self.bench.workbench.findings if it.weight != "note"}

    def saved(self):
        return self.window.owner.library.pinout(RECORD)

    def read(self, pair):
        """Type what the meter shows between two contacts, and wait until that is understood."""
        self.hands.write(shown_by_meter(pair), ENTER)
        while self.window.sample.sample._errands.busy:
            QTest.qWait(5)

    def read_all_that_is_proposed(self):
        sample = self.window.sample.sample
        for _ in range(12):
            if sample.identified is not None and sample.identified.certain:
                return
            self.read(sample.pair)
        pytest.fail("it is not settled")

    def true_answer(self, key):
        """What a cell and an ear tell of the driver that a question is about."""
        kind, at = key.split("-")
        if kind == "part":
            return "shield"
        driver = self.window.sample.sample.identified.drivers[int(at) - 1]
        return ANSWERS[kind][driver.hot[0]]

    def confirm_by(self, who, begin):
        def doing(dialog):
            assert "Nobody has confirmed it" in dialog.said.text()
            dialog.lines["who"].setFocus()
            self.hands.key(Qt.Key.Key_A, modifiers=CTRL)
            self.hands.write(who, ENTER)

        self.hands.in_dialog(ConfirmDialog, doing, begin)

    def take_newer(self):
        """Take the newer revision into the plan, from the menu."""
        begin = lambda: self.hands.click_menu("Lead", "newer")  # noqa: E731 - handed on
        self.hands.in_dialog(NewerDialog, lambda dialog: self.hands.click(dialog.take), begin)


def assert_is_the_letter(record, own):
    assert (record.signals, record.fits) == (SIGNALS, ("xlr-5-female", "xlr-5-male"))
    assert (record.source.kind, record.source.date) == ("letter", "3 May 2009")
    [paper] = record.documents
    assert next(own.rglob(paper.kept_as)).read_text(encoding="utf-8") == LETTER


def write_by_keyboard(hands):
    hands.key(Qt.Key.Key_B, modifiers=CTRL)
    hands.in_front = hands.shell.bench.library.window
    hands.write("XLR-5", ENTER)
    hands.key(Qt.Key.Key_N, modifiers=CTRL)
    hands.key(TAB, ENTER, TAB)  # the mating side; then the connector, which is chosen
    hands.key(TAB, SPACE, TAB)  # it holds for the other gender too
    for words in CONTACTS.values():
        hands.write(words, ENTER)
    hands.key(TAB)
    for text in ("n", "Beacon headset", "Tarn & Wicket", "", "l", "letter", "3 May 2009"):
        hands.write(text, TAB)
    hands.write("the owner", TAB)
    hands.name_file("letter.txt", lambda: hands.key(ENTER))
    hands.key(ENTER, modifiers=CTRL)


def tab_to(hands, widget):
    for _ in range(40):
        if QApplication.focusWidget() is widget:
            return
        hands.key(TAB)
    pytest.fail(f"Tab does not come to {widget}")


def answer_by_keyboard(owner):
    hands, boxes = owner.hands, owner.window.sample.questions.boxes
    for key, box in boxes.items():
        tab_to(hands, box)
        for _ in range(box.count()):
            if box.currentData() != owner.true_answer(key):
                hands.key(DOWN)
        assert box.currentData() == owner.true_answer(key)
    tab_to(hands, owner.window.sample.write)


@pytest.mark.usefixtures("no_pointer")
def test_a_letter_becomes_a_confirmed_record_and_a_clear_plan_by_keyboard_alone(owner, own):
    hands = owner.hands
    write_by_keyboard(hands)
    assert_is_the_letter(owner.saved(), own)
    assert owner.saved().trust == "documented"

    hands.key(Qt.Key.Key_M, modifiers=CTRL)
    owner.read_all_that_is_proposed()
    answer_by_keyboard(owner)
    owner.confirm_by("the owner", lambda: hands.key(ENTER))
    assert owner.saved().trust == "confirmed"
    assert "nothing hangs on 1" in owner.saved().confirmations[0].how
    assert_is_the_letter(owner.saved(), own)

    hands.in_front = hands.shell.window
    hands.key(Qt.Key.Key_Escape)
    for down in (1, 2):  # the first end, then the second
        hands.shell.bench.canvas.setFocus()
        hands.key(Qt.Key.Key_Slash)
        hands.write("Beacon", ENTER)
        hands.key(*[DOWN] * down, ENTER)
    assert {end.pinout for end in hands.plan().ends} == {RECORD}
    assert owner.cautions() == set()


# -- by mouse -----------------------------------------------------------------------------------


def click(hands, widget, point=None):
    """Scroll what is to be clicked into sight, and click it."""
    step = widget.parentWidget()
    while step is not None:
        if isinstance(step, QScrollArea):
            step.ensureWidgetVisible(widget)
        step = step.parentWidget()
    hands.click(widget, point)


def pressed(window, words):
    return next(it for it in window.head.findChildren(QPushButton) if it.text() == words)


def fill(hands, field, text):
    click(hands, field.line)
    hands.key(Qt.Key.Key_A, modifiers=CTRL)
    hands.write(text, ENTER)


def choose(hands, box, value):
    """Open a list, walk down to a value, take it."""
    click(hands, box)
    for _ in range(200):
        if box.view().isVisible():
            break
        QTest.qWait(5)
    for _ in range(box.findData(value) - box.currentIndex()):
        QTest.keyClick(box.view(), DOWN)
    QTest.keyClick(box.view(), ENTER)
    hands.settle()
    assert box.currentData() == value


def write_by_mouse(owner):
    hands = owner.hands
    hands.click_menu("Plan", "library")
    hands.in_front = window = owner.window
    choose(hands, window.browse.kind.box, "connector")
    click(hands, window.browse.search)
    hands.write("XLR-5 female")
    click(hands, pressed(window, "New pinout\u2026"))
    editor = window.pinout
    click(hands, editor.question.buttons["mating"])
    click(hands, editor.fits.boxes["xlr-5-male"], QPoint(8, 12))
    for name, words in CONTACTS.items():
        fill(hands, editor.table.fields[name], words)
    choose(hands, editor.drive.box, "load")
    fill(hands, editor.fields["use"], "Beacon headset")
    fill(hands, editor.fields["maker"], "Tarn & Wicket")
    choose(hands, editor.source.kind.box, "letter")
    fill(hands, editor.source.fields["reference"], "letter")
    fill(hands, editor.source.fields["date"], "3 May 2009")
    hands.click_file("letter.txt", lambda: click(hands, editor.source.add))
    click(hands, editor.save_button)


def test_a_plan_that_uses_the_record_is_cleared_from_its_finding(owner, own):
    hands, bench = owner.hands, owner.bench
    write_by_mouse(owner)
    assert_is_the_letter(owner.saved(), own)
    owner.window.close()
    hands.in_front = hands.shell.window
    for end in "AB":
        target = next(it for it in targets(hands.plan(), owner.saved()) if it.key == end)
        assert bench.shelf.put(owner.saved(), target)
    assert owner.cautions() == {"pinout-unconfirmed"}

    card = next(it for it in bench.findings._open_cards())
    click(hands, card.library_button)
    hands.in_front = owner.window
    assert owner.window.browse.record == owner.saved()
    click(hands, pressed(owner.window, "Measure a sample\u2026"))
    owner.read_all_that_is_proposed()
    for key, box in owner.window.sample.questions.boxes.items():
        choose(hands, box, owner.true_answer(key))
    owner.confirm_by("the owner", lambda: click(hands, owner.window.sample.write))
    owner.window.close()
    hands.in_front = hands.shell.window
    assert owner.cautions() == {"pinout-unconfirmed"}, "the plan keeps its own copy"
    owner.take_newer()
    assert owner.cautions() == set()
