"""drain-unsleeved: a bare pigtail passes a signal joint nearer than the gap limit."""

from collections.abc import Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.gap_words import GAP_WEIGHTS, gap_places, gap_words
from planner.checks.registry import Found, rule
from planner.dryfit.fit import EndFit
from planner.dryfit.gaps import Gap
from planner.edits.landings import sleeve


@rule(
    code="drain-unsleeved",
    title="Bare pigtail near a joint",
    why="A bare pigtail moves when the shell closes; touching a joint, it shorts the signal.",
    weight="caution",
)
def drain_unsleeved(context: Context) -> Iterator[Found]:
    """Report each bare tail with what it passes nearest."""
    for fit in context.fit:
        seen = set()
        for gap in sorted(fit.gaps, key=lambda gap: gap.gap_mm):
            tail = next((it for it in (gap.first, gap.second) if it.kind == "tail"), None)
            if tail is not None and tail.conductor not in seen:
                seen.add(tail.conductor)
                yield _found(context, fit, gap, tail.conductor)


def _found(context: Context, fit: EndFit, gap: Gap, tail: str) -> Found:
    tolerance_mm = context.plan.workmanship.tolerance_mm
    named = partial(context.words.contact, fit.end)
    return Found(
        f"At {fit.end} {gap_words(gap, tolerance_mm, named)}",
        f"Put an insulating sleeve on {tail} before you solder it.",
        gap_places(fit.end, gap),
        weight=GAP_WEIGHTS[gap.grade],
        remedy=Remedy("Sleeve it", partial(sleeve, end=fit.end, conductor=tail, sleeved=True)),
    )
