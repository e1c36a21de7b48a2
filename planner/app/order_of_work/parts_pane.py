"""The parts in threading order, end by end; how the chosen one goes on; what a rework leaves."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from planner.app.buttons import ActionButton
from planner.app.order_of_work.part_rows import PartRow, part_rows, rework_said
from planner.app.order_of_work.plain_list import PlainList
from planner.app.order_of_work.queue_strip import QueueStrip
from planner.app.panels.widgets.fields import Check, Choice, check
from planner.app.panels.widgets.labels import button, label, line
from planner.app.panels.widgets.panel import Panel

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.actions import Actions
    from planner.app.order_of_work.state import Work
    from planner.drawing.looks import Look

# Boxes of a rework in a row, rows that show at once, and how high one is.
_BOXES, _ROWS, _ROW_PX = 4, 2, 28
# With less height the list of parts needs the room, px.
_ROOMY = 420
_NONE = "No parts are chosen yet: press P for those that are proposed, or take them from the shelf."


class PartsPane(Panel):
    """Queues over, acts under; the boxes of a rework stay in the view and never in the plan."""

    def __init__(self, work: "Work", actions: "Actions", look: "Look") -> None:
        super().__init__(work.workbench, look)
        self.work = work
        self.rows: tuple[PartRow, ...] = ()
        self.list = PlainList("Parts in threading order", look)
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.list.chosen.connect(lambda place: work.choose_part(self.rows[place].use))
        self.proposed = ActionButton(actions["parts_proposed"], look, text="As proposed")
        self.comes_from = Choice("From end", (), lambda end: work.route(comes_from=end))
        self.late = check(
            "After its joint",
            lambda on: work.route(after_joint=on),
            "The part comes on when the end that it comes from is soldered already",
        )
        self.off = button("Take off", work.take_off, tip="Take the chosen part off the lead")
        self.said = label("", "small", wrap=True)
        self.stays: dict[str, Check] = {}
        self._rework = QScrollArea()
        self.strip = QueueStrip(work, look)
        self.setAccessibleName("Threading")
        self._build()
        self.attach(work.changed, self.renew)
        self.attach(work.part_changed, self._show_part)
        self.attach(work.said, self.said.setText)
        self.set_look(look)

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(6)
        column.addWidget(self.strip)
        column.addWidget(self.list, 1)
        row = QHBoxLayout()
        row.setSpacing(8)
        self.comes_from.setFixedWidth(180)
        for part in (self.comes_from, self.late):
            row.addWidget(part)
        row.addStretch(1)
        column.addLayout(row)
        acts = QHBoxLayout()
        acts.addWidget(self.off)
        acts.addStretch(1)
        acts.addWidget(self.proposed)
        column.addLayout(acts)
        column.addWidget(line())
        column.addLayout(self._rework_row())
        column.addWidget(self.said)

    def _rework_row(self) -> QHBoxLayout:
        """Lay out the boxes of a rework in rows, which scroll where there are many ends."""
        boxes = QWidget()
        self._boxes = QGridLayout(boxes)
        self._boxes.setContentsMargins(0, 0, 0, 0)
        self._boxes.setHorizontalSpacing(12)
        self._boxes.setColumnStretch(_BOXES, 1)
        self._rework.setWidget(boxes)
        self._rework.setWidgetResizable(True)
        self._rework.setFrameShape(QFrame.Shape.NoFrame)
        self._rework.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._rework.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        row = QHBoxLayout()
        row.setSpacing(12)
        row.addWidget(label("Rework, stays on:", "second"), 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self._rework, 1)
        return row

    def renew(self) -> None:
        """Show the parts as they go on now."""
        work = self.work
        self.rows = part_rows(work.plan, work.facts)
        self.list.show_rows([(row.text, row.small, row.stop) for row in self.rows])
        self._show_ends()
        self.said.setText(rework_said(work.plan, work.facts) if self.rows else _NONE)
        self._show_part()

    def _show_ends(self) -> None:
        ends = [end.id for end in self.work.plan.ends]
        for end in [it for it in self.stays if it not in ends]:
            self._drop(self.stays.pop(end))
        for end in ends:
            if end not in self.stays:
                made = check(end, self._keeper(end), f"The plug at {end} is soldered and stays on")
                made.setAccessibleName(f"{end} stays on")
                made.setMinimumWidth(made.sizeHint().width() + 10)
                self.stays[end] = made
            self.stays[end].setChecked(end in self.work.stays_on)
        for at, end in enumerate(ends):
            self._boxes.addWidget(self.stays[end], *divmod(at, _BOXES))
        self._fit_boxes()
        self.comes_from.set_choices([(end, end) for end in ends])

    def _fit_boxes(self) -> None:
        """Show as many rows of boxes as there are and as the list of parts leaves room for."""
        most = _ROWS if self.height() >= _ROOMY else 1
        rows = min(-(-len(self.stays) // _BOXES), most) or 1
        self._rework.setFixedHeight(rows * _ROW_PX)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the list its room."""
        super().resizeEvent(event)
        self._fit_boxes()

    def _keeper(self, end: str) -> "Callable[[bool], object]":
        return lambda on: self.work.keep_on(end, stays=on)

    @staticmethod
    def _drop(widget: QWidget) -> None:
        widget.hide()
        widget.deleteLater()

    def _show_part(self) -> None:
        use = self.work.use
        for part in (self.comes_from, self.late, self.off):
            part.setEnabled(use is not None)
        if use is not None:
            self.comes_from.show_value(use.comes_from)
            self.late.setChecked(use.after_joint)
        self.strip.renew()
        places = [place for place, row in enumerate(self.rows) if row.use == self.work.part]
        self.list.mark(places[0] if places else -1)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        self.list.set_look(look)
        self.proposed.set_look(look)
        self.strip.set_look(look)
