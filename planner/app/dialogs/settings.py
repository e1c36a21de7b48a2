"""The settings dialog: what the bench is called, how figures are shown, and where libraries lie."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QListWidget,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from planner.app.dialogs.message import Choice, buttons_row
from planner.app.fonts import BODY, GUIDE, font
from planner.app.labels import label
from planner.app.panels.widgets.fields import Combo
from planner.app.panels.widgets.text_line import TextLine
from planner.app.settings import CHOICES, Settings

_ROWS = (
    ("units", "Lengths", ("millimetres", "inches")),
    ("gauge", "Wire sizes", ("AWG first", "mm\u00b2 first")),
    ("paper", "Paper of the sheet", ("A4", "Letter")),
    ("language", "Language of the sheet", ("English", "Deutsch")),
    ("theme", "Light or dark", ("as the system", "light", "dark")),
)
_LONGEST_NAME = 60


class SettingsDialog(QDialog):
    """Change settings; nothing is stored before OK."""

    def __init__(
        self,
        parent: QWidget | None,
        settings: Settings,
        ask_folder: Callable[[], Path | None],
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Settings")
        self.setMinimumWidth(520)
        self._settings = settings
        self._ask_folder = ask_folder
        self.bench_name = TextLine()
        self.bench_name.setMaxLength(_LONGEST_NAME)
        self.bench_name.setText(settings.bench_name)
        self.bench_name.setPlaceholderText("Shown at the top right")
        self.choices = {key: self._combo(key, words) for key, _, words in _ROWS}
        self.folders = QListWidget()
        self.folders.addItems([str(folder) for folder in settings.folders])
        self.autosave = QCheckBox("Keep a copy for recovery while I work")
        self.autosave.setChecked(settings.autosave)
        self._build()

    def _combo(self, key: str, words: tuple[str, ...]) -> Combo:
        made = Combo()
        for value, text in zip(CHOICES[key], words, strict=True):
            made.addItem(text, value)
        made.setCurrentIndex(CHOICES[key].index(self._settings.choice(key)))
        return made

    def _build(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        column.addWidget(label("Settings", GUIDE, bold=True))
        column.addLayout(self._fields())
        column.addWidget(label("Your own library folders", BODY, role="second"))
        column.addWidget(self.folders)
        column.addLayout(self._folder_buttons())
        column.addWidget(self.autosave)
        row, (ok, cancel) = buttons_row(
            (Choice("ok", "OK", primary=True), Choice("cancel", "Cancel", escape=True))
        )
        ok.clicked.connect(self.accept)
        cancel.clicked.connect(self.reject)
        column.addSpacing(4)
        column.addLayout(row)

    def _fields(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(8)
        rows: list[tuple[str, QWidget]] = [("Name of the bench", self.bench_name)]
        rows += [(words, self.choices[key]) for key, words, _ in _ROWS]
        for row, (words, field) in enumerate(rows):
            name = label(words, BODY)
            name.setBuddy(field)
            field.setAccessibleName(words)
            grid.addWidget(name, row, 0)
            grid.addWidget(field, row, 1)
        grid.setColumnStretch(1, 1)
        return grid

    def _folder_buttons(self) -> QHBoxLayout:
        self.folders.setAccessibleName("Library folders")
        self.folders.setMinimumHeight(84)
        row = QHBoxLayout()
        for words, slot in (("Add\u2026", self._on_add), ("Remove", self._on_remove)):
            button = QPushButton(words)
            button.setFont(font(BODY, bold=True))
            button.setAutoDefault(False)
            button.setAccessibleName(f"{words.rstrip(chr(0x2026))} a library folder")
            button.clicked.connect(slot)
            row.addWidget(button)
        row.addStretch(1)
        return row

    def listed(self) -> tuple[Path, ...]:
        """Return the folders that are in the list."""
        return tuple(Path(self.folders.item(row).text()) for row in range(self.folders.count()))

    def _on_add(self) -> None:
        folder = self._ask_folder()
        if folder is not None and folder not in self.listed():
            self.folders.addItem(str(folder))

    def _on_remove(self) -> None:
        row = self.folders.currentRow()
        if row >= 0:
            self.folders.takeItem(row)

    def accept(self) -> None:
        """Store everything, and close."""
        self._settings.bench_name = self.bench_name.text()
        for key, combo in self.choices.items():
            self._settings.choose(key, str(combo.currentData()))
        self._settings.folders = self.listed()
        self._settings.autosave = self.autosave.isChecked()
        super().accept()
