"""Minus legs of a driven-balanced source that are joined, or grounded."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.remedies import unlink
from planner.checks.wording import signals_listed
from planner.model.signals import leg_of
from planner.wiring.joins import Mesh


@rule(
    code="joined-driven-returns",
    title="Amplifier outputs joined",
    why="Each minus leg of a driven-balanced source is an amplifier's output. Two of them in one "
    "net, or one to ground, short the amplifier and can destroy it.",
    weight="stop",
)
def joined_outputs(context: Context) -> Iterator[Found]:
    """Find each net that joins driven minus legs, at each source."""
    for mesh in context.joins.meshes:
        for end in sorted({pair[0].end for pair in mesh.driven}):
            yield _found(context, mesh, end)


def _found(context: Context, mesh: Mesh, end: str) -> Found:
    pairs = [pair for pair in mesh.driven if pair[0].end == end]
    spots = {spot for pair in pairs for spot in pair if spot.end == end}
    legs = {spot.signal for spot in spots if leg_of(spot.signal)}
    minus = signals_listed(legs)
    path = context.shortest(pairs)
    return Found(
        what=f"{minus} of {end}, a driven-balanced source, "
        f"{'are joined' if len(legs) > 1 else 'is grounded'}: {context.words.path(path)}.",
        mend="Keep every minus leg of this source apart, each on a core and a contact of its own; "
        "with a plug that has no contact for each, the lead must not be built.",
        where=context.words.places(path),
        title=f"{minus} of {end} {'joined' if len(legs) > 1 else 'grounded'}",
        remedy=unlink(context.plan, path),
    )
