"""What a half-made plan has not chosen yet: no plan is clear before it is."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found
from planner.model.place import Place
from planner.model.plan import End, Section

_WHY = "Until this is chosen nobody can tell whether the signals arrive."


def not_chosen(context: Context) -> Iterator[Found]:
    """Yield what is still to be chosen: ends, connectors, pinouts, channels, cables."""
    if len(context.plan.ends) < 2:
        has = "one end" if context.plan.ends else "no ends"
        yield _choose(f"The plan has {has} yet", "Give it two ends or more.", ())
    for end in context.plan.ends:
        yield from _at_end(context, end)
    for section in context.plan.sections:
        if context.plan.cable_of(section.id) is None and not section.fan_of:
            yield _no_cable(context, section)


def _at_end(context: Context, end: End) -> Iterator[Found]:
    where = (Place(end=end.id),)
    if context.plan.connector_of(end.id) is None:
        yield _choose(f"End {end.id} has no connector yet", "Choose one.", where)
    elif context.plan.pinout_of(end.id) is None:
        yield _choose(f"End {end.id} has no pinout yet", "Choose one.", where)
    elif end.id in context.joins.unbound:
        yield _choose(f"End {end.id} has no channel yet", "Say which channel it carries.", where)
    if end.id not in context.plan.section_at:
        yield _choose(f"No cable reaches end {end.id} yet", "Lead a cable to it.", where)


def _no_cable(context: Context, section: Section) -> Found:
    sides = (section.near, section.far)
    where = tuple(Place(end=node) for node in sides if node in context.plan.end_by_id)
    what = f"The cable between {section.near} and {section.far} is not chosen yet"
    return _choose(what, "Choose one.", where)


def _choose(what: str, mend: str, where: tuple[Place, ...]) -> Found:
    return Found(f"{what}.", mend, where, title=what, why=_WHY, unfinished=True)
