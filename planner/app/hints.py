"""The hints strip: the keys for what is under way at the left, what is saved at the right."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from planner.app.fonts import SMALL
from planner.app.labels import ElidedLabel, label

Hint = tuple[str, str]

# What the keys do, by the panel that has the focus; `hand` while a core is in hand.
HINTS: dict[str, tuple[Hint, ...]] = {
    "canvas": (
        ("Drag", "a core to a contact"),
        ("Ctrl+L", "landings"),
        ("G", "land by signal"),
        ("N", "next finding"),
        ("F6", "next panel"),
        ("F1", "all keys"),
    ),
    "fitting": (
        ("Drag", "turns the plug"),
        ("\u2190 \u2192", "1\u00b0, Shift 15\u00b0"),
        ("B", "best turn"),
        ("\u2191 \u2193", "joint"),
        ("Alt+\u2191 \u2193", "earlier, later"),
        ("S", "sleeve"),
        ("O", "best order"),
        ("F1", "all keys"),
    ),
    "work": (
        ("\u2191 \u2193", "step"),
        ("Alt+\u2191 \u2193", "earlier, later"),
        ("Drag", "moves a step"),
        ("C", "computed order"),
        ("P", "parts as proposed"),
        ("F6", "next panel"),
        ("F1", "all keys"),
    ),
    "proving": (
        ("0.12", "ohm"),
        ("o", "open"),
        ("b", "beep"),
        ("Enter", "takes it, next unread"),
        ("\u2191 \u2193", "row"),
        ("Del", "unreads"),
        ("F6", "next panel"),
        ("F1", "all keys"),
    ),
    "wiggle": (
        ("Enter", "begins, notes and goes on"),
        ("Space", "the beep broke"),
        ("\u2190 \u2192", "end"),
        ("Esc", "drops it"),
        ("U", "next unread"),
        ("F6", "next panel"),
    ),
    "hand": (
        ("Drop", "lands it"),
        ("Shift", "exchanges with a landed core"),
        ("Esc", "puts it back"),
        ("F6", "next panel"),
    ),
    "landings": (
        ("\u2191 \u2193", "core"),
        ("\u2190 \u2192", "end"),
        ("r1, tip, 3", "contact"),
        ("Enter", "lands, next core"),
        ("Del", "lifts"),
        ("X", "exchanges"),
        ("Shift+C", "spare, capped"),
        ("F6", "next panel"),
    ),
    "shelf": (
        ("/", "search"),
        ("\u2191 \u2193", "rows"),
        ("Enter", "use it"),
        ("F6", "next panel"),
    ),
    "findings": (("Enter", "go there"), ("Ctrl+Enter", "mend"), ("F6", "next panel")),
    "in_hand": (("Tab", "next field"), ("F6", "next panel")),
    "guide": (
        ("1 to 4", "steps"),
        ("Tab", "next field"),
        ("Enter", "choose"),
        ("Ctrl+Enter", "start landing"),
        ("/", "search the shelf"),
        ("F6", "next panel"),
        ("F1", "all keys"),
    ),
}
GESTURE_KEYS: tuple[Hint, ...] = (
    ("Drag a core's tip", "to a contact: lands it; off its contact: lifts it"),
    ("Click a core, click a contact", "the same without dragging"),
    ("Shift while dropping", "exchanges with the core that is there"),
    ("M, held", "shows the mating side for as long as it is held"),
    ("Space", "picks up the core that the focus is on"),
    ("Esc", "puts back what is in hand, or closes the notice"),
    ("New plan: Ctrl+Enter", "starts landing, once all is chosen"),
    ("Dry fit: drag the plug or the dial", "turns the plug, Shift by 15\u00b0; one undo step"),
    (
        "Dry fit: \u2190 \u2192, wheel",
        "turn by 1\u00b0, with Shift by 15\u00b0; Home turns back to 0",
    ),
    ("Dry fit: \u2191 \u2193", "go through the joints in the order of soldering"),
    ("Dry fit: Alt+\u2191, Alt+\u2193", "solder the joint earlier, later"),
    ("Dry fit: S", "puts a sleeve over the joint, or takes it off"),
    ("Dry fit: Esc", "calls off the turn, the search, the drag"),
    ("Order of work: \u2191 \u2193", "go through the steps; what a step is done at is selected"),
    ("Order of work: Alt+\u2191, Alt+\u2193, drag", "do a step earlier, later; Esc puts it back"),
    ("Prove: Enter", "begins a unit; takes what is typed and goes to the next unread reading"),
    ("Prove: 0.12, 1.2k, o, b", "a figure in ohm, open, or only a beep; Delete unreads"),
    ("Prove: \u2191 \u2193, Tab, Shift+Tab", "take what is typed and go down or up a row"),
    ("Wiggle: Enter, Space, Esc", "begins and notes an end; the beep broke; drops it"),
    ("Wiggle: \u2190 \u2192", "choose the end that is flexed"),
    ("Listen: Esc", "ends the tone that sounds"),
    ("Landings: arrows", "choose the core and the end"),
    ("Landings: r1, tip, 3 and Enter", "lands the core on that contact and goes to the next core"),
    ("Landings: Delete, X, Shift+C", "lifts, exchanges, marks as spare and capped"),
)


class HintsStrip(QWidget):
    """Show hints for a context and the state of saving."""

    def __init__(self) -> None:
        super().__init__()
        self._context = ""
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(16, 0, 16, 0)
        self._row.setSpacing(8)
        self._shown: list[QWidget] = []
        self.state = ElidedLabel(SMALL, role="small", floor=60)
        self._row.addStretch(1)
        self._row.addWidget(self.state)
        self.state.setAccessibleDescription("What is saved")

    @property
    def context(self) -> str:
        """Which hints are shown."""
        return self._context

    def show_hints(self, context: str) -> None:
        """Show the keys of a context of HINTS."""
        if context == self._context or context not in HINTS:
            return
        self._context = context
        for widget in self._shown:
            self._row.removeWidget(widget)
            widget.hide()
            widget.deleteLater()
        self._shown = []
        for index, (key, words) in enumerate(HINTS[context]):
            self._add(index, key, words)
        self.setAccessibleName("; ".join(f"{key} {words}" for key, words in HINTS[context]))
        self._hide_what_does_not_fit()

    def _add(self, index: int, key: str, words: str) -> None:
        pair = QWidget()
        row = QHBoxLayout(pair)
        row.setContentsMargins(0, 0, 8, 0)
        row.setSpacing(6)
        cap = label(key, SMALL, bold=True, role="key")
        cap.setFixedHeight(20)
        row.addWidget(cap)
        row.addWidget(label(words, SMALL, role="small"))
        self._row.insertWidget(index, pair)
        self._shown.append(pair)

    def show_state(self, text: str) -> None:
        """Tell what is saved."""
        self.state.setText(text)
        self._hide_what_does_not_fit()

    def resizeEvent(self, event: object) -> None:
        """Show as many hints as there is room for; F1 has them all."""
        self._hide_what_does_not_fit()

    def _hide_what_does_not_fit(self) -> None:
        left = self.width() - 48 - self.state.sizeHint().width()
        for pair in self._shown:
            left -= pair.sizeHint().width() + 8
            pair.setVisible(left >= 0)
