"""What is proposed or lacking at a place, and from which end a proposed part gets there."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import count

from planner.dryfit.threading import thread
from planner.model.part import Part
from planner.model.plan import PartUse, Plan


@dataclass(frozen=True, slots=True)
class Proposal:
    """A part to thread next to a node, from which end, and why; shrink with its length to cut."""

    part: Part
    at: str
    comes_from: str
    why: str
    cut_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Lack:
    """What a place wants and nothing in stock does, with the figures wanted."""

    kind: str
    at: str
    why: str


Answer = Proposal | Lack


def reached(plan: Plan, found: Sequence[Answer]) -> Iterator[Answer]:
    """Let each proposal come from an end that it gets to its place from, with all the others.

    What has no way while the others go as planned is lacking.
    """
    known = {use.id for use in plan.parts}
    names = (name for at in count(1) if (name := f"proposed-{at}") not in known)
    uses = {next(names): (it, it.comes_from) for it in found if isinstance(it, Proposal)}
    late = _late(plan, uses)
    moved = {name: (it, late.get(name, start)) for name, (it, start) in uses.items()}
    stuck = _late(plan, moved) if late else {}
    answers = iter(moved.items())
    for it in found:
        if isinstance(it, Lack):
            yield it
            continue
        name, (proposal, start) = next(answers)
        if name in stuck:
            why = f"{proposal.part.title} has no way to its place past the other parts"
            yield Lack(proposal.part.kind, proposal.at, why)
        else:
            yield replace(proposal, comes_from=start)


def _late(plan: Plan, uses: Mapping[str, tuple[Proposal, str]]) -> dict[str, str]:
    """Return, of parts added to a plan, those that do not go on from there; and from where else."""
    if not uses:
        return {}
    parts = {it.part.id: it.part for it, _ in uses.values()} | {
        it.id: it for it in plan.definitions.parts
    }
    added = (
        PartUse(id=name, part=it.part.id, at=it.at, comes_from=start)
        for name, (it, start) in uses.items()
    )
    definitions = plan.definitions.evolve(parts=tuple(parts.values()))
    threading = thread(plan.evolve(parts=(*plan.parts, *added), definitions=definitions))
    hindered = (it.use for it in threading.hindrances if it.kind != "shrink-misfit")
    return {
        use.id: route.comes_from if (route := threading.route_of(use.id)) else use.comes_from
        for use in hindered
        if use.id in uses
    }
