"""The bench canvas: it shows the lead, and hands the mouse and the keys to the gestures."""

from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QEvent, QMimeData, QPointF, Qt, Signal
from PySide6.QtGui import (
    QColor,
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
from PySide6.QtWidgets import QFrame, QGraphicsView

from planner.app.canvas.aim import Aim
from planner.app.canvas.drops import dropped_file, place_for, put, record_of
from planner.app.canvas.keys import Keys
from planner.app.canvas.overlays import Overlays
from planner.app.canvas.scene import BenchScene
from planner.app.canvas.tools.hover import Hover
from planner.app.canvas.tools.pan import Pan
from planner.app.canvas.tools.press import Press
from planner.app.panels.words import contact_words
from planner.app.workbench import Workbench
from planner.drawing.bench import BenchLayout, Layer, Settings
from planner.drawing.bench.layout import MARGIN, ZOOM_LEAST, ZOOM_MOST
from planner.drawing.bench.overlays import target_frame
from planner.drawing.bench.shapes import Box
from planner.drawing.looks import Look
from planner.model.place import Place

if TYPE_CHECKING:
    from planner.app.canvas.tools.gesture import Gesture

STEP, WHEEL_STEP = 1.25, 1.1
_SLACK_PX = 8


class BenchView(QGraphicsView):
    """Show every end of the lead at once; core and contact are hit by the bench's geometry."""

    zoom_changed = Signal(float)
    side_changed = Signal(str)
    one_scale_changed = Signal(bool)
    file_dropped = Signal(str)

    def __init__(self, workbench: Workbench, look: Look) -> None:
        super().__init__()
        self.workbench, self.look = workbench, look
        self.bench_scene = BenchScene(self)
        self.setScene(self.bench_scene)
        self.gesture: Gesture | None = None
        self.side: Literal["solder", "mating"] = "solder"
        self.aim = Aim(workbench, self.bench_scene, look)
        self._layout = BenchLayout()
        self._zoom, self._fitted, self._one_scale, self._peeking = 1.0, True, False, False
        self._overlays = Overlays(workbench, self.bench_scene, look)
        self._hover, self._keys = Hover(self), Keys(self)
        self._prepare()
        workbench.plan_changed.connect(self._on_plan_changed)
        workbench.hand_changed.connect(self._on_hand_changed)
        workbench.go_to.connect(self.show_place)
        self.set_look(look)

    def _prepare(self) -> None:
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.MinimalViewportUpdate)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)
        self.setMouseTracking(True)
        self.viewport().setMouseTracking(True)
        self.setAcceptDrops(True)
        self.viewport().setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Bench: the whole lead")

    # -- what is shown ----------------------------------------------------------------------

    @property
    def zoom(self) -> float:
        """The zoom; 1 is 100 %."""
        return self._zoom

    @property
    def focused(self) -> Place:
        """The contact that the keyboard is at, or an empty place."""
        return self._overlays.focus

    def set_look(self, look: Look) -> None:
        """Show the bench in another palette."""
        self.look = self.aim.look = look
        self.setBackgroundBrush(QColor(look.paper))
        self._overlays.set_look(look)
        self.relayout()

    def settings(self) -> Settings:
        """Return how the bench is laid out now."""
        size = self.maximumViewportSize()
        return Settings(
            self.look, self._zoom, self._one_scale, self.side, size.width(), size.height()
        )

    def relayout(self) -> None:
        """Lay the bench out anew; only what differs is drawn again."""
        bench = self._layout.bench(self.workbench.plan, self.settings())
        self.bench_scene.show_bench(bench)
        size = self.maximumViewportSize()
        # A few px of a stroke over the edge are not worth a scroll bar.
        across, down = bench.box[2] + MARGIN, bench.box[3] + MARGIN
        width = across if across > size.width() + _SLACK_PX else size.width()
        height = down if down > size.height() + _SLACK_PX else size.height()
        self.setSceneRect(0, 0, int(width), int(height))
        self._overlays.show_all()

    def room(self) -> Box:
        """Return the part of the bench that can be seen, in scene coordinates."""
        seen = self.mapToScene(self.viewport().rect()).boundingRect()
        return (seen.left(), seen.top(), seen.right(), seen.bottom())

    # -- zoom, scale, side ------------------------------------------------------------------

    def fit(self) -> None:
        """Show the whole lead, and keep doing so until it is zoomed by hand."""
        self._fitted = True
        self._refit()

    def _refit(self) -> None:
        zoom = self._layout.fit_zoom(self.workbench.plan, self.settings())
        self._zoom = zoom
        self.relayout()
        self.zoom_changed.emit(zoom)

    def zoom_in(self) -> None:
        """Zoom one step in."""
        self.zoom_to(self._zoom * STEP)

    def zoom_out(self) -> None:
        """Zoom one step out."""
        self.zoom_to(self._zoom / STEP)

    def zoom_reset(self) -> None:
        """Zoom to 100 %: the smallest terminal about 27 px."""
        self.zoom_to(1.0)

    def zoom_to(self, zoom: float, at: QPointF | None = None) -> None:
        """Zoom, keeping what is under `at` (a viewport point; the middle) where it is."""
        zoom = min(max(zoom, ZOOM_LEAST), ZOOM_MOST)
        where = at if at is not None else QPointF(self.viewport().rect().center())
        end, local = self._anchor(self.mapToScene(where.toPoint()))
        ratio = zoom / self._zoom
        self._fitted, self._zoom = False, zoom
        self.relayout()
        placed = self.bench_scene.bench.ends.get(end)
        if placed is not None:
            x, y = placed.at((local[0] * ratio, local[1] * ratio))
            self.horizontalScrollBar().setValue(round(x - where.x()))
            self.verticalScrollBar().setValue(round(y - where.y()))
        self.zoom_changed.emit(zoom)

    def _anchor(self, at: QPointF) -> tuple[str, tuple[float, float]]:
        """Return the end whose face is nearest to a point, and the point from its centre."""
        ends = self.bench_scene.bench.ends
        name = min(
            ends,
            key=lambda end: abs(ends[end].origin[0] - at.x()) + abs(ends[end].origin[1] - at.y()),
            default="",
        )
        if not name:
            return "", (0.0, 0.0)
        origin = ends[name].origin
        return name, (at.x() - origin[0], at.y() - origin[1])

    def set_one_scale(self, one_scale: bool) -> None:  # noqa: FBT001 - a slot for a checked action
        """Draw all ends at one scale, or each at its own."""
        if one_scale != self._one_scale:
            self._one_scale = one_scale
            self._refit() if self._fitted else self.relayout()
            self.one_scale_changed.emit(one_scale)

    def set_side(self, side: Literal["solder", "mating"]) -> None:
        """Look at the solder side, or at the mating side: mirrored, nothing lands there."""
        if side != self.side:
            self.cancel()
            self.side = side
            self.relayout()
            self.side_changed.emit(side)

    # -- places -----------------------------------------------------------------------------

    def show_place(self, place: Place) -> None:
        """Scroll to a place and show it by a pulse."""
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
        self._overlays.pulse(centre, radius)

    def _contact_of(self, place: Place) -> str:
        landing = self.workbench.plan.landing_at.get((place.end, place.conductor))
        return landing.contact if landing else ""

    def focus_contact(self, place: Place, *, shown: bool = True) -> None:
        """Put the keyboard at a contact; `shown` draws its frame and scrolls there."""
        if not shown:
            self._overlays.show_focus(Place())
            self._overlays.focus = place
            return
        self._overlays.show_focus(place)
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
            self.cancel()
        kinds = {getattr(change, "what", "") for change in changes}  # type: ignore[attr-defined]  # a tuple of changes
        if self._fitted and not kinds <= {"landings", "caps", "links", "acceptances", "remarks"}:
            self._refit()
        else:
            self.relayout()

    def _on_hand_changed(self) -> None:
        if self.workbench.hand is None:
            self.aim.clear()

    def cancel(self) -> None:
        """Call off the gesture under way, if there is one."""
        gesture, self.gesture = self.gesture, None
        if gesture is not None:
            gesture.cancel()

    # -- mouse ------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a gesture."""
        at = self.mapToScene(event.position().toPoint())
        if event.button() == Qt.MouseButton.LeftButton and self.gesture is None:
            self._overlays.show_focus(Place())
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
        self._refit() if self._fitted else self.relayout()

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
            self.cancel()
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
        self._overlays.show_focus(Place())
        return super().focusNextPrevChild(forward)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the frame away and end a peek when the keyboard goes elsewhere."""
        super().focusOutEvent(event)
        self._overlays.show_focus(Place())
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
