"""A shield that lands at both ends though the plan's policy says otherwise."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.shields import LaidShield, laid_shields
from planner.checks.wording import headline
from planner.model.signals import GROUNDS
from planner.wording import listed


@rule(
    code="shield-both-ends",
    title="Shield lands at both ends",
    why="Both ends to chassis at the point of entry is the rule for balanced lines (Macatee, JAES "
    "report); where grounds differ the loop can hum, which is why a plan may say one end.",
    weight="note",
)
def landed_at_both(context: Context) -> Iterator[Found]:
    """Find each shield that lands at two ends or more, one of them against the policy."""
    for shield in laid_shields(context):
        if len(shield.lands) > 1 and shield.unwanted and not _is_return(context, shield):
            name = headline(context.words.shield(shield.conductor))
            yield Found(
                what=f"{name} {shield.text}.",
                mend=f"Lift it at {listed(shield.unwanted)}, or state another policy.",
                where=shield.places,
                title=f"{name} lands at {listed(shield.lands)}",
            )


def _is_return(context: Context, shield: LaidShield) -> bool:
    """Tell whether the shield brings a return to every end at fault: lifted, it would be cut."""
    for end in shield.unwanted:
        contact = context.plan.landing_at[end, shield.conductor].contact
        signals = set(context.wiring.signals_at(end, contact))
        if not signals or signals & set(GROUNDS):
            return False
    return True
