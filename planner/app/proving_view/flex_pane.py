"""The wiggle test: live while an end is flexed, and a list of what was noted."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QVBoxLayout, QWidget

from planner.app.order_of_work.plain_list import PlainList
from planner.app.panels.widgets.labels import Head, button, label, restyle
from planner.app.panels.widgets.panel import Panel
from planner.app.panels.widgets.scrolled import scrolled
from planner.app.proving_view.flexing import Flexing
from planner.units import number

if TYPE_CHECKING:
    from planner.app.proving_view.state import Proving
    from planner.drawing.looks import Look

_LIST_HIGH = 84
_HOW = (
    "Clip the meter on a pair that beeps. Enter begins, then bend the lead at the end; press Space "
    "whenever the beep breaks. Enter notes it and goes to the next end, Esc drops it."
)
_NO_UNIT = "Begin a unit first: what is noted here belongs to it."


class FlexBox(QFrame):
    """What is flexed now, under the keys."""

    def __init__(self, flexing: Flexing) -> None:
        super().__init__()
        self.flexing = flexing
        self.setProperty("card", "true")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.what = label("", "question", wrap=True)
        self.breaks = label("", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(10, 8, 10, 8)
        for part in (self.what, self.breaks):
            column.addWidget(part)
        flexing.changed.connect(self.renew)
        self.renew()

    def renew(self) -> None:
        """Show how it stands."""
        flexing = self.flexing
        end = flexing.end or next(iter(flexing.ends), "")
        if flexing.running:
            self.what.setText(f"{end}: flexing, {number(flexing.elapsed_s, 0)} s")
            count = len(flexing.breaks)
            times = "once" if count == 1 else f"{count} times"
            self.breaks.setText(f"broke {times}" if count else "steady so far")
        else:
            self.what.setText(f"{end}: Enter begins" if end else "No end to flex")
            self.breaks.setText("\u2190 \u2192 another end")
        restyle(self, "current", "true" if flexing.running else "")
        restyle(self, "weight", "stop" if flexing.running and flexing.breaks else "")
        self.setAccessibleName(f"{self.what.text()}; {self.breaks.text()}")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Begin, note a break, end; choose the end."""
        flexing, key = self.flexing, Qt.Key(event.key())
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            (flexing.stop if flexing.running else flexing.start)()
        elif key == Qt.Key.Key_Space and not event.isAutoRepeat():
            flexing.break_now()
        elif key in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            flexing.step(-1 if key == Qt.Key.Key_Left else 1)
        elif key == Qt.Key.Key_Escape and flexing.running:
            flexing.call_off()
        else:
            super().keyPressEvent(event)


class FlexPane(Panel):
    """The box of the end that is flexed, and what was noted."""

    def __init__(self, proving: "Proving", look: "Look") -> None:
        super().__init__(proving.workbench, look)
        self.proving = proving
        self.flexing = Flexing(proving, self)
        self.box = FlexBox(self.flexing)
        self.how = label(_HOW, "small", wrap=True)
        self.break_button = button("It broke (Space)", self.flexing.break_now)
        self.start_button = button("Begin", self._on_start, "primary")
        self.noted = PlainList("What the wiggle test showed", look, "fault")
        self.setAccessibleName("Wiggle")
        self.setFocusProxy(self.box)
        self._build()
        self.attach(proving.unit_changed, self.renew)
        self.attach(self.flexing.changed, self._show_buttons)
        self.set_look(look)
        self.renew()

    def _build(self) -> None:
        inside = QWidget()
        inside.setProperty("surface", "clear")
        area = scrolled(inside, "Wiggle")
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(area)
        self.noted.setMinimumHeight(_LIST_HIGH)
        column = QVBoxLayout(inside)
        column.setContentsMargins(12, 8, 12, 8)
        column.setSpacing(6)
        column.addWidget(Head("Wiggle", "section"))
        column.addWidget(self.how)
        column.addWidget(self.box)
        acts = QHBoxLayout()
        for part in (self.break_button, self.start_button):
            acts.addWidget(part)
        column.addLayout(acts)
        column.addWidget(self.noted, 1)

    def _on_start(self) -> None:
        (self.flexing.stop if self.flexing.running else self.flexing.start)()
        self.box.setFocus(Qt.FocusReason.OtherFocusReason)

    def renew(self) -> None:
        """Show what was noted of the unit."""
        unit = self.proving.unit
        self.how.setText(_HOW if unit is not None else _NO_UNIT)
        self.box.setEnabled(unit is not None)
        wiggle = unit.wiggle if unit is not None else ()
        self.noted.show_rows(
            [(f"{it.end}  {it.state}", it.note, it.state == "broken") for it in wiggle]
        )
        self._show_buttons()
        self.box.renew()

    def _show_buttons(self) -> None:
        running = self.flexing.running
        self.break_button.setEnabled(running)
        self.start_button.setText("Note it" if running else "Begin")
        self.start_button.setEnabled(self.proving.unit is not None)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        self.noted.set_look(look)
