"""The guide of a new plan: shape, ends, cable, lengths; it ends in one undo step."""

from functools import partial
from itertools import pairwise
from typing import cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from planner.app.panels.guide_draft import Chosen, Draft, Shape
from planner.app.panels.guide_shapes import WORDS, ShapeButton
from planner.app.panels.guide_sketch import CABLE, LeadSketch
from planner.app.panels.mime import Dragged
from planner.app.panels.pick_list import PickList
from planner.app.panels.widgets.drawn import Drawn, step_disc
from planner.app.panels.widgets.fields import Combo
from planner.app.panels.widgets.labels import button, label, restyle
from planner.app.panels.widgets.panel import Panel
from planner.app.panels.widgets.text_line import TextLine
from planner.app.panels.words import POLICY_WORDS
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.edits.shapes import MOST_LEGS
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.definition import Definition, is_retired
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan, ShieldPolicy


class GuidePanel(Panel):
    """Ask four questions about the lead, in any order, by mouse or by the keys 1 to 4."""

    started = Signal()

    def __init__(self, workbench: Workbench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(workbench, look, parent)
        self.draft = Draft()
        self.shapes: dict[Shape, ShapeButton] = {name: ShapeButton(name, look) for name in WORDS}
        self.sketch = LeadSketch(self.draft, look)
        self.length, self.leg_length = TextLine(), TextLine()
        self.legs = QSpinBox()
        self.policy = Combo()
        self.order = TextLine()
        self.start = button("Start landing", self._on_start, "primary")
        self.missing = label("", "small")
        self.pick: PickList | None = None
        self.setProperty("surface", "paper")
        self._set_up()
        self._lay_out()
        self._listen()
        self.set_look(look)
        self.begin_anew()

    def begin_anew(self) -> None:
        """Forget every answer: another plan has begun."""
        if self.pick is not None:
            self.pick.reject()
        fresh = Draft()
        # The fields write into the old draft while they are set; it is let go of afterwards.
        self.shapes[fresh.shape].setChecked(True)
        self.length.setText(fresh.length)
        self.leg_length.setText(fresh.leg_length)
        self.legs.setValue(fresh.legs)
        self.policy.setCurrentIndex(self.policy.findData(fresh.policy))
        self.order.setText(fresh.order)
        self.draft = self.sketch.draft = fresh
        self.setFocusProxy(self.shapes[fresh.shape])
        self._refresh()

    def set_look(self, look: Look) -> None:
        """Take on a look."""
        super().set_look(look)
        for choice in self.shapes.values():
            choice.look = look
            choice.update()
        self.sketch.look = look
        self.sketch.rebuild()

    # -- made -------------------------------------------------------------------------------

    def _set_up(self) -> None:
        for value, words in POLICY_WORDS:
            self.policy.addItem(words, value)
        self.legs.setRange(2, MOST_LEGS)
        self.legs.setButtonSymbols(QSpinBox.ButtonSymbols.NoButtons)
        self.order.setPlaceholderText("such as SP-0417")
        self.order.setMaxLength(200)
        for field, name, tip in (
            (self.length, "Length", "Such as 1.2 m, 350 mm, 12 in or 4 ft"),
            (self.leg_length, "Length of each leg", "Such as 0.6 m, 350 mm, 12 in or 4 ft"),
            (self.legs, "How many legs", f"2 to {MOST_LEGS}"),
            (self.policy, "Shield lands at", "Where the cable's shield is soldered"),
            (self.order, "Order reference", "Prints on the bench sheet; it may wait"),
        ):
            field.setAccessibleName(name)
            field.setToolTip(tip)
        for shape, choice in self.shapes.items():
            # As with any exclusive choice, Tab stops at the chosen one; arrows go to the others.
            chosen = shape == self.draft.shape
            policy = Qt.FocusPolicy.StrongFocus if chosen else Qt.FocusPolicy.ClickFocus
            choice.setFocusPolicy(policy)
        self.setAccessibleName("New plan")

    def _lay_out(self) -> None:
        inside = QWidget()
        inside.setProperty("surface", "paper")
        column = QVBoxLayout(inside)
        column.setContentsMargins(16, 12, 16, 12)
        column.setSpacing(8)
        column.addLayout(self._step(1, "What shape is the lead?"))
        shapes = QHBoxLayout()
        shapes.setSpacing(16)
        for shape in self.shapes.values():
            shapes.addWidget(shape, 1)
        column.addLayout(shapes)
        column.addSpacing(6)
        questions = QHBoxLayout()
        questions.addLayout(self._step(2, "What is at each end?"))
        questions.addSpacing(40)
        questions.addLayout(self._step(3, "Which cable?"))
        questions.addStretch(1)
        column.addLayout(questions)
        hint = label("Drag it from the shelf, or choose here.", "second")
        hint.setContentsMargins(36, 0, 0, 0)
        column.addWidget(hint)
        column.addWidget(self.sketch, 1)
        column.addLayout(self._last_step())
        self._scroll = QScrollArea()
        self._scroll.setWidgetResizable(True)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._scroll.setWidget(inside)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._scroll)

    def _step(self, number: int, question: str) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(12)
        disc = Drawn((24, 24), self.look, lambda look: step_disc(number, look))
        row.addWidget(disc)
        row.addWidget(label(question, "question"))
        row.addStretch(1)
        return row

    def _last_step(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(12)
        disc = Drawn((24, 24), self.look, lambda look: step_disc(4, look))
        row.addWidget(disc, 0, Qt.AlignmentFlag.AlignBottom)
        self._length_name = label("", "second")
        self._leg_name = label("", "second")
        self._legs_name = label("Legs", "second")
        for name, field, width in (
            (self._length_name, self.length, 96),
            (self._leg_name, self.leg_length, 96),
            (self._legs_name, self.legs, 64),
            (label("Shield lands at", "second"), self.policy, 146),
            (label("Order reference", "second"), self.order, 140),
        ):
            row.addLayout(_above(name, field, width))
        row.addStretch(1)
        last = QVBoxLayout()
        last.setSpacing(4)
        last.addWidget(self.missing, 0, Qt.AlignmentFlag.AlignRight)
        last.addWidget(self.start)
        row.addLayout(last)
        return row

    def _listen(self) -> None:
        for shape, choice in self.shapes.items():
            choice.clicked.connect(partial(self._on_shape, shape))
        self.attach(self.sketch.wanted, self.choose)
        self.attach(self.sketch.dropped, self._on_dropped)
        self.attach(self.length.textChanged, self._on_fields)
        self.attach(self.leg_length.textChanged, self._on_fields)
        self.attach(self.legs.valueChanged, self._on_fields)
        self.attach(self.policy.currentIndexChanged, self._on_fields)
        self.attach(self.order.textChanged, self._on_fields)

    # -- answers ----------------------------------------------------------------------------

    def _on_shape(self, shape: Shape, _on: object = None) -> None:
        self.draft.shape = shape
        self.setFocusProxy(self.shapes[shape])
        self._refresh()

    def _on_fields(self, *_what: object) -> None:
        draft = self.draft
        draft.length, draft.leg_length = self.length.text(), self.leg_length.text()
        draft.legs, draft.order = self.legs.value(), self.order.text()
        value = self.policy.currentData()
        draft.policy = cast("ShieldPolicy", value) if value else None
        self._refresh()

    def _refresh(self) -> None:
        draft, split = self.draft, self.draft.shape != "one"
        self.sketch.rebuild()
        self._order()
        self._length_name.setText("Length to split" if split else "Length")
        self._leg_name.setText("Split to ends" if draft.shape == "two" else "Each leg")
        self._leg_name.setVisible(split)
        self.leg_length.setVisible(split)
        self._legs_name.setVisible(draft.shape == "many")
        self.legs.setVisible(draft.shape == "many")
        for field in (self.length, self.leg_length):
            restyle(field, "wrong", "true" if draft.length_error(field.text()) else "")
        missing = draft.missing()
        self.missing.setText(missing)
        self.start.setEnabled(not missing)
        self.start.setToolTip(missing or "Make the plan and go to its landings (Ctrl+Enter)")

    def _order(self) -> None:
        """Let Tab go through the steps in their order; the sketch makes its buttons anew."""
        fields = (self.length, self.leg_length, self.legs, self.policy, self.order, self.start)
        ends = [self.sketch.buttons[name] for name in (*self.draft.ends(), CABLE)]
        for before, after in pairwise((*self.shapes.values(), *ends, *fields)):
            self.setTabOrder(before, after)

    # -- choosing ---------------------------------------------------------------------------

    def choose(self, name: str) -> None:
        """Ask what is at an end, or which cable."""
        library = self.workbench.library
        if name == CABLE:
            self._ask("Which cable?", "cable", library.cables(), self._take_cable)
            return
        title = f"What is at {self.draft.named(name)}?"
        used = {chosen.connector.id for end, chosen in self.draft.chosen.items() if end != "A"}
        # A second cup is mostly like the first: what is chosen already stands first.
        offered = (record for record in library.connectors() if not is_retired(record))
        among = sorted(offered, key=lambda record: record.id not in used)
        self._ask(title, "connector", among, partial(self._take_connector, name))

    def _ask(self, title: str, kind: str, among: object, picked: object) -> None:
        if self.pick is not None:
            self.pick.deleteLater()
        self.pick = PickList(self.workbench.library, self.look, self)
        self.pick.ask(title, kind, among, picked)  # type: ignore[arg-type]  # as its callers give them

    def _take_connector(self, name: str, record: Definition | None) -> None:
        if not isinstance(record, Connector):
            return
        fitting = self.workbench.library.pinouts_for(record.id)
        self.put(name, Chosen(record, fitting[0] if len(fitting) == 1 else None))
        if len(fitting) > 1:
            title = f"Which pinout has the {record.title}?"
            self._ask(title, "pinout", fitting, partial(self._take_pinout, name, record))

    def _take_pinout(self, name: str, connector: Connector, record: Definition | None) -> None:
        if isinstance(record, PinoutRecord):
            self.put(name, Chosen(connector, record))

    def _take_cable(self, record: Definition | None) -> None:
        if isinstance(record, Cable):
            self.draft.cable = record
            self._refresh()

    def put(self, name: str, chosen: Chosen) -> None:
        """Put a connector at an end of the draft."""
        self.draft.chosen[name] = chosen
        self._refresh()

    def offer(self, record: Definition) -> None:
        """Take a definition from the shelf for the first place that still wants one."""
        if isinstance(record, Cable):
            self._take_cable(record)
        elif isinstance(record, Connector):
            names = [name for name in self.draft.ends() if name not in self.draft.chosen]
            self._take_connector((names or ["A"])[0], record)
        elif isinstance(record, PinoutRecord):
            self._offer_pinout(record)

    def _offer_pinout(self, record: PinoutRecord) -> None:
        for name in self.draft.ends():
            chosen = self.draft.chosen.get(name)
            if chosen and chosen.pinout is None and chosen.connector.id in record.fits:
                self.put(name, Chosen(chosen.connector, record))
                return

    def _on_dropped(self, name: str, dragged: Dragged) -> None:
        library = self.workbench.library
        if dragged.kind == "cable":
            self._take_cable(library.cable(dragged.record_id))
        elif dragged.kind == "connector":
            self._take_connector(name, library.connector(dragged.record_id))
        else:
            self._drop_pinout(name, library.pinout(dragged.record_id))

    def _drop_pinout(self, name: str, record: PinoutRecord | None) -> None:
        chosen = self.draft.chosen.get(name)
        if record is None:
            return
        if chosen is None or chosen.connector.id not in record.fits:
            there = chosen.connector.title if chosen else "an end without a connector"
            self.workbench.refused.emit(
                f"{record.title} is not for {there}", "Choose its plug first."
            )
            return
        self.put(name, Chosen(chosen.connector, record))

    # -- begun ------------------------------------------------------------------------------

    def _on_start(self) -> None:
        if self.draft.missing():
            return
        if self.workbench.do("Begin the lead", self._begun):
            self.started.emit()

    def _begun(self, plan: Plan) -> Plan:
        made = self.draft.build()
        return made.evolve(title=plan.title, remarks=plan.remarks, revision=plan.revision)

    # -- keys -------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """1 to 4 go to the steps; Ctrl+Enter, or Enter in the last field, starts landing."""
        steps: dict[int, QWidget] = {
            int(Qt.Key.Key_1): self.shapes[self.draft.shape],
            int(Qt.Key.Key_2): self._first_open_end(),
            int(Qt.Key.Key_3): self.sketch.buttons[CABLE],
            int(Qt.Key.Key_4): self.length,
        }
        control = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self._enter(control=control)
        elif event.key() in steps and not control:
            steps[event.key()].setFocus(Qt.FocusReason.ShortcutFocusReason)
        else:
            super().keyPressEvent(event)

    def _enter(self, *, control: bool) -> None:
        focused = self.focusWidget()
        if control or focused is self.order:
            self.start.click()
        elif isinstance(focused, QPushButton):
            focused.click()
        elif self.start.isEnabled():
            self.start.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def _first_open_end(self) -> QWidget:
        names = [name for name in self.draft.ends() if name not in self.draft.chosen]
        return self.sketch.buttons[(names or ["A"])[0]]


def _above(name: QWidget, field: QWidget, width: int) -> QVBoxLayout:
    field.setFixedWidth(width)
    column = QVBoxLayout()
    column.setSpacing(4)
    column.addWidget(name)
    column.addWidget(field)
    return column
