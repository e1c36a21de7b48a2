"""Listen through the lead: the caution first, tones to play or to write, what was heard."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QHideEvent, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from planner.app.buttons import ActionButton
from planner.app.panels.widgets.fields import Field
from planner.app.panels.widgets.labels import Head, label, line
from planner.app.panels.widgets.panel import Panel
from planner.app.panels.widgets.rows import MarkedLine
from planner.app.panels.widgets.scrolled import scrolled
from planner.app.proving_view.player import Player
from planner.app.proving_view.tone_card import ANSWERS, ToneCard
from planner.model.signals import channel_of
from planner.proving.identifying.telling import CELL_CAUTION, CELL_TEST, NOT_TOLD
from planner.proving.tones import (
    CEILING_DBFS,
    DEFAULT_DBFS,
    FLOOR_DBFS,
    LOUD_CAUTION,
    SEGMENTS,
    UNPROVED_CAUTION,
    Segment,
)
from planner.proving.units import Listening
from planner.units import number

if TYPE_CHECKING:
    from planner.app.actions import Actions
    from planner.app.proving_view.state import Proving
    from planner.drawing.looks import Look
    from planner.proving.diagnosing import Diagnosis

_LEVELS = f"{number(FLOOR_DBFS)} to {number(CEILING_DBFS)}"
_LEVEL_TIP = f"Of a sine against a full-scale sine: {_LEVELS}"
_NO_UNIT = "Begin a unit first: what is heard belongs to it."
_NO_PLAYER = (
    "This system has no program that plays a sound file. Write the tones as a file and play it "
    "from another device, quietly first."
)
# Common practice, no source.
_SPEAK = "Speak into it. It is heard clean, without hum."
_OTHER = "Anything else that you listened to, such as a piece of music that you know well."


class ListenPane(Panel):
    """The caution stays in sight; below it the state of the lead, the tones, and polarity."""

    def __init__(self, proving: "Proving", actions: "Actions", look: "Look") -> None:
        super().__init__(proving.workbench, look)
        self.proving = proving
        self.player = Player(self)
        self.caution = MarkedLine("caution", LOUD_CAUTION, look)
        self.unproved = MarkedLine("stop", "", look)
        self.begin = label(_NO_UNIT, wrap=True)
        self.level_dbfs = DEFAULT_DBFS
        self.level = Field("Level, dBFS", self._on_level, _LEVEL_TIP, 84)
        self.trouble, self._said = label("", "error", wrap=True), ""
        self.file = ActionButton(actions["test_tones"], look)
        self.cards = [self._card(it) for it in SEGMENTS]
        self.microphone = ToneCard("microphone", "microphone", _SPEAK, look, played=False)
        other = ToneCard("other", "another", _OTHER, look, played=False)
        self.cards += [self.microphone, other]
        self.setAccessibleName("Listen")
        self.setFocusProxy(self.cards[0].play)
        self.level.show_text(number(self.level_dbfs))
        self._build()
        for card in self.cards:
            card.heard.connect(partial(self.hear, card))
        self.attach(self.player.changed, self._show_playing)
        self.attach(self.player.failed, self._show_trouble)
        self.attach(proving.unit_changed, self.renew)
        self.attach(proving.judge.changed, self.renew)
        self.attach(proving.taken_up, self.player.stop)
        self.attach(self.workbench.plan_changed, lambda _changes: self.renew())
        self.set_look(look)
        self.renew()

    def _card(self, segment: Segment) -> ToneCard:
        card = ToneCard(segment.tone, segment.title, segment.hear, self.look, played=True)
        card.play_wanted.connect(partial(self.play_or_stop, segment))
        return card

    def _build(self) -> None:
        self.caution.words.setProperty("tone", "small")
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.setSpacing(0)
        top = QVBoxLayout()
        top.setContentsMargins(12, 8, 12, 6)
        top.addWidget(self.caution)
        outer.addLayout(top)
        outer.addWidget(line())
        inside = QWidget()
        inside.setProperty("surface", "clear")
        self._fill(inside)
        outer.addWidget(scrolled(inside, "Listen"), 1)

    def _fill(self, inside: QWidget) -> None:
        column = QVBoxLayout(inside)
        column.setContentsMargins(12, 8, 12, 12)
        column.setSpacing(4)
        for part in (self.unproved, self.begin, self.level, self.trouble):
            column.addWidget(part)
        for card in self.cards:
            column.addWidget(line())
            column.addWidget(card)
        row = QHBoxLayout()
        row.addWidget(self.file)
        row.addStretch(1)
        column.addLayout(row)
        column.addWidget(line())
        column.addWidget(Head("Polarity", "section"))
        column.addWidget(label(NOT_TOLD, "small", wrap=True))
        column.addWidget(label(CELL_TEST, "small", wrap=True))
        column.addWidget(MarkedLine("caution", CELL_CAUTION, self.look))
        column.addStretch(1)

    # -- played -----------------------------------------------------------------------------------

    def _on_level(self, typed: str) -> str:
        """Take a level within what is safe; return what is wrong with it, or nothing."""
        try:
            level_dbfs = float(typed.replace("\u2212", "-").replace(",", "."))
        except ValueError:
            return f"A figure from {_LEVELS}."
        if not FLOOR_DBFS <= level_dbfs <= CEILING_DBFS:
            return f"From {_LEVELS}. Turn up the amplifier slowly instead."
        self.level_dbfs = level_dbfs
        self.level.show_text(number(level_dbfs))
        return ""

    def play_or_stop(self, segment: Segment) -> None:
        """Play a tone, or end it where it sounds."""
        if self.player.playing is segment:
            self.player.stop()
        else:
            self._show_trouble("")
            self.player.play(segment, self.level_dbfs)

    def _show_playing(self) -> None:
        playing = self.player.playing
        for card in self.cards:
            card.show_playing(playing=playing is not None and playing.tone == card.tone)

    def _show_trouble(self, text: str) -> None:
        self._said, can = text, bool(self.player.commands)
        self.trouble.setText(text if can else _NO_PLAYER)
        self.trouble.setVisible(bool(self.trouble.text()))
        for card in self.cards:
            card.play.setEnabled(can)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """End the tone on Esc."""
        if event.key() == Qt.Key.Key_Escape and self.player.playing is not None:
            self.player.stop()
        else:
            super().keyPressEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        """End the tone: none sounds out of sight of its Stop."""
        super().hideEvent(event)
        self.player.stop()

    def detach(self) -> None:
        """End the tone, and let go of the workbench."""
        self.player.let_go()
        super().detach()

    # -- heard ------------------------------------------------------------------------------------

    def hear(self, card: ToneCard, answer: str) -> None:
        """Note what a tone sounded like, as one undo step; the answer before stays in the list."""
        unit = self.proving.unit
        if unit is not None and answer != self._last().get(card.tone):
            heard = next(it for it, _words in ANSWERS if it == answer)
            entry = Listening(tone=card.tone, heard=heard)
            if not self.proving.noting.add(f"Heard {card.title}", "listening", entry):
                self.renew()

    def _last(self) -> dict[str, str]:
        """Return what was heard last, by tone."""
        unit = self.proving.unit
        return {it.tone: it.heard for it in unit.listening} if unit is not None else {}

    def renew(self) -> None:
        """Show how far the lead is proved, and what was heard."""
        unit, made, last = self.proving.unit, self.proving.judge.diagnosis, self._last()
        sound = made is not None and made.verdict == "sound"
        self.unproved.setVisible(not sound)
        self.unproved.words.setText(_unproved(made))
        self.begin.setVisible(unit is None)
        for card in self.cards:
            card.show_answer(last.get(card.tone, ""), can=unit is not None)
        signals = self.workbench.wiring.signals.values()
        spoken = any(channel_of(one) == "mic" for ones in signals for one in ones)
        self.microphone.setVisible(spoken or "microphone" in last)
        self._show_trouble(self._said)

    def set_look(self, look: "Look") -> None:
        """Draw in another look."""
        super().set_look(look)
        self.file.set_look(look)


def _unproved(made: "Diagnosis | None") -> str:
    faulty = made is not None and made.verdict == "faulty"
    how = "The meter found a fault" if faulty else "Not shown right by meter yet"
    return f"{how}: prove by meter first. {UNPROVED_CAUTION}"
