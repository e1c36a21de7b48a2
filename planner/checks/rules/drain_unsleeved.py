"""drain-unsleeved: a bare pigtail passes a signal joint nearer than the gap limit."""

from collections.abc import Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.registry import Found, rule
from planner.edits.landings import sleeve
from planner.model.place import Place
from planner.units import number


@rule(
    code="drain-unsleeved",
    title="Bare pigtail near a joint",
    why="A bare pigtail moves when the shell closes; touching a joint, it shorts the signal.",
    weight="caution",
)
def drain_unsleeved(context: Context) -> Iterator[Found]:
    """Report each bare tail with the joint it passes nearest."""
    for fit in context.fit:
        seen = set()
        for gap in sorted(fit.gaps, key=lambda gap: gap.gap_mm):
            tail, other = gap.first, gap.second
            if tail.kind != "tail":
                tail, other = other, tail
            if tail.kind != "tail" or tail.conductor in seen:
                continue
            seen.add(tail.conductor)
            edit = partial(sleeve, end=fit.end, conductor=tail.conductor, sleeved=True)
            yield Found(
                f"At {fit.end} the bare pigtail {tail.conductor} passes {other.contact} at "
                f"{number(gap.gap_mm)} mm; the limit here is {number(gap.limit_mm)} mm.",
                f"Put an insulating sleeve on {tail.conductor} before you solder it.",
                (
                    Place(end=fit.end, contact=tail.contact, conductor=tail.conductor),
                    Place(end=fit.end, contact=other.contact),
                ),
                remedy=Remedy("Sleeve it", edit),
            )
