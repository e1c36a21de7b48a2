"""Drag a core by its tip: onto a contact, off to lift it, or home again."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt, QVariantAnimation
from PySide6.QtWidgets import QApplication, QStyle

from planner.drawing.bench import Layer
from planner.drawing.bench.hand import hand_core
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.canvas.view import BenchView
    from planner.drawing.primitives import Point

HOME_MS = 160


def animated() -> bool:
    """Tell whether the desktop wants things to move."""
    style = QApplication.style()
    return style.styleHint(QStyle.StyleHint.SH_Widget_Animation_Duration) > 0


class DragCore:
    """One drag of one core; it is one undo step, or none."""

    def __init__(self, view: "BenchView", end: str, conductor: str) -> None:
        self._view = view
        self._workbench, self._scene = view.workbench, view.bench_scene
        self._end, self._conductor = end, conductor
        self._tip: Point = self._scene.bench.tips[end, conductor]
        self._last: tuple[QPointF, Qt.KeyboardModifier] | None = None
        self._workbench.light(None)
        self._workbench.pick_up(end, conductor)
        self._scene.hide_strand(end, conductor, hidden=True)
        view.overlays.set_dragged(Place(end=end, conductor=conductor))

    def move(self, at: QPointF, view_at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """Carry the tip with the pointer and show what a drop would do."""
        self._last = (at, modifiers)
        self._tip = (at.x(), at.y())
        self._draw()
        exchange = bool(modifiers & Qt.KeyboardModifier.ShiftModifier)
        self._view.aim.point(self._tip, self._view.room(), exchange=exchange)

    def release(self, at: QPointF, modifiers: Qt.KeyboardModifier) -> None:
        """Land the core, lift it, or send it home."""
        self.move(at, at, modifiers)
        target = self._view.aim.target
        over = self._scene.bench.contact_at(self._tip)
        if self._view.aim.drop():
            self._finish()
        elif target is None and over is None and self._is_landed():
            self._finish()
            self._workbench.lift(self._end, self._conductor)
        else:
            self._workbench.put_back()
            self._go_home()

    def cancel(self) -> None:
        """Send the core home and change nothing."""
        self._view.aim.clear()
        self._workbench.put_back()
        self._go_home()

    def _is_landed(self) -> bool:
        return (self._end, self._conductor) in self._workbench.plan.landing_at

    def _draw(self) -> None:
        placed = self._scene.bench.ends.get(self._end)
        if placed is None or self._conductor not in placed.block.strands:
            return
        items = hand_core(placed, self._conductor, self._tip, self._view.look)
        self._scene.overlay("hand/core", Layer.GESTURE, items)

    def _finish(self) -> None:
        self._scene.overlay("hand/core", Layer.GESTURE, ())
        self._scene.hide_strand(self._end, self._conductor, hidden=False)
        self._view.overlays.set_dragged(None)

    def _go_home(self) -> None:
        home = self._scene.bench.tips.get((self._end, self._conductor))
        if home is None or not animated():
            self._finish()
            return
        start = self._tip
        glide = QVariantAnimation(self._view)
        glide.setDuration(HOME_MS)
        glide.setStartValue(0.0)
        glide.setEndValue(1.0)

        def step(share: float) -> None:
            self._tip = (
                start[0] + (home[0] - start[0]) * share,
                start[1] + (home[1] - start[1]) * share,
            )
            self._draw()

        glide.valueChanged.connect(step)
        glide.finished.connect(self._finish)
        glide.start(QVariantAnimation.DeletionPolicy.DeleteWhenStopped)
