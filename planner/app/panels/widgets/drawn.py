"""Widgets that show a draw list: marks, end plates, core patches, faces."""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from planner.app.canvas.paint import paint
from planner.drawing.looks import Look
from planner.drawing.marks import MarkKind, mark
from planner.drawing.primitives import Circle, DrawList, Rect, Style, Text, centred_baseline

Drawing = Callable[[Look], DrawList]


class Drawn(QWidget):
    """A fixed patch of drawing. It takes no clicks: those go to what it lies on."""

    def __init__(self, size: tuple[int, int], look: Look, drawing: Drawing | None = None) -> None:
        super().__init__()
        self.look = look
        self._size = QSize(*size)
        self._drawing = drawing
        self.setFixedSize(self._size)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self.look = look
        self.update()

    def show_drawing(self, drawing: Drawing | None) -> None:
        """Draw something else; None draws nothing."""
        self._drawing = drawing
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw, with smooth edges."""
        if self._drawing is None:
            return
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint(painter, self._drawing(self.look))


class MarkLabel(Drawn):
    """One mark of weight or state, spoken by its accessible name."""

    def __init__(self, kind: MarkKind, radius: int, look: Look, name: str = "") -> None:
        side = 2 * radius + 2
        super().__init__((side, side), look)
        self._radius = radius
        self.set_kind(kind, name)

    def set_kind(self, kind: MarkKind, name: str = "") -> None:
        """Show another mark."""
        middle = self._radius + 1.0
        self.setAccessibleName(name or kind)
        self.show_drawing(lambda look: mark(kind, (middle, middle), self._radius, look))


def end_plate(corner: tuple[float, float], letter: str, look: Look, side: float = 20.0) -> DrawList:
    """Draw the letter of an end on its ink square (wider when the letter is long)."""
    width = max(side, 10.0 + 8.5 * len(letter))
    box = Rect(corner, width, side, Style(fill=look.ink), radius=3.0)
    at = (corner[0] + width / 2, centred_baseline(corner[1] + side / 2, 13.0))
    return (box, Text(at, letter, 13.0, look.paper, bold=True, anchor="middle"))


def step_disc(number: int, look: Look) -> DrawList:
    """Draw the number of a step on its accent disc, 24 px across."""
    at = (12.0, centred_baseline(12.0, 13.0))
    disc = Circle((12.0, 12.0), 12.0, Style(fill=look.accent))
    return (disc, Text(at, str(number), 13.0, look.on_accent, bold=True, anchor="middle"))
