"""A sample being measured: readings with undo, and what they tell, worked out aside."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from planner.app.fitting.errands import Errands
from planner.app.intake.drafting import Drafting
from planner.proving.entries import EntryError, parse_entry
from planner.proving.identifying import Identified, SampleReading, SampleReadings, identify
from planner.proving.identifying.asking import unread
from planner.proving.identifying.signals import Proposal, as_signals

if TYPE_CHECKING:
    from planner.model.connector import Connector

_NOTHING = SampleReadings(contacts=("1", "2"))
Couple = tuple[str, str]


class Sample(QObject):
    """Hold the readings of one sample; `told` when what they tell is another."""

    told = Signal()
    pair_changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.drafting: Drafting[SampleReadings] = Drafting(_NOTHING, self)
        self.identified: Identified | None = None
        self.answers: dict[str, str] = {}
        self.pair: Couple = ("1", "2")
        self._by_hand = False
        self._errands = Errands(self)
        self._errands.done.connect(self._on_done)
        self.drafting.changed.connect(self._renew)

    @property
    def readings(self) -> SampleReadings:
        """What was read so far."""
        return self.drafting.draft

    @property
    def proposal(self) -> Proposal:
        """What is known of each contact, and what is still to be asked."""
        return as_signals(self.identified) if self.identified is not None else Proposal({}, ())

    @property
    def done(self) -> bool:
        """Tell whether one understanding is left."""
        return self.identified is not None and self.identified.certain

    @property
    def by_hand(self) -> bool:
        """Tell whether the pair under the probes was chosen rather than proposed."""
        return self._by_hand

    def begin(self, connector: "Connector") -> None:
        """Begin with a connector's contacts, nothing read."""
        self.answers, self.identified = {}, None
        names = tuple(it.id for it in connector.contacts)
        zero = self.readings.meter
        self.pair = (names[0], names[1]) if len(names) > 1 else (names[0], "shell")
        contacts = names if len(names) > 1 else (*names, "shell")
        self.drafting.begin(SampleReadings(contacts=contacts, meter=zero))

    def set_meter(self, **figures: object) -> None:
        """Say what the meter shows with its probes together, or its error."""
        meter = self.readings.meter.evolve(**figures)
        self.drafting.do("Meter", lambda it: it.evolve(meter=meter))

    def probe(self, pair: Couple) -> None:
        """Read another pair than the one that is proposed."""
        if pair[0] != pair[1]:
            self.pair, self._by_hand = pair, True
            self.pair_changed.emit()

    def read(self, typed: str) -> str:
        """Take the reading of the pair under the probes; return what is wrong, or nothing."""
        try:
            entry = parse_entry(typed)
        except EntryError as error:
            return str(error)
        one, other = self.pair
        reading = SampleReading(one=one, other=other, joined=entry.joined, ohm=entry.ohm)
        self._by_hand = False
        self.drafting.do(f"{one} to {other}", lambda it: it.taken(reading))
        return ""

    def unread(self, pair: Couple) -> None:
        """Take a reading back."""
        self.drafting.do(f"Unread {pair[0]} to {pair[1]}", lambda it: it.without(*pair))

    def answer(self, question: str, answer: str) -> None:
        """Answer one of the questions that the meter can't."""
        self.answers = {**self.answers, question: answer}
        self.told.emit()

    def _renew(self) -> None:
        readings = self.readings
        if not readings.readings:
            self._errands.call_off()
            self._on_done(None)
            return
        self._propose(None)
        self._errands.start(lambda _progress, _off: identify(readings))

    def _on_done(self, found: Identified | None) -> None:
        self.identified = found
        known = {question.key for question in self.proposal.questions}
        self.answers = {key: it for key, it in self.answers.items() if key in known}
        self._propose(found)
        self.told.emit()

    def _propose(self, found: Identified | None) -> None:
        """Put the probes on the pair that tells most; at first on the next one not read."""
        if self._by_hand:
            return
        following = found.next_reading if found is not None else None
        if following is not None:
            self.pair = (following.one, following.other)
        else:
            left = unread(self.readings)
            self.pair = left[0] if left else self.pair
        self.pair_changed.emit()

    def let_go(self) -> None:
        """Stop what is under way."""
        self._errands.let_go()
