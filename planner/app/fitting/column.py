"""The quiet column beside the face: turn, figures, what was said, order of soldering, sleeves."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from planner.app.buttons import ActionButton
from planner.app.fitting.figures import Figures
from planner.app.fitting.order_list import OrderList
from planner.app.fitting.sleeve_box import SleeveBox
from planner.app.fitting.turn_box import TurnBox
from planner.app.panels.widgets.labels import Head, label, line
from planner.app.panels.widgets.panel import Panel

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.fitting.fit_acts import FitActs
    from planner.drawing.looks import Look

_MARGIN = 12


class FitColumn(Panel):
    """Lay the parts out in a column that scrolls."""

    def __init__(self, acts: "FitActs", actions: "Actions", look: "Look") -> None:
        super().__init__(acts.workbench, look)
        self.acts, self.state = acts, acts.state
        self.turn = TurnBox(acts, actions, look)
        self.figures = Figures(acts.state, look)
        self.said = label("", "small", wrap=True)
        self.said.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.order_head = Head("Order of soldering", "section")
        self.order_head.set_note("room, mm")
        self.order_head.note.setToolTip("How much room the iron has at each joint")
        self.order = OrderList(acts.state, look)
        self.best_order = ActionButton(actions["best_order"], look, text="Best order")
        self.sleeves = SleeveBox(acts, actions, look)
        self.setAccessibleName("Dry fit: figures")
        self._build()
        acts.said.connect(self.show_said)
        self.order.moved.connect(acts.put_joint)
        self.attach(acts.workbench.plan_changed, lambda _changes: self.show_said(""))
        self.attach(acts.state.end_changed, lambda: self.show_said(""))
        self.attach(acts.state.joint_changed, self._keep_joint_in_sight)
        self.set_look(look)

    def _build(self) -> None:
        self._inside = inside = QWidget()
        inside.setProperty("surface", "clear")
        column = QVBoxLayout(inside)
        column.setContentsMargins(_MARGIN, 10, _MARGIN, 12)
        column.setSpacing(8)
        for part in (self.turn, self.said, line(), self.figures, line(), self.order_head):
            column.addWidget(part)
        column.addWidget(self.order)
        row = QHBoxLayout()
        row.addWidget(self.best_order)
        row.addStretch(1)
        column.addLayout(row)
        column.addWidget(line())
        column.addWidget(self.sleeves)
        column.addStretch(1)
        self.area = QScrollArea()
        self.area.setWidgetResizable(True)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setWidget(inside)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.area)
        self.said.hide()

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        for part in (self.turn, self.order, self.best_order, self.sleeves):
            part.set_look(look)

    def show_said(self, text: str) -> None:
        """Say what an act came to; it goes with the next change of the plan, or another end."""
        self.said.setText(text)
        self.said.setVisible(bool(text))

    def _keep_joint_in_sight(self) -> None:
        row, chosen = self.order.currentRow(), self.state.workbench.selection.contact
        if row < 0 or not self.order.hasFocus() or self.state.joint != chosen:
            return
        rect = self.order.visualItemRect(self.order.item(row))
        at = self.order.viewport().mapTo(self._inside, rect.center())
        self.area.ensureVisible(at.x(), at.y(), 0, rect.height())
