"""Fields that commit once, on Enter or when left, and say below what is wrong."""

from collections.abc import Callable, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPaintEvent, QPen, QWheelEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QStyle,
    QStyleOptionComboBox,
    QStylePainter,
    QVBoxLayout,
    QWidget,
)

from planner.app.panels.widgets.labels import label, restyle
from planner.app.panels.widgets.text_line import TextLine
from planner.app.workbench import Edit, Workbench

Commit = Callable[[str], str]


def attempt(workbench: Workbench, text: str, edit: Edit) -> str:
    """Do an edit as one undo step; return why it was refused, or nothing."""
    said: list[str] = []

    def hear(reason: str, mend: str) -> None:
        said.append(f"{reason}. {mend}" if mend else reason)

    workbench.refused.connect(hear)
    try:
        workbench.do(text, edit)
    finally:
        workbench.refused.disconnect(hear)
    return said[0] if said else ""


class Line(TextLine):
    """A line that calls `commit` with its text when that was changed and the field is left.

    `commit` returns what is wrong, or nothing. Esc brings the committed text back.
    """

    def __init__(self, name: str, commit: Commit, error: QLabel) -> None:
        super().__init__()
        self._commit = commit
        self._error = error
        self._kept = ""
        self.setAccessibleName(name)
        self.editingFinished.connect(self._on_finished)

    def show_text(self, text: str) -> None:
        """Show the committed text; what is being typed is left alone."""
        if self.hasFocus() and self.isModified() and text == self._kept:
            return
        self._kept = text
        self.setText(text)
        self.setModified(False)
        self.show_error("")

    def show_error(self, text: str) -> None:
        """Say below the field what is wrong, or clear it."""
        restyle(self, "wrong", "true" if text else "")
        self._error.setText(text)
        self._error.setVisible(bool(text))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Esc as going back to what was there."""
        if event.key() == Qt.Key.Key_Escape and self.isModified():
            self.setText(self._kept)
            self.setModified(False)
            self.show_error("")
            return
        super().keyPressEvent(event)

    def settle(self) -> bool:
        """Commit now what was typed; tell whether it was taken."""
        self._on_finished()
        return not self._error.text()

    def _on_finished(self) -> None:
        if self.isModified() and self.text() != self._kept:
            self.setModified(False)
            wrong = self._commit(self.text().strip())
            self.show_error(wrong)
            self.setModified(bool(wrong))


class Field(QWidget):
    """A name, a `Line`, and its error below."""

    def __init__(self, name: str, commit: Commit, tip: str = "", name_width: int = 84) -> None:
        super().__init__()
        self.error = label("", "error", wrap=True)
        self.error.hide()
        self.line = Line(name, commit, self.error)
        self.line.setToolTip(tip)
        named(self, name, self.line, name_width, below=self.error)

    def show_text(self, text: str) -> None:
        """Show the committed text."""
        self.line.show_text(text)


class Combo(QComboBox):
    """A list to choose from, with its chevron drawn in the colour of the text."""

    def __init__(self) -> None:
        super().__init__()
        self.setMinimumContentsLength(6)
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the box with its words shortened to fit, then the chevron."""
        painter = QStylePainter(self)
        option = QStyleOptionComboBox()
        self.initStyleOption(option)
        words = QFontMetrics(self.font())
        room = self.width() - 40
        option.currentText = words.elidedText(self.currentText(), Qt.TextElideMode.ElideRight, room)
        painter.drawComplexControl(QStyle.ComplexControl.CC_ComboBox, option)
        painter.drawControl(QStyle.ControlElement.CE_ComboBoxLabel, option)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(self.foregroundRole()), 1.6))
        x, y = self.width() - 16.0, self.height() / 2 - 2
        painter.drawPolyline([QPointF(x - 4.5, y), QPointF(x, y + 4.5), QPointF(x + 4.5, y)])
        painter.end()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the panel's scrolling: it must not change the plan."""
        event.ignore()


class Choice(QWidget):
    """A name and a list of (value, words) to choose one from; `chosen` gets the value."""

    def __init__(
        self,
        name: str,
        choices: Sequence[tuple[str, str]],
        chosen: Callable[[str], object],
        name_width: int = 84,
    ) -> None:
        super().__init__()
        self.box = Combo()
        self.box.setAccessibleName(name)
        self.set_choices(choices)
        self.box.activated.connect(lambda at: chosen(str(self.box.itemData(at))))
        named(self, name, self.box, name_width)

    def set_choices(self, choices: Sequence[tuple[str, str]]) -> None:
        """Offer other choices."""
        self.box.clear()
        for value, words in choices:
            self.box.addItem(words, value)

    def show_value(self, value: str) -> None:
        """Show which is chosen."""
        self.box.setCurrentIndex(self.box.findData(value))


class Notes(QPlainTextEdit):
    """Several lines of text that call `commit` when the field is left."""

    def __init__(self, name: str, commit: Callable[[str], object]) -> None:
        super().__init__()
        self._commit = commit
        self._kept = ""
        self.setAccessibleName(name)
        self.setTabChangesFocus(True)
        self.setFixedHeight(72)

    def show_text(self, text: str) -> None:
        """Show the committed text."""
        if text != self._kept or not self.hasFocus():
            self._kept = text
            self.setPlainText(text)

    def focusOutEvent(self, event: object) -> None:
        """Commit what was changed."""
        super().focusOutEvent(event)  # type: ignore[arg-type]  # Qt hands on its own event
        if self.toPlainText() != self._kept:
            self._kept = self.toPlainText()
            self._commit(self._kept)


class Check(QCheckBox):
    """A check box that draws its own box and tick, so that both looks show them alike."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw box, tick and words; the focus frames them."""
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            ink = self.palette().color(self.foregroundRole())
            top = (self.height() - 16) / 2
            painter.setPen(QPen(ink, 1.2))
            painter.setBrush(self.palette().base())
            painter.drawRoundedRect(QRectF(1, top, 16, 16), 3, 3)
            if self.isChecked():
                painter.setPen(QPen(ink, 2.2))
                painter.drawPolyline(
                    [QPointF(5, top + 8), QPointF(8, top + 11), QPointF(13, top + 5)]
                )
            painter.setPen(ink)
            words = self.rect().adjusted(26, 0, 0, 0)
            painter.drawText(words, int(Qt.AlignmentFlag.AlignVCenter), self.text())
            if self.hasFocus():
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.setPen(QPen(ink, 2))
                painter.drawRect(self.rect().adjusted(0, 1, -1, -2))


def check(text: str, clicked: Callable[[bool], object], tip: str = "") -> Check:
    """Make a check box that calls `clicked` only when a person turns it."""
    made = Check(text)
    made.setToolTip(tip)
    made.setAccessibleName(text)
    made.clicked.connect(clicked)
    return made


def named(
    holder: QWidget, name: str, field: QWidget, width: int, *, below: QWidget | None = None
) -> None:
    """Lay out a name, its field right of it, and something below the field."""
    words = label(name, "second")
    words.setBuddy(field)
    words.setFixedWidth(width)
    row = QHBoxLayout()
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(4)
    row.addWidget(words)
    row.addWidget(field, 1)
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(2)
    column.addLayout(row)
    if below is not None:
        column.addWidget(below)
