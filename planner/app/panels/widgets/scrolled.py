"""A pane that scrolls up and down where there is little height, and never sideways."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QWidget


def scrolled(inside: QWidget, name: str = "", *, least: int = 0) -> QScrollArea:
    """Let a widget scroll; what has the focus is brought into sight by Qt. `least` is a width."""
    area = QScrollArea()
    area.setWidget(inside)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setMinimumWidth(least)
    area.setAccessibleName(name)
    return area
