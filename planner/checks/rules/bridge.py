"""Signals that must stay apart and are joined, with the shortest path that joins them."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.remedies import exchange
from planner.checks.wording import signals_listed
from planner.wiring.graph import Node
from planner.wiring.joins import Mesh
from planner.wording import listed


@rule(
    code="bridge",
    title="Bridge",
    why="Two signals on one metal short each other: a channel is lost, or an output is shorted.",
    weight="stop",
)
def joined_signals(context: Context) -> Iterator[Found]:
    """Find each net, or exchange of signals between nets, that joins what must stay apart."""
    for meshes in context.exchanges.bridges:
        paths = [context.shortest(mesh.clashes) for mesh in meshes]
        pairs = (pair for mesh in meshes for pair in mesh.clashes)
        signals = signals_listed({spot.signal for pair in pairs for spot in pair})
        done = "joined" if len(meshes) == 1 else "exchanged"
        told = "; ".join(context.words.path(path) for path in paths)
        yield Found(
            what=f"{signals} are {done}: {told}.",
            mend=_mend(context, paths),
            where=context.words.places(node for path in paths for node in path),
            title=f"{signals} {done}",
            remedy=exchange(context.wiring, _swaps(context, meshes)),
        )


def _mend(context: Context, paths: list[tuple[Node, ...]]) -> str:
    nodes = [node for path in paths for node in path if node[0] == "conductor"]
    cores = [context.words.node(node) for node in nodes]
    if len(paths) > 1:
        return f"Exchange {listed(cores)} at one end."
    wrong = " or ".join(cores) or "the link"
    return f"Take {wrong} off the contact where it is wrong, or add a link if the join is meant."


def _swaps(context: Context, meshes: tuple[Mesh, ...]) -> list[tuple[str, str, str]]:
    """Return the two contacts to exchange where two signals changed places at one end."""
    if len(meshes) != 2:
        return []
    ends = sorted((meshes[0].at.keys() & meshes[1].at.keys()) - {context.exchanges.hub})
    one, other = meshes
    return [(end, one.at[end][0].contact, other.at[end][0].contact) for end in ends[:1]]
