"""Contacts that carry a signal and stay empty because no other end has it."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.model.place import Place
from planner.model.signals import signals_text


@rule(
    code="unused-contact",
    title="Contact stays empty",
    why="What this contact carries goes nowhere in this lead. Nothing is wrong if that is meant.",
    weight="note",
)
def unused_contacts(context: Context) -> Iterator[Found]:
    """Find each such contact, once every end has its pinout."""
    if any(context.plan.pinout_of(end.id) is None for end in context.plan.ends):
        return
    for spot in context.reach.unused:
        name = context.words.spot(spot.end, spot.contact)
        carried = signals_text(context.wiring.signals_at(spot.end, spot.contact))
        yield Found(
            what=f"{name} carries {carried}, which no other end has: it stays empty.",
            mend="Leave it empty if that is meant, or choose an end that carries it.",
            where=(Place(end=spot.end, contact=spot.contact),),
            title=f"{name} stays empty",
        )
