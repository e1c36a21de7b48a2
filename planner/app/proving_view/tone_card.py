"""One tone to listen to: play it, what is to be heard, and what was heard."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QFrame, QHBoxLayout, QVBoxLayout

from planner.app.buttons import segment
from planner.app.panels.widgets.labels import button, label

if TYPE_CHECKING:
    from planner.drawing.looks import Look
    from planner.proving.units import Heard, Tone

ANSWERS: "tuple[tuple[Heard, str], ...]" = (
    ("as-expected", "As it should"),
    ("otherwise", "Otherwise"),
    ("not-heard", "Not heard"),
)


class ToneCard(QFrame):
    """A title with Play, the words, and a strip of answers; without `played` there is no Play."""

    play_wanted = Signal()
    heard = Signal(str)

    def __init__(self, tone: "Tone", title: str, hear: str, look: "Look", *, played: bool) -> None:
        super().__init__()
        self.tone, self.title = tone, title
        self.play = button("Play", self.play_wanted.emit)
        if not played:
            self.play.hide()
        self.hear = label(hear, "small", wrap=True)
        self.answers = {
            answer: segment(words, at, look)
            for (answer, words), at in zip(ANSWERS, ("first", "middle", "last"), strict=True)
        }
        self._group = QButtonGroup(self)
        self._build()
        self.show_playing(playing=False)

    def _build(self) -> None:
        head = QHBoxLayout()
        head.addWidget(label(self.title[:1].upper() + self.title[1:], "bold"), 1)
        head.addWidget(self.play)
        strip = QHBoxLayout()
        strip.setSpacing(0)
        for answer, made in self.answers.items():
            made.setAccessibleName(f"{self.title}: {made.text().lower()}")
            made.clicked.connect(partial(self._on_answer, answer))
            self._group.addButton(made)
            strip.addWidget(made)
        strip.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 6)
        column.setSpacing(4)
        column.addLayout(head)
        column.addWidget(self.hear)
        column.addLayout(strip)

    def _on_answer(self, answer: str, _on: bool = True) -> None:  # noqa: FBT001, FBT002 - Qt's
        self.heard.emit(answer)

    def show_playing(self, *, playing: bool) -> None:
        """Show whether this tone sounds."""
        self.play.setText("Stop" if playing else "Play")
        self.play.setAccessibleName(f"{self.play.text()}: {self.title}")

    def show_answer(self, answer: str, *, can: bool) -> None:
        """Show what was heard last; nothing for an empty answer."""
        self._group.setExclusive(False)
        for each, made in self.answers.items():
            made.setChecked(each == answer)
            made.setEnabled(can)
        self._group.setExclusive(True)
