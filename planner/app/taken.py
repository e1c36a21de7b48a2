"""What in a page is needed, so that a notice does not lie over it."""

from PySide6.QtCore import QPoint, QRect
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSpinBox,
    QComboBox,
    QGraphicsView,
    QLabel,
    QLineEdit,
    QWidget,
)

_NEEDED = (QLabel, QAbstractButton, QAbstractSpinBox, QComboBox, QLineEdit)


def taken_in(page: QWidget | None) -> list[QRect]:
    """Return the boxes of what is needed in a page: what is drawn on a bench, else the controls."""
    if isinstance(page, QGraphicsView):
        return [
            page.mapFromScene(item.sceneBoundingRect()).boundingRect()
            for item in page.items()
            if not item.boundingRect().isEmpty()
        ]
    if page is None:
        return []
    return [
        QRect(child.mapTo(page, QPoint()), child.size())
        for child in page.findChildren(QWidget)
        if isinstance(child, _NEEDED) and child.isVisibleTo(page)
    ]
