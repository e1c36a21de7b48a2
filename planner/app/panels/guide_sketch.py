"""The lead that is not drawn yet: dashed where something is to be chosen, true where it is."""

from dataclasses import dataclass

from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import (
    QDragEnterEvent,
    QDropEvent,
    QFontMetrics,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QPushButton, QWidget

from planner.app.canvas.paint import paint
from planner.app.fonts import SMALL, font
from planner.app.panels.guide_draft import MANY, Chosen, Draft
from planner.app.panels.mime import Dragged, read_mime
from planner.app.panels.pictograms import cable_picture, connector_picture
from planner.app.panels.widgets.drawn import end_plate
from planner.drawing.looks import Look
from planner.drawing.primitives import Circle, DrawList, Path, Poly, Rect, Style, Text

CABLE = "cable"
Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Layout:
    """Where the parts of the sketch lie in its widget, px."""

    near: Spot
    near_radius: float
    far: dict[str, Spot]
    far_radius: float
    split: Spot | None


def layout_of(draft: Draft, width: float, height: float) -> Layout:
    """Lay the sketch out: A left, the far ends one below the other right, the split between."""
    low = height / 2 - 2
    small = width < 800
    near_radius = min(96.0, (height - 110) / 2, width * (0.1 if small else 0.12))
    near = ((12 if small else 32) + near_radius, low)
    far_x = width - (196 if small else 262)
    ends = draft.ends()[1:]
    if draft.shape == "two":
        far_radius = min(62.0, (height - 36) / 4 - 6)
        step = (height - 8) / 4
        spots = {ends[0]: (far_x, step), ends[1]: (far_x, height - step)}
    else:
        far_radius = near_radius if draft.shape == "one" else 20.0
        spots = {ends[0]: (far_x, low)}
    start, stop = near[0] + near_radius, far_x - far_radius
    split = None if draft.shape == "one" else (start + (stop - start) * 0.62, low)
    return Layout(near, near_radius, spots, far_radius, split)


class LeadSketch(QWidget):
    """Draw the draft, and offer a button at each thing to choose; things may be dropped on it."""

    wanted = Signal(str)  # an end of the draft, or CABLE
    dropped = Signal(str, object)  # the same, Dragged

    def __init__(self, draft: Draft, look: Look) -> None:
        super().__init__()
        self.draft = draft
        self.look = look
        self.buttons: dict[str, QPushButton] = {}
        self.setAcceptDrops(True)
        self.setMinimumHeight(250)
        self.setMinimumWidth(640)

    def sizeHint(self) -> QSize:
        """Return the size it likes best."""
        return QSize(888, 320)

    def rebuild(self) -> None:
        """Make the buttons that the draft wants, in the order of the keys, and place them."""
        names = (*self.draft.ends(), CABLE)
        for gone in set(self.buttons) - set(names):
            old = self.buttons.pop(gone)
            old.hide()
            old.deleteLater()
        for name in names:
            if name not in self.buttons:
                self.buttons[name] = self._button(name)
        self._place()
        self.update()

    def _button(self, name: str) -> QPushButton:
        made = QPushButton(self)
        made.clicked.connect(lambda: self.wanted.emit(name))
        made.show()
        return made

    def _place(self) -> None:
        layout = layout_of(self.draft, self.width(), self.height())
        for name, button in self.buttons.items():
            button.setText(self._text(name))
            said = self._text(name).lstrip("+ ")
            button.setAccessibleName(said if said.startswith("Choose") else f"{name}: {said}")
            button.setToolTip("Choose another" if self._is_chosen(name) else "Enter opens a list")
            button.adjustSize()
            button.move(self._corner(name, button, layout))

    def _is_chosen(self, name: str) -> bool:
        return self.draft.cable is not None if name == CABLE else name in self.draft.chosen

    def _text(self, name: str) -> str:
        if name == CABLE:
            cable = self.draft.cable
            return cable.title if cable else "+  Choose cable"
        chosen = self.draft.chosen.get(name)
        text = chosen.connector.title if chosen else f"+  Choose {self.draft.named(name)}"
        small = self.width() < 800
        room = 150 if not small else 100
        room += 46 if name == "A" else 0
        return QFontMetrics(font(bold=True)).elidedText(
            text, Qt.TextElideMode.ElideRight, room if chosen else 400
        )

    def _corner(self, name: str, button: QPushButton, layout: Layout) -> QPoint:
        size = button.size()
        if name == CABLE:
            x, y = self._cable_middle(layout)
            drop = 22 if self.draft.cable else -size.height() / 2
            return QPoint(round(x - size.width() / 2), round(y + drop))
        at = layout.near if name == "A" else layout.far[name]
        radius = layout.near_radius if name == "A" else layout.far_radius
        if name == MANY:
            return QPoint(round(at[0] + 44), round(at[1] - size.height() / 2))
        if not self._is_chosen(name):
            return QPoint(round(at[0] - size.width() / 2), round(at[1] - size.height() / 2))
        if name == "A":
            return QPoint(round(max(at[0] - size.width() / 2, 4)), round(at[1] + radius + 4))
        return QPoint(round(at[0] + radius + 8), round(at[1] - size.height() / 2))

    @staticmethod
    def _cable_middle(layout: Layout) -> Spot:
        stop = layout.split or next(iter(layout.far.values()))
        reach = 24 if layout.split else layout.far_radius
        left, right = layout.near[0] + layout.near_radius, stop[0] - reach
        return ((left + right) / 2, layout.near[1])

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the buttons anew."""
        self._place()

    # -- drawn ------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw cable, split and ends."""
        layout = layout_of(self.draft, self.width(), self.height())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint(painter, self._cables(layout))
            self._end(painter, "A", layout.near, layout.near_radius)
            for name, at in layout.far.items():
                if name == MANY:
                    paint(painter, self._many(layout, at))
                else:
                    self._end(painter, name, at, layout.far_radius)
            self._words(painter, layout)

    def _pen(self, *, chosen: bool, width: float = 1.5) -> Style:
        dash = () if chosen else (7.0, 5.0)
        return Style(stroke=self.look.ink if chosen else self.look.edge, width=width, dash=dash)

    def _cables(self, layout: Layout) -> DrawList:
        pen = self._pen(chosen=self.draft.cable is not None)
        left, y = layout.near[0] + layout.near_radius, layout.near[1]
        stop = layout.split or next(iter(layout.far.values()))
        right = stop[0] - (26 if layout.split else layout.far_radius)
        lines: list[Poly | Path | Rect | Text] = [
            Poly(((left, y + dy), (right, y + dy)), pen) for dy in (-17.0, 17.0)
        ]
        if layout.split:
            for name, at in layout.far.items():
                edge, spread = at[0] - layout.far_radius, () if name == MANY else (-8.0, 8.0)
                lines += [self._leg(layout.split, edge, at[1], dy, pen) for dy in spread]
            lines += self._split(layout.split, pen)
        return tuple(lines)

    @staticmethod
    def _leg(split: Spot, x: float, y: float, dy: float, pen: Style) -> Path:
        middle = (split[0] + x) / 2
        start = (split[0] + 26, split[1] + dy)
        return Path((("M", start), ("C", (middle, start[1], middle, y + dy, x, y + dy))), pen)

    def _split(self, at: Spot, pen: Style) -> list[Rect | Text]:
        frame = Style(fill=self.look.panel, stroke=pen.stroke, width=1.5, dash=pen.dash)
        return [
            Rect((at[0] - 26, at[1] - 32), 52, 64, frame, radius=10),
            Text((at[0], at[1] + 5), "split", 13.0, self.look.ink2, anchor="middle"),
        ]

    def _end(self, painter: QPainter, name: str, at: Spot, radius: float) -> None:
        chosen = self.draft.chosen.get(name)
        if chosen is not None:
            painter.save()
            painter.translate(at[0] - radius, at[1] - radius)
            paint(painter, connector_picture(chosen.connector, self.look, 2 * radius))
            painter.restore()
        else:
            paint(painter, self._undrawn(at, radius))
        corner = (at[0] - radius - 6, at[1] - radius - 2)
        paint(painter, end_plate(corner, name, self.look, 22.0))

    def _undrawn(self, at: Spot, radius: float) -> DrawList:
        ring = Style(fill=self.look.panel, stroke=self.look.edge, width=1.5, dash=(7.0, 5.0))
        inner = Style(stroke=self.look.edge, width=1.2, dash=(7.0, 5.0))
        line = Style(stroke=self.look.centre, width=1.0, dash=(14.0, 4.0, 3.0, 4.0))
        reach = radius + 7
        return (
            Circle(at, radius, ring),
            Circle(at, radius * 0.86, inner),
            Poly(((at[0] - reach, at[1]), (at[0] + reach, at[1])), line),
            Poly(((at[0], at[1] - reach), (at[0], at[1] + reach)), line),
        )

    def _many(self, layout: Layout, at: Spot) -> DrawList:
        assert layout.split is not None
        chosen = MANY in self.draft.chosen
        pen = self._pen(chosen=chosen)
        ring = Style(fill=self.look.panel, stroke=pen.stroke, width=1.5, dash=pen.dash)
        spread = min(46.0, self.height() / 6)
        items: list[Path | Circle] = []
        for step in (-2, -1, 0, 1, 2):
            y = at[1] + step * spread
            items.append(self._leg(layout.split, at[0] - 22, y, 0.0, pen))
            items.append(Circle((at[0], y), 18, ring))
        return tuple(items)

    def _words(self, painter: QPainter, layout: Layout) -> None:
        """Write the pinout below each chosen end's button, and draw the chosen cable's cut end."""
        face = QFontMetrics(font(SMALL))
        for name, chosen in self.draft.chosen.items():
            button = self.buttons.get(name)
            if button is not None:
                box = button.geometry()
                words = face.elidedText(_pinout_words(chosen), Qt.TextElideMode.ElideRight, 190)
                at = (box.left() + 2.0, box.bottom() + 15.0)
                paint(painter, (Text(at, words, SMALL, self.look.ink2),))
        if self.draft.cable is not None:
            x, y = self._cable_middle(layout)
            painter.save()
            painter.translate(x - 20, y - 20)
            paint(painter, cable_picture(self.draft.cable, self.look, 40.0))
            painter.restore()

    # -- dropped on -------------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take definitions off the shelf."""
        if read_mime(event.mimeData()) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Choose what was dropped for the thing nearest to it."""
        dragged = read_mime(event.mimeData())
        if dragged is not None:
            event.acceptProposedAction()
            self.dropped.emit(self.nearest(event.position().toPoint(), dragged), dragged)

    def nearest(self, at: QPoint, dragged: Dragged) -> str:
        """Return what a drop at a point is for: cable is for the cable, the rest for an end."""
        if dragged.kind == "cable":
            return CABLE
        layout = layout_of(self.draft, self.width(), self.height())
        spots = {"A": layout.near, **layout.far}

        def away(name: str) -> float:
            return (spots[name][0] - at.x()) ** 2 + (spots[name][1] - at.y()) ** 2

        return min(spots, key=away)


def _pinout_words(chosen: Chosen) -> str:
    return chosen.pinout.title if chosen.pinout else "pinout still to choose"
