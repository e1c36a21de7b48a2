"""gap-small: two bare bodies of different nets, or one and the shell, come too near."""

from collections.abc import Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.gap_words import GAP_WEIGHTS, gap_places, gap_words
from planner.checks.registry import Found, rule
from planner.dryfit.fit import EndFit
from planner.dryfit.gaps import Gap
from planner.dryfit.sleeve_sizes import SleeveUse
from planner.dryfit.sleeves import mend_of, mend_words, sleeves_for
from planner.edits.sleeving import put
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
    named = partial(context.words.contact, fit.end)
    return Found(
        f"At {fit.end} {gap_words(gap, tolerance_mm, named)}",
        _mend(context, fit, gap),
        gap_places(fit.end, gap),
        title=f"Gap {number(gap.gap_mm)} mm, class {gap.grade}",
        weight=GAP_WEIGHTS[gap.grade],
        remedy=_remedy(context, fit, gap),
    )


def _mend(context: Context, fit: EndFit, gap: Gap) -> str:
    if gap.grade == "watch":
        return "Keep the joint slim, and look at this place before the shell goes on."
    which = "it" if gap.second.kind == "shell" else "one of the two"
    named = partial(context.words.contact, fit.end)
    return mend_words(sleeves_for(context.plan, fit), gap, named) or (
        f"Land {which} on another contact, or take thinner cores: neither a sleeve nor a dab goes "
        "between metal that touches."
    )


def _remedy(context: Context, fit: EndFit, gap: Gap) -> Remedy | None:
    """Offer what the sleeves of the end say of this gap; a liner is no edit of the plan."""
    if gap.grade == "watch":
        return None
    mend = mend_of(sleeves_for(context.plan, fit), gap)
    if mend is None:
        return None
    label = "Sleeve it" if isinstance(mend, SleeveUse) else "Dab it"
    return Remedy(label, partial(put, end=fit.end, mend=mend))
