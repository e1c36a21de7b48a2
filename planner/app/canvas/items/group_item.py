"""One group of the bench drawing as a scene item: it paints a draw list and knows nothing else."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from planner.app.canvas.paint import paint
from planner.drawing.bench.shapes import box_of
from planner.drawing.primitives import DrawList, Point

_MARGIN = 2.0
_CACHED_PX2 = 400_000.0


class GroupItem(QGraphicsItem):
    """Paint a draw list. Hits are found from the bench's geometry, so it takes no mouse."""

    def __init__(self, key: str, layer: float) -> None:
        super().__init__()
        self.key = key
        self.items: DrawList = ()
        self._box = QRectF()
        self.setZValue(layer)
        self.setAcceptedMouseButtons(self.acceptedMouseButtons() & ~self.acceptedMouseButtons())

    def show_items(self, items: DrawList, origin: Point = (0.0, 0.0)) -> None:
        """Draw other items, or the same elsewhere; equal ones are not repainted."""
        if items is not self.items and items != self.items:
            self.prepareGeometryChange()
            self.items = items
            left, top, right, bottom = box_of(items)
            box = QRectF(left, top, right - left, bottom - top)
            self._box = box.adjusted(-_MARGIN, -_MARGIN, _MARGIN, _MARGIN) if items else QRectF()
            self._choose_cache()
            self.update()
        if (self.x(), self.y()) != origin:
            self.setPos(*origin)

    def _choose_cache(self) -> None:
        """Keep a picture of what is small enough: the canvas never scales, so it stays sharp."""
        small = self._box.width() * self._box.height() < _CACHED_PX2
        mode = QGraphicsItem.CacheMode
        self.setCacheMode(mode.DeviceCoordinateCache if small else mode.NoCache)

    def boundingRect(self) -> QRectF:
        """Return the box round all that is drawn."""
        return self._box

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionGraphicsItem,
        widget: QWidget | None = None,
    ) -> None:
        """Paint the draw list."""
        paint(painter, self.items)
