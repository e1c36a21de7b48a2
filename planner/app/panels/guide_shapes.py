"""The three shapes of a lead to choose from, each with its picture."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QPushButton

from planner.app.canvas.paint import paint
from planner.app.fonts import BODY, HEAD
from planner.app.panels.guide_draft import Shape
from planner.drawing.looks import Look
from planner.drawing.primitives import Circle, DrawList, Path, Poly, Rect, Style, Text

HEIGHT = 84
WORDS: dict[Shape, tuple[str, str]] = {
    "one": ("One to one", "a line, a patch"),
    "two": ("One to two", "through a split"),
    "many": ("One to many", "a loom, a breakout"),
}


class ShapeButton(QPushButton):
    """One shape: picture left, name and example right; the chosen one is framed and washed."""

    def __init__(self, shape: Shape, look: Look) -> None:
        super().__init__()
        self.shape = shape
        self.look = look
        title, example = WORDS[shape]
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setAccessibleName(f"{title}, {example}")
        self.setProperty("role", "shape")
        self.setMaximumHeight(HEIGHT)
        self.setMinimumWidth(190)

    def sizeHint(self) -> QSize:
        """Return the size it likes best."""
        return QSize(285, HEIGHT)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the card."""
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            chosen = self.isChecked()
            painter.setBrush(QColor(self.look.accent_wash if chosen else self.look.field))
            edge, width = (self.look.accent, 2.0) if chosen else (self.look.edge, 1.0)
            painter.setPen(QPen(QColor(edge), width))
            box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
            painter.drawRoundedRect(box, 6, 6)
            if self.hasFocus():
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.setPen(QPen(QColor(self.look.ink), 2))
                painter.drawRect(box.adjusted(4, 4, -4, -4))
            middle = self.height() / 2
            # In a small window the picture moves to the edge, so that the words are never cut.
            shift = 0.0 if self.width() >= 250 else -9.0
            painter.translate(shift, 0.0)
            title, example = WORDS[self.shape]
            words_at = 118.0 if not shift else 106.0
            paint(
                painter,
                (
                    *_picture(self.shape, middle, self.look),
                    Text((words_at, middle - 3), title, HEAD, self.look.ink, bold=True),
                    Text((words_at, middle + 16), example, BODY, self.look.ink2),
                ),
            )


def _picture(shape: Shape, y: float, look: Look) -> DrawList:
    thick = Style(stroke=look.ink, width=3)
    if shape == "one":
        run = Poly(((28.0, y), (86.0, y)), thick)
        return (run, *_plug((28.0, y), 10, look), *_plug((86.0, y), 10, look))
    thin = Style(stroke=look.ink, width=1.5)
    if shape == "two":
        box = Rect((50.0, y - 6), 12, 12, Style(fill=look.ink), radius=2)
        legs = tuple(_leg(60, y, 84, y + dy, thin) for dy in (-17, 17))
        plugs = tuple(item for dy in (-17, 17) for item in _plug((87.0, y + dy), 8, look))
        run = Poly(((28.0, y), (56.0, y)), thick)
        return (run, *legs, box, *_plug((28.0, y), 10, look), *plugs)
    pen = Style(fill=look.paper, stroke=look.ink, width=1.5)
    shell = Poly(((18.0, y - 22), (32.0, y - 18), (32.0, y + 18), (18.0, y + 22)), pen, closed=True)
    box = Rect((50.0, y - 6), 12, 12, Style(fill=look.ink), radius=2)
    rises = (-26, -13, 0, 13, 26)
    legs = tuple(_leg(60, y, 88, y + dy, thin) for dy in rises)
    dots = tuple(Circle((92.0, y + dy), 4.5, pen) for dy in rises)
    return (Poly(((32.0, y), (56.0, y)), thick), *legs, box, shell, *dots)


def _leg(x: float, y: float, to_x: float, to_y: float, pen: Style) -> Path:
    middle = (x + to_x) / 2
    bend = ("C", (middle, y, middle, to_y, to_x, to_y))
    return Path((("M", (x, y)), bend), pen)


def _plug(at: tuple[float, float], radius: float, look: Look) -> DrawList:
    pen = Style(fill=look.paper, stroke=look.ink, width=1.5)
    return (Circle(at, radius, pen), Circle(at, 4, Style(fill=look.ink)))
