"""What happens under a resting pointer: the net lights up, then a tooltip tells the facts."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint, QPointF, Qt, QTimer
from PySide6.QtWidgets import QToolTip

from planner.app.canvas.tips import tip_words
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView

TIP_MS = 500


class Hover(QObject):
    """Follow the pointer while no button is down."""

    def __init__(self, view: "BenchView") -> None:
        super().__init__(view)
        self._view = view
        self.rest_ms = TIP_MS
        self._place: Place | None = None
        self._section = ""
        self._at = QPoint()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._on_rest)

    def move(self, at: QPointF, global_at: QPoint, modifiers: Qt.KeyboardModifier) -> None:
        """Light the net under the pointer; with a core in hand, show what a click would do."""
        point = (at.x(), at.y())
        view, bench = self._view, self._view.bench_scene.bench
        if view.workbench.hand is not None and view.side == "solder":
            exchange = bool(modifiers & Qt.KeyboardModifier.ShiftModifier)
            view.aim.point(point, view.room(), exchange=exchange)
        contact, strand = bench.contact_at(point), bench.strand_at(point)
        place = None
        if contact is not None:
            place = Place(end=contact[0], contact=contact[1])
        elif strand is not None:
            place = Place(end=strand[0], conductor=strand[1])
        section = "" if place is not None else bench.section_at(point)
        if (place, section) != (self._place, self._section):
            self._change(place, section)
        self._at = global_at

    def leave(self) -> None:
        """Put the light out."""
        self._change(None, "")

    def _change(self, place: Place | None, section: str) -> None:
        self._place, self._section = place, section
        self._view.workbench.light(place)
        shape = Qt.CursorShape.PointingHandCursor if place else Qt.CursorShape.ArrowCursor
        self._view.viewport().setCursor(shape)
        QToolTip.hideText()
        self._timer.start(self.rest_ms) if place or section else self._timer.stop()

    def _on_rest(self) -> None:
        if self._view.workbench.hand is None and self._view.gesture is None:
            words = tip_words(self._view.workbench, self._place, self._section)
            QToolTip.showText(self._at + QPoint(12, 8), words, self._view.viewport())
