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

from planner.app.fitting.face_canvas import FaceCanvas

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
    seen = [child for child in page.findChildren(QWidget) if child.isVisibleTo(page)]
    drawn = [
        spot.translated(child.mapTo(page, QPoint()))
        for child in seen
        if isinstance(child, FaceCanvas)
        for spot in child.taken()
    ]
    needed = (child for child in seen if isinstance(child, _NEEDED))
    return drawn + [QRect(child.mapTo(page, QPoint()), child.size()) for child in needed]
