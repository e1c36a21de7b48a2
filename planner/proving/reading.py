"""What a meter showed between two contacts, and with which meter. What is not there is unknown."""

from functools import cached_property
from typing import Annotated

from pydantic import Field, model_validator

from planner.model.base import Line, Record

Contact = tuple[str, str]  # end, contact
Pair = frozenset[Contact]

# From here a hand meter's figure counts as open: fingers on the probes read 0.1 to 2 megohm.
OPEN_FROM_OHM = 10_000.0

Ohm = Annotated[float, Field(ge=0, le=1e12)]


class Meter(Record):
    """The meter: what it shows with its probes together, and its error.

    A reading R is good to `percent` of R and `offset_ohm` besides; the figures given here are
    typical of a hand meter (from memory) and are to be set after the meter's own sheet.
    """

    name: Line = ""
    zero_ohm: Ohm = 0.0
    percent: float = Field(default=1.0, ge=0, le=50)
    offset_ohm: float = Field(default=0.1, ge=0, le=100)

    def error_ohm(self, ohm: float) -> float:
        """Return how far off a reading of `ohm` may be, ohm."""
        return ohm * self.percent / 100 + self.offset_ohm


class Reading(Record):
    """One reading between two contacts.

    `joined` says whether a current can flow. `ohm` is as shown, the meter's zero not taken off;
    None where only a beep was heard, and where open.
    """

    one: Contact
    other: Contact
    joined: bool
    ohm: Ohm | None = None

    @model_validator(mode="after")
    def _makes_sense(self) -> "Reading":
        if self.one == self.other:
            msg = "a contact is not measured against itself"
            raise ValueError(msg)
        if self.ohm is not None and not self.joined:
            msg = "an open pair has no resistance"
            raise ValueError(msg)
        return self

    @property
    def pair(self) -> Pair:
        """The two contacts in any order."""
        return frozenset((self.one, self.other))


class Readings(Record):
    """All that was read on one unit. A pair that was not read is unknown, never open."""

    meter: Meter = Meter()
    readings: tuple[Reading, ...] = ()

    @cached_property
    def by_pair(self) -> dict[Pair, Reading]:
        """Readings by pair; of two of one pair the later counts."""
        return {reading.pair: reading for reading in self.readings}

    def of(self, one: Contact, other: Contact) -> Reading | None:
        """Return the reading of a pair, or None where it was not read."""
        return self.by_pair.get(frozenset((one, other)))

    def taken(self, reading: Reading) -> "Readings":
        """Return these with one more; an earlier one of the pair gives way."""
        kept = tuple(it for it in self.readings if it.pair != reading.pair)
        return self.evolve(readings=(*kept, reading))

    def without(self, one: Contact, other: Contact) -> "Readings":
        """Return these with a pair unread."""
        pair = frozenset((one, other))
        return self.evolve(readings=tuple(it for it in self.readings if it.pair != pair))

    def own_ohm(self, reading: Reading) -> float | None:
        """Return a reading less the meter's zero, not below 0; None where there is no figure."""
        return None if reading.ohm is None else max(reading.ohm - self.meter.zero_ohm, 0.0)

    def under_zero(self, reading: Reading) -> bool:
        """Tell whether a figure is below the meter's zero by more than the errors of both.

        Then the zero is not the one it was read with, and the figure says nothing.
        """
        ohm, zero_ohm = reading.ohm, self.meter.zero_ohm
        if ohm is None:
            return False
        return ohm + self.meter.error_ohm(ohm) + self.meter.error_ohm(zero_ohm) < zero_ohm
