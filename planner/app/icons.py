"""Line icons in the colour of the look, drawn from resources/icons at whatever scale is asked."""

import math
from functools import lru_cache

from PySide6.QtCore import QByteArray, QRectF, QSize, Qt
from PySide6.QtGui import QGuiApplication, QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from planner.data import data_dir
from planner.drawing.looks import Look

SIZE = 16


@lru_cache(maxsize=64)
def _source(name: str) -> str:
    return (data_dir("resources") / "icons" / f"{name}.svg").read_text(encoding="utf-8")


def pixmap(name: str, colour: str, *, size: int = SIZE, scale: int = 1) -> QPixmap:
    """Return an icon as a picture of `size` logical px, in the colour `#rrggbb`."""
    made = QPixmap(QSize(size, size) * scale)
    made.fill(Qt.GlobalColor.transparent)
    with QPainter(made) as painter:
        text = _source(name).replace("currentColor", colour)
        QSvgRenderer(QByteArray(text.encode())).render(painter, QRectF(made.rect()))
    made.setDevicePixelRatio(scale)
    return made


@lru_cache(maxsize=256)
def _icon(name: str, colour: str, disabled: str, size: int, scale: int) -> QIcon:
    made = QIcon()
    made.addPixmap(pixmap(name, colour, size=size, scale=scale), QIcon.Mode.Normal)
    if disabled:
        made.addPixmap(pixmap(name, disabled, size=size, scale=scale), QIcon.Mode.Disabled)
    return made


def _screen_scale() -> int:
    """Return the scale of the densest screen; others shrink the picture, which stays sharp."""
    return max((math.ceil(it.devicePixelRatio()) for it in QGuiApplication.screens()), default=1)


def icon(
    name: str, look: Look, *, colour: str = "", size: int = SIZE, rests: bool = False
) -> QIcon:
    """Return an icon in ink (or `colour`); `rests` adds a paler one for when it is disabled."""
    paler = look.ink2 if rests else ""
    return _icon(name, colour or look.ink, paler, size, _screen_scale())


def app_icon() -> QIcon:
    """Return the program's own icon."""
    made = QIcon()
    for size in (16, 32, 64):
        made.addPixmap(pixmap("cupwright", "#000000", size=size))
    return made
