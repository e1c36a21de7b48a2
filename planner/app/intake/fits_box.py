"""For which further connectors a record holds: those whose contacts have the same names."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.panels.widgets.fields import check
from planner.intake.pinout_draft import fit_also

if TYPE_CHECKING:
    from collections.abc import Callable

    from planner.app.intake.drafting import Drafting
    from planner.app.panels.widgets.fields import Check
    from planner.intake.pinout_draft import PinoutDraft
    from planner.model.connector import Connector


class FitsBox(QWidget):
    """A box to check for each connector; made anew only where they are others."""

    def __init__(
        self,
        drafting: "Drafting[PinoutDraft]",
        mates: "Callable[[], tuple[Connector, ...]]",
        before: QWidget,
    ) -> None:
        super().__init__()
        self.drafting, self._mates, self._before = drafting, mates, before
        self.boxes: dict[str, Check] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(2)

    @property
    def last(self) -> QWidget:
        """What Tab comes to last here."""
        return next(reversed(self.boxes.values()), self._before)

    def show_draft(self) -> None:
        """Show the connectors that may share the record, and which do."""
        mates = self._mates()
        if [it.id for it in mates] != list(self.boxes):
            self._make(mates)
        for name, box in self.boxes.items():
            box.setChecked(name in self.drafting.draft.fits_also)
        self.setVisible(bool(self.boxes))

    def _make(self, mates: "tuple[Connector, ...]") -> None:
        for box in self.boxes.values():
            box.deleteLater()
        self.boxes = {}
        before = self._before
        for mate in mates:
            box = check(f"It holds for {mate.title} too", self._fitting(mate.id))
            box.setToolTip("The numbers stand for the same contacts, so one record serves both")
            self.boxes[mate.id] = box
            self._column.addWidget(box)
            QWidget.setTabOrder(before, box)
            before = box

    def _fitting(self, connector: str) -> "Callable[[bool], object]":
        return lambda fits: self.drafting.do(
            "Fits too", partial(fit_also, connector=connector, fits=fits)
        )
