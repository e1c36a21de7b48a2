"""What was on the bench lately: plans to go on with, shown beside the guide of a new plan."""

from datetime import datetime
from functools import partial
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from planner.app.actions import Actions
from planner.app.buttons import ActionButton
from planner.app.fonts import BODY, HEAD, SMALL
from planner.app.labels import ElidedLabel, MarkLabel, label
from planner.app.recent import RecentPlan, when_text
from planner.drawing.looks import Look

if TYPE_CHECKING:
    from planner.drawing.marks import MarkKind

ROW_HEIGHT = 46


class RecentRow(QPushButton):
    """One plan: how it stood, its title, its order and when."""

    def __init__(self, plan: RecentPlan, look: Look, now: datetime) -> None:
        super().__init__()
        self.setProperty("role", "row")
        self.setFixedHeight(ROW_HEIGHT)
        self.setToolTip(f"Open {plan.path}")
        self.mark = MarkLabel(cast("MarkKind", plan.kind), 10, look)
        self.mark.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        title, told = ElidedLabel(BODY), ElidedLabel(SMALL, role="small")
        title.setText(plan.name)
        told.setText(", ".join(part for part in (plan.order, when_text(plan.at, now)) if part))
        self.setAccessibleName(f"{plan.name}, {told.text()}")
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 3, 12, 3)
        row.setSpacing(16)
        row.addWidget(self.mark)
        column = QVBoxLayout()
        column.setSpacing(1)
        for part in (title, told):
            part.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
            column.addWidget(part)
        row.addLayout(column, 1)


class Lately(QWidget):
    """List the recent plans, and offer to open a file or the demo."""

    chosen = Signal(object)  # Path

    def __init__(self, actions: Actions, look: Look) -> None:
        super().__init__()
        self._look = look
        self._plans: tuple[RecentPlan, ...] = ()
        self._now = datetime.now().astimezone()
        self._rows: list[RecentRow] = []
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        self._none = label(
            "Nothing yet: what you open or save is listed here.", BODY, role="second"
        )
        self._none.setWordWrap(True)
        self._none.setContentsMargins(16, 4, 16, 4)
        self._buttons = [
            ActionButton(actions["open"], look, text="Open\u2026"),
            ActionButton(actions["demo"], look, text="Open the demo"),
        ]
        self._build()

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 10, 0, 8)
        column.setSpacing(8)
        head = label("Lately on the bench", HEAD, bold=True)
        head.setContentsMargins(16, 0, 16, 0)
        column.addWidget(head)
        column.addWidget(self._scrolled(), 100)
        row = QHBoxLayout()
        row.setContentsMargins(16, 0, 16, 0)
        row.setSpacing(8)
        for button, share in zip(self._buttons, (1, 0), strict=True):
            row.addWidget(button, share)
        column.addLayout(row)
        drop = label("or drop a plan file anywhere here", SMALL, role="small")
        drop.setContentsMargins(16, 0, 16, 0)
        column.addWidget(drop)
        column.addStretch(1)

    def _scrolled(self) -> QScrollArea:
        inner = QWidget()
        inner.setObjectName("lately_list")
        column = QVBoxLayout(inner)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._none)
        column.addLayout(self._list)
        column.addStretch(1)
        self._area = area = QScrollArea()
        area.setWidget(inner)
        area.setWidgetResizable(True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        return area

    def show_plans(self, plans: tuple[RecentPlan, ...], now: datetime) -> None:
        """List these, latest first."""
        self._plans, self._now = plans, now
        for old in self._rows:
            self._list.removeWidget(old)
            old.hide()
            old.deleteLater()
        self._rows = [RecentRow(plan, self._look, now) for plan in plans]
        for plan, row in zip(plans, self._rows, strict=True):
            row.clicked.connect(partial(self._choose, plan))
            self._list.addWidget(row)
        self._none.setVisible(not plans)
        self._area.setMaximumHeight(len(plans) * ROW_HEIGHT if plans else 60)

    def _choose(self, plan: RecentPlan, _checked: object = None) -> None:
        self.chosen.emit(plan.path)

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._look = look
        for button in self._buttons:
            button.set_look(look)
        self.show_plans(self._plans, self._now)
