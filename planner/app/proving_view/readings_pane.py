"""The pane of the readings: meter, how isolation is read, the grid, what comes next."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QMimeData, Qt, QTimer, Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QFocusEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from planner.app.panels.widgets.fields import Choice, Field
from planner.app.panels.widgets.labels import button, label
from planner.app.panels.widgets.panel import Panel
from planner.app.proving_view.facts import method_words
from planner.app.proving_view.grid import ReadingsGrid
from planner.proving.entries import EntryError, parse_entry
from planner.proving.methods import METHODS
from planner.units import number

if TYPE_CHECKING:
    from planner.app.proving_view.state import Proving
    from planner.drawing.looks import Look

# With less height only the tip tells what isolation can't see, px.
_LEAST_HIGH = 400
_MOST_EARLY = 80  # keys
_ENDINGS = {".csv", ".tsv", ".txt"}
_NO_NETS = "Nothing is joined yet, so there is nothing to prove."
_LAND = "Press G to land by signal, or land cores one by one in Wire (Alt+1)."


class ReadingsPane(Panel):
    """The grid with what belongs to it; in its place what to do while there is nothing to read."""

    begin_wanted = Signal()
    file_dropped = Signal(object)  # Path

    def __init__(self, proving: "Proving", look: "Look") -> None:
        super().__init__(proving.workbench, look)
        self.proving = proving
        self.grid = ReadingsGrid(proving, look)
        self.zero = Field(
            "Meter\u2019s zero",
            self._take_zero,
            "What the meter shows with its probes together, ohm; it is taken off every reading",
            88,
        )
        self.method = Choice("Isolation", (), self._on_method, 60)
        self.unseen = label("", "small", wrap=True)
        self.empty = label("", "question", wrap=True)
        self.mend = label("", "second", wrap=True)
        self.begin = button("", self.begin_wanted.emit, "primary")
        self.stack = QStackedWidget()
        self.setAccessibleName("Readings of the lead")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAcceptDrops(True)
        self._build()
        self.zero.line.returnPressed.connect(self._on_zero_entered)
        self.grid.begin_wanted.connect(self.begin_wanted)
        self._early: list[tuple[int, Qt.KeyboardModifier, str]] = []
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(0)
        self._soon.timeout.connect(self._type_early)
        for signal in (proving.rows_changed, proving.unit_changed, proving.busy_changed):
            self.attach(signal, self.renew)
        self.attach(proving.rows_changed, self._soon.start)
        self.set_look(look)
        self.renew()

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._head())
        column.addWidget(self.stack, 1)
        self.stack.addWidget(self.grid)
        self.stack.addWidget(self._nothing())

    def _head(self) -> QWidget:
        self._tools = QWidget()
        rows = QVBoxLayout(self._tools)
        rows.setContentsMargins(12, 6, 12, 6)
        rows.setSpacing(4)
        row = QHBoxLayout()
        row.setSpacing(16)
        self.zero.setFixedWidth(168)
        row.addWidget(self.zero, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.method, 1, Qt.AlignmentFlag.AlignTop)
        rows.addLayout(row)
        rows.addWidget(self.unseen)
        return self._tools

    def _nothing(self) -> QWidget:
        made = QWidget()
        column = QVBoxLayout(made)
        column.setContentsMargins(24, 24, 24, 24)
        column.setSpacing(10)
        for part in (self.empty, self.mend):
            column.addWidget(part)
        row = QHBoxLayout()
        row.addWidget(self.begin)
        row.addStretch(1)
        column.addLayout(row)
        column.addStretch(1)
        return made

    # -- shown ------------------------------------------------------------------------------------

    def renew(self) -> None:
        """Show the readings, or what is to be done before there are any."""
        proving, unit = self.proving, self.proving.unit
        self._show_nothing()
        ready = unit is not None and bool(proving.rows)
        self.stack.setCurrentIndex(0 if ready else 1)
        self._tools.setVisible(ready)
        if unit is not None:
            zero_ohm = unit.readings.meter.zero_ohm
            self.zero.show_text(number(zero_ohm, 3) if unit.zero_asked or zero_ohm else "")
            self.zero.line.setPlaceholderText("" if unit.zero_asked else "ohm")
        self._show_method()
        if self.hasFocus():
            self._hand_focus_on()

    def _show_nothing(self) -> None:
        proving = self.proving
        can = bool(proving.rows)
        self.begin.setVisible(can)
        self.begin.setText(f"Begin unit {proving.number} (Enter)")
        self.begin.setAccessibleName(self.begin.text())
        if can:
            self.empty.setText("No unit is being proved.")
            self.mend.setText(
                "Begin one, then hold the probes together and type what the meter shows: that is "
                "its zero. After that each reading is typed and taken with Enter."
            )
        elif proving.busy:
            self.empty.setText("Working out what to probe\u2026")
            self.mend.setText("")
        else:
            self.empty.setText(_NO_NETS)
            self.mend.setText(_LAND)

    def _show_method(self) -> None:
        proving = self.proving
        plans = [(it, proving.facts.isolation(it)) for it in METHODS]
        offered = [(method, method_words(made)) for method, made in plans if made is not None]
        self.method.set_choices(offered)
        self.method.show_value(proving.method)
        here = proving.facts.isolation(proving.method)
        self.unseen.setText(f"Can\u2019t see: {here.unseen[0]}" if here and here.unseen else "")
        told = "\n\n".join(here.unseen) if here else ""
        for part in (self.unseen, self.method.box):
            part.setToolTip(f"Can\u2019t see: {told}" if told else "")
        self.method.box.setAccessibleDescription(self.method.box.toolTip())

    @staticmethod
    def dropped_file(mime: QMimeData) -> Path | None:
        """Return the one file of readings that is dragged, or None."""
        files = [Path(url.toLocalFile()) for url in mime.urls() if url.isLocalFile()]
        return files[0] if len(files) == 1 and files[0].suffix.lower() in _ENDINGS else None

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a file of readings in; other files are the window's."""
        if self.dropped_file(event.mimeData()) is not None:
            event.acceptProposedAction()
        else:
            event.ignore()

    def dropEvent(self, event: QDropEvent) -> None:
        """Import the file that was dropped."""
        path = self.dropped_file(event.mimeData())
        if path is not None:
            event.acceptProposedAction()
            self.file_dropped.emit(path)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Hand the keyboard on to what can be used."""
        super().focusInEvent(event)
        self._hand_focus_on()

    def _hand_focus_on(self) -> None:
        """Keep the keyboard while nothing is there yet; it goes on once there is."""
        target = self.grid if self.stack.currentIndex() == 0 else self.begin
        if target.isVisibleTo(self):
            target.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Begin a unit with Enter while none is being proved; keep what is typed too early."""
        enter = event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}
        if enter and self.begin.isVisibleTo(self):
            self.begin_wanted.emit()
        elif self._is_early and (enter or (event.text().isprintable() and event.text())):
            if len(self._early) < _MOST_EARLY:
                self._early.append((event.key(), event.modifiers(), event.text()))
        else:
            super().keyPressEvent(event)

    @property
    def _is_early(self) -> bool:
        """Tell whether what to probe is still being worked out, with nothing shown yet."""
        return self.proving.busy and not self.proving.rows

    def _type_early(self) -> None:
        """Type what was typed before there was anything to type it into, now that there is."""
        early, self._early = self._early, []
        for key, modifiers, text in early:
            target = QApplication.focusWidget()
            if target is None or not (target is self or self.isAncestorOf(target)):
                return
            event = QKeyEvent(QEvent.Type.KeyPress, key, modifiers, text)
            QApplication.sendEvent(target, event)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        self.grid.set_look(look)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the rows the room where there is little of it: the tip tells the same."""
        super().resizeEvent(event)
        self.unseen.setVisible(self.height() >= _LEAST_HIGH)

    def _on_method(self, chosen: str) -> None:
        method = next(it for it in METHODS if it == chosen)
        self.proving.set_method(method)

    # -- the meter --------------------------------------------------------------------------------

    def ask_zero(self) -> None:
        """Ask what the meter shows with its probes together."""
        self.zero.line.setFocus(Qt.FocusReason.OtherFocusReason)
        self.zero.line.selectAll()

    def _take_zero(self, typed: str) -> str:
        try:
            entry = parse_entry(typed)
        except EntryError as error:
            return str(error)
        if not entry.joined or entry.ohm is None:
            return "Type a number in ohm, such as 0.2: the probes are held together."
        self.proving.noting.set_zero(entry.ohm)
        return ""

    def _on_zero_entered(self) -> None:
        """Go on to the readings; what stands there holds, and nothing there stands for 0."""
        unit, line = self.proving.unit, self.zero.line
        if unit is not None and not unit.zero_asked and not line.isModified():
            self.proving.noting.set_zero(unit.readings.meter.zero_ohm if line.text() else 0.0)
        if not line.property("wrong"):
            self.grid.setFocus()
