"""How a pinout differs from those that are known for the same connector, told as a builder would.

A named difference ("mirrored", "left and right exchanged") is looked for before single contacts.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from planner.intake.other_side import mirrored_contacts
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.model.signals import channel_of, is_ground, leg_of, signals_text

Carried = Mapping[str, frozenset[str]]
Kind = Literal["same", "named", "exchanges", "other"]


@dataclass(frozen=True, slots=True)
class Differs:
    """One contact that carries another thing: `ours` here, `theirs` in the known record."""

    contact: str
    ours: frozenset[str]
    theirs: frozenset[str]


@dataclass(frozen=True, slots=True)
class Likeness:
    """A known record and how ours differs from it; `cost` 0 is the same, small is near.

    `pairs` are contacts that have exchanged what they carry.
    """

    record: PinoutRecord
    kind: Kind
    words: tuple[str, ...]
    differs: tuple[Differs, ...]
    pairs: tuple[tuple[str, str], ...]
    cost: int

    @property
    def told(self) -> str:
        """One sentence's worth of words; acts that come to the same thing are told with `or`."""
        return (" or " if self.kind == "named" else "; ").join(self.words)

    @property
    def is_standard(self) -> bool:
        """Tell whether it is held against the record of a standard."""
        return self.record.source.kind == "standard"


def likenesses(
    carried: Carried, connector: Connector, known: Iterable[PinoutRecord]
) -> tuple[Likeness, ...]:
    """Compare signals by contact with the known records of a connector, the nearest first.

    Of two as near the standard comes first, then the lower id. Retired records are left out.
    """
    ours = {name: signals for name, signals in carried.items() if signals}
    found = [
        _likeness(ours, connector, record)
        for record in known
        if connector.id in record.fits and record.retired is None
    ]
    return tuple(sorted(found, key=_rank))


def disagreeing(
    record: PinoutRecord, connector: Connector, known: Iterable[PinoutRecord]
) -> tuple[Likeness, ...]:
    """Return the records of the same connector and use that say otherwise, the nearest first."""
    if record.retired is not None:
        return ()
    rivals = [it for it in known if it.id != record.id and it.use == record.use]
    carried = {name: frozenset(it) for name, it in record.signals.items()}
    return tuple(it for it in likenesses(carried, connector, rivals) if it.kind != "same")


def usual_first(found: Sequence[Likeness]) -> tuple[Likeness, ...]:
    """Put the usual record first, however far it is: a standard's, else common practice.

    Of several the nearest is taken; the others stay in their order.
    """
    standards = [it for it in found if it.is_standard]
    practice = [it for it in found if it.record.source.kind == "practice"]
    first = [*standards, *practice][:1]
    return (*first, *(it for it in found if it not in first))


def _rank(found: Likeness) -> tuple[int, bool, str]:
    return (found.cost, not found.is_standard, found.record.id)


def _likeness(ours: Carried, connector: Connector, record: PinoutRecord) -> Likeness:
    theirs = {name: frozenset(it) for name, it in record.signals.items() if it}
    differs = tuple(
        Differs(name, ours.get(name, _NONE), theirs.get(name, _NONE))
        for name in _names(ours, theirs, connector)
        if ours.get(name, _NONE) != theirs.get(name, _NONE)
    )
    if not differs:
        return Likeness(record, "same", ("the same",), (), (), 0)
    named = tuple(_named(ours, theirs, connector))
    pairs = _exchanged(differs)
    if named:
        return Likeness(record, "named", named, differs, pairs, 1)
    words = tuple(_exchange_words(connector, pairs)) + tuple(
        _other_words(connector, differs, pairs)
    )
    kind: Kind = "exchanges" if 2 * len(pairs) == len(differs) else "other"
    return Likeness(
        record, kind, words, differs, pairs, len(pairs) + 2 * (len(differs) - 2 * len(pairs))
    )


_NONE: frozenset[str] = frozenset()


def _names(ours: Carried, theirs: Carried, connector: Connector) -> tuple[str, ...]:
    """Return the connector's contacts, then those that either names and the connector lacks."""
    own = tuple(it.id for it in connector.contacts)
    return (*own, *sorted({*ours, *theirs} - set(own)))


def _named(ours: Carried, theirs: Carried, connector: Connector) -> Iterator[str]:
    """Yield what one act of a person would make of theirs to get ours; the likeliest first."""
    for words, partners in _orders(connector):
        if {partners.get(name, name): it for name, it in theirs.items()} == ours:
            yield words
    for words, change in _RELABELLINGS:
        if {name: frozenset(map(change, it)) for name, it in theirs.items()} == ours:
            yield words
    for channel in sorted({channel_of(one) for it in theirs.values() for one in it} - {""}):
        turned = {
            name: frozenset(_leg_turned(one) if channel_of(one) == channel else one for one in it)
            for name, it in theirs.items()
        }
        if turned == ours:
            yield f"{_spoken(channel)} reversed: its plus and minus exchanged"


def _orders(connector: Connector) -> Iterator[tuple[str, dict[str, str]]]:
    names = [it.id for it in connector.contacts]
    partners = mirrored_contacts(connector)
    if partners is not None and any(one != other for one, other in partners.items()):
        yield "mirrored: looks as if taken from the other side", partners
    yield "counted from the other end", dict(zip(names, reversed(names), strict=True))
    for by, words in ((1, "counted one on"), (-1, "counted one back")):
        yield words, {name: names[(at + by) % len(names)] for at, name in enumerate(names)}


def _channels_exchanged(signal: str) -> str:
    swap = {"L": "R", "R": "L"}
    channel = channel_of(signal)
    return swap[channel] + leg_of(signal) if channel in swap else signal


def _leg_turned(signal: str) -> str:
    if is_ground(signal):
        return signal
    return signal[:-1] + ("-" if leg_of(signal) == "+" else "+")


_RELABELLINGS = (
    ("left and right exchanged", _channels_exchanged),
    ("plus and minus exchanged in every channel", _leg_turned),
)


def _spoken(channel: str) -> str:
    names = {"L": "the left channel", "R": "the right channel", "mic": "the microphone"}
    return names.get(channel, f"channel {channel}")


def _exchanged(differs: Iterable[Differs]) -> tuple[tuple[str, str], ...]:
    left, pairs = list(differs), []
    while left:
        one = left.pop(0)
        for other in left:
            if one.ours == other.theirs and other.ours == one.theirs:
                pairs.append((one.contact, other.contact))
                left.remove(other)
                break
    return tuple(pairs)


def _exchange_words(connector: Connector, pairs: Iterable[tuple[str, str]]) -> Iterator[str]:
    for pair in pairs:
        one, other = (_spoken_contact(connector, name) for name in pair)
        yield f"{one} and {other} exchanged"


def _other_words(
    connector: Connector, differs: Iterable[Differs], pairs: Iterable[tuple[str, str]]
) -> Iterator[str]:
    told = {name for pair in pairs for name in pair}
    for it in differs:
        if it.contact not in told:
            ours, theirs = (signals_text(each) or "nothing" for each in (it.ours, it.theirs))
            yield f"{_spoken_contact(connector, it.contact)} carries {ours}, there {theirs}"


def _spoken_contact(connector: Connector, name: str) -> str:
    """Return a contact as spoken; one that the connector lacks as it was typed."""
    known = connector.by_id.get(name)
    return known.spoken if known is not None else name
