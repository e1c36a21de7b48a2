import pytest
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QAbstractButton

from planner.app.action_specs import MENUS, SPECS
from planner.app.buttons import LEAST
from planner.app.dialogs.keys import KeysDialog, key_table

LETTERS = {
    spec.name
    for spec in SPECS
    if any(
        len(key.split("+")[-1]) == 1 and not {"Ctrl", "Alt"} & {*key.split("+")}
        for key in spec.keys
    )
}


@pytest.mark.parametrize("spec", SPECS, ids=lambda spec: spec.name)
def test_an_action_has_a_tip_and_a_key_or_a_reason(spec):
    assert spec.tip
    assert bool(spec.keys) != bool(spec.no_key)
    assert all(not QKeySequence(key).isEmpty() for key in spec.keys)


def test_no_key_stands_for_two_actions():
    keys = [QKeySequence(key).toString() for spec in SPECS for key in spec.keys]
    assert len(keys) == len(set(keys))


def test_no_two_entries_of_a_menu_share_a_mnemonic():
    for menu in MENUS:
        letters = [spec.text.split("&")[1][0].lower() for spec in SPECS if spec.menu == menu]
        assert len(letters) == len(set(letters)), menu


def test_single_letters_never_work_everywhere():
    scopes = {spec.scope for spec in SPECS if spec.name in LETTERS}
    assert scopes <= {"bench", "fit", "work", "prove", "walk"}


def test_there_are_no_dead_entries(shell):
    assert [
        spec.name for spec, _ in shell.window.acts if not shell.window.acts.is_handled(spec.name)
    ] == []
    for menu in shell.window.menus.values():
        menu.aboutToShow.emit()
        assert not menu.isEmpty()


def test_tips_name_the_keys(shell):
    for spec, action in shell.window.acts:
        shown = (
            QKeySequence(spec.keys[0]).toString(QKeySequence.SequenceFormat.NativeText)
            if spec.keys
            else ""
        )
        assert action.toolTip() == (f"{spec.tip} ({shown})" if shown else spec.tip)


def test_f1_shows_every_key(shell, qtbot):
    listed = {keys for hints in key_table(shell.window.acts).values() for keys, _ in hints}
    for spec, _ in shell.window.acts:
        for key in spec.keys:
            native = QKeySequence(key).toString(QKeySequence.SequenceFormat.NativeText)
            assert any(native in keys for keys in listed), key
    dialog = KeysDialog(shell.window, shell.window.acts)
    qtbot.addWidget(dialog)


def test_every_button_of_the_shell_has_a_name_a_tip_and_a_fair_size(shell):
    window = shell.window
    for part in (
        window.band,
        window.head,
        window.rail,
        window.landings_head,
        window.bar,
        window.notice,
    ):
        for button in part.findChildren(QAbstractButton):
            assert button.accessibleName(), button.text()
            assert button.toolTip(), button.text()
            assert min(button.sizeHint().height(), button.maximumHeight()) >= LEAST
            assert (
                min(max(button.sizeHint().width(), button.minimumWidth()), button.maximumWidth())
                >= LEAST
            )


def test_buttons_follow_their_action(shell):
    band, undo = shell.window.band, shell.window.acts["undo"]
    assert not band.undo.isEnabled()
    undo.setEnabled(True)
    assert band.undo.isEnabled()
