"""The end, large: the plug is turned by hand, joints are pointed at and chosen."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QApplication, QWidget

from planner.app.canvas.paint import paint
from planner.app.fitting.picture import Picture, draw_picture
from planner.app.fitting.pointing import joint_at
from planner.app.fitting.turning_hand import TurningHand

if TYPE_CHECKING:
    from planner.app.fitting.keys import FitKeys
    from planner.app.fitting.state import Fitting
    from planner.drawing.looks import Look
    from planner.drawing.primitives import Point

STEP = 1.25
ZOOM_LEAST, ZOOM_MOST = 0.5, 6.0
WHEEL_STEP = 1.1
_REST_MS = 300  # a wheel that has stood still for so long has been let go of


class FaceCanvas(QWidget):
    """Paint the picture of the state; tell it what the hand does."""

    zoom_changed = Signal(float)

    def __init__(self, state: "Fitting", look: "Look") -> None:
        super().__init__()
        self.state, self.look = state, look
        self.keys: FitKeys | None = None
        self.zoom = 1.0
        self._shift = QPointF()
        self._made: Picture | None = None
        self._pressed: QPointF | None = None
        self._panned: QPointF | None = None
        self.hand: TurningHand | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST_MS)
        self._rest.timeout.connect(state.settle)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMinimumSize(120, 120)
        self.setAccessibleName("Dry fit: the end, large")
        for signal in (state.changed, state.turned, state.joint_changed):
            signal.connect(self.renew)

    # -- drawn ----------------------------------------------------------------------------------

    @property
    def picture(self) -> Picture:
        """What is drawn, and where its joints lie."""
        if self._made is None:
            self._made = draw_picture(
                self.state, (self.width(), self.height()), self.look, self.zoom,
                (self._shift.x(), self._shift.y()),
            )  # fmt: skip
        return self._made

    def renew(self) -> None:
        """Draw anew with the next paint."""
        self._made = None
        self.update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.renew()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the end."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(self.look.paper))
        paint(painter, self.picture.items)
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the new size."""
        self.renew()

    # -- zoom -----------------------------------------------------------------------------------

    def fit(self) -> None:
        """Show the whole face."""
        self._shift = QPointF()
        self.zoom_to(1.0)

    def zoom_in(self) -> None:
        """Draw one step larger."""
        self.zoom_to(self.zoom * STEP)

    def zoom_out(self) -> None:
        """Draw one step smaller."""
        self.zoom_to(self.zoom / STEP)

    def zoom_to(self, zoom: float, at: QPointF | None = None) -> None:
        """Zoom; what lies under `at` stays there (the middle, without)."""
        zoom = min(max(zoom, ZOOM_LEAST), ZOOM_MOST)
        centre = QPointF(*self.picture.centre)
        under = (at if at is not None else centre) - centre
        self._shift += under - under * (zoom / self.zoom)
        self.zoom = zoom
        self.renew()
        self.zoom_changed.emit(zoom)

    # -- the hand -------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the plug, or of the paper with the middle button."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._pressed = event.position()
        elif event.button() == Qt.MouseButton.MiddleButton:
            self._panned = event.position()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Turn, move the paper, or point at a joint."""
        at = event.position()
        if self._panned is not None:
            self._shift += at - self._panned
            self._panned = at
            self.renew()
        elif self._pressed is None:
            self._point(at)
        elif self.hand is not None:
            coarse = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.hand.move(_point(at), coarse=coarse)
        elif self._is_drag(at) and self.state.fit is not None:
            self._rest.stop()
            self.state.point_at("")
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.hand = TurningHand(self.state, self.picture.centre, _point(self._pressed))
            self.hand.move(_point(at), coarse=False)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go: the turn is kept, or a joint is chosen."""
        if event.button() == Qt.MouseButton.MiddleButton:
            self._panned = None
        elif self._pressed is not None:
            hand, self.hand, self._pressed = self.hand, None, None
            if hand is not None:
                hand.release()
            else:
                self._choose(event.position())
            self._point(event.position())

    def call_off(self) -> bool:
        """Put the plug back where it was; False where it is not in hand."""
        hand, self.hand, self._pressed = self.hand, None, None
        self._rest.stop()
        if hand is not None:
            hand.cancel()
        elif self.state.is_turning:
            self.state.leave_turn()
        else:
            return False
        return True

    def _is_drag(self, at: QPointF) -> bool:
        pressed = self._pressed or at
        return (at - pressed).manhattanLength() >= QApplication.startDragDistance()

    def _under(self, at: QPointF) -> str:
        drawn = self.picture
        return joint_at(drawn.joints, drawn.radii, _point(at))

    def _point(self, at: QPointF) -> None:
        contact = self._under(at)
        self.state.point_at(contact)
        shapes = Qt.CursorShape
        free = shapes.OpenHandCursor if self.state.fit is not None else shapes.ArrowCursor
        self.setCursor(shapes.PointingHandCursor if contact else free)

    def _choose(self, at: QPointF) -> None:
        contact = self._under(at)
        if contact:
            self.state.choose(contact)

    def leaveEvent(self, event: QEvent) -> None:
        """Point at nothing."""
        self.state.point_at("")
        super().leaveEvent(event)

    # -- wheel and keys -------------------------------------------------------------------------

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Turn by a degree, 15 with Shift; zoom with Ctrl."""
        clicks = (event.angleDelta().y() or event.angleDelta().x()) / 120.0
        modifiers = event.modifiers()
        if modifiers & Qt.KeyboardModifier.ControlModifier:
            self.zoom_to(self.zoom * WHEEL_STEP**clicks, event.position())
        elif self.hand is None:
            step = 15.0 if modifiers & Qt.KeyboardModifier.ShiftModifier else 1.0
            self.state.turn_to(self.state.turn_deg + step * clicks)
            self._rest.start()
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Hand a key to the keys of the view."""
        if self.keys is None or not self.keys.press(event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Hand on that a key was let go of."""
        if self.keys is None or not self.keys.release(event):
            super().keyReleaseEvent(event)


def _point(at: QPointF) -> "Point":
    return (at.x(), at.y())
