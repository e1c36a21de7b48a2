"""What the nets join that should stay apart, and which joins are legal."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from typing import NamedTuple

from planner.model.plan import Landing, Plan
from planner.model.signals import GROUNDS, is_ground, leg_of
from planner.wiring.graph import Net, Wiring
from planner.wiring.roles import is_return, role_of


class Spot(NamedTuple):
    """One signal on one contact at one end."""

    end: str
    contact: str
    signal: str


Pair = tuple[Spot, Spot]


@dataclass(frozen=True)
class Mesh:
    """One net with the signals on it.

    `clashes` are pairs that must stay apart; `driven` are the pairs that ground a minus leg of a
    driven-balanced source or join two of them, and these are in `clashes` no more.
    """

    net: Net
    spots: tuple[Spot, ...]
    clashes: tuple[Pair, ...] = ()
    driven: tuple[Pair, ...] = ()

    @property
    def faulty(self) -> bool:
        """Tell whether anything is joined here that must stay apart."""
        return bool(self.clashes or self.driven)

    @cached_property
    def at(self) -> dict[str, tuple[Spot, ...]]:
        """Spots by end."""
        found: dict[str, tuple[Spot, ...]] = {}
        for spot in self.spots:
            found[spot.end] = (*found.get(spot.end, ()), spot)
        return found

    @cached_property
    def pure(self) -> bool:
        """Tell whether no two contacts of one end clash: a core may only be on a wrong contact."""
        return all(one.end != other.end for one, other in self.clashes)


def shields_on_signals(wiring: Wiring) -> tuple[Landing, ...]:
    """Return the landings of shields on contacts that carry a signal and are not its return."""
    plan = wiring.plan
    shields = {conductor.id for conductor in plan.conductors if conductor.kind == "shield"}
    return tuple(
        landing
        for landing in plan.landings
        if landing.conductor in shields
        and landing.end in plan.end_by_id
        and _only_legs(wiring.signals_at(landing.end, landing.contact))
        and not is_return(plan, landing.end, landing.contact)
    )


def _only_legs(signals: frozenset[str]) -> bool:
    return bool(signals) and not signals & GROUNDS


class Joins:
    """The nets of a plan as meshes, with every landing of a shield on a signal left out.

    Such a landing is a fault of its own; left in, it would also look like a bridge.
    """

    def __init__(self, wiring: Wiring) -> None:
        self.shields_on_signals = shields_on_signals(wiring)
        off = frozenset(self.shields_on_signals)
        self.wiring = Wiring(wiring.plan, without=off) if off else wiring
        self.plan: Plan = wiring.plan

    @cached_property
    def unbound(self) -> frozenset[str]:
        """Ends that must yet be told their channel, since other ends name theirs."""
        legs: dict[str, set[str]] = {}
        for (end, _), signals in self.wiring.signals.items():
            legs.setdefault(end, set()).update(signals - GROUNDS)
        plain = frozenset(end for end, signals in legs.items() if signals & {"+", "-"})
        named = any(end not in plain for end, signals in legs.items() if signals)
        return plain if named else frozenset()

    @cached_property
    def meshes(self) -> tuple[Mesh, ...]:
        """Every net that has a signal on it."""
        found = []
        for net in self.wiring.nets:
            spots = tuple(sorted(self._spots(net)))
            if spots:
                found.append(self._mesh(net, spots))
        return tuple(found)

    def contacts_of(self, end: str, signal: str) -> tuple[str, ...]:
        """Return the contacts of an end that carry a signal, in the order of the pinout record."""
        return tuple(
            contact
            for (at, contact), signals in self.wiring.signals.items()
            if at == end and signal in signals
        )

    def _spots(self, net: Net) -> Iterator[Spot]:
        for kind, *names in net:
            if kind == "contact" and names[0] not in self.unbound:
                for signal in self.wiring.signals_at(names[0], names[1]):
                    yield Spot(names[0], names[1], signal)

    def _mesh(self, net: Net, spots: tuple[Spot, ...]) -> Mesh:
        if len(spots) == 1:
            return Mesh(net, spots)
        driven = tuple(self._driven(spots)) if self._drivers else ()
        told = {_signals(pair) for pair in driven} | self._legal(net, spots)
        clashes = tuple(pair for pair in combinations(spots, 2) if not _may_join(pair, told))
        return Mesh(net, spots, clashes, driven)

    def _legal(self, net: Net, spots: tuple[Spot, ...]) -> set[frozenset[str]]:
        """Return the pairs of signals that a contact, a link or a return allows in this net."""
        legal: set[frozenset[str]] = set()
        groups = {(spot.end, spot.contact) for spot in spots}
        for end, contact in groups:
            legal |= _pairs(self.wiring.signals_at(end, contact))
            if is_return(self.plan, end, contact):
                for ground in GROUNDS:
                    legal |= _pairs(self.wiring.signals_at(end, contact) | {ground})
        for link in self.plan.links:
            if ("contact", link.end, link.contacts[0]) in net:
                linked = (self.wiring.signals_at(link.end, each) for each in link.contacts)
                legal |= _pairs(frozenset().union(*linked))
        return legal

    def _driven(self, spots: tuple[Spot, ...]) -> Iterator[Pair]:
        for spot in spots:
            if leg_of(spot.signal) == "-" and spot.end in self._drivers:
                for other in spots:
                    if self._is_ground(other) or _is_second_output(spot, other):
                        yield spot, other

    @cached_property
    def _drivers(self) -> frozenset[str]:
        """The driven-balanced sources, whose minus legs are amplifier outputs."""
        found = set()
        for end in self.plan.ends:
            record = self.plan.pinout_of(end.id)
            if record and record.drive == "driven-balanced":
                found.add(end.id)
        return frozenset(end for end in found if role_of(self.plan, end) == "source")

    def _is_ground(self, spot: Spot) -> bool:
        record = self.plan.pinout_of(spot.end)
        single_ended = record is not None and record.drive == "single-ended"
        return is_ground(spot.signal) or (single_ended and leg_of(spot.signal) == "-")


def _is_second_output(spot: Spot, other: Spot) -> bool:
    """Tell whether `other` is another minus leg of the same amplifier; each pair counts once."""
    same_leg = leg_of(other.signal) == "-" and other.signal != spot.signal
    return same_leg and other.end == spot.end and spot < other


def _pairs(signals: frozenset[str]) -> set[frozenset[str]]:
    return {frozenset(pair) for pair in combinations(signals, 2)}


def _signals(pair: Pair) -> frozenset[str]:
    return frozenset((pair[0].signal, pair[1].signal))


def _may_join(pair: Pair, told: set[frozenset[str]]) -> bool:
    signals = _signals(pair)
    return len(signals) == 1 or signals <= GROUNDS or signals in told
