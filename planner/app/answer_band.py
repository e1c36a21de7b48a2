"""The answer band: may the iron be heated, what is left to land, which plan this is, main acts."""

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from planner.app.actions import Actions
from planner.app.answer import NEW_PLAN, Answer, counted
from planner.app.arrangement import Form
from planner.app.buttons import ActionButton, set_tight
from planner.app.canvas.paint import paint
from planner.app.fonts import BODY, HEAD, SMALL, font
from planner.app.labels import ElidedLabel, MarkLabel, divider, label, set_tone
from planner.drawing.looks import Look
from planner.drawing.marks import mark

MOST_CUPS = 12
# Below this width the plan's title stands in the window's corner, px.
PLAN_WIDTH = 1360
_LAND = "Land by signal"
_CUP_STEP = 16
_MARK_RADIUS = {Form.WIDE: 24, Form.COMPACT: 18, Form.COLUMN: 16}
_TITLE_SIZE = {Form.WIDE: 28, Form.COMPACT: 22, Form.COLUMN: 18}


class CupRow(QWidget):
    """One cup for each landing, full, in hand or empty; one cup for all where there are many."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._states: tuple[str, ...] = ()
        self.setFixedHeight(16)

    def show_cups(self, landed: int, hand: int, empty: int, look: Look) -> None:
        """Show so many cups of each kind."""
        self._look = look
        states = ("landed",) * landed + ("hand",) * hand + ("empty",) * empty
        self._states = states if len(states) <= MOST_CUPS else states[-1:]
        self.setFixedWidth(max(1, len(self._states) * _CUP_STEP))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the cups."""
        with QPainter(self) as painter:
            for index, state in enumerate(self._states):
                at = (index * _CUP_STEP + _CUP_STEP / 2, self.height() / 2)
                paint(painter, mark(state, at, 8, self._look))  # type: ignore[arg-type] # from a tuple


class AnswerBand(QWidget):
    """Show one answer. It knows nothing of plans: `show_answer` and `show_plan` are told to it."""

    def __init__(self, actions: Actions, look: Look) -> None:
        super().__init__()
        self._look = look
        self._form = Form.WIDE
        self._answer = NEW_PLAN
        self._hand = 0
        self.mark = MarkLabel("nothing", 24, look)
        self.title = label("", 28, bold=True)
        self.sentence = ElidedLabel(BODY, floor=120)
        self.cautions_mark = MarkLabel("caution", 9, look)
        self.cautions = label("", BODY, bold=True)
        self.cups = CupRow(look)
        self.landed = label("", BODY)
        self.plan_title = ElidedLabel(HEAD, bold=True, floor=60)
        self.plan_order = ElidedLabel(BODY, role="second", floor=60)
        self._build_buttons(actions, look)
        self._build()
        self.show_answer(NEW_PLAN)

    def _build_buttons(self, actions: Actions, look: Look) -> None:
        self.undo = ActionButton(actions["undo"], look, icon_name="undo")
        self.redo = ActionButton(actions["redo"], look, icon_name="redo")
        self.go = ActionButton(actions["go_finding"], look, text="Go")
        self.land = ActionButton(actions["land_by_signal"], look, text=_LAND)
        self.sheet = ActionButton(actions["sheet"], look, text="Bench sheet", icon_name="sheet")
        self.sheet.setProperty("role", "primary")
        self.sheet.set_look(look)
        for button in (self.undo, self.redo):
            button.setProperty("role", "tool")
            button.setFixedSize(40, 32)

    def _build(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 0, 16, 0)
        row.setSpacing(0)
        row.addWidget(self.mark)
        row.addSpacing(12)
        row.addWidget(self._answer_column())
        self._counts = self._counts_column()
        row.addWidget(self._counts)
        self._plan = self._plan_column()
        row.addWidget(self._plan, 1000)
        row.addStretch(1)
        for button, gap in (
            (self.go, 8),
            (self.undo, 4),
            (self.redo, 16),
            (self.land, 8),
            (self.sheet, 0),
        ):
            row.addWidget(button)
            row.addSpacing(gap)

    def _answer_column(self) -> QWidget:
        self._column = QWidget()
        column = QVBoxLayout(self._column)
        column.setContentsMargins(0, 0, 24, 0)
        column.setSpacing(0)
        column.addStretch(1)
        column.addWidget(self.title)
        column.addWidget(self.sentence)
        column.addStretch(1)
        self._column.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        return self._column

    def _counts_column(self) -> QWidget:
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(0, 0, 24, 0)
        row.setSpacing(16)
        row.addWidget(divider())
        column = QVBoxLayout()
        column.setSpacing(4)
        column.addStretch(1)
        for widgets in ((self.cautions_mark, self.cautions), (self.cups, self.landed)):
            line = QHBoxLayout()
            line.setSpacing(8)
            for widget in widgets:
                line.addWidget(widget)
            line.addStretch(1)
            column.addLayout(line)
        column.addStretch(1)
        row.addLayout(column)
        return made

    def _plan_column(self) -> QWidget:
        made = QWidget()
        row = QHBoxLayout(made)
        row.setContentsMargins(0, 0, 16, 0)
        row.setSpacing(24)
        row.addWidget(divider())
        column = QVBoxLayout()
        column.setSpacing(2)
        column.addStretch(1)
        column.addWidget(self.plan_title)
        column.addWidget(self.plan_order)
        column.addStretch(1)
        row.addLayout(column, 1)
        return made

    def show_answer(self, answer: Answer, *, in_hand: bool = False) -> None:
        """Show the answer, and whether one of what is left to land is in hand."""
        self._answer, self._hand = answer, min(int(in_hand), answer.to_land)
        self.mark.show_mark(answer.kind, _MARK_RADIUS[self._form], self._look)
        self.title.setText(answer.title)
        set_tone(self.title, answer.tone)
        # A change of tone polishes anew, which brings back the font of the first polish.
        self.title.setFont(font(_TITLE_SIZE[self._form], bold=True))
        self.sentence.setText(answer.sentence)
        told = answer.kind != "caution" and answer.cautions > 0
        self.cautions_mark.setVisible(told)
        self.cautions.setVisible(told)
        self.cautions.setText(counted(answer.cautions, "caution"))
        self._show_cups()
        self.setAccessibleName(f"{answer.title}. {answer.sentence}")
        self.go.setVisible(self._form is Form.COLUMN and answer.kind in {"stop", "caution"})

    def _show_cups(self) -> None:
        answer = self._answer
        total = answer.landed + answer.to_land
        self.landed.setText(
            answer.landed_words if self._form is Form.WIDE else f"{answer.landed} of {total}"
        )
        self.landed.setToolTip(answer.landed_words)
        cups = self._form is Form.WIDE
        self.cups.setVisible(cups and total > 0)
        self.cups.show_cups(answer.landed, self._hand, answer.to_land - self._hand, self._look)
        self.landed.setVisible(total > 0)
        self._counts.setVisible(total > 0 or answer.cautions > 0)

    def show_plan(self, title: str, order: str, revision: int) -> None:
        """Show which plan this is; nothing for one that has neither title nor order."""
        self.plan_title.setText(title or "Untitled plan")
        told = f"Order {order}, revision {revision}" if order else f"Revision {revision}"
        self.plan_order.setText(told)
        self._titled = bool(title or order)
        self._plan.setVisible(self._titled and self.tells_plan)

    _titled = False

    @property
    def tells_plan(self) -> bool:
        """Tell whether the band has room for which plan this is."""
        return self._form is Form.WIDE and self.width() >= PLAN_WIDTH

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the plan its place, or leave it to the corner."""
        super().resizeEvent(event)
        self._plan.setVisible(self._titled and self.tells_plan)

    def set_form(self, form: Form) -> None:
        """Fit the band's height: one line of counts, and icons only, where there is little room."""
        self._form = form
        self.sentence.setFont(font(SMALL if form is Form.COLUMN else BODY))
        self._column.setMinimumWidth(335 if form is Form.WIDE else 0)
        wide = form is not Form.COLUMN
        self.land.show_icon("" if wide else "land")
        self.land.show_words(_LAND if wide else "")
        self.sheet.show_words("Bench sheet" if wide else "")
        for button in (self.land, self.sheet):
            set_tight(button, tight=not wide)
        self._plan.setVisible(self._titled and self.tells_plan)
        self.show_answer(self._answer, in_hand=bool(self._hand))

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._look = look
        for button in (self.undo, self.redo, self.go, self.land, self.sheet):
            button.set_look(look)
        self.cautions_mark.show_mark("caution", 9, look)
        self.show_answer(self._answer, in_hand=bool(self._hand))
