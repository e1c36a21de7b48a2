"""The words in which findings name contacts, conductors and paths."""

from collections import Counter
from collections.abc import Iterable, Sequence
from functools import cached_property

from planner.model.cable import Core
from planner.model.place import Place
from planner.model.signals import signal_text, sort_key
from planner.wiring.exchanges import Arrival
from planner.wiring.graph import Node, Wiring
from planner.wiring.joins import Spot
from planner.wording import listed

_CHANNEL_WORDS = {"L": "left", "R": "right", "mic": "microphone"}


def channels_text(channels: Sequence[str]) -> str:
    """Name channels in small letters: `left and right channels`, `channel 3`."""
    named = [_CHANNEL_WORDS[channel] for channel in channels if channel in _CHANNEL_WORDS]
    numbered = [channel for channel in channels if channel and channel not in _CHANNEL_WORDS]
    parts = [f"{listed(named)} channel{'s' if len(named) > 1 else ''}"] if named else []
    if numbered:
        parts.append(f"channel{'s' if len(numbered) > 1 else ''} {listed(numbered)}")
    return listed(parts) or "channel"


def leads_need(count: int, end: str) -> str:
    """Begin a sentence on how thick leads are: `The 3 leads at A together need`."""
    if count == 1:
        return f"The one lead at {end} needs"
    return f"The {count} leads at {end} together need"


def signals_listed(signals: Iterable[str]) -> str:
    """Join signals as a sentence does, in their order: `L− and R−`."""
    return listed(signal_text(signal) for signal in sorted(signals, key=sort_key))


def headline(text: str) -> str:
    """Begin with a capital, and leave the rest as it is."""
    return text[:1].upper() + text[1:]


class Words:
    """Names of the things in one plan."""

    def __init__(self, wiring: Wiring) -> None:
        self._wiring = wiring
        self._plan = wiring.plan

    def contact(self, end: str, contact: str) -> str:
        """Name a contact as spoken: `ring 1`, `pin 3`; S by its letter: a sleeve insulates."""
        connector = self._plan.connector_of(end)
        known = connector.by_id.get(contact) if connector else None
        return known.spoken if known and known.spoken != "sleeve" else contact

    def spot(self, end: str, contact: str) -> str:
        """Name a contact with its end: `A ring 1`."""
        return f"{end} {self.contact(end, contact)}"

    def shield(self, conductor: str) -> str:
        """Name a shield: `the shield`, or its id where there are several."""
        return "the shield" if len(self._shields) == 1 else f"shield {conductor}"

    @cached_property
    def _shields(self) -> frozenset[str]:
        return frozenset(each.id for each in self._plan.conductors if each.kind == "shield")

    @cached_property
    def _codes(self) -> dict[str, str]:
        """The colour code of each conductor, where no other conductor has the same."""
        codes = {}
        for conductor in self._plan.conductors:
            part = self._plan.part_of(conductor.runs[0])
            codes[conductor.id] = part.code if isinstance(part, Core) else conductor.id
        often = Counter(codes.values())
        return {name: code if often[code] == 1 else name for name, code in codes.items()}

    def conductor(self, conductor: str) -> str:
        """Name a conductor: its colour code, or its id where the colour would not tell."""
        return self._codes.get(conductor, conductor)

    def node(self, node: Node) -> str:
        """Name a contact or a conductor of the wiring."""
        if node[0] == "contact":
            return self.spot(node[1], node[2])
        if node[1] in self._shields:
            return self.shield(node[1])
        return self.conductor(node[1])

    def path(self, nodes: Sequence[Node]) -> str:
        """Name a path: `A ring 1 - BU - L tip`."""
        return " - ".join(self.node(node) for node in nodes)

    @staticmethod
    def places(nodes: Iterable[Node]) -> tuple[Place, ...]:
        """Return the places of contacts and conductors, in order, each once."""
        found = {
            Place(end=node[1], contact=node[2])
            if node[0] == "contact"
            else Place(conductor=node[1])
            for node in nodes
        }
        return tuple(sorted(found))

    def joint(self, end: str, contact: str) -> tuple[Place, ...]:
        """Return the places of a joint: the contact with each conductor on it, or alone."""
        landed = self._wiring.landed_on(end, contact)
        if not landed:
            return (Place(end=end, contact=contact),)
        return tuple(Place(end=end, contact=contact, conductor=each) for each in landed)

    def joints(self, spots: Iterable[Spot]) -> tuple[Place, ...]:
        """Return the places of several joints, in order, each once."""
        return tuple(sorted({place for spot in spots for place in self.joint(*spot[:2])}))

    def exchanged_legs(self, arrival: Arrival) -> str:
        """Say which legs are exchanged, and what is on their contacts."""
        plus, minus = (signal_text(arrival.channel + leg) for leg in "+-")
        held = listed(
            f"{self.conductor(core)} is on {self.contact(spot.end, spot.contact)}"
            for spot in arrival.wrong
            for core in self._wiring.landed_on(spot.end, spot.contact)
        )
        return f"{plus} and {minus} are exchanged at {arrival.end}: {held}."
