"""What the readings of a unit show against what it was held against: path by path, net by net."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from typing import Literal

from planner.model.plan import Plan
from planner.proving.expected import expected_sweep
from planner.proving.limits import limit_of
from planner.proving.reading import Contact, Reading, Readings
from planner.proving.units import (
    Clipped,
    Expected,
    ExpectedPath,
    UnitRecord,
    UnitVerdict,
    broken_ends,
    expected_of,
    stale,
    wrong_tones,
)
from planner.wiring.graph import Wiring

Standing = Literal["good", "heard", "through", "high", "open", "unread"]


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
    """A unit's readings against the expected sweep that its record keeps."""

    record: UnitRecord

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
    def bridged_clips(self) -> tuple[Clipped, ...]:
        """Readings by clips that are joined, which they should not be."""
        clips = self.record.clipped
        return tuple(clip for clip in clips if clip.joined and not self._in_touch(clip))

    @cached_property
    def opened_clips(self) -> tuple[Clipped, ...]:
        """Readings by clips that are open, though a net has contacts on both sides."""
        clips = self.record.clipped
        return tuple(clip for clip in clips if not clip.joined and self._in_touch(clip))

    @cached_property
    def net_pairs(self) -> int:
        """How many pairs of nets there are that must not be joined."""
        nets = len(set(self.net_of.values()))
        return nets * (nets - 1) // 2

    @cached_property
    def pairs_read(self) -> int:
        """How many pairs of nets were read open, by pairs or by clips."""
        found = {self._nets(reading.one, reading.other) for reading in self.apart}
        for clip in self.record.clipped:
            if not clip.joined:
                found |= {self._nets(*pair) for pair in product(clip.one, clip.other)}
        return len({pair for pair in found if len(pair) == 2})

    @cached_property
    def faults(self) -> int:
        """How many readings are not as they should be."""
        wrong = [one for one in (*self.paths, *self.further) if one.standing in {"high", "open"}]
        clips = len(self.bridged_clips) + len(self.opened_clips)
        return len(wrong) + len(self.bridges) + clips

    @cached_property
    def broken_ends(self) -> tuple[str, ...]:
        """The ends at which the contact broke when they were last bent."""
        return broken_ends(self.record.wiggle)

    @cached_property
    def heard_otherwise(self) -> tuple[str, ...]:
        """The tones that were last heard otherwise than expected, or not at all."""
        return wrong_tones(self.record.listening)

    @cached_property
    def unread(self) -> tuple[JudgedPath, ...]:
        """The paths of which nothing is known."""
        return tuple(path for path in self.paths if path.standing == "unread")

    @cached_property
    def verdict(self) -> UnitVerdict:
        """The record's verdict, or a worse one where its readings don't bear it out.

        Passed needs every path read good, isolation read at all where there is any, and nothing
        that broke or sounded otherwise when it was last tried.
        """
        wrong = self.faults or self.broken_ends or self.heard_otherwise
        if wrong or self.record.verdict == "failed":
            return "failed"
        nothing_apart = self.net_pairs > 0 and self.pairs_read == 0
        if self.unread or nothing_apart or not self.expected.contacts:
            return "unfinished"
        return self.record.verdict

    @cached_property
    def _across(self) -> tuple[Reading, ...]:
        return tuple(
            reading
            for reading in self.readings.by_pair.values()
            if len(self._nets(reading.one, reading.other)) == 2
        )

    def _nets(self, one: Contact, other: Contact) -> frozenset[int]:
        """Return the nets of two contacts; a contact that is not known is in none."""
        known = (self.net_of.get(one), self.net_of.get(other))
        return frozenset(net for net in known if net is not None)

    def _in_one_net(self, one: Contact, other: Contact) -> bool:
        net = self.net_of.get(one)
        return net is not None and net == self.net_of.get(other)

    def _in_touch(self, clip: Clipped) -> bool:
        return any(self._in_one_net(*pair) for pair in product(clip.one, clip.other))

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


def judged(record: UnitRecord, plan: Plan) -> Judgement:
    """Judge a unit by what its record keeps; where that is nothing, by the plan if it is the same.

    A record that keeps nothing of a plan that has changed since is judged by nothing.
    """
    if not record.expected.contacts and not stale(record, plan):
        sweep = expected_sweep(plan, Wiring(plan))
        record = record.evolve(expected=expected_of(sweep))
    return Judgement(record)


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
