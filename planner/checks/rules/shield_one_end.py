"""A shield that lands at one end, where the plan's policy says otherwise."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.shields import LaidShield, laid_shields
from planner.checks.wording import headline
from planner.wording import listed


@rule(
    code="shield-one-end",
    title="Shield lands at one end",
    why="An open end can pick up radio; lifting one end is an installer's remedy for hum "
    "(secondary sources). A balanced line has its shield at both ends (Macatee, JAES report).",
    weight="note",
)
def landed_at_one(context: Context) -> Iterator[Found]:
    """Find each shield that lands, but not where the policy wants it."""
    for shield in laid_shields(context):
        both = len(shield.lands) > 1 and shield.unwanted
        short = shield.policy == "both-ends" and len(shield.lands) == 1
        if shield.lands and not both and (shield.unwanted or shield.missing or short):
            name = headline(context.words.shield(shield.conductor))
            yield Found(
                what=f"{name} {shield.text}.",
                mend=f"{_mend(shield)}, or state another policy.",
                where=shield.places,
                title=f"{name} lands at {listed(shield.lands)} only",
            )


def _mend(shield: LaidShield) -> str:
    lift = [f"Lift it at {listed(shield.unwanted)}"] if shield.unwanted else []
    land = [f"land it at {listed(shield.missing)}"] if shield.missing else []
    said = " and ".join([*lift, *land]) or "Lead it on to a second end"
    return said[:1].upper() + said[1:]
