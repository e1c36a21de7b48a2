"""leads-cross: leads cross each other on the way to their contacts."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.model.place import Place

_SHOWN = 4


@rule(
    code="leads-cross",
    title="Leads cross",
    why="Where leads cross, the iron for the upper joint melts the insulation of the lower lead.",
    weight="caution",
)
def leads_cross(context: Context) -> Iterator[Found]:
    """Report one finding an end, with the pairs that cross."""
    for fit in context.fit:
        if not fit.crossings:
            continue
        pairs = [f"{one} and {other}" for one, other in fit.crossings[:_SHOWN]]
        more = len(fit.crossings) - len(pairs)
        listed = "; ".join(pairs) + (f"; and {more} more" if more else "")
        crossing = sorted({name for pair in fit.crossings for name in pair})
        yield Found(
            f"At {fit.end} leads cross as seen from the solder side: {listed}.",
            "Turn the plug to the cable or exchange alike cores; else solder the lower one first.",
            tuple(Place(end=fit.end, conductor=name) for name in crossing),
            title=f"{len(fit.crossings)} crossing{'s' if len(fit.crossings) > 1 else ''}",
        )
