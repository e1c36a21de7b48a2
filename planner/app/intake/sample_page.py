"""Confirm by measuring: the probes are guided, and what hangs on the contacts is told."""

import re
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QHBoxLayout, QListWidget, QListWidgetItem, QVBoxLayout, QWidget

from planner.app.intake.editor_page import add_keys, form_of, undo_keys
from planner.app.intake.face_view import FaceView
from planner.app.intake.figures import FigureField
from planner.app.intake.questions_box import QuestionsBox
from planner.app.intake.sample_state import Sample
from planner.app.panels.widgets.drawn import MarkLabel
from planner.app.panels.widgets.fields import check
from planner.app.panels.widgets.labels import Head, button, label, line, restyle
from planner.app.panels.widgets.scrolled import scrolled
from planner.app.panels.widgets.styles import panel_qss
from planner.app.panels.widgets.text_line import TextLine
from planner.drawing.carried_face import CarriedFace
from planner.intake.pinout_draft import PinoutDraft
from planner.proving.entries import Entry, entry_text
from planner.proving.identifying import METER_CAUTION, cautions, sentences
from planner.proving.identifying.signals import answered, basis_line

if TYPE_CHECKING:
    from planner.app.intake.owner import Owner
    from planner.drawing.looks import Look
    from planner.model.connector import Connector
    from planner.model.pinout import PinoutRecord

_FIGURE = re.compile(r", [\d.]+ \u03a9")
_HINT = "Enter takes it and goes on: 32.1, 1.2k, o for open. Press two contacts for another pair."


class SamplePage(QWidget):
    """Measure a sample of a connector; `measured` gives a draft of a record, `done` leaves."""

    measured = Signal(object, object)  # PinoutDraft, SampleReadings
    done = Signal()

    def __init__(self, owner: "Owner", look: "Look") -> None:
        super().__init__()
        self.owner, self.look = owner, look
        self.sample = Sample(self)
        self.connector: Connector | None = None
        self.record: PinoutRecord | None = None
        self._first = ""
        self._make(look)
        self._lay_out()
        self.sample.told.connect(self._show)
        self.sample.pair_changed.connect(self._show_pair)
        self.set_look(look)

    # -- made ------------------------------------------------------------------------------------

    def _make(self, look: "Look") -> None:
        self.title = label("", "question", wrap=True)
        self.mark = MarkLabel("caution", 10, look, "Caution")
        self.face = FaceView(look)
        self.face.pressed.connect(self._on_pressed)
        self.mating = check("The probes are on the mating side", lambda _on: self._show_face())
        self.mating.setToolTip("The face is drawn as it is looked at from there: mirrored")
        self.probes = label("", "question", wrap=True)
        self.why = label("", "second", wrap=True)
        self.entry = TextLine()
        self.entry.setAccessibleName("Reading in ohm")
        self.entry.setPlaceholderText("32.1, 1.2k, o for open")
        self.entry.setToolTip(_HINT)
        self.entry.returnPressed.connect(self._read)
        self.error = label("", "error", wrap=True)
        self.zero = FigureField("Meter zero", self._set_zero, unit="\u03a9")
        self.zero.line.setToolTip("What it shows with its probes held together")
        self.list = QListWidget()
        self.list.setAccessibleName("What was read")
        self.list.itemActivated.connect(self._on_activated)
        self.said = label("", wrap=True)
        self.rivals = label("", "second", wrap=True)
        self.questions = QuestionsBox(self.sample.answer)
        self.limits = label("", "small", wrap=True)
        self.foot = label("", "small", wrap=True)
        self.write = button("Write it as measured\u2026", self.write_record, "primary")
        self.leave = button("Leave it", self.done.emit)

    def _lay_out(self) -> None:
        self._readings = scrolled(self._probing(), "What is read")
        right = QVBoxLayout()
        told = (Head("What hangs on it"), self.said, self.rivals, line())
        form = form_of((*told, self.questions, self.limits))
        right.addWidget(scrolled(form, "What hangs on it"), 1)
        row = QHBoxLayout()
        row.setContentsMargins(16, 4, 16, 10)
        row.addWidget(self.foot, 1)
        row.addWidget(self.leave)
        row.addWidget(self.write)
        right.addLayout(row)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._readings, 5)
        whole.addLayout(right, 5)
        add_keys(self, undo_keys(self.sample.drafting))
        delete = QShortcut(QKeySequence("Delete"), self.list, self._unread)
        delete.setContext(Qt.ShortcutContext.WidgetShortcut)

    def _probing(self) -> QWidget:
        """Lay out the face, the reading that is asked for, and those that were taken."""
        made = QWidget()
        made.setProperty("surface", "panel")
        column = QVBoxLayout(made)
        column.setContentsMargins(16, 12, 16, 12)
        column.setSpacing(6)
        caution = QHBoxLayout()
        caution.setSpacing(8)
        caution.addWidget(self.mark, 0, Qt.AlignmentFlag.AlignTop)
        caution.addWidget(label(METER_CAUTION, "bold", wrap=True), 1)
        column.addWidget(self.title)
        column.addLayout(caution)
        column.addWidget(self.face, 3)
        for part in (self.mating, self.probes, self.why, self.entry, self.error, self.zero):
            column.addWidget(part)
        column.addWidget(Head("Read so far"))
        column.addWidget(self.list, 2)
        self.list.setMinimumHeight(64)
        return made

    # -- begun and ended -------------------------------------------------------------------------

    def begin(self, connector: "Connector", record: "PinoutRecord | None" = None) -> None:
        """Begin to measure a sample; with a record, to confirm that."""
        self.connector, self.record = connector, record
        title = record.title if record is not None else ""
        what = f"Confirm {title}" if record is not None else "Measure a sample"
        beside = "" if connector.title in title else f": {connector.title}"
        self.title.setText(what + beside)
        self.mating.setVisible(self._has_sides)
        self.sample.begin(connector)
        self.zero.show_figure(self.sample.readings.meter.zero_ohm)
        self.entry.setFocus()
        self._readings.ensureWidgetVisible(self.entry)

    def write_record(self) -> None:
        """Make a draft of what was measured and answered."""
        connector, identified = self.connector, self.sample.identified
        if connector is None or identified is None:
            return
        signals = answered(identified, self.sample.answers)
        record = self.record
        draft = PinoutDraft(
            connector=connector.id,
            seen_from="solder",
            use=record.use if record is not None else "headphone",
            maker=record.maker if record is not None else "",
            drive=record.drive if record is not None else "load",
            signals={name: it for name, it in signals.items() if it and name in connector.by_id},
            source_kind="measured",
            reference=basis_line(self.sample.readings, identified, self.sample.answers),
            date=self.owner.today,
            recorded_by=self.owner.who,
        )
        self.measured.emit(draft, self.sample.readings)

    # -- the hand --------------------------------------------------------------------------------

    def _read(self) -> None:
        wrong = self.sample.read(self.entry.text())
        restyle(self.entry, "wrong", "true" if wrong else "")
        self.error.setText(wrong)
        if not wrong:
            self.entry.clear()

    def _set_zero(self, ohm: float) -> str:
        self.sample.set_meter(zero_ohm=ohm)
        return ""

    def _on_pressed(self, contact: str) -> None:
        if self._first and self._first != contact:
            first, self._first = self._first, ""
            self.sample.probe((first, contact))
        else:
            self._first = contact
            self._show_pair()
        self.entry.setFocus()

    def _on_activated(self, item: QListWidgetItem) -> None:
        self.sample.probe(item.data(Qt.ItemDataRole.UserRole))
        self.entry.setFocus()

    def _unread(self) -> None:
        item = self.list.currentItem()
        if item is not None:
            self.sample.unread(item.data(Qt.ItemDataRole.UserRole))

    # -- shown -----------------------------------------------------------------------------------

    def _show_pair(self) -> None:
        one, other = self.sample.pair
        if self._first:
            self.probes.setText(f"One probe on {self._first}: press the other contact.")
        elif self.sample.done and not self.sample.by_hand:
            self.probes.setText("Settled: nothing more must be read")
        else:
            self.probes.setText(f"Probes on {one} (plus) and {other}")
        self._show_face()

    @property
    def _has_sides(self) -> bool:
        return self.connector is not None and self.connector.mating != "concentric"

    def _show_face(self) -> None:
        if self.connector is None:
            return
        settled = self.sample.done and not self.sample.by_hand
        one, other = self.sample.pair
        both = one in self.connector.by_id and other in self.connector.by_id
        self.face.show_face(
            CarriedFace(
                self.connector,
                {},
                names_only=True,
                side="mating" if self.mating.isChecked() and self._has_sides else "solder",
                notes=self._notes(),
                pairs=((one, other),) if both and not self._first and not settled else (),
                chosen=self._first or ("" if settled else one),
            )
        )

    def _notes(self) -> dict[str, str]:
        """Return what is known of each contact, in few words; `?` where it is in doubt."""
        found = self.sample.identified
        doubtful = found.doubtful if found is not None and not found.certain else ()
        return {
            name: _brief(words) + (" ?" if name in doubtful else "")
            for name, words in self.sample.proposal.known.items()
            if words != "nothing"
        }

    def _show(self) -> None:
        self._show_list()
        self._show_pair()
        found = self.sample.identified
        if found is None:
            self.said.setText(
                "Nothing is read yet. Hold the probes as shown and type what it says."
            )
            self.rivals.setText("")
            self.why.setText("")
        else:
            self.said.setText("\n".join(sentences(found)))
            others = [f"Or: {it.words}" for it in found.rivals[:3]]
            self.rivals.setText("\n".join(others))
            self.why.setText(found.next_reading.words if found.next_reading is not None else "")
        proposal = self.sample.proposal
        settled = found is not None and found.certain
        self.questions.show_questions(proposal.questions if settled else (), self.sample.answers)
        self.limits.setText("\n".join(cautions(found)) if found is not None else "")
        self._show_foot(settled=settled)

    def _show_list(self) -> None:
        self.list.clear()
        for reading in self.sample.readings.readings:
            text = entry_text(Entry(reading.joined, reading.ohm))
            item = QListWidgetItem(f"{reading.one} \u2192 {reading.other}    {text}")
            item.setData(Qt.ItemDataRole.UserRole, (reading.one, reading.other))
            item.setToolTip("Enter reads it again, Delete takes it back")
            self.list.addItem(item)

    def _show_foot(self, *, settled: bool) -> None:
        proposal = self.sample.proposal
        asked = [it for it in proposal.questions if it.key not in self.sample.answers]
        ready = settled and not proposal.obstacles and not asked
        self.write.setEnabled(ready)
        if not settled:
            self.foot.setText("Read on until one understanding is left.")
        elif proposal.obstacles:
            self.foot.setText(proposal.obstacles[0])
        else:
            self.foot.setText(f"{len(asked)} still to answer" if asked else "")

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        self.look = look
        self.setStyleSheet(panel_qss(look))
        self.face.set_look(look)
        self.mark.set_look(look)
        self.questions.set_look(look)


def _brief(words: str) -> str:
    """Return what a contact is in few words: the figures stand beside the face."""
    if words.startswith("common return"):
        return "return"
    return _FIGURE.sub("", words)
