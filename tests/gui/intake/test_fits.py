"""One record for both genders of a connector."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest


def test_a_record_holds_for_the_other_gender_too(window):
    window.take_in_pinout("xlr-5-female")
    box = window.pinout.fits.boxes["xlr-5-male"]
    QTest.keyClick(box, Qt.Key.Key_Space)

    assert window.pinout.drafting.draft.fits_also == ("xlr-5-male",)
    window.pinout.drafting.undo_stack.undo()
    assert not box.isChecked()
