"""What the readings of a unit show against what it was held against: path by path, net by net."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from typing import Literal

from planner.files.plans import plan_digest
from planner.model.plan import Plan
from planner.proving.expected import expected_sweep
from planner.proving.limits import limit_of
from planner.proving.probing import isolation_plans
from planner.proving.reading import Contact, Reading, Readings
from planner.proving.units import (
    Asked,
    Expected,
    ExpectedPath,
    IsolationMethod,
    UnitRecord,
    UnitVerdict,
    asked_of,
    broken_ends,
    expected_of,
    wrong_tones,
)
from planner.proving.unseen import StopLine
from planner.wiring.graph import Wiring

Standing = Literal["good", "heard", "through", "high", "open", "unread"]
NetPair = frozenset[int]


@dataclass(frozen=True, slots=True)
class JudgedPath:
    """A path with its reading; `own_ohm` is the reading less the meter's zero.

    `unread` is also what reads far below the meter's zero: that zero can't be right. `heard`: it
    beeped, without a figure. `through`: not read itself, but joined by way of others that were read
    good.
    """

    path: ExpectedPath
    reading: Reading | None
    own_ohm: float | None
    standing: Standing


@dataclass(frozen=True)
class Judgement:
    """A unit's readings against the expected sweep, and the pairs asked for, of its record.

    `by_plan` tells that these are the plan's own, and not only what the record says of them.
    """

    record: UnitRecord
    by_plan: bool = False

    @property
    def expected(self) -> Expected:
        """What the unit was held against."""
        return self.record.expected

    @property
    def readings(self) -> Readings:
        """What was read."""
        return self.record.readings

    @cached_property
    def net_of(self) -> dict[Contact, int]:
        """The number of the net that each contact should be in."""
        pairs = [(path.one, path.other) for path in self.expected.paths]
        return _groups(self.expected.contacts, pairs)

    @cached_property
    def paths(self) -> tuple[JudgedPath, ...]:
        """Each expected path, in the order of the record."""
        return tuple(self._judged(path) for path in self.expected.paths)

    @cached_property
    def further(self) -> tuple[JudgedPath, ...]:
        """Readings between two contacts of one net that are no path of their own."""
        known = {frozenset((path.one, path.other)) for path in self.expected.paths}
        return tuple(
            self._judged(self._path_between(reading.one, reading.other))
            for reading in self.readings.by_pair.values()
            if reading.pair not in known and self._in_one_net(reading.one, reading.other)
        )

    @cached_property
    def apart(self) -> tuple[Reading, ...]:
        """Readings of two nets that are open, as they should be."""
        return tuple(reading for reading in self._across if not reading.joined)

    @cached_property
    def bridges(self) -> tuple[Reading, ...]:
        """Readings of two nets that are joined, which they should not be."""
        return tuple(reading for reading in self._across if reading.joined)

    @cached_property
    def all_pairs(self) -> frozenset[NetPair]:
        """Every two nets: they must not be joined."""
        return frozenset(map(frozenset, combinations(set(self.net_of.values()), 2)))

    @cached_property
    def asked_pairs(self) -> frozenset[NetPair]:
        """The pairs of nets that must be read: all, unless a plan that stops somewhere is kept."""
        asked = self.record.asked
        if asked is None:
            return self.all_pairs
        return frozenset(self._nets(*pair) for pair in asked.pairs) & self.all_pairs

    @cached_property
    def open_pairs(self) -> frozenset[NetPair]:
        """The pairs of nets that were read open."""
        return self._nets_of(self.apart)

    @cached_property
    def pairs_left(self) -> frozenset[NetPair]:
        """The pairs of nets that were asked for and not read."""
        return self.asked_pairs - self.open_pairs - self._nets_of(self.bridges)

    @cached_property
    def pairs_beyond(self) -> frozenset[NetPair]:
        """The pairs of nets that were neither asked for nor read."""
        return self.all_pairs - self.asked_pairs - self._nets_of(self._across)

    @cached_property
    def stop(self) -> StopLine | None:
        """Where isolation was to stop; None where every pair of nets was asked for."""
        asked = self.record.asked
        if asked is None:
            return None
        lines = {line.end: line.mm for line in asked.stop}
        return StopLine(lines, len(self.all_pairs) - len(self.asked_pairs))

    @cached_property
    def faults(self) -> int:
        """How many readings are not as they should be."""
        wrong = [one for one in (*self.paths, *self.further) if one.standing in {"high", "open"}]
        return len(wrong) + len(self.bridges)

    @cached_property
    def broken_ends(self) -> tuple[str, ...]:
        """The ends at which the contact broke when they were last bent."""
        return broken_ends(self.record.wiggle)

    @cached_property
    def heard_otherwise(self) -> tuple[str, ...]:
        """The tones that were last heard otherwise than expected, or not at all."""
        return wrong_tones(self.record.listening)

    @cached_property
    def good(self) -> int:
        """How many paths are joined well, be it only heard, or shown by way of others."""
        return sum(path.standing in {"good", "heard", "through"} for path in self.paths)

    @cached_property
    def unread(self) -> tuple[JudgedPath, ...]:
        """The paths of which nothing is known."""
        return tuple(path for path in self.paths if path.standing == "unread")

    @cached_property
    def verdict(self) -> UnitVerdict:
        """The record's verdict, or a worse one where its readings don't bear it out.

        Passed needs every path read good, every pair of nets that was asked for read open, and
        nothing that broke or sounded otherwise when it was last tried.
        """
        wrong = self.faults or self.broken_ends or self.heard_otherwise
        if wrong or self.record.verdict == "failed":
            return "failed"
        if self.unread or self.pairs_left or not self.expected.contacts:
            return "unfinished"
        return self.record.verdict

    @cached_property
    def _across(self) -> tuple[Reading, ...]:
        return tuple(
            reading
            for reading in self.readings.by_pair.values()
            if len(self._nets(reading.one, reading.other)) == 2
        )

    def _nets_of(self, readings: Iterable[Reading]) -> frozenset[NetPair]:
        return frozenset(self._nets(reading.one, reading.other) for reading in readings)

    def _nets(self, one: Contact, other: Contact) -> NetPair:
        """Return the nets of two contacts; a contact that is not known is in none."""
        known = (self.net_of.get(one), self.net_of.get(other))
        return frozenset(net for net in known if net is not None)

    def _in_one_net(self, one: Contact, other: Contact) -> bool:
        net = self.net_of.get(one)
        return net is not None and net == self.net_of.get(other)

    def _judged(self, path: ExpectedPath) -> JudgedPath:
        reading = self.readings.of(path.one, path.other)
        if reading is None:
            groups = self._joined_groups
            through = groups.get(path.one) == groups.get(path.other) is not None
            return JudgedPath(path, None, None, "through" if through else "unread")
        own = self.readings.own_ohm(reading)
        if self.readings.under_zero(reading):
            return JudgedPath(path, reading, own, "unread")
        return JudgedPath(path, reading, own, _standing(reading, own, path.limit_ohm))

    @cached_property
    def _joined_groups(self) -> dict[Contact, int]:
        """The contacts by what the good readings join."""
        return _groups(self.expected.contacts, self._good_pairs())

    def _good_pairs(self) -> Iterator[tuple[Contact, Contact]]:
        for reading in self.readings.by_pair.values():
            if reading.joined and self._in_one_net(reading.one, reading.other):
                limit = self._path_between(reading.one, reading.other).limit_ohm
                own = self.readings.own_ohm(reading)
                under = self.readings.under_zero(reading)
                if not under and _standing(reading, own, limit) in {"good", "heard"}:
                    yield reading.one, reading.other

    def _path_between(self, one: Contact, other: Contact) -> ExpectedPath:
        """Return the path of two contacts of a net; by way of its first one if none is kept."""
        kept = self._path_of.get(frozenset((one, other)))
        if kept is not None:
            return kept
        parts = [self._path_to.get(contact, 0.0) for contact in (one, other)]
        known = [part for part in parts if part is not None]
        limit_ohm, rule = limit_of(sum(known) if len(known) == 2 else None)
        return ExpectedPath(one=one, other=other, limit_ohm=limit_ohm, rule=rule.key)

    @cached_property
    def _path_of(self) -> dict[frozenset[Contact], ExpectedPath]:
        return {frozenset((path.one, path.other)): path for path in self.expected.paths}

    @cached_property
    def _path_to(self) -> dict[Contact, float | None]:
        """The wire's resistance from the first contact of its net to each other one, ohm."""
        return {path.other: path.ohm for path in self.expected.paths}


class Judging:
    """Judge units against a plan: what it expects and asks for is worked out once."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.digest = plan_digest(plan)

    def is_stale(self, record: UnitRecord) -> bool:
        """Tell whether the plan has changed since, in anything."""
        return record.plan_digest != self.digest

    def judged(self, record: UnitRecord) -> Judgement:
        """Judge a unit by the plan itself; where that has changed since, by what its record keeps.

        A record that keeps nothing of a plan that has changed since is judged by nothing.
        """
        if self.is_stale(record):
            return Judgement(record)
        own = record.evolve(expected=self._expected, asked=self._asked(record.isolation))
        return Judgement(own, by_plan=True)

    @cached_property
    def _wiring(self) -> Wiring:
        return Wiring(self.plan)

    @cached_property
    def _expected(self) -> Expected:
        return expected_of(expected_sweep(self.plan, self._wiring))

    @cached_property
    def _asked_by(self) -> dict[str, Asked | None]:
        return {it.method: asked_of(it) for it in isolation_plans(self.plan, self._wiring)}

    def _asked(self, method: IsolationMethod) -> Asked | None:
        """Return the pairs of the plan by the method that the record says; else every pair."""
        return self._asked_by[method] if method else None


def _standing(reading: Reading, own_ohm: float | None, limit_ohm: float) -> Standing:
    if not reading.joined:
        return "open"
    if own_ohm is None:
        return "heard"
    return "good" if own_ohm <= limit_ohm else "high"


def _groups(
    contacts: Iterable[Contact], pairs: Iterable[tuple[Contact, Contact]]
) -> dict[Contact, int]:
    """Return a number for each contact, the same for those that the pairs join."""
    members = {contact: [contact] for contact in contacts}
    for one, other in pairs:
        first = members.setdefault(one, [one])
        second = members.setdefault(other, [other])
        if first is not second:
            first.extend(second)
            members |= dict.fromkeys(second, first)
    numbers: dict[int, int] = {}
    return {one: numbers.setdefault(id(net), len(numbers)) for one, net in members.items()}
