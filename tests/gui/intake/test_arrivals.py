"""What a parcel brings is shown and answered; the definitions are invented."""

from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton

from planner.app.intake.arrivals import ArrivalsDialog
from planner.library.arriving import Arrival
from planner.library.comparing import differences
from tests.files.samples import records


def arrivals(folder):
    mine = records(folder)["pinout"]
    theirs = mine.evolve(title="Pit phones", maker="Odalisk")
    return (
        Arrival(records(folder)["connector"], "new"),
        Arrival(theirs, "differs", mine, differences(mine, theirs)),
    )


def pressed(dialog, words):
    """Show a dialog, press the button that says so, and return what was answered."""
    (button,) = [it for it in dialog.findChildren(QPushButton) if it.text() == words]
    QTimer.singleShot(0, lambda: QTest.mouseClick(button, Qt.MouseButton.LeftButton))
    return dialog.ask()


def test_what_differs_is_told_and_left_unless_it_is_answered(qapp, tmp_path):
    dialog = ArrivalsDialog(None, arrivals(tmp_path))
    said = [it.text() for it in dialog.findChildren(QLabel)]

    assert "Pit phones (pinout): here already, and it differs" in said
    assert "maker: nothing here, Odalisk in the parcel" in said
    assert pressed(dialog, "Take in") == {"bench-three-phones": "leave"}


def test_an_answer_is_given_back_and_nothing_where_it_was_left(qapp, tmp_path):
    dialog = ArrivalsDialog(None, arrivals(tmp_path))
    (box,) = dialog.boxes.values()
    box.setCurrentIndex(box.findData("beside"))
    assert pressed(dialog, "Take in") == {"bench-three-phones": "beside"}
    assert pressed(ArrivalsDialog(None, arrivals(tmp_path)), "Cancel") is None
    assert QApplication.activeModalWidget() is None
