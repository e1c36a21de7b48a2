"""The owner's window opens at what is looked at in the plan's window."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from planner.data import data_dir
from planner.model.place import Place

DEMO = data_dir("resources") / "demo" / "cue-desk-headphone-lead.json"


@pytest.fixture
def shell(make_shell):
    made = make_shell()
    made.bench.begin(DEMO, demo=False)
    return made


def looked_at(shell):
    return shell.bench.library.window.browse.record.id


def test_it_opens_at_the_pinout_of_the_selected_end(shell):
    shell.bench.workbench.select(Place(end="L"))
    shell.bench.window.acts["library"].trigger()
    assert looked_at(shell) == "odalisk-cup"


def test_a_finding_about_a_record_opens_it(shell):
    cards = {card.finding.code: card for card in shell.bench.findings._open_cards()}
    card = cards["pinout-unconfirmed"]
    QTest.mouseClick(card.library_button, Qt.MouseButton.LeftButton)

    assert looked_at(shell) == "odalisk-cup"
    assert all(it.library_button.isHidden() for code, it in cards.items() if "pinout-" not in code)


def test_a_row_of_the_shelf_opens_it(shell):
    shelf = shell.bench.shelf
    shelf.search.setText("xlr-5-female")
    record = shelf.record
    menu = shelf.menu(record)
    menu.actions()[-1].trigger()

    assert looked_at(shell) == record.id


def test_it_follows_the_look(shell):
    shell.bench.window.acts["library"].trigger()
    shell.settings.choose("theme", "dark")
    assert shell.bench.library.window.pinout.look is shell.theme.look
