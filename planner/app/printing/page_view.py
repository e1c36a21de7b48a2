"""One page of the sheet on the screen, whole or enlarged, as it will lie on the paper."""

from PySide6.QtCore import QRect, QSize, Qt, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QScrollArea, QWidget

from planner.app.canvas.paint import colour, paint
from planner.drawing.looks import Look
from planner.sheet.page import UNIT_MM, Page

_MM_PER_INCH, _EDGE, _STEP, _MOST = 25.4, 16, 1.25, 6.0
_WHITE = "#ffffff"


class _Leaf(QWidget):
    """The page itself, painted once for each zoom."""

    def __init__(self) -> None:
        super().__init__()
        self.page: Page | None = None
        self.edge = "#000000"
        self._kept: tuple[Page, QSize, float, QPixmap] | None = None

    def show_page(self, page: Page, size: QSize) -> None:
        """Show a page at a size in px."""
        self.page = page
        self.setFixedSize(size)
        self.update()

    def _picture(self, page: Page) -> QPixmap:
        ratio = self.devicePixelRatioF()
        kept = self._kept
        if kept is not None and kept[0] is page and kept[1:3] == (self.size(), ratio):
            return kept[3]
        made = QPixmap(self.size() * ratio)
        made.setDevicePixelRatio(ratio)
        made.fill(colour(_WHITE))
        with QPainter(made) as painter:
            painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
            painter.scale(self.width() / page.width, self.height() / page.height)
            paint(painter, page.items)
        self._kept = (page, self.size(), ratio, made)
        return made

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the page and the edge of its paper."""
        if self.page is None:
            return
        with QPainter(self) as painter:
            painter.drawPixmap(0, 0, self._picture(self.page))
            painter.setPen(QPen(colour(self.edge), 1))
            painter.drawRect(QRect(0, 0, self.width() - 1, self.height() - 1))


class PageView(QScrollArea):
    """Step through pages and zoom; at first a page is shown as wide as there is room."""

    shown = Signal()  # another page, or another zoom

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._pages: tuple[Page, ...] = ()
        self.number = 1
        self.zoom = 1.0
        self._fits = "whole"
        self._leaf = _Leaf()
        self._leaf.edge = look.edge
        self.setWidget(self._leaf)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.viewport().setAutoFillBackground(True)
        ground = self.viewport().palette()
        ground.setColor(self.viewport().backgroundRole(), colour(look.bench))
        self.viewport().setPalette(ground)

    @property
    def count(self) -> int:
        """How many pages there are."""
        return len(self._pages)

    def show_pages(self, pages: tuple[Page, ...]) -> None:
        """Show other pages, at the page that is on if it is still there."""
        self._pages = pages
        self.number = min(self.number, max(len(pages), 1))
        self._renew()

    def step(self, by: int) -> None:
        """Show a page so many further on, or the first or the last."""
        wanted = min(max(self.number + by, 1), max(self.count, 1))
        if wanted != self.number:
            self.number = wanted
            self.verticalScrollBar().setValue(0)
            self._renew()

    def fit_whole(self) -> None:
        """Show the whole page."""
        self._fit("whole")

    def fit_width(self) -> None:
        """Show the page as wide as there is room."""
        self._fit("wide")

    def true_size(self) -> None:
        """Show the page at its true size, on a screen that tells its true density."""
        self._fits, self.zoom = "", 1.0
        self._renew()

    def zoom_by(self, steps: int) -> None:
        """Draw so many steps larger or smaller."""
        self._fits = ""
        self.zoom = min(max(self.zoom * _STEP**steps, 0.1), _MOST)
        self._renew()

    def _fit(self, how: str) -> None:
        self._fits = how
        self._renew()

    def _true_px(self, page: Page) -> tuple[float, float]:
        """Return the width and height of a page at true size, px."""
        per_mm = self.logicalDpiX() / _MM_PER_INCH
        return page.width * UNIT_MM * per_mm, page.height * UNIT_MM * per_mm

    def _renew(self) -> None:
        if not self._pages:
            return
        page = self._pages[self.number - 1]
        wide, high = self._true_px(page)
        room = self.maximumViewportSize()
        across = max(room.width() - 2 * _EDGE, 80) / wide
        if self._fits == "whole":
            self.zoom = min(across, max(room.height() - 2 * _EDGE, 80) / high)
        elif self._fits == "wide":
            bar = self.verticalScrollBar().sizeHint().width()
            self.zoom = max(room.width() - 2 * _EDGE - bar, 80) / wide
        size = QSize(round(wide * self.zoom), round(high * self.zoom))
        self._leaf.show_page(page, size)
        self.setAccessibleName(f"Page {self.number} of {self.count}")
        self.shown.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit anew."""
        super().resizeEvent(event)
        if self._fits:
            self._renew()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom with Ctrl, else scroll."""
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom_by(1 if event.angleDelta().y() > 0 else -1)
            event.accept()
        else:
            super().wheelEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with Home and End, and with Page Up and Down where there is no more to scroll."""
        key, bar = event.key(), self.verticalScrollBar()
        if key == Qt.Key.Key_Home:
            self.step(-self.count)
        elif key == Qt.Key.Key_End:
            self.step(self.count)
        elif key == Qt.Key.Key_PageDown and bar.value() == bar.maximum():
            self.step(1)
        elif key == Qt.Key.Key_PageUp and bar.value() == bar.minimum():
            self.step(-1)
        else:
            super().keyPressEvent(event)
