"""The bench canvas: it shows the lead, and hands the mouse and the keys to the gestures."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QMimeData, QPointF, Qt, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragLeaveEvent,
    QDragMoveEvent,
    QDropEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QResizeEvent,
    QWheelEvent,
)

from planner.app.canvas.drops import dropped_file, place_for, put, record_of
from planner.app.canvas.keys import Keys
from planner.app.canvas.stage import WHOLE_LEAD, Stage
from planner.app.canvas.tools.hover import Hover
from planner.app.canvas.tools.pan import Pan
from planner.app.canvas.tools.press import Press
from planner.app.panels.words import contact_words
from planner.app.workbench import Workbench
from planner.drawing.bench import Layer
from planner.drawing.bench.overlays import target_frame
from planner.drawing.looks import Look
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.canvas.tools.gesture import Gesture

WHEEL_STEP = 1.1


class BenchView(Stage):
    """The stage with its gestures; core and contact are hit by the bench's geometry."""

    file_dropped = Signal(str)

    def __init__(self, workbench: Workbench, look: Look) -> None:
        super().__init__(workbench, look)
        self.gesture: Gesture | None = None
        self._peeking = False
        self._hover, self._keys = Hover(self), Keys(self)
        self.setMouseTracking(True)
        self.viewport().setMouseTracking(True)
        self.setAcceptDrops(True)
        self.viewport().setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(WHOLE_LEAD)
        workbench.plan_changed.connect(self._on_plan_changed)
        workbench.hand_changed.connect(self._on_hand_changed)
        workbench.go_to.connect(self.show_place)
        self.set_look(look)

    # -- places -----------------------------------------------------------------------------

    def show_place(self, place: Place) -> None:
        """Scroll to a place and show it by a pulse."""
        if self.only and place.end in self.workbench.plan.end_by_id:
            self.show_end(place.end)
        bench = self.bench_scene.bench
        if place.end not in bench.ends:
            return
        centre, radius = bench.ends[place.end].origin, 60.0
        contact = place.contact or self._contact_of(place)
        if (place.end, contact) in bench.contacts:
            centre = bench.contacts[place.end, contact]
            radius = bench.radius(place.end, contact) + 6
        elif (place.end, place.conductor) in bench.tips:
            centre, radius = bench.tips[place.end, place.conductor], 16.0
        self.ensureVisible(centre[0] - 60, centre[1] - 60, 120, 120, 40, 40)
        self.overlays.pulse(centre, radius)

    def _contact_of(self, place: Place) -> str:
        landing = self.workbench.plan.landing_at.get((place.end, place.conductor))
        return landing.contact if landing else ""

    @property
    def focused(self) -> Place:
        """The contact that the keyboard is at, or an empty place."""
        return self.overlays.focus

    def focus_contact(self, place: Place, *, shown: bool = True) -> None:
        """Put the keyboard at a contact; `shown` draws its frame and scrolls there."""
        if not shown:
            self.overlays.show_focus(Place())
            self.overlays.focus = place
            return
        self.overlays.show_focus(place)
        x, y = self.bench_scene.bench.contacts[place.end, place.contact]
        self.ensureVisible(x - 40, y - 40, 80, 80, 20, 20)
        said = contact_words(self.workbench.plan, place.end, place.contact)
        self.setAccessibleDescription(f"{place.end}, {said}")
        if self.workbench.hand is not None:
            self.aim.look_at((place.end, place.contact), self.room())
        else:
            self.workbench.select(place)

    # -- heard ------------------------------------------------------------------------------

    def _on_plan_changed(self, changes: object) -> None:
        if self.gesture is not None and not isinstance(self.gesture, Pan):
            self.call_off()
        kinds = {getattr(change, "what", "") for change in changes}  # type: ignore[attr-defined]  # a tuple of changes
        if self._fitted and not kinds <= {"landings", "caps", "links", "acceptances", "remarks"}:
            self.refit()
        else:
            self.relayout()

    def _on_hand_changed(self) -> None:
        if self.workbench.hand is None:
            self.aim.clear()

    def call_off(self) -> None:
        """Call off the gesture under way, if there is one."""
        gesture, self.gesture = self.gesture, None
        if gesture is not None:
            gesture.cancel()

    # -- mouse ------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a gesture."""
        at = self.mapToScene(event.position().toPoint())
        if event.button() == Qt.MouseButton.LeftButton and self.gesture is None:
            self.overlays.show_focus(Place())
            self.gesture = Press(self, at, event.position())
        elif event.button() == Qt.MouseButton.MiddleButton and self.gesture is None:
            self.gesture = Pan(self, event.position())
        event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Follow the gesture, or light what lies under the pointer."""
        at = self.mapToScene(event.position().toPoint())
        if self.gesture is not None:
            self.gesture.move(at, event.position(), event.modifiers())
        else:
            self._hover.move(at, event.globalPosition().toPoint(), event.modifiers())
        event.accept()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the gesture."""
        gesture, self.gesture = self.gesture, None
        if gesture is not None:
            gesture.release(self.mapToScene(event.position().toPoint()), event.modifiers())
        event.accept()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Take the second press of a double click as a press."""
        self.mousePressEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """Put the light out."""
        self._hover.leave()
        super().leaveEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom with Ctrl, scroll without; Shift scrolls sideways."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            clicks = event.angleDelta().y() / 120.0
            self.zoom_to(self._zoom * WHEEL_STEP**clicks, event.position())
            event.accept()
            return
        step = event.pixelDelta() if not event.pixelDelta().isNull() else event.angleDelta() / 2
        across, down = step.x(), step.y()
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier and not across:
            across, down = down, 0
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().value() - across)
        self.verticalScrollBar().setValue(self.verticalScrollBar().value() - down)
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit again where the lead is fitted, else only lay out."""
        super().resizeEvent(event)
        if self._fitted:
            self.refit()
        elif self.settings() != self.laid_out:  # a scroll bar that comes or goes changes nothing
            self.relayout()

    # -- keys -------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Hand a key to the gesture, the view, or the contacts."""
        key = Qt.Key(event.key())
        if key == Qt.Key.Key_Escape and self._escape():
            event.accept()
        elif key == Qt.Key.Key_Shift:
            self._exchange_changed(on=True)
        elif key == Qt.Key.Key_M and not event.isAutoRepeat() and self.side == "solder":
            self._peeking = True
            self.set_side("mating")
        elif not self._keys.press(event):
            event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """End the peek at the mating side."""
        if event.key() == Qt.Key.Key_M and not event.isAutoRepeat() and self._peeking:
            self._peeking = False
            self.set_side("solder")
        elif event.key() == Qt.Key.Key_Shift:
            self._exchange_changed(on=False)
        else:
            super().keyReleaseEvent(event)

    def _exchange_changed(self, *, on: bool) -> None:
        """Show at once what Shift would change for the core in hand."""
        if self.workbench.hand is None or self.side != "solder":
            return
        at = self.mapToScene(self.viewport().mapFromGlobal(self.cursor().pos()))
        target = self.aim.target
        if target is not None:
            self.aim.look_at((target.end, target.contact), self.room(), exchange=on)
        else:
            self.aim.point((at.x(), at.y()), self.room(), exchange=on)

    def _escape(self) -> bool:
        """Call off the gesture, else put back what is in hand, else select nothing."""
        if self.gesture is not None:
            self.call_off()
            return True
        if self.workbench.hand is not None:
            self.workbench.put_back()
            return True
        if self.workbench.selection != Place() or self.workbench.selected_section:
            self.workbench.select(Place())
            return True
        return False

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: FBT001 - Qt's own
        """Go through the contacts with Tab; leave the canvas beyond the last one."""
        if self._keys.step(forward=forward):
            return True
        self.overlays.show_focus(Place())
        return super().focusNextPrevChild(forward)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the frame away and end a peek when the keyboard goes elsewhere."""
        super().focusOutEvent(event)
        self.overlays.show_focus(Place())
        if self._peeking:
            self._peeking = False
            self.set_side("solder")

    # -- drops ------------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take records off the shelf, and files."""
        mime = event.mimeData()
        if record_of(self.workbench, mime) is not None or dropped_file(mime) is not None:
            event.acceptProposedAction()
        else:
            event.ignore()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Show where the record would go."""
        record = record_of(self.workbench, event.mimeData())
        if record is not None:
            at = self.mapToScene(event.position().toPoint())
            place = place_for(self.workbench, self.bench_scene.bench, record, (at.x(), at.y()))
            frame = target_frame(place.box, self.look) if place else ()
            self.bench_scene.overlay("drop", Layer.LINK, frame)
        event.acceptProposedAction()

    def dragLeaveEvent(self, event: QDragLeaveEvent) -> None:
        """Forget the drag."""
        self.bench_scene.overlay("drop", Layer.LINK, ())

    def dropEvent(self, event: QDropEvent) -> None:
        """Take what is dropped."""
        if self.handle_drop(event.mimeData(), self.mapToScene(event.position().toPoint())):
            event.acceptProposedAction()

    def handle_drop(self, mime: QMimeData, at: QPointF) -> bool:
        """Choose a dropped record for what lies nearest, or tell `file_dropped`."""
        self.bench_scene.overlay("drop", Layer.LINK, ())
        path = dropped_file(mime)
        if path is not None:
            self.file_dropped.emit(str(path))
            return True
        record = record_of(self.workbench, mime)
        if record is None:
            return False
        place = place_for(self.workbench, self.bench_scene.bench, record, (at.x(), at.y()))
        return place is not None and put(self.workbench, record, place.key)
