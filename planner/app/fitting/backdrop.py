"""Pictures that are made once and shown many times: the whole end, a plug that is turned."""

import math
from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPointF, Qt, Signal
from PySide6.QtGui import QImage, QPainter

from planner.app.canvas.paint import paint
from planner.app.fitting.errands import Errands
from planner.app.fitting.picture import Box, words_boxes
from planner.drawing.face import face, shell_reach_mm

if TYPE_CHECKING:
    from planner.app.fitting.picture import Stand
    from planner.drawing.looks import Look
    from planner.drawing.primitives import DrawList
    from planner.model.connector import Connector

_FORMAT = QImage.Format.Format_ARGB32_Premultiplied
_PLUG_MOST_PX = 2400


def painted(items: "DrawList", size: tuple[int, int], ratio: float) -> QImage:
    """Paint a draw list on a clear picture of `size` px at a device's ratio."""
    made = QImage(round(size[0] * ratio), round(size[1] * ratio), _FORMAT)
    made.setDevicePixelRatio(ratio)
    made.fill(Qt.GlobalColor.transparent)
    with QPainter(made) as painter:
        paint(painter, items)
    return made


def _made(items: "DrawList", size: tuple[int, int], ratio: float) -> tuple[QImage, tuple[Box, ...]]:
    return painted(items, size, ratio), words_boxes(items)


class Backdrop(QObject):
    """The whole end as one picture: made at once, or off the UI thread where it takes too long."""

    made = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.image: QImage | None = None
        self.words: tuple[Box, ...] = ()
        self._errands = Errands(self)
        self._errands.done.connect(self._on_done)

    def make(
        self, draw: Callable[[], "DrawList"], size: tuple[int, int], ratio: float, *, aside: bool
    ) -> None:
        """Make the picture anew; `aside` leaves it missing until it has been made in a thread."""
        self._errands.call_off()
        if aside:
            self.image = None
            self._errands.start(lambda _progress, _off: _made(draw(), size, ratio))
        else:
            self.image, self.words = _made(draw(), size, ratio)

    def let_go(self) -> None:
        """Stop, and wait for the thread."""
        self._errands.let_go()

    def _on_done(self, made: tuple[QImage, tuple[Box, ...]]) -> None:
        self.image, self.words = made
        self.made.emit()


class TurnedPlug:
    """A plug's shell and terminals as a picture that is turned under the leads.

    `ratio` is the device's; `prepare` may run in a thread, before the plug is taken in hand.
    """

    def __init__(
        self, connector: "Connector", landed: frozenset[str], look: "Look", ratio: float
    ) -> None:
        self._connector, self._landed, self._look = connector, landed, look
        self._ratio = ratio
        self._made: tuple[float, QImage] | None = None

    def is_of(self, connector: "Connector", landed: frozenset[str], look: "Look") -> bool:
        """Tell whether this is the picture of such a plug."""
        same = connector is self._connector and look is self._look
        return same and landed == self._landed

    def prepare(self, scale: float) -> QImage | None:
        """Return the picture at a scale, made if it is not there; None if it would be huge."""
        side = math.ceil(2 * math.hypot(*shell_reach_mm(self._connector)) * scale) + 24
        if side > _PLUG_MOST_PX:
            return None
        made = self._made
        if made is None or made[0] != scale:
            items = self._drawn((side / 2, side / 2), scale, 0.0)
            made = self._made = (scale, painted(items, (side, side), self._ratio))
        return made[1]

    def paint(self, painter: QPainter, stand: "Stand", turn_deg: float) -> None:
        """Paint it at a turn; one that would be huge is drawn anew."""
        image = self.prepare(stand.scale)
        if image is None:
            paint(painter, self._drawn(stand.centre, stand.scale, turn_deg))
            return
        half = image.width() / self._ratio / 2
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.translate(QPointF(*stand.centre))
        painter.rotate(-turn_deg)
        painter.drawImage(QPointF(-half, -half), image)
        painter.restore()

    def _drawn(self, centre: tuple[float, float], scale: float, turn_deg: float) -> "DrawList":
        return face(
            self._connector, centre=centre, scale=scale, look=self._look, turn_deg=turn_deg,
            landed=self._landed,
        )  # fmt: skip
