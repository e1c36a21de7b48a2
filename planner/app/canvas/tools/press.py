"""A press of the left button: a click selects, picks up or lands; beyond a few px it is a drag."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt
from PySide6.QtWidgets import QApplication

from planner.app.canvas.tools.drag_core import DragCore
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView


class Press:
    """Hold what was pressed until it is known whether it is a click or a drag."""

    def __init__(self, view: "BenchView", at: QPointF, view_at: QPointF) -> None:
        self._view, self._at, self._view_at = view, at, view_at
        point = (at.x(), at.y())
        bench = view.bench_scene.bench
        self._contact = bench.contact_at(point)
        self._strand = bench.strand_at(point)
        if self._contact is not None:
            self._strand = self._landed_there(*self._contact) or self._strand

    def _landed_there(self, end: str, contact: str) -> tuple[str, str] | None:
        """Return the core that is taken when a joint is dragged: what landed there last."""
        there = self._view.workbench.wiring.landed_on(end, contact)
        return (end, there[-1]) if there else None

    def move(self, at: QPointF, view_at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """Begin the drag of a core once the pointer has gone far enough."""
        far = (view_at - self._view_at).manhattanLength() >= QApplication.startDragDistance()
        if not far or self._strand is None or self._view.side != "solder":
            return
        drag = DragCore(self._view, *self._strand)
        self._view.gesture = drag
        drag.move(at, view_at, modifiers)

    def release(self, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """Take it as a click."""
        hand = self._view.workbench.hand
        if hand is not None and self._view.side == "solder":
            self._click_with(hand, at, modifiers)
        elif self._contact is not None:
            end, contact = self._contact
            self._view.focus_contact(Place(end=end, contact=contact), shown=False)
            self._view.workbench.select(Place(end=end, contact=contact))
        elif self._strand is not None and self._view.side == "solder":
            self._view.workbench.pick_up(*self._strand)
        else:
            self._select_plain()

    def cancel(self) -> None:
        """Forget the press."""

    def _click_with(self, hand: Place, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        exchange = bool(modifiers & Qt.KeyboardModifier.ShiftModifier)
        self._view.aim.point((at.x(), at.y()), self._view.room(), exchange=exchange)
        target, workbench = self._view.aim.target, self._view.workbench
        if target is not None and target.ghost.allowed:
            self._view.aim.drop()
        elif target is not None:
            workbench.refused.emit(target.ghost.reason, "Hold Shift to exchange.")
        elif self._strand is not None and self._strand != (hand.end, hand.conductor):
            workbench.pick_up(*self._strand)
        else:
            workbench.put_back()

    def _select_plain(self) -> None:
        point = (self._at.x(), self._at.y())
        bench = self._view.bench_scene.bench
        section, end = bench.section_at(point), bench.end_at(point)
        if section:
            self._view.workbench.select(Place(), section)
        else:
            self._view.workbench.select(Place(end=end))
