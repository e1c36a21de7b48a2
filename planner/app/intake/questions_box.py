"""What no meter tells of a sample: which ear, which leg is plus; with how to find out."""

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.panels.widgets.fields import Combo
from planner.app.panels.widgets.labels import Head, label

if TYPE_CHECKING:
    from planner.drawing.looks import Look
    from planner.proving.identifying.signals import Question


class QuestionsBox(QWidget):
    """A question each with its answers; made anew only where the questions are others."""

    def __init__(self, answer: Callable[[str, str], object]) -> None:
        super().__init__()
        self._answer = answer
        self._shown: tuple[Question, ...] = ()
        self.boxes: dict[str, Combo] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)

    def show_questions(self, questions: "Sequence[Question]", answers: Mapping[str, str]) -> None:
        """Show questions with what was answered."""
        if tuple(questions) != self._shown:
            self._shown = tuple(questions)
            self._make()
        for key, box in self.boxes.items():
            box.setCurrentIndex(max(box.findData(answers.get(key, "")), 0))

    def _make(self) -> None:
        while (item := self._column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.deleteLater()
        self.boxes = {}
        if self._shown:
            self._column.addWidget(Head("What no meter tells"))
        said: set[str] = set()
        for question in self._shown:
            self._column.addWidget(label(question.words, "bold", wrap=True))
            for words, tone in ((question.caution, "bold"), (_numbered(question.steps), "")):
                if words and words not in said:
                    self._column.addWidget(label(words, tone, wrap=True))
                    said.add(words)
            box = Combo()
            box.setAccessibleName(question.words)
            box.addItem("not answered yet", "")
            for value, words in question.choices:
                box.addItem(words, value)
            box.activated.connect(partial(self._on_activated, question.key))
            self.boxes[question.key] = box
            self._column.addWidget(box)

    def _on_activated(self, key: str, at: int) -> None:
        self._answer(key, str(self.boxes[key].itemData(at)))

    def set_look(self, look: "Look") -> None:
        """Take on a look; the style sheet does the rest."""
        self.update()


def _numbered(steps: Sequence[str]) -> str:
    if len(steps) == 1:
        return steps[0]
    return "\n".join(f"{at}. {step}" for at, step in enumerate(steps, start=1))
