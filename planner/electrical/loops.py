"""The loop of each channel: from the source through the lead to the load, and back."""

from collections.abc import Iterator
from dataclasses import dataclass
from weakref import WeakKeyDictionary

from planner.electrical.network import Network, network_of
from planner.model.plan import Plan
from planner.model.signals import GROUNDS, channel_of, leg_of
from planner.wiring.graph import Node, Wiring, contact_node
from planner.wiring.roles import role_of

# What may be compared: the two sides of stereo, and numbered channels of one multicore.
_KINDS = {"L": "stereo", "R": "stereo"} | dict.fromkeys("12345678", "numbered")

Legs = dict[str, tuple[str, ...]]  # contacts of one end by leg


@dataclass(frozen=True, slots=True)
class Loop:
    """The way of one channel from the source's contacts to a load's and back.

    `plus` and `minus` are (contact at the source, contact at the load); each way's ohm counts all
    conductors in parallel. None where a leg does not arrive, its cable is not known, or the two
    legs are joined. `estimated` where a shield is in it.
    """

    channel: str
    source: str
    load: str
    plus: tuple[str, str]
    minus: tuple[str, str]
    plus_ohm: float | None
    minus_ohm: float | None
    estimated: bool

    @property
    def ohm(self) -> float | None:
        """The loop's resistance, the load left out."""
        if self.plus_ohm is None or self.minus_ohm is None:
            return None
        return self.plus_ohm + self.minus_ohm

    @property
    def kind(self) -> str:
        """What it may be compared with: `stereo`, `numbered`, or only its own channel."""
        return _KINDS.get(self.channel, self.channel)

    def at_source(self) -> tuple[Node, Node]:
        """Return the plus and minus contacts at the source."""
        return contact_node(self.source, self.plus[0]), contact_node(self.source, self.minus[0])

    def at_load(self) -> tuple[Node, Node]:
        """Return the plus and minus contacts at the load."""
        return contact_node(self.load, self.plus[1]), contact_node(self.load, self.minus[1])


_LOOPS: "WeakKeyDictionary[Wiring, tuple[Plan, tuple[Loop, ...]]]" = WeakKeyDictionary()


def loops(plan: Plan, wiring: Wiring) -> tuple[Loop, ...]:
    """Return the loops by channel, source, load; worked out once for each wiring."""
    kept = _LOOPS.get(wiring)
    if kept is None or kept[0] is not plan:
        kept = _LOOPS[wiring] = plan, tuple(_loops(plan, wiring))
    return kept[1]


def _loops(plan: Plan, wiring: Wiring) -> Iterator[Loop]:
    network = network_of(plan, wiring)
    roles = {end.id: role_of(plan, end.id) for end in plan.ends}
    for channel, ends in sorted(_carriers(wiring).items()):
        sources = [end for end in ends if roles[end] == "source"]
        if len(sources) in {0, len(ends)}:
            sources = list(ends)[:1]  # nothing tells the two sides apart: the first end is one
        for source in sources:
            for load in ends:
                if load not in sources:
                    yield _loop(
                        network, wiring, channel, (source, ends[source]), (load, ends[load])
                    )


def _carriers(wiring: Wiring) -> dict[str, dict[str, Legs]]:
    """Return the ends that carry both legs of each channel, with their contacts."""
    found: dict[str, dict[str, Legs]] = {}
    for (end, contact), signals in wiring.signals.items():
        for signal in signals - GROUNDS:
            legs = found.setdefault(channel_of(signal), {}).setdefault(end, {})
            legs[leg_of(signal)] = (*legs.get(leg_of(signal), ()), contact)
    return {
        channel: {end: legs for end, legs in ends.items() if len(legs) == 2}
        for channel, ends in found.items()
    }


def _loop(
    network: Network,
    wiring: Wiring,
    channel: str,
    source: tuple[str, Legs],
    load: tuple[str, Legs],
) -> Loop:
    ways = {leg: _way(network, source, load, leg) for leg in "+-"}
    (plus, plus_ohm), (minus, minus_ohm) = ways["+"], ways["-"]
    nets = [wiring.net_of(contact_node(source[0], pair[0])) for pair in (plus, minus)]
    if nets[0] & nets[1]:
        plus_ohm = minus_ohm = None
    shielded = any(_carries(network.plan, wiring, node) for net in nets for node in net)
    return Loop(channel, source[0], load[0], plus, minus, plus_ohm, minus_ohm, shielded)


def _carries(plan: Plan, wiring: Wiring, node: Node) -> bool:
    """Tell whether a node is a shield that leads on: one landed at one end alone does not."""
    if node[0] != "conductor" or plan.conductor_by_id[node[1]].kind != "shield":
        return False
    return len(wiring.beside(node)) > 1


def _way(
    network: Network, source: tuple[str, Legs], load: tuple[str, Legs], leg: str
) -> tuple[tuple[str, str], float | None]:
    """Return the contacts of one leg at both ends, of several the first that are joined."""
    pairs = [(one, other) for one in source[1][leg] for other in load[1][leg]]
    for one, other in pairs:
        ohm = network.ohm((source[0], one), (load[0], other))
        if ohm is not None:
            return (one, other), ohm
    return pairs[0], None
