"""A shield that lands nowhere though no policy wants it so."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.shields import laid_shields
from planner.checks.wording import headline


@rule(
    code="shield-floating",
    title="Shield floats",
    why="A shield that is tied to nothing does not shield: it brings hum and radio to the cores.",
    weight="caution",
)
def floating_shields(context: Context) -> Iterator[Found]:
    """Find each shield with no landing, unless its policy is isolated."""
    for shield in laid_shields(context):
        if not shield.lands and shield.policy != "isolated":
            name = headline(context.words.shield(shield.conductor))
            ends = set(shield.comes_out)
            yield Found(
                what=f"{name} lands at no end.",
                mend="Land it on a ground contact, or state that the shield is isolated.",
                where=shield.places,
                title=f"{name} floats",
                unfinished=any(ends & set(loose) for loose in context.reach.loose_cores.values()),
            )
