"""A shield that lands on a contact which carries a signal and is not its return."""

from collections.abc import Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.registry import Found, rule
from planner.checks.wording import headline
from planner.edits import landings
from planner.model.place import Place
from planner.model.plan import Landing
from planner.model.signals import GROUNDS, signals_text


@rule(
    code="shield-on-signal",
    title="Shield on a signal",
    why="The shield then carries the signal: it is open to hum, and shorts it wherever the shield "
    "meets ground.",
    weight="stop",
)
def shields_on_signals(context: Context) -> Iterator[Found]:
    """Find each such landing."""
    for landing in context.joins.shields_on_signals:
        name = headline(context.words.shield(landing.conductor))
        spot = context.words.spot(landing.end, landing.contact)
        carried = signals_text(context.wiring.signals_at(landing.end, landing.contact))
        yield Found(
            what=f"{name} lands on {spot}, which carries {carried}.",
            mend=f"Move it to the ground contact of {landing.end}, or lift it there.",
            where=(Place(end=landing.end, contact=landing.contact, conductor=landing.conductor),),
            title=f"Shield on {carried} at {landing.end}",
            remedy=_remedy(context, landing),
        )


def _remedy(context: Context, landing: Landing) -> Remedy:
    """Offer the one ground contact of the end if it is free; else to lift the shield."""
    end, conductor = landing.end, landing.conductor
    grounds = {each for name in GROUNDS for each in context.joins.contacts_of(end, name)}
    if len(grounds) == 1 and not context.wiring.landed_on(end, min(grounds)):
        label = f"Move it to {context.words.contact(end, min(grounds))}"
        edit = partial(landings.land, end=end, conductor=conductor, contact=min(grounds))
        return Remedy(label, edit)
    return Remedy("Lift it", partial(landings.lift, end=end, conductor=conductor))
