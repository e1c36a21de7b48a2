"""What a screen reader is told: everything that can have the focus has a name (WCAG 2.2, 4.1.2)."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication, QMenu, QWidget

from planner.app.dialogs.details import DetailsDialog
from planner.app.dialogs.settings import SettingsDialog
from planner.files.plans import write_plan
from planner.model.place import Place

NAME = QAccessible.Text.Name


def interfaces(widget):
    """Yield every widget below, and its accessible interface."""
    for child in (widget, *widget.findChildren(QWidget)):
        found = QAccessible.queryAccessibleInterface(child)
        if found is not None and found.isValid():
            yield child, found


def takes_focus(widget):
    """Tell whether Tab or a click brings the focus here, and not on to a proxy."""
    policy = widget.focusPolicy()
    return bool(policy != Qt.FocusPolicy.NoFocus) and widget.focusProxy() is None


def nameless(window):
    """The widgets that can be seen and take the focus, and have no name."""
    return [
        (type(widget).__name__, widget.objectName(), widget.parentWidget())
        for widget, found in interfaces(window)
        if widget.isVisible()
        and takes_focus(widget)
        and widget is not window
        and not found.text(NAME).strip()
    ]


def states(shell):
    """Show one thing after the other, and tell which."""
    bench = shell.bench.workbench
    yield "the lead"
    for place, section in (
        (Place(end="A"), ""),
        (Place(end="A", contact="T"), ""),
        (Place(end="A", conductor="BU"), ""),
        (Place(), "trunk"),
    ):
        bench.select(place, section)
        yield f"{place} {section}"
    shell.window.notice.say("The bench sheet is written: cue desk.svg")
    yield "a notice"


@pytest.mark.parametrize("size", [(1440, 900), (1024, 700), (720, 450)])
def test_everything_that_takes_the_focus_has_a_name(make_shell, spoiled_plan, tmp_path, size):
    write_plan(tmp_path / "lead.json", spoiled_plan)
    shell = make_shell(tmp_path / "lead.json", size=size)
    seen = 0
    for state in states(shell):
        for panel in ("shelf", "landings", "findings", "in_hand", "canvas"):
            shell.window.regions.show_panel(panel)
            QApplication.processEvents()
            assert nameless(shell.window) == [], state
            seen += sum(takes_focus(widget) for widget, _ in interfaces(shell.window))
    assert seen > 100


def test_the_guide_and_its_lists_are_named(shell):
    QApplication.processEvents()
    assert nameless(shell.window) == []
    shell.bench.guide.choose("A")
    assert nameless(shell.bench.guide.pick) == []
    shell.bench.guide.pick.reject()


def test_one_without_a_name_is_found(shell):
    shell.bench.shelf.search.setAccessibleName("")
    assert [kind for kind, _, _ in nameless(shell.window)] == ["SearchLine"]


def test_the_dialogs_are_named(shell):
    for dialog in (
        SettingsDialog(shell.window, shell.settings, lambda: None),
        DetailsDialog(shell.window, shell.bench.workbench.plan),
    ):
        dialog.show()
        assert nameless(dialog) == []
        dialog.close()
        dialog.deleteLater()


def test_every_row_of_the_shelf_and_cell_of_the_landings_is_spoken(make_shell, plan_file):
    shell = make_shell(plan_file)
    table = shell.bench.landings.model
    for model, columns in ((shell.bench.shelf.list.model(), 1), (table, table.columnCount())):
        said = [
            model.index(row, column).data(Qt.ItemDataRole.AccessibleTextRole)
            for row in range(model.rowCount())
            for column in range(columns)
        ]
        assert said
        assert all(said)


def test_every_menu_entry_has_words(shell):
    for menu in shell.window.findChildren(QMenu):
        said = [action.text() for action in menu.actions() if not action.isSeparator()]
        assert all(said), menu.title()
