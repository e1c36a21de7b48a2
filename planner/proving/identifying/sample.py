"""What was read between the contacts of a sample: a socket, a lead's end, a headphone."""

from dataclasses import dataclass
from enum import Flag
from functools import cached_property

from pydantic import Field, model_validator

from planner.model.base import Ident, Record
from planner.model.connector import Connector
from planner.problem import InputError
from planner.proving.reading import OPEN_FROM_OHM, Meter, Ohm

SHORT_BELOW_OHM = 2.5
WIRE_OHM = 0.5  # what the wire of a joined pair may add; typical, from memory
MOST_CONTACTS = 64
SHELL_NAMES = frozenset({"shell", "chassis", "case", "body"})

Couple = tuple[str, str]


class Join(Flag):
    """How two contacts may hang together."""

    SHORT = 1
    PATH = 2
    OPEN = 4


ANY = Join.SHORT | Join.PATH | Join.OPEN


class SampleReading(Record):
    """One reading, the meter's plus probe on `one`. `ohm` is as shown, its zero not taken off."""

    one: Ident
    other: Ident
    joined: bool
    ohm: Ohm | None = None

    @model_validator(mode="after")
    def _makes_sense(self) -> "SampleReading":
        if self.one == self.other:
            msg = f"{self.one} is measured against itself"
            raise ValueError(msg)
        if self.ohm is not None and not self.joined:
            msg = "an open pair has no resistance"
            raise ValueError(msg)
        return self


@dataclass(frozen=True, slots=True)
class Seen:
    """All that was read of one pair: the figures in ohm less the zero, and how it is joined.

    `one_way` says that a current flows one way round and not the other.
    """

    pair: Couple
    figures: tuple[float, ...]
    join: Join
    one_way: bool = False


class SampleReadings(Record):
    """The contacts of a sample and what was read; a pair not read is unknown, never open.

    A pair may be read both ways round, which shows a microphone. `shells` are contacts known to be
    the shell or a screen, besides those that are called so.
    """

    contacts: tuple[Ident, ...] = Field(min_length=2, max_length=MOST_CONTACTS)
    readings: tuple[SampleReading, ...] = ()
    meter: Meter = Meter()
    shells: tuple[Ident, ...] = ()

    @model_validator(mode="after")
    def _known_contacts(self) -> "SampleReadings":
        if len(set(self.contacts)) < len(self.contacts):
            msg = "a contact stands twice"
            raise ValueError(msg)
        named = {name for it in self.readings for name in (it.one, it.other)} | set(self.shells)
        strangers = sorted(named - set(self.contacts))
        if strangers:
            msg = f"{strangers[0]!r} is not among the contacts"
            raise ValueError(msg)
        return self

    def taken(self, reading: SampleReading) -> "SampleReadings":
        """Return these with one more; an earlier one of the same way round gives way."""
        same = (reading.one, reading.other)
        kept = tuple(it for it in self.readings if (it.one, it.other) != same)
        return self.evolve(readings=(*kept, reading))

    def without(self, one: str, other: str) -> "SampleReadings":
        """Return these with a pair unread, both ways round."""
        kept = tuple(it for it in self.readings if {it.one, it.other} != {one, other})
        return self.evolve(readings=kept)

    def is_shell(self, contact: str) -> bool:
        """Tell whether a contact is known to be the shell."""
        return contact in self.shells or contact.casefold() in SHELL_NAMES

    @cached_property
    def place_of(self) -> dict[str, int]:
        """The number of each contact."""
        return {name: at for at, name in enumerate(self.contacts)}

    @cached_property
    def seen(self) -> dict[Couple, Seen]:
        """What was read, by pair in the order of the contacts; both ways round together."""
        place = self.place_of
        latest = {(it.one, it.other): it for it in self.readings}
        by_pair: dict[Couple, list[SampleReading]] = {}
        for (one, other), reading in latest.items():
            pair = (one, other) if place[one] < place[other] else (other, one)
            by_pair.setdefault(pair, []).append(reading)
        ordered = sorted(by_pair, key=lambda pair: (place[pair[0]], place[pair[1]]))
        return {pair: self._seen(pair, by_pair[pair]) for pair in ordered}

    def _seen(self, pair: Couple, readings: list[SampleReading]) -> Seen:
        opens = [not it.joined or (it.ohm or 0.0) >= OPEN_FROM_OHM for it in readings]
        figures = tuple(
            max(it.ohm - self.meter.zero_ohm, 0.0)
            for it, is_open in zip(readings, opens, strict=True)
            if it.ohm is not None and not is_open
        )
        if all(opens):
            return Seen(pair, (), Join.OPEN)
        if any(opens):
            return Seen(pair, figures, Join.PATH, one_way=True)
        return Seen(pair, figures, self._joined(figures))

    def _joined(self, figures: tuple[float, ...]) -> Join:
        """Tell a short from a path of some ohm; both where the meter can't tell them apart."""
        doubt = self.meter.error_ohm(SHORT_BELOW_OHM) + WIRE_OHM
        may = Join.SHORT | Join.PATH
        if any(ohm > SHORT_BELOW_OHM + 2 * doubt for ohm in figures):
            may &= ~Join.SHORT
        if any(ohm < SHORT_BELOW_OHM - doubt for ohm in figures):
            may &= ~Join.PATH
        return may


def sample_of(connector: Connector, meter: Meter) -> SampleReadings:
    """Return a sample of a connector with nothing read yet; its contacts go by their ids.

    InputError where it has one contact only, or more than can be identified.
    """
    contacts = connector.contacts
    if not 2 <= len(contacts) <= MOST_CONTACTS:
        raise InputError.single(
            f"a sample has 2 to {MOST_CONTACTS} contacts, this connector has {len(contacts)}",
            connector.id,
            "Choose the connector that the sample has.",
        )
    shells = tuple(each.id for each in contacts if each.name.casefold() in SHELL_NAMES)
    return SampleReadings(contacts=tuple(each.id for each in contacts), meter=meter, shells=shells)
