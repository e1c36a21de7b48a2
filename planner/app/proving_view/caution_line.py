"""The caution over all that is done with a meter; it stays in sight whatever page is shown."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout

from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.labels import label
from planner.app.panels.widgets.panel import Panel
from planner.proving.probing import CAUTION

if TYPE_CHECKING:
    from planner.app.workbench import Workbench
    from planner.drawing.looks import Look

SHORT = "Unplug every end before a meter touches the lead."


class CautionLine(Panel):
    """Mark and sentence; the tip has the whole of it."""

    def __init__(self, workbench: "Workbench", look: "Look") -> None:
        super().__init__(workbench, look)
        self.words = label(SHORT, "bold", wrap=True)
        self.words.setToolTip(CAUTION)
        self.words.setAccessibleDescription(CAUTION)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 6, 12, 6)
        row.setSpacing(8)
        row.addWidget(MarkLabel("caution", 8, look), 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.words, 1)
        self.set_look(look)
