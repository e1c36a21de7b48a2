"""gap-small: two bare bodies of different nets, or one and the shell, come too near."""

from collections.abc import Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.gap_words import GAP_WEIGHTS, gap_places, gap_words
from planner.checks.registry import Found, rule
from planner.dryfit.bodies import Capsule
from planner.dryfit.fit import EndFit
from planner.dryfit.gaps import Gap
from planner.dryfit.sleeves import mend_words, sleeves_for
from planner.edits.landings import sleeve
from planner.units import number


@rule(
    code="gap-small",
    title="Small gap",
    why="One stray strand or a little solder closes a small gap to a bridge.",
    weight="caution",
)
def gap_small(context: Context) -> Iterator[Found]:
    """Report the smallest gap of every two parties; tails have a rule of their own."""
    for fit in context.fit:
        for gap in fit.gaps:
            if "tail" not in {gap.first.kind, gap.second.kind}:
                yield _found(context, fit, gap)


def _found(context: Context, fit: EndFit, gap: Gap) -> Found:
    tolerance_mm = context.plan.workmanship.tolerance_mm
    return Found(
        f"At {fit.end} {gap_words(gap, tolerance_mm)}",
        _mend(context, fit, gap),
        gap_places(fit.end, gap),
        title=f"Gap {number(gap.gap_mm)} mm, class {gap.grade}",
        weight=GAP_WEIGHTS[gap.grade],
        remedy=_remedy(fit, gap),
    )


def _mend(context: Context, fit: EndFit, gap: Gap) -> str:
    if gap.grade == "watch":
        return "Keep the joint slim, and look at this place before the shell goes on."
    liner = "or put a liner into the shell" if gap.second.kind == "shell" else ""
    other = liner or "a dab of insulating compound between them, or another contact"
    return mend_words(sleeves_for(context.plan, fit), gap) or (
        f"Put an insulating sleeve over a joint of the two, {other}."
    )


def _remedy(fit: EndFit, gap: Gap) -> Remedy | None:
    """Offer to sleeve the first of the two that has a conductor, unless it is only to watch."""
    names = [name for body in (gap.first, gap.second) if (name := _sleevable(fit, body))]
    if gap.grade == "watch" or not names:
        return None
    return Remedy("Sleeve it", partial(sleeve, end=fit.end, conductor=names[0], sleeved=True))


def _sleevable(fit: EndFit, body: Capsule) -> str:
    on = (lead.landing.conductor for lead in fit.leads if lead.landing.contact == body.contact)
    return body.conductor or next(on, "")
