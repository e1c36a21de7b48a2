"""Crosstalk between channels through resistance that their returns share."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from planner.electrical.loops import Loop, loops
from planner.electrical.network import Network, network_of
from planner.electrical.nodal import Mesh
from planner.model.plan import Plan
from planner.wiring.graph import Net, Node, Wiring

_SILENT = 1e-9  # a ratio below this is rounding, not sound
_LEAST_LOAD_OHM = 1e-6  # a shorted load keeps the network solvable


@dataclass(frozen=True, slots=True)
class Crosstalk:
    """What of one channel is heard in another, over what is heard in its own load.

    `db` is from sources of no resistance of their own (the worst case) into the assumed load;
    None where a cable on the way is not known. `shared_ohm` is the return that both have in common,
    `shared` the conductors of the net that it is in. `over`: whether `db` is above the limit.
    """

    driven: Loop
    heard: Loop
    db: float | None
    shared_ohm: float | None
    shared: tuple[str, ...]
    over: bool


def crosstalks(plan: Plan, wiring: Wiring) -> tuple[Crosstalk, ...]:
    """Return the crosstalk of each channel into each that shares a net with it, in order."""
    found: list[Crosstalk] = []
    ordered = sorted(loops(plan, wiring), key=lambda it: (it.kind, it.source))
    for _, rows in groupby(ordered, key=lambda it: (it.kind, it.source)):
        group = [loop for loop in rows if loop.ohm is not None]
        found += _among(plan, wiring, group)
    return tuple(found)


def _among(plan: Plan, wiring: Wiring, group: Sequence[Loop]) -> Iterator[Crosstalk]:
    nets = [[wiring.net_of(node) for node in loop.at_source()] for loop in group]
    for at, driven in enumerate(group):
        heard = [
            loop
            for loop, theirs in zip(group, nets, strict=True)
            if loop.channel != driven.channel and _meet(nets[at], theirs)
        ]
        if heard:
            volts = _voltages(network_of(plan, wiring), driven, group)
            shared = tuple(sorted(node[1] for node in nets[at][1] if node[0] == "conductor"))
            yield from _heard(network_of(plan, wiring), driven, heard, volts, shared)


def _meet(one: Sequence[Net], other: Sequence[Net]) -> bool:
    return any(mine is theirs for mine in one for theirs in other)


def _heard(
    network: Network,
    driven: Loop,
    others: Sequence[Loop],
    volts: dict[Node, float] | None,
    shared: tuple[str, ...],
) -> Iterator[Crosstalk]:
    for heard in others:
        if volts is None:
            yield Crosstalk(driven, heard, None, None, shared, over=False)
            continue
        ratio = abs(_across(volts, heard)) / max(abs(_across(volts, driven)), _SILENT)
        if ratio > _SILENT:
            db = 20 * math.log10(ratio)
            common = _shared_ohm(network, driven, heard)
            over = db > network.plan.assumed.crosstalk_limit_db + 1e-9
            yield Crosstalk(driven, heard, db, common, shared, over=over)


def _voltages(network: Network, driven: Loop, group: Sequence[Loop]) -> dict[Node, float] | None:
    """Return the voltages with 1 V over one channel's source, the others' sources at 0 V.

    Every load hangs on. None where a run that is not known may matter, or a source is shorted.
    """
    ends = [node for loop in group for node in (*loop.at_source(), *loop.at_load())]
    if _unknown_near(network, ends):
        return None
    plus, minus = driven.at_source()
    load_ohm = max(network.plan.assumed.load_ohm, _LEAST_LOAD_OHM)
    loads = [(*loop.at_load(), load_ohm) for loop in group]
    mesh = Mesh([*network.joins, *_in_the_gear(network, driven, group)], [*network.known, *loads])
    if mesh.merged.root(plus) == mesh.merged.root(minus):
        return None
    volts = mesh.voltages({plus: 1.0, minus: 0.0})
    return {node: volts.get(mesh.merged.root(node), 0.0) for node in ends}


def _in_the_gear(
    network: Network, driven: Loop, group: Sequence[Loop]
) -> Iterator[tuple[Node, Node]]:
    """Yield what the source joins: its idle outputs, and all returns where it is single-ended."""
    record = network.plan.pinout_of(driven.source)
    for loop in group:
        if loop.channel != driven.channel:
            yield loop.at_source()
        if record is not None and record.drive == "single-ended":
            yield driven.at_source()[1], loop.at_source()[1]


def _unknown_near(network: Network, nodes: Sequence[Node]) -> bool:
    mesh = network.mesh
    return any(
        mesh.together(node, one) for node in nodes for pair in network.unknown for one in pair
    )


def _across(volts: dict[Node, float], loop: Loop) -> float:
    plus, minus = loop.at_load()
    return volts[plus] - volts[minus]


def _shared_ohm(network: Network, driven: Loop, heard: Loop) -> float | None:
    """Return the resistance that the two returns have in common."""
    ways = [(loop.at_source()[1], loop.at_load()[1]) for loop in (driven, heard)]
    if not network.mesh.together(ways[0][0], ways[1][0]):
        return None
    return network.mesh.transfer_ohm(ways[0], ways[1])
