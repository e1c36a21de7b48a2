"""The dial: crossings and gap over the full turn, and a hand to turn the plug by."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.paint import paint
from planner.app.fitting.backdrop import painted
from planner.app.fitting.turning_hand import TurningHand
from planner.app.fitting.words import degrees
from planner.drawing.fitting.dial import dial_picture
from planner.dryfit.dial import Dial

if TYPE_CHECKING:
    from planner.app.fitting.state import Fitting
    from planner.drawing.looks import Look
    from planner.drawing.primitives import DrawList, Point

# The rim lies at this share of the radius; beyond it the figures take so many px.
_RIM, _FIGURES, _HAND = 0.84, 17.0, "dial/hand"
# A dial without a mark: its hand is all that is taken of it.
_BLANK = Dial((), (), 0.0, 0, 0.0)


class DialFace(QWidget):
    """Paint the dial of the state; drag anywhere on it to turn the plug."""

    def __init__(self, state: "Fitting", look: "Look", side: int = 156) -> None:
        super().__init__()
        self.state, self.look = state, look
        self._side = side
        self._ground: QImage | None = None
        self.hand: TurningHand | None = None
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        state.changed.connect(self._on_turned)
        state.turned.connect(self._on_turned)
        state.dial_changed.connect(self.renew)
        self.renew()

    def sizeHint(self) -> QSize:
        """Ask for a square."""
        return QSize(self._side, self._side)

    def set_side(self, side: int) -> None:
        """Be as large as there is room for."""
        if side != self._side:
            self._side = side
            self.updateGeometry()
            self.renew()

    @property
    def centre(self) -> "Point":
        """The middle of the dial."""
        return (self.width() / 2, self.height() / 2)

    def _drawn(self, dial: Dial) -> "DrawList":
        return dial_picture(
            dial, centre=self.centre, radius=(self._side / 2 - _FIGURES) / _RIM, look=self.look,
            turn_deg=self.state.turn_deg,
        )  # fmt: skip

    def renew(self) -> None:
        """Draw anew with the next paint."""
        self._ground = None
        self._on_turned()

    def _on_turned(self) -> None:
        """Say the turn, and move the hand."""
        dial, turn = self.state.dial, degrees(self.state.turn_deg)
        best = f", best at {degrees(dial.best_deg)} degrees" if dial is not None else ""
        self.setAccessibleName(f"Dial: turned by {turn} degrees{best}")
        self.update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.renew()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the dial."""
        dial = self.state.dial
        if dial is None:
            return
        if self._ground is None:
            still = tuple(item for item in self._drawn(dial) if item.owner != _HAND)
            self._ground = painted(still, (self.width(), self.height()), self.devicePixelRatioF())
        hand = tuple(item for item in self._drawn(_BLANK) if item.owner == _HAND)
        with QPainter(self) as painter:
            painter.drawImage(0, 0, self._ground)
            paint(painter, hand)

    def resizeEvent(self, event: object) -> None:
        """Draw for the new size."""
        self.renew()

    # -- the hand -------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of the dial."""
        if event.button() == Qt.MouseButton.LeftButton and self.state.fit is not None:
            at = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.hand = TurningHand(self.state, self.centre, (at.x(), at.y()))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Turn with the pointer; Shift keeps to steps of 15 degrees."""
        if self.hand is not None:
            coarse = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self.hand.move((event.position().x(), event.position().y()), coarse=coarse)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Keep the turn."""
        hand, self.hand = self.hand, None
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        if hand is not None:
            hand.release()

    def call_off(self) -> bool:
        """Put the plug back; False where the dial is not in hand."""
        hand, self.hand = self.hand, None
        if hand is not None:
            hand.cancel()
        return hand is not None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Call a drag off."""
        if event.key() != Qt.Key.Key_Escape or not self.call_off():
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the column's scrolling."""
        event.ignore()
