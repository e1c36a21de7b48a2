"""Signals that must stay apart and are joined, with the shortest path that joins them."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import listed
from planner.model.signals import signal_text
from planner.wiring.joins import Mesh


@rule(
    code="bridge",
    title="Bridge",
    why="Two signals on one metal short each other: a channel is lost, or an output is shorted.",
    weight="stop",
)
def joined_signals(context: Context) -> Iterator[Found]:
    """Find each net, or exchange of two signals, that joins what must stay apart."""
    for meshes in context.exchanges.bridges:
        paths = [context.shortest(mesh.clashes) for mesh in meshes]
        signals = sorted({signal_text(name) for mesh in meshes for name in _names(mesh)})
        told = "; ".join(context.words.path(path) for path in paths)
        cores = [context.words.node(node) for node in paths[0] if node[0] == "conductor"]
        yield Found(
            what=f"{listed(signals)} are joined: {told}.",
            mend=f"Take {' or '.join(cores) or 'one of them'} off the contact where it is wrong, "
            "or add a link if the join is meant.",
            where=context.words.places(node for path in paths for node in path),
            title=f"{listed(signals)} bridged",
        )


def _names(mesh: Mesh) -> set[str]:
    return {spot.signal for pair in mesh.clashes for spot in pair}
