"""The faces beside the readings: where the probes go, and where the fault is."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from planner.app.canvas.paint import paint
from planner.app.fitting.backdrop import painted
from planner.app.fonts import font
from planner.app.proving_view.faces import end_ground, end_marks, ends_shown, legend, marks_at
from planner.app.proving_view.rows import contacts_words

if TYPE_CHECKING:
    from planner.app.proving_view.state import Proving
    from planner.drawing.looks import Look
    from planner.proving.reading import Contact

MOST_ENDS = 3
_LEAST_HIGH = 190
_LEGEND = 28


class FacesPane(QWidget):
    """Draw the ends in play, one under the other."""

    def __init__(self, proving: "Proving", look: "Look") -> None:
        super().__init__()
        self.proving, self.look = proving, look
        self._grounds: dict[str, QImage] = {}
        self._of: object = None
        self.setMinimumWidth(160)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        for signal in (
            proving.row_changed,
            proving.rows_changed,
            proving.unit_changed,
            proving.judge.marks_changed,
        ):
            signal.connect(self.renew)
        self.renew()

    def _probed(self) -> "tuple[tuple[Contact, ...], tuple[Contact, ...]]":
        row = self.proving.row
        return (row.ones, row.others) if row is not None else ((), ())

    def ends(self) -> tuple[str, ...]:
        """Return the ends that are shown, as many as there is room for."""
        held, touched = self._probed()
        known = self.proving.plan.end_by_id
        shown = ends_shown(held, touched, self.proving.judge.faults)
        ends = [end for end in shown if end in known]
        most = max(min((self.height() - _LEGEND) // _LEAST_HIGH, MOST_ENDS), 1)
        return tuple(ends[:most])

    def renew(self) -> None:
        """Draw anew, and say the same in words."""
        held, touched = self._probed()
        said = f"Hold {contacts_words(held)}, touch {contacts_words(touched)}" if held else ""
        look_at = "; ".join(fault.words for fault in self.proving.judge.faults)
        self.setAccessibleName("; ".join(part for part in (said, look_at) if part) or "Faces")
        self.update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.update()

    def _ground(self, end: str, size: tuple[int, int]) -> QImage:
        """Return the picture of an end without marks; it is painted once."""
        plan, ratio = self.proving.plan, self.devicePixelRatioF()
        if self._of != (plan, self.look, size):
            self._of, self._grounds = (plan, self.look, size), {}
        if end not in self._grounds:
            self._grounds[end] = painted(end_ground(plan, end, size, self.look), size, ratio)
        return self._grounds[end]

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the ends."""
        with QPainter(self) as painter:
            painter.setFont(font())
            painter.fillRect(self.rect(), QColor(self.look.paper))
            ends, (held, touched) = self.ends(), self._probed()
            faults = self.proving.judge.faults
            size = (self.width(), (self.height() - _LEGEND) // max(len(ends), 1))
            for place, end in enumerate(ends):
                painter.save()
                painter.translate(0, place * size[1])
                painter.drawImage(0, 0, self._ground(end, size))
                marks = marks_at(end, held, touched, faults)
                paint(painter, end_marks(self.proving.plan, marks, size, self.look))
                painter.restore()
            if ends:
                corner = (10.0, self.height() - _LEGEND / 2)
                paint(painter, legend(corner, self.look, faulty=bool(faults)))
