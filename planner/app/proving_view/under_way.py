"""The unit that is being proved: all that is read and noted of it so far."""

from collections.abc import Iterable
from functools import cached_property
from typing import TYPE_CHECKING

from pydantic import Field

from planner.files.plans import plan_digest
from planner.model.base import Line, Paragraph, Record
from planner.proving.reading import Contact, Pair, Reading, Readings
from planner.proving.units import (
    MOST_ENTRIES,
    Attachment,
    Expected,
    IsolationMethod,
    Listening,
    Rework,
    UnitRecord,
    UnitVerdict,
    Wiggle,
    asked_of,
    expected_of,
)

if TYPE_CHECKING:
    from planner.app.proving_view.facts import ProofFacts
    from planner.model.plan import Plan

# What a unit under way and its record have alike.
_SHARED = (
    "number", "who", "readings", "remarks", "attachments", "rework", "wiggle", "listening",
)  # fmt: skip


class UnderWay(Record):
    """One unit under way. `heard` are the groups that beeped: which pair in them is not known.

    `zero_asked` tells that the meter's own leads were asked for; `method` how isolation is read.
    """

    number: int = Field(default=1, ge=1)
    who: Line = ""
    begun: Line = ""
    plan_digest: Line = ""  # of the plan when it was begun
    zero_asked: bool = False
    method: IsolationMethod = "pairs"
    readings: Readings = Readings()
    heard: tuple[tuple[Contact, ...], ...] = ()
    remarks: Paragraph = ""
    attachments: tuple[Attachment, ...] = Field(default=(), max_length=MOST_ENTRIES)
    rework: tuple[Rework, ...] = Field(default=(), max_length=MOST_ENTRIES)
    wiggle: tuple[Wiggle, ...] = Field(default=(), max_length=MOST_ENTRIES)
    listening: tuple[Listening, ...] = Field(default=(), max_length=MOST_ENTRIES)

    @cached_property
    def heard_groups(self) -> frozenset[Pair]:
        """The groups that beeped."""
        return frozenset(frozenset(group) for group in self.heard)

    @property
    def empty(self) -> bool:
        """Tell whether nothing was noted of it yet."""
        noted = (self.heard, self.attachments, self.rework, self.wiggle, self.listening)
        return not (self.readings.readings or self.remarks or any(noted))

    def with_readings(self, taken: Iterable[Reading]) -> "UnderWay":
        """Return it with readings more; earlier ones of the same pairs give way."""
        new = {reading.pair: reading for reading in taken}
        kept = tuple(it for it in self.readings.readings if it.pair not in new)
        readings = self.readings.evolve(readings=(*kept, *new.values()))
        return self.evolve(readings=readings)

    def without(self, pairs: Iterable[Pair], groups: Iterable[Pair] = ()) -> "UnderWay":
        """Return it with pairs unread, and groups not heard."""
        gone, quiet = frozenset(pairs), frozenset(groups)
        kept = tuple(it for it in self.readings.readings if it.pair not in gone)
        heard = tuple(it for it in self.heard if frozenset(it) not in quiet)
        return self.evolve(readings=self.readings.evolve(readings=kept), heard=heard)

    def with_heard(self, group: Pair) -> "UnderWay":
        """Return it with a group heard."""
        others = tuple(it for it in self.heard if frozenset(it) != group)
        return self.evolve(heard=(*others, tuple(sorted(group))))

    def record(
        self, plan: "Plan", facts: "ProofFacts", verdict: UnitVerdict, at: str
    ) -> UnitRecord:
        """Return it as it is kept, held against the plan as it is now."""
        sweep, isolation = facts.sweep, facts.isolation(self.method)
        return UnitRecord(
            at=at,
            verdict=verdict,
            plan_digest=plan_digest(plan),
            plan_revision=plan.revision,
            expected=expected_of(sweep) if sweep is not None else Expected(),
            isolation=self.method,
            asked=asked_of(isolation) if isolation is not None else None,
            **{name: getattr(self, name) for name in _SHARED},
        )


def taken_up(record: UnitRecord, begun: str, digest: str) -> UnderWay:
    """Return a kept unit as one under way again."""
    return UnderWay(
        begun=begun,
        plan_digest=digest,
        zero_asked=True,
        method=record.isolation or "pairs",
        **{name: getattr(record, name) for name in _SHARED},
    )
