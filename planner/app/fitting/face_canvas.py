"""The end, large: the plug is turned by hand, joints are pointed at and chosen."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, Qt, QTimer, Signal
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
from planner.app.fitting.backdrop import Backdrop, TurnedPlug
from planner.app.fitting.picture import (
    Canvas,
    Stand,
    full_picture,
    iron_picture,
    live_picture,
    stand_of,
)
from planner.app.fitting.pointing import joint_at
from planner.app.fitting.turning_hand import TurningHand

if TYPE_CHECKING:
    from planner.app.fitting.keys import FitKeys
    from planner.app.fitting.state import Fitting
    from planner.drawing.looks import Look
    from planner.drawing.primitives import DrawList, Point

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
        self._stand: Stand | None = None
        self._fresh = False
        self.backdrop = Backdrop(self)
        self.backdrop.made.connect(self.update)
        self._plug: TurnedPlug | None = None
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
        state.changed.connect(self.renew)
        state.turned.connect(self._on_turned)
        state.joint_changed.connect(self.update)

    # -- drawn ----------------------------------------------------------------------------------

    @property
    def stand(self) -> Stand:
        """Where the end stands, and its joints."""
        if self._stand is None:
            self._stand = stand_of(self.state, self._canvas())
        return self._stand

    def _canvas(self) -> Canvas:
        shift = (self._shift.x(), self._shift.y())
        return Canvas((self.width(), self.height()), self.look, self.zoom, shift)

    def renew(self) -> None:
        """Draw all of it anew with the next paint."""
        self._stand, self._fresh = None, False
        self.update()

    def _on_turned(self) -> None:
        """Draw the turn: all of a small end, a large one plainly."""
        if self.state.is_large:
            self._stand = None
            self.update()
        else:
            self.renew()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.renew()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the end, and the iron at the joint that is looked at."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(self.look.paper))
            live = self.state.is_large and self.state.is_turning
            if not live and not self._fresh:
                self._make_backdrop()
            image = self.backdrop.image
            if live or image is None:
                self._paint_live(painter)
            else:
                painter.drawImage(0, 0, image)
                taken = self.backdrop.words
                paint(painter, iron_picture(self.state, self._canvas(), self.stand, taken))

    def _make_backdrop(self) -> None:
        """Draw the whole end; beside that of a large one, the plug that is turned by hand."""
        self._fresh = True
        draw = full_picture(self.state, self._canvas(), self.stand)
        size, ratio = (self.width(), self.height()), self.devicePixelRatioF()
        aside, plug, scale = self.state.is_large, self._plug_now(), self.stand.scale

        def draw_both() -> "DrawList":
            if plug is not None and aside:
                plug.prepare(scale)
            return draw()

        self.backdrop.make(draw_both, size, ratio, aside=aside)

    def _plug_now(self) -> TurnedPlug | None:
        connector, fit = self.state.connector, self.state.fit
        if connector is None or fit is None:
            return None
        landed = frozenset(lead.landing.contact for lead in fit.leads)
        if self._plug is None or not self._plug.is_of(connector, landed, self.look):
            self._plug = TurnedPlug(connector, landed, self.look, self.devicePixelRatioF())
        return self._plug

    def _paint_live(self, painter: QPainter) -> None:
        plug, fit = self._plug_now(), self.state.fit
        if plug is not None and fit is not None:
            plug.paint(painter, self.stand, fit.turn_deg)
            paint(painter, live_picture(self.state, self._canvas(), self.stand))

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
        centre = QPointF(*self.stand.centre)
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
            self.hand = TurningHand(self.state, self.stand.centre, _point(self._pressed))
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

    def taken(self) -> list[QRect]:
        """Return where joints and words stand: a notice is not to lie over them."""
        spots = [QRectF(x - 12, y - 12, 24, 24) for x, y in self.stand.joints.values()]
        spots += [QRectF(QPointF(*box[:2]), QPointF(*box[2:])) for box in self.backdrop.words]
        return [spot.toAlignedRect() for spot in spots]

    def let_go(self) -> None:
        """Stop what is under way."""
        self.backdrop.let_go()

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
        return joint_at(self.stand.joints, self.stand.radii, _point(at))

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
