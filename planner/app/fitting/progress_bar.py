"""Progress of what is sought, with Cancel: in the place of the button that began it."""

from typing import TYPE_CHECKING

from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from planner.app.canvas.paint import paint
from planner.app.panels.widgets.labels import button
from planner.drawing.primitives import Rect, Style

if TYPE_CHECKING:
    from planner.app.fitting.seeker import Seeker
    from planner.drawing.looks import Look

_HIGH = 8.0


class Bar(QWidget):
    """How much is done, as a filled length; the figure is its accessible name."""

    def __init__(self, look: "Look") -> None:
        super().__init__()
        self.look, self.share = look, 0.0
        self.setFixedHeight(24)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_share(self, share: float) -> None:
        """Show another share, 0 to 1."""
        self.share = min(max(share, 0.0), 1.0)
        self.setAccessibleName(f"{round(100 * self.share)} % done")
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the frame, and the part that is done."""
        top = (self.height() - _HIGH) / 2
        frame = Style(fill=self.look.field, stroke=self.look.edge, width=1.0)
        full = max(self.width() - 2.0, 0.0)
        done = Rect((1.0, top), full * self.share, _HIGH, Style(fill=self.look.accent), radius=3.0)
        with QPainter(self) as painter:
            paint(painter, (Rect((1.0, top), full, _HIGH, frame, radius=3.0), done))


class ProgressRow(QWidget):
    """The bar and its Cancel; shown only while something takes its time."""

    def __init__(self, seeker: "Seeker", cancel: "object", look: "Look") -> None:
        super().__init__()
        self._seeker = seeker
        self.bar = Bar(look)
        self.cancel = button("Cancel", cancel, tip="Call it off (Esc)")  # type: ignore[arg-type] # a slot
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.bar, 1)
        row.addWidget(self.cancel)
        seeker.progressed.connect(self.bar.show_share)
        seeker.shown_changed.connect(self._on_shown)
        self.hide()

    def _on_shown(self) -> None:
        if not self._seeker.shown:
            self.bar.show_share(0.0)
        self.setVisible(self._seeker.shown)
        self.setAccessibleName(f"{self._seeker.what}: under way")

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.bar.look = look
        self.bar.update()
