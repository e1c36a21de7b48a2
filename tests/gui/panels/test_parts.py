import pytest
from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QLabel

from planner.app.panels.facts import parts as parts_module
from planner.app.panels.in_hand import InHandPanel
from planner.edits.parts import remove_part
from planner.model.place import Place

SIZE = (304, 1400)


@pytest.fixture
def panel(bench, demo, show):
    plan = demo("cue-desk-headphone-lead")
    for use in ("heat-shrink-4.75", "label-sleeve-4.5"):
        plan = remove_part(plan, use=use)
    bench.open_plan(plan)
    return show(InHandPanel, bench, SIZE)


@pytest.fixture
def parts_at(bench, panel, qtbot):
    """Select a place and return its parts when they show."""

    def at(place, section=""):
        bench.select(place, section)
        QCoreApplication.processEvents()
        return panel.page.parts

    return at


def named(parts):
    return [button.accessibleName() for button in parts.buttons()]


def said(parts):
    return " ".join(it.text() for it in parts.findChildren(QLabel) if it.isVisible())


def planned(bench):
    return [(use.part, use.at, use.comes_from) for use in bench.plan.parts]


def test_an_end_shows_its_parts_by_tag_and_what_is_proposed(parts_at):
    parts = parts_at(Place(end="A"))
    first, *others = named(parts)
    assert first == "Remove A2 Boot for 4.4 plug"
    assert others[0].startswith("Take Heat-shrink 4.75 to 2.36 mm for A: Covers")
    assert others[-1] == "Take all 2 parts proposed"
    assert parts.head.note.text() == "1 chosen, 2 proposed"


def test_take_is_one_step_and_its_cut_length_stays_shown(bench, parts_at, qtbot):
    parts, before = parts_at(Place(end="A")), bench.plan
    take = parts.buttons()[1]
    take.setFocus()
    qtbot.keyClick(take, Qt.Key.Key_Space)
    assert planned(bench)[-1] == ("heat-shrink-4.75", "A", "A")
    assert bench.undo_stack.count() == 1
    assert "cut 12 mm" in said(parts)
    assert parts.buttons()[1].hasFocus()
    bench.undo_stack.undo()
    assert bench.plan == before
    assert parts.head.note.text() == "1 chosen, 2 proposed"


def test_take_all_is_one_step(bench, parts_at, qtbot):
    parts = parts_at(Place(end="A"))
    qtbot.mouseClick(parts.take_all, Qt.MouseButton.LeftButton)
    assert [it[0] for it in planned(bench)[-2:]] == ["heat-shrink-4.75", "label-sleeve-4.5"]
    assert bench.undo_stack.count() == 1
    assert not parts.take_all.isVisible()


def test_remove_takes_it_off_and_proposes_it_again(bench, parts_at, qtbot):
    parts = parts_at(Place(end="A"))
    remove = parts.buttons()[0]
    remove.setFocus()
    qtbot.keyClick(remove, Qt.Key.Key_Space)
    assert ("boot-4.4", "A", "A") not in planned(bench)
    assert any(it.startswith("Take Boot") for it in named(parts))


def test_the_trunk_shows_the_parts_of_its_split_and_what_stock_lacks(parts_at):
    parts = parts_at(Place(), "trunk")
    assert named(parts) == ["Remove A1 Splitter cover, one to two"]
    assert "4.80 to 1.60 mm is 5.27 mm thick when it is shrunk on" in said(parts)


def test_a_leg_shows_none_of_the_split(bench, parts_at):
    leg = next(it.id for it in bench.plan.sections if it.id != "trunk")
    assert named(parts_at(Place(), leg)) == []


def test_nothing_is_worked_out_while_the_page_is_hidden(parts_at, monkeypatch):
    asked = []
    parts_at(Place(end="A"))
    monkeypatch.setattr(parts_module, "answers", lambda *_, **place: asked.append(place) or ())
    parts_at(Place(end="A"))
    parts = parts_at(Place(end="A"))
    parts.hide()
    parts.show_place(end="A")
    assert asked == []
    parts.show()
    QCoreApplication.processEvents()
    assert asked == [{"end": "A", "section": ""}]
