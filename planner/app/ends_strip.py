"""The ends as a row of steps, with the whole lead drawn small beside them."""

import math
from collections.abc import Mapping
from typing import Literal

from PySide6.QtCore import QEvent, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QFrame,
    QHBoxLayout,
    QScrollArea,
    QSizePolicy,
    QToolTip,
    QWidget,
)

from planner.app.canvas.paint import paint
from planner.drawing.bench.tiny import TinyLead, tiny_lead
from planner.drawing.bench.tree import Tree
from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Rect, Style, Text

Weight = Literal["stop", "caution"]
HEIGHT = 48
_STEP_HIGH, _STEP_LEAST = 36, 36
_LEAD_LEAST, _LEAD_MOST = 88, 300


class EndStep(QAbstractButton):
    """One end as a badge; the one that is shown is filled, a finding puts its mark on it."""

    stepped = Signal(int)

    def __init__(self, end: str, words: str, look: Look) -> None:
        super().__init__()
        self.end, self.look = end, look
        self._words, self.weight = words, ""
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        wide = math.ceil(text_width(end, 15, bold=True)) + 18
        self.setFixedSize(max(_STEP_LEAST, wide), _STEP_HIGH)
        self.show_weight("")

    def show_weight(self, weight: str) -> None:
        """Show the heaviest finding at the end: stop, caution or empty."""
        self.weight = weight
        said = f"End {self.end}: {self._words}" if self._words else f"End {self.end}"
        said += f", {weight}" if weight else ""
        self.setToolTip(said)
        self.setAccessibleName(said)
        self.update()

    def drawn(self) -> DrawList:
        """Return what the badge draws."""
        look, on = self.look, self.isChecked()
        fill = look.accent if on else look.accent_wash if self.underMouse() else look.panel
        ink = look.on_accent if on else look.ink
        high = 26.0
        top = (self.height() - high) / 2
        box = Rect(
            (4, top), self.width() - 8, high,
            Style(fill=fill, stroke=look.accent if on else look.edge, width=1.4), radius=3,
        )  # fmt: skip
        at = (self.width() / 2, top + high / 2 + 5.45)
        items: DrawList = (box, Text(at, self.end, 15, ink, bold=True, anchor="middle"))
        if self.weight in {"stop", "caution"}:
            corner = (self.width() - 7.0, 8.0)
            items += mark("stop" if self.weight == "stop" else "caution", corner, 7, look)
        return items

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the badge."""
        with QPainter(self) as painter:
            paint(painter, self.drawn())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Step with Left and Right."""
        by = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        if by is not None:
            self.stepped.emit(by)
        else:
            super().keyPressEvent(event)


class SmallLead(QWidget):
    """The whole lead, small; a click chooses the end that is nearest."""

    chosen = Signal(str)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look, self.tree = look, Tree()
        self.current = ""
        self.weights: Mapping[str, Weight] = {}
        self.words: Mapping[str, str] = {}
        self._kept: TinyLead | None = None
        self.setMouseTracking(True)
        self.setFixedHeight(HEIGHT)
        self.setMinimumWidth(_LEAD_LEAST)
        self.setMaximumWidth(_LEAD_MOST)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName("The whole lead, small")

    def sizeHint(self) -> QSize:
        """Ask for as much as is of use."""
        return QSize(_LEAD_MOST, HEIGHT)

    def renew(self) -> None:
        """Draw anew."""
        self._kept = None
        self.update()

    @property
    def drawn(self) -> TinyLead:
        """What is drawn, and where each end lies."""
        if self._kept is None:
            self._kept = tiny_lead(
                self.tree, self.width(), self.height(), self.look,
                current=self.current, weights=self.weights,
            )  # fmt: skip
        return self._kept

    def end_at(self, at: QPointF) -> str:
        """Return the end nearest to a point, or empty far from all."""
        ends = self.drawn.ends
        reach = max(self.drawn.radius + 8.0, 24.0)
        best = min(ends, key=lambda end: math.dist(ends[end], (at.x(), at.y())), default="")
        return best if best and math.dist(ends[best], (at.x(), at.y())) <= reach else ""

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw for the new size."""
        self.renew()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the lead."""
        with QPainter(self) as painter:
            paint(painter, self.drawn.items)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show by the pointer what can be clicked."""
        over = self.end_at(event.position())
        shape = Qt.CursorShape.PointingHandCursor if over else Qt.CursorShape.ArrowCursor
        self.setCursor(shape)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the end that is clicked."""
        over = self.end_at(event.position())
        if over and event.button() == Qt.MouseButton.LeftButton:
            self.chosen.emit(over)

    def event(self, event: QEvent) -> bool:
        """Tell which end lies under the pointer."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            over = self.end_at(QPointF(event.pos()))
            words = f"End {over}: {self.words.get(over, '')}".rstrip(": ") if over else ""
            QToolTip.showText(event.globalPos(), words, self)
            return True
        return super().event(event)


class StepRow(QScrollArea):
    """A row that scrolls sideways without a bar, where there are more steps than room."""

    def __init__(self) -> None:
        super().__init__()
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setFixedHeight(HEIGHT)
        self.setObjectName("steps")
        self.setStyleSheet("#steps, #steps > QWidget > QWidget { background: transparent; }")
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Ask for room for every step."""
        inner = self.widget()
        return QSize(inner.sizeHint().width() if inner is not None else 0, HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """Do with room for three steps."""
        return QSize(3 * (_STEP_LEAST + 4), HEIGHT)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scroll sideways with any wheel."""
        bar, turned = self.horizontalScrollBar(), event.angleDelta()
        bar.setValue(bar.value() - (turned.y() or turned.x()) // 2)
        event.accept()


class EndsStrip(QWidget):
    """Tell `chosen` when an end is picked; it shows the ends it is told, and knows no plan."""

    chosen = Signal(str)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self.steps: dict[str, EndStep] = {}
        self.current = ""
        self.row, self.lead = StepRow(), SmallLead(look)
        self.setAccessibleName("Ends")
        line = QHBoxLayout(self)
        line.setContentsMargins(8, 0, 8, 0)
        line.setSpacing(6)
        line.addWidget(self.row, 3)
        line.addWidget(self.lead, 1)
        line.addStretch(0)
        self.lead.chosen.connect(self.chosen)

    def show_ends(self, tree: Tree, words: Mapping[str, str]) -> None:
        """Show the steps of these ends, left to right, each with what it is called."""
        order = (*tree.left, *tree.right)
        if self.lead.tree != tree or self.lead.words != dict(words):
            self.lead.tree, self.lead.words = tree, dict(words)
            self._build(order, words)
        self.lead.renew()

    def _build(self, order: tuple[str, ...], words: Mapping[str, str]) -> None:
        inner = QWidget()
        line = QHBoxLayout(inner)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2)
        self.steps = {end: EndStep(end, words.get(end, ""), self._look) for end in order}
        for end, step in self.steps.items():
            step.clicked.connect(lambda _checked=False, name=end: self.chosen.emit(name))
            step.stepped.connect(self._on_stepped)
            line.addWidget(step)
        inner.setFixedSize(line.sizeHint().width(), HEIGHT)
        self.row.setWidget(inner)
        self.row.setMaximumWidth(inner.width())
        self.row.updateGeometry()

    def show_current(self, end: str) -> None:
        """Mark the end that is shown, and scroll its step into sight."""
        self.current = self.lead.current = end
        for name, step in self.steps.items():
            step.setChecked(name == end)
            # A click leaves the keys with the drawing, as its hints say.
            policy = Qt.FocusPolicy.TabFocus if name == end else Qt.FocusPolicy.NoFocus
            step.setFocusPolicy(policy)
            step.update()
        if end in self.steps:
            self.row.ensureWidgetVisible(self.steps[end], 24, 0)
        self.lead.renew()

    def show_weights(self, weights: Mapping[str, Weight]) -> None:
        """Mark the ends that have a finding."""
        for end, step in self.steps.items():
            step.show_weight(weights.get(end, ""))
        self.lead.weights = dict(weights)
        self.lead.renew()

    def next_to(self, end: str, by: int) -> str:
        """Return the end so many steps on, round and round."""
        order = list(self.steps)
        if not order:
            return ""
        return order[(order.index(end) + by) % len(order)] if end in order else order[0]

    def _on_stepped(self, by: int) -> None:
        wanted = self.next_to(self.current, by)
        if wanted:
            self.chosen.emit(wanted)
            self.steps[wanted].setFocus(Qt.FocusReason.TabFocusReason)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the step that is shown in sight."""
        super().resizeEvent(event)
        if self.current in self.steps:
            self.row.ensureWidgetVisible(self.steps[self.current], 24, 0)

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._look = self.lead.look = look
        for step in self.steps.values():
            step.look = look
            step.update()
        self.lead.renew()
