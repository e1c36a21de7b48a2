"""The queue of parts at one end as the sheet draws it: cut end, arrow, the parts in their order."""

from typing import TYPE_CHECKING

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.paint import paint
from planner.drawing.threading import strip_height, threading_strip

if TYPE_CHECKING:
    from planner.app.order_of_work.state import Work
    from planner.drawing.looks import Look

# px a mm: the smallest letters of the sheet are then 12 px.
_SCALE = 3.5
# With less height the list of parts needs the room, px.
_LEAST = 420


class QueueStrip(QWidget):
    """Show the queue of the chosen part's end; of the first end that has one while none is."""

    def __init__(self, work: "Work", look: "Look") -> None:
        super().__init__()
        self._work, self._look = work, look
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.renew()

    @property
    def end(self) -> str:
        """The end whose queue is shown; empty where there is none."""
        threading = self._work.facts.threading
        route = threading.route_of(self._work.part)
        first = threading.routes[0].comes_from if threading.routes else ""
        end = route.comes_from if route is not None else first
        return end if end in self._work.plan.end_by_id else ""

    def renew(self) -> None:
        """Draw the queue as it is now, where there is room for it."""
        threading, holder = self._work.facts.threading, self.parentWidget()
        roomy = holder is None or holder.height() >= _LEAST
        high = 0.0
        if self.end and roomy:
            high = strip_height(threading, end=self.end, width=self.width(), scale=_SCALE)
        self.setFixedHeight(round(high))
        self.setVisible(high > 0)
        self.setAccessibleName(f"Queue of parts at {self.end}" if self.end else "No parts")
        self.update()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self._look = look
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Break the queue anew."""
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.renew()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the strip."""
        if not self.end:
            return
        with QPainter(self) as painter:
            work = self._work
            strip = threading_strip(
                work.plan,
                work.facts.threading,
                end=self.end,
                origin=(0.0, 0.0),
                width=float(self.width()),
                look=self._look,
                scale=_SCALE,
            )
            paint(painter, strip)
