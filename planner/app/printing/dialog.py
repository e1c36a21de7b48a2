"""The sheet's dialog: its pages as they print, the options beside them, print and save."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QDialog,
    QFormLayout,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QSpinBox,
    QVBoxLayout,
    QWidget,
)

from planner.app.buttons import segment
from planner.app.fonts import BODY, GUIDE, SMALL, font
from planner.app.icons import icon
from planner.app.labels import label, set_tone
from planner.app.panels.widgets.fields import Combo, check
from planner.app.panels.widgets.text_line import TextLine
from planner.app.printing.desk import MOST_DATE, MOST_LEADS, SheetDesk
from planner.app.printing.page_view import PageView
from planner.app.printing.press import chosen_pages, print_pages, printer_for, set_page
from planner.drawing.looks import LIGHT, Look
from planner.problem import InputError

if TYPE_CHECKING:
    from planner.app.dialogs.ask import Ask

_PAPERS = (("a4", "A4"), ("letter", "Letter"))
_LANGUAGES = (("en", "English"), ("de", "Deutsch"))
_ICONS = frozenset({"minus", "plus", "one-scale", "fit"})
_SIZE, _SIDE = (1080, 820), 232
_STOPPED = "This plan has a stop: every page says so, and nothing may be soldered from it."


class SheetDialog(QDialog):
    """Look, choose, print, save; it stays open until it is closed."""

    def __init__(self, parent: QWidget | None, desk: SheetDesk, ask: "Ask") -> None:
        super().__init__(parent)
        self.setWindowTitle("Bench sheet")
        self.desk, self._ask = desk, ask
        self._look: Look = getattr(parent, "look", LIGHT)
        self.view = PageView(self._look)
        self.paper = self._choice("Paper", "paper", _PAPERS)
        self.language = self._choice("Language", "language", _LANGUAGES)
        self.leads = self._leads()
        self.date = self._date()
        self.outlines = check(
            "Text as outlines",
            lambda on: desk.choose(outlines=on),
            "Write letters as shapes, for files that are opened where the face is not installed",
        )
        self.said = label("", SMALL, role="second")
        self.said.setWordWrap(True)
        self._build()
        self._connect()
        self.desk.begin()

    # -- built ----------------------------------------------------------------------------------

    def _choice(self, words: str, key: str, rows: tuple[tuple[str, str], ...]) -> Combo:
        made = Combo()
        made.setAccessibleName(words)
        for value, text in rows:
            made.addItem(text, value)
        made.setCurrentIndex(made.findData(getattr(self.desk.options, key)))
        made.activated.connect(lambda at: self.desk.choose(**{key: made.itemData(at)}))
        return made

    def _leads(self) -> QSpinBox:
        made = QSpinBox()
        made.setRange(1, MOST_LEADS)
        made.setAccessibleName("Leads in the run")
        made.setToolTip("How many leads are built: the cut list tells what all of them take")
        made.setKeyboardTracking(False)
        made.setValue(self.desk.options.leads)
        made.lineEdit().setTextMargins(8, 0, 0, 0)
        made.valueChanged.connect(lambda count: self.desk.choose(leads=count))
        return made

    def _date(self) -> TextLine:
        made = TextLine()
        made.setMaxLength(MOST_DATE)
        made.setAccessibleName("Date")
        made.setToolTip("Printed as it is written; none where it is empty")
        made.setText(self.desk.options.date)
        made.editingFinished.connect(lambda: self.desk.choose(date=made.text().strip()))
        return made

    def _build(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self._side())
        pages = QVBoxLayout()
        pages.setContentsMargins(0, 0, 0, 0)
        pages.setSpacing(0)
        pages.addWidget(self._strip())
        pages.addWidget(self.view, 1)
        row.addLayout(pages, 1)
        parent = self.parentWidget()
        most = parent.size() if parent is not None else self.screen().availableSize()
        wide, high = min(_SIZE[0], most.width() - 24), min(_SIZE[1], most.height() - 24)
        self.resize(max(wide, 560), max(high, 360))

    def _side(self) -> QScrollArea:
        inside = QWidget()
        column = QVBoxLayout(inside)
        column.setContentsMargins(16, 16, 16, 16)
        column.setSpacing(10)
        column.addWidget(label("Bench sheet", GUIDE, bold=True))
        column.addLayout(self._fields())
        column.addWidget(self.outlines)
        if self.desk.stopped:
            stopped = label(_STOPPED, BODY, bold=True)
            stopped.setWordWrap(True)
            set_tone(stopped, "stop")
            column.addWidget(stopped)
        column.addStretch(1)
        column.addWidget(self.said)
        for made in self._buttons():
            column.addWidget(made)
        area = QScrollArea()
        area.setWidget(inside)
        area.setWidgetResizable(True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setFixedWidth(_SIDE)
        return area

    def _fields(self) -> QFormLayout:
        form = QFormLayout()
        form.setHorizontalSpacing(12)
        form.setVerticalSpacing(8)
        for words, field in (
            ("Paper", self.paper),
            ("Language", self.language),
            ("Leads", self.leads),
            ("Date", self.date),
        ):
            name = label(words, BODY, role="second")
            name.setBuddy(field)
            name.setMinimumHeight(32)
            form.addRow(name, field)
        return form

    def _buttons(self) -> tuple[QPushButton, ...]:
        self.print = self._button("Print\u2026", self.print_it, "Ctrl+P", primary=True)
        self.save = self._button("Save as PDF or SVG\u2026", self.save_it, "Ctrl+S")
        self.save_cuts = self._button("Save the cut list\u2026", self.save_the_cuts, "Ctrl+Shift+S")
        self.closing = self._button("Close", self.accept, "")
        return (self.print, self.save, self.save_cuts, self.closing)

    def _button(
        self, text: str, act: Callable[[], object], keys: str, *, primary: bool = False
    ) -> QPushButton:
        made = QPushButton(text)
        made.setFont(font(BODY, bold=True))
        made.setAccessibleName(text.rstrip("\u2026"))
        made.setAutoDefault(False)
        if primary:
            made.setProperty("role", "primary")
            made.setDefault(True)
        made.clicked.connect(lambda _on=False: act())
        if keys:
            made.setToolTip(f"{text.rstrip(chr(0x2026))} ({keys})")
            QShortcut(QKeySequence(keys), self, made.click)  # at once, where it is enabled
        return made

    def _strip(self) -> QWidget:
        holder = QWidget()
        holder.setFixedHeight(44)
        row = QHBoxLayout(holder)
        row.setContentsMargins(16, 0, 16, 0)
        row.setSpacing(0)
        view = self.view
        self.before = self._tool(
            "\u2039", "only", "Page before", "Ctrl+PgUp", lambda: view.step(-1)
        )
        self.after = self._tool("\u203a", "only", "Next page", "Ctrl+PgDown", lambda: view.step(1))
        self.page = label("", BODY, bold=True)
        self.page.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.page.setMinimumWidth(72)
        for part in (self.before, self.page, self.after):
            row.addWidget(part)
        row.addStretch(1)
        self.zoom = self._tool("100 %", "middle", "True size", "Ctrl+0", view.true_size)
        self.zoom.setMinimumWidth(64)
        for part in (
            self._tool("minus", "first", "Smaller", "Ctrl+-", lambda: view.zoom_by(-1)),
            self.zoom,
            self._tool("plus", "middle", "Larger", "Ctrl++", lambda: view.zoom_by(1)),
            self._tool("one-scale", "middle", "Page width", "Ctrl+1", view.fit_width),
            self._tool("fit", "last", "Whole page", "Ctrl+2", view.fit_whole),
        ):
            row.addWidget(part)
        return holder

    def _tool(
        self, face: str, at: str, name: str, keys: str, act: Callable[[], object]
    ) -> QPushButton:
        """Return a small button; its face is the name of an icon, or short words."""
        made = segment("" if face in _ICONS else face, at, self._look)
        if face in _ICONS:
            made.setIcon(icon(face, self._look))
        made.setCheckable(False)
        made.setAutoDefault(False)
        made.setAccessibleName(name)
        made.setToolTip(f"{name} ({keys})")
        made.clicked.connect(lambda _on=False: act())
        QShortcut(QKeySequence(keys), self, act)
        return made

    def _connect(self) -> None:
        self.desk.changed.connect(self._show_busy)
        self.desk.ready.connect(self._show_pages)
        self.finished.connect(lambda _how: self.desk.let_go())
        self.view.shown.connect(self._show_where)

    # -- shown ----------------------------------------------------------------------------------

    def _show_busy(self) -> None:
        """Nothing is printed or saved before its pages have been seen."""
        for part in (self.print, self.save):
            part.setEnabled(not self.desk.busy)
        self.say("The pages are being drawn\u2026" if self.desk.busy else "")

    def _show_pages(self) -> None:
        self.view.show_pages(self.desk.pages)
        self._show_busy()

    def _show_where(self) -> None:
        view = self.view
        self.page.setText(f"{view.number} of {view.count}")
        self.zoom.setText(f"{round(view.zoom * 100)} %")
        self.before.setEnabled(view.number > 1)
        self.after.setEnabled(view.number < view.count)

    def say(self, text: str) -> None:
        """Say what was done."""
        self.said.setText(text)
        self.said.setToolTip(text)

    # -- done -----------------------------------------------------------------------------------

    def print_it(self) -> None:
        """Ask for the printer, and print at true size."""
        self._take_fields()
        printer = printer_for(self.desk.options.paper, self.desk.file_name(""))
        if not self._ask.printer(self, printer, len(self.desk.pages)):
            return
        set_page(printer, self.desk.options.paper)
        pages = chosen_pages(printer, self.desk.pages)
        if print_pages(printer, pages):
            self.desk.printed = True
            self.say(f"Printed: {len(pages)} pages. Measure the check bar.")
        else:
            self.say("The printer took nothing: is it on, and has it paper?")

    def save_it(self) -> None:
        """Ask where to, and write the pages as PDF or SVG."""
        self._take_fields()
        path = self._ask.where_to_write_sheet(self.desk.file_name(".pdf"))
        if path is not None:
            self._write(path, "The bench sheet can\u2019t be written")

    def save_the_cuts(self) -> None:
        """Ask where to, and write the cut list."""
        self._take_fields()
        path = self._ask.where_to_write_cuts(self.desk.file_name(" cut list.csv"))
        if path is not None:
            self._write(path, "The cut list can\u2019t be written")

    def _write(self, path: object, wrong: str) -> None:
        try:
            made = self.desk.write(path)  # type: ignore[arg-type] # Ask gives a Path
        except InputError as error:
            self._ask.trouble(wrong, error.problems)
            return
        self.say("Written: " + ", ".join(name.name for name in made))

    def _take_fields(self) -> None:
        """Take what is still being typed."""
        self.leads.interpretText()
        self.desk.choose(date=self.date.text().strip(), leads=self.leads.value())
