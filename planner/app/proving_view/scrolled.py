"""A pane that scrolls up and down where there is little height, and never sideways."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QWidget


def scrolled(inside: QWidget, name: str) -> QScrollArea:
    """Let a widget scroll; what has the focus is brought into sight by Qt."""
    area = QScrollArea()
    area.setWidget(inside)
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setAccessibleName(name)
    return area
