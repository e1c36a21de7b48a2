"""The canvas head: which view, zoom, fit, one scale, and which side is looked at."""

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QSpacerItem, QWidget

from planner.app.actions import Actions
from planner.app.arrangement import Form
from planner.app.buttons import ActionButton, segment, set_tight
from planner.drawing.looks import Look


class CanvasHead(QWidget):
    """Buttons that stand for the view's actions; it shows the zoom that it is told."""

    def __init__(self, actions: Actions, look: Look) -> None:
        super().__init__()
        self._mating = actions["mating"]
        self.zoom = self._action(actions, "zoom_reset", "100 %", "middle", look)
        self.zoom.setMinimumWidth(64)
        self._parts = [
            self._action(actions, "zoom_out", "", "first", look, "minus"),
            self.zoom,
            self._action(actions, "zoom_in", "", "middle", look, "plus"),
            self._action(actions, "fit", "", "middle", look, "fit"),
            self._action(actions, "one_scale", "", "last", look, "one-scale"),
        ]
        self.views = {
            name: self._action(actions, name, words, at, look)
            for name, words, at in (
                ("wire", "Wire", "first"),
                ("dry_fit", "Dry fit", "middle"),
                ("work", "Work", "middle"),
                ("prove", "Prove", "last"),
            )
        }
        self.solder = self._choice("Solder side", "first", "Look at the solder side", look)
        self.mating = self._choice("Mating side", "last", "Look at the mating side, mirrored", look)
        self.solder.clicked.connect(lambda: self._ask_for(mating=False))
        self.mating.clicked.connect(lambda: self._ask_for(mating=True))
        self._mating.changed.connect(self._on_side_changed)
        self._build()
        self._on_side_changed()

    @staticmethod
    def _action(  # noqa: PLR0917 - what one segment is made of
        actions: Actions, name: str, text: str, at: str, look: Look, icon_name: str = ""
    ) -> ActionButton:
        made = segment(text, at, look, action=actions[name], icon_name=icon_name)
        assert isinstance(made, ActionButton)
        return made

    @staticmethod
    def _choice(text: str, at: str, tip: str, look: Look) -> QPushButton:
        made = segment(text, at, look)
        made.setToolTip(tip)
        made.setAccessibleName(text)
        return made

    def _build(self) -> None:
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(16, 0, 16, 0)
        row.setSpacing(0)
        for view in self.views.values():
            row.addWidget(view)
        row.addStretch(1)
        for part in self._parts:
            row.addWidget(part)
        self._gap = QSpacerItem(16, 0)
        row.addSpacerItem(self._gap)
        row.addWidget(self.solder)
        row.addWidget(self.mating)

    def _ask_for(self, *, mating: bool) -> None:
        if self._mating.isChecked() != mating and self._mating.isEnabled():
            self._mating.trigger()
        self._on_side_changed()

    def _on_side_changed(self) -> None:
        mating = self._mating.isChecked()
        self.mating.setChecked(mating)
        self.solder.setChecked(not mating)
        for button in (self.solder, self.mating):
            button.setEnabled(self._mating.isEnabled())

    def set_form(self, form: Form) -> None:
        """Do with less room in one column: shorter words, and the zoom is told by the tip alone."""
        narrow = form is Form.COLUMN
        self.zoom.setVisible(not narrow)
        self.solder.setText("Solder" if narrow else "Solder side")
        self.mating.setText("Mating" if narrow else "Mating side")
        for part in (*self.views.values(), *self._parts, self.solder, self.mating):
            set_tight(part, tight=narrow)
        side = 4 if narrow else 16
        self._row.setContentsMargins(side, 0, side, 0)
        self._gap.changeSize(side, 0)
        self._row.invalidate()

    def show_zoom(self, zoom: float) -> None:
        """Show the zoom, 1.0 being 100 %."""
        self.zoom.setText(f"{round(zoom * 100)} %")

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        for part in (*self.views.values(), *self._parts):
            part.set_look(look)
