"""The base of every panel: one workbench, one look, connections that end with the panel."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt, SignalInstance
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QWidget

from planner.app.panels.widgets.drawn import Drawn
from planner.app.panels.widgets.styles import panel_qss
from planner.app.workbench import Workbench
from planner.drawing.looks import Look


class Panel(QWidget):
    """Hold a workbench and a look; `attach` what is to be heard, `detach` ends all of it."""

    def __init__(self, workbench: Workbench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.workbench = workbench
        self.look = look
        self._links: list[tuple[SignalInstance, Callable[..., Any]]] = []
        self.setProperty("surface", "panel")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)

    def attach(self, signal: SignalInstance, slot: Callable[..., Any]) -> None:
        """Connect, and remember it for `detach`."""
        signal.connect(slot)
        self._links.append((signal, slot))

    def detach(self) -> None:
        """End every connection made with `attach`; a second call does nothing."""
        links, self._links = self._links, []
        for signal, slot in links:
            signal.disconnect(slot)

    def set_look(self, look: Look) -> None:
        """Take on a look, and hand it to all that is drawn inside."""
        self.look = look
        self.setStyleSheet(panel_qss(look))
        for child in self.findChildren(Drawn):
            child.set_look(look)
        self.update()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Let go of the workbench."""
        self.detach()
        super().closeEvent(event)
