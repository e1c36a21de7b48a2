"""A policy or a return that needs a shield, in a cable that has none."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.shields import POLICY_WORDS
from planner.checks.wording import headline
from planner.model.place import Place
from planner.model.plan import Section
from planner.wiring.reach import Lack
from planner.wiring.roles import is_return
from planner.wording import listed


@rule(
    code="shield-missing",
    title="Cable has no shield",
    why="Without a shield the lead picks up hum, and a return that was to run in it has no way.",
    weight="caution",
)
def missing_shields(context: Context) -> Iterator[Found]:
    """Find each section whose cable has no shield where one is asked for."""
    for section in context.plan.sections:
        cable = context.plan.cable_of(section.id)
        needs = list(_needs(context, section))
        if cable and not cable.shields and needs:
            yield Found(
                what=f"{headline(cable.title)} has no shield; {listed(needs)}.",
                mend="Take a shielded cable, or state no shield policy.",
                where=_places(context, section),
                title=f"{headline(cable.title)} has no shield",
            )


def _needs(context: Context, section: Section) -> Iterator[str]:
    policy = section.shield_policy
    if policy and policy != "isolated" and not section.fan_of:
        yield f"the plan wants one landed at {POLICY_WORDS[policy]}"
    ends = {lack.end for lack in context.reach.lacks if _is_left_over(context, lack)}
    for end in sorted(ends):
        if context.plan.section_at.get(end) is section:
            yield f"the return of {end} has no core left"


def _is_left_over(context: Context, lack: Lack) -> bool:
    """Tell whether a return is lacking though every core has its place."""
    returns = any(is_return(context.plan, lack.end, contact) for contact in lack.contacts)
    return returns and not lack.unfinished


def _places(context: Context, section: Section) -> tuple[Place, ...]:
    sides = (section.near, section.far)
    return tuple(Place(end=node) for node in sorted(sides) if node in context.plan.end_by_id)
