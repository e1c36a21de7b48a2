"""The drawing table: contacts are placed, dragged and chosen over a picture to trace."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QTransform,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from planner.app.canvas.paint import paint
from planner.drawing.plot import Plot, PlotStand, contact_under, millimetres, plot, stand_for

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.drawing.looks import Look
    from planner.model.tracing import Tracing

Point = tuple[float, float]
_SNAP_MM = 0.05
_FADE = 0.55  # the picture to trace lies faint under the drawing


class PlotView(QWidget):
    """Show a plot; tell what the hand does, in millimetres as looked at.

    Drag moves what is chosen; a double click on paper adds a contact; Shift adds to the choice.
    Arrows nudge by 0.1 mm, with Shift by 1 mm; Delete takes away. With `points_wanted` set, clicks
    are points instead.
    """

    chosen = Signal(object, bool)  # contact or "", adding to the choice
    added = Signal(float, float)
    moved = Signal(float, float, int)  # by mm, number of the drag
    taken_away = Signal()
    pointed_at = Signal(float, float)  # a point that was wanted

    def __init__(self, look: "Look") -> None:
        super().__init__()
        self.look = look
        self.shown: Plot | None = None
        self.image = QImage()
        self.tracing: Tracing | None = None
        self.points_wanted = 0
        self.zoom, self._shift = 1.0, (0.0, 0.0)
        self._drag: Point | None = None
        self._pan: QPointF | None = None
        self._drags = 0
        self._pointed = ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMinimumSize(240, 200)
        self.setAccessibleName("Drawing of the connector")

    # -- shown -----------------------------------------------------------------------------------

    @property
    def stand(self) -> PlotStand:
        """Where the drawing stands on the canvas."""
        assert self.shown is not None
        size = (float(self.width()), float(self.height()))
        return stand_for(self.shown.shell, size, self.zoom, self._shift)

    def show_plot(self, shown: Plot) -> None:
        """Show another state of the drawing."""
        self.shown = shown
        self.update()

    def show_picture(self, image: QImage, tracing: "Tracing | None") -> None:
        """Lay a picture under the drawing; a null image takes it away."""
        self.image, self.tracing = image, tracing
        self.update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.update()

    def fit(self) -> None:
        """Show all of the shell."""
        self.zoom, self._shift = 1.0, (0.0, 0.0)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the paper, the picture, the drawing."""
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.fillRect(self.rect(), QColor(self.look.paper))
            if self.shown is not None:
                size, stand = (float(self.width()), float(self.height())), self.stand
                paint(painter, millimetres(stand, size, self.look))
                self._paint_picture(painter, stand)
                if self.tracing is not None:
                    painter.setOpacity(0.75)
                paint(painter, plot(self.shown, stand, size, self.look))

    def _paint_picture(self, painter: QPainter, stand: PlotStand) -> None:
        if self.image.isNull() or self.tracing is None:
            return
        tracing = self.tracing
        scale = tracing.mm_per_px * stand.scale
        move = QTransform()
        move.translate(*stand.centre)
        move.rotate(-tracing.turn_deg)
        move.scale(scale, scale)
        move.translate(-tracing.axis_px[0], -tracing.axis_px[1])
        painter.save()
        painter.setOpacity(_FADE)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.setTransform(move, combine=True)
        painter.drawImage(0, 0, self.image)
        painter.restore()

    # -- the hand --------------------------------------------------------------------------------

    def _at(self, event: QMouseEvent) -> Point:
        return (event.position().x(), event.position().y())

    def _under(self, event: QMouseEvent) -> str:
        if self.shown is None:
            return ""
        return contact_under(self.shown.connector, self.stand, self._at(event))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose what is under the pointer, or set a point that is wanted."""
        if self.shown is None:
            return
        if event.button() == Qt.MouseButton.MiddleButton:
            self._pan = event.position()
            return
        if event.button() != Qt.MouseButton.LeftButton:
            return
        if self.points_wanted:
            self.pointed_at.emit(*self.stand.to_mm(self._at(event)))
            return
        name = self._under(event)
        adding = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if name not in self.shown.chosen or not name or adding:
            self.chosen.emit(name, adding)
        self._drag = self.stand.to_mm(self._at(event)) if name else None
        self._drags += 1

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag what is chosen, or ring what is pointed at."""
        if self.shown is None:
            return
        if self._pan is not None:
            by = event.position() - self._pan
            self._pan = event.position()
            self._shift = (self._shift[0] + by.x(), self._shift[1] + by.y())
            self.update()
        elif self._drag is not None and event.buttons() & Qt.MouseButton.LeftButton:
            self._drag_to(self.stand.to_mm(self._at(event)), event)
        else:
            self._point(self._under(event))

    def _drag_to(self, place: Point, event: QMouseEvent) -> None:
        assert self._drag is not None
        free = bool(event.modifiers() & Qt.KeyboardModifier.AltModifier)
        step = _SNAP_MM if not free else 0.001
        by = tuple(
            round((to - start) / step) * step for to, start in zip(place, self._drag, strict=True)
        )
        if any(by):
            self._drag = (self._drag[0] + by[0], self._drag[1] + by[1])
            self.moved.emit(by[0], by[1], self._drags)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go."""
        self._drag = self._pan = None

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Add a contact on the paper."""
        if self.shown is not None and not self.points_wanted and not self._under(event):
            self.added.emit(*self.stand.to_mm(self._at(event)))

    def _point(self, name: str) -> None:
        if name != self._pointed:
            self._pointed = name
            self.setToolTip(name)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom about the pointer."""
        if self.shown is None:
            return
        at = (event.position().x(), event.position().y())
        under = self.stand.to_mm(at)
        self.zoom = min(max(self.zoom * 1.2 ** (event.angleDelta().y() / 120), 0.3), 12.0)
        now = self.stand.to_px(under)
        self._shift = (self._shift[0] + at[0] - now[0], self._shift[1] + at[1] - now[1])
        self.update()
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Nudge, take away, add, fit."""
        ways = {
            Qt.Key.Key_Left: (-1, 0),
            Qt.Key.Key_Right: (1, 0),
            Qt.Key.Key_Up: (0, 1),
            Qt.Key.Key_Down: (0, -1),
        }
        way = ways.get(Qt.Key(event.key()))
        acts: dict[Qt.Key, Callable[[], object]] = {
            Qt.Key.Key_Delete: self.taken_away.emit,
            Qt.Key.Key_Insert: lambda: self.added.emit(0.0, 0.0),
            Qt.Key.Key_F: self.fit,
        }
        if way is not None:
            step = 1.0 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 0.1
            self._drags += 1
            self.moved.emit(way[0] * step, way[1] * step, self._drags)
        elif Qt.Key(event.key()) in acts:
            acts[Qt.Key(event.key())]()
        else:
            super().keyPressEvent(event)
