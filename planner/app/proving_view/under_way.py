"""The unit that is being proved: what was read of it so far, and how that is said and kept."""

from collections.abc import Iterable
from functools import cached_property

from pydantic import Field

from planner.model.base import Line, Paragraph, Record
from planner.proving.reading import Contact, Pair, Reading, Readings


class UnderWay(Record):
    """One unit under way. `heard` are the groups that beeped: which pair in them is not known.

    `zero_asked` tells that the meter's own leads were asked for; `method` how isolation is read.
    """

    number: int = Field(default=1, ge=1)
    who: Line = ""
    begun: Line = ""
    zero_asked: bool = False
    method: Line = "pairs"
    readings: Readings = Readings()
    heard: tuple[tuple[Contact, ...], ...] = ()
    remarks: Paragraph = ""

    @cached_property
    def heard_groups(self) -> frozenset[Pair]:
        """The groups that beeped."""
        return frozenset(frozenset(group) for group in self.heard)

    def with_readings(self, taken: Iterable[Reading]) -> "UnderWay":
        """Return it with readings more; earlier ones of the same pairs give way."""
        new = {reading.pair: reading for reading in taken}
        kept = tuple(it for it in self.readings.readings if it.pair not in new)
        readings = self.readings.evolve(readings=(*kept, *new.values()))
        return self.evolve(readings=readings)

    def without(self, pairs: Iterable[Pair], group: Pair) -> "UnderWay":
        """Return it with pairs unread, and a group not heard."""
        gone = frozenset(pairs)
        kept = tuple(it for it in self.readings.readings if it.pair not in gone)
        heard = tuple(it for it in self.heard if frozenset(it) != group)
        return self.evolve(readings=self.readings.evolve(readings=kept), heard=heard)

    def with_heard(self, group: Pair) -> "UnderWay":
        """Return it with a group heard."""
        others = tuple(it for it in self.heard if frozenset(it) != group)
        return self.evolve(heard=(*others, tuple(sorted(group))))
