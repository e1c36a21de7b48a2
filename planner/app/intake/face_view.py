"""A face to look at and to point at: what each contact carries, differences marked."""

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from planner.app.canvas.paint import paint
from planner.drawing.carried_face import CarriedFace, carried_face, stand_of
from planner.drawing.primitives import Text

if TYPE_CHECKING:
    from planner.drawing.looks import Look


class FaceView(QWidget):
    """Draw a face; tell which contact is pressed. Arrow keys go from contact to contact."""

    pressed = Signal(str)  # contact

    def __init__(self, look: "Look", empty: str = "Choose a connector") -> None:
        super().__init__()
        self.look, self.empty = look, empty
        self.shown: CarriedFace | None = None
        self.pointed = ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMinimumSize(220, 150)
        self.setAccessibleName("Face of the connector")

    def show_face(self, shown: CarriedFace | None) -> None:
        """Show another face, or none."""
        self.shown = shown
        self.update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the face, or say what to do."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), QColor(self.look.paper))
            size = (float(self.width()), float(self.height()))
            if self.shown is None:
                words = Text(
                    (size[0] / 2, size[1] / 2), self.empty, 15, self.look.ink2, anchor="middle"
                )
                paint(painter, (words,))
            else:
                paint(painter, carried_face(self._with_pointer(self.shown), size, self.look))
                mating = self.shown.side == "mating"
                tag = "Mating side, mirrored" if mating else "Solder side"
                ink = self.look.caution if mating else self.look.ink2
                paint(painter, (Text((12, 22), tag, 13, ink, bold=True),))

    def _with_pointer(self, shown: CarriedFace) -> CarriedFace:
        return replace(shown, pointed=self.pointed)

    def _at(self, event: QMouseEvent) -> str:
        if self.shown is None:
            return ""
        place = (event.position().x(), event.position().y())
        return stand_of(self.shown, (float(self.width()), float(self.height()))).at(place)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Ring the contact that is pointed at."""
        self._point(self._at(event))

    def leaveEvent(self, event: QEvent) -> None:
        """Point at nothing."""
        self._point("")

    def _point(self, contact: str) -> None:
        if contact != self.pointed:
            self.pointed = contact
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Tell which contact is pressed."""
        contact = self._at(event)
        if contact and event.button() == Qt.MouseButton.LeftButton:
            self.pressed.emit(contact)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to the next or the one before."""
        steps = {
            Qt.Key.Key_Right: 1,
            Qt.Key.Key_Down: 1,
            Qt.Key.Key_Left: -1,
            Qt.Key.Key_Up: -1,
        }
        step = steps.get(Qt.Key(event.key()))
        if step is None or self.shown is None:
            super().keyPressEvent(event)
            return
        names = [it.id for it in self.shown.connector.contacts]
        here = names.index(self.shown.chosen) if self.shown.chosen in names else -1
        self.pressed.emit(names[(here + step) % len(names) if here >= 0 else 0])
