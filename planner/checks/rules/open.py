"""A signal that an end needs and that does not arrive there; and what is not chosen yet."""

from collections.abc import Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.not_chosen import not_chosen
from planner.checks.registry import Found, rule
from planner.edits import landings
from planner.model.signals import signal_text
from planner.wiring.reach import Lack
from planner.wording import listed


@rule(
    code="open",
    title="Signal does not arrive",
    why="A contact that nothing reaches gives no sound in that channel, or hum.",
    weight="stop",
)
def missing_signals(context: Context) -> Iterator[Found]:
    """Find each signal at each end that lacks it, and what must be chosen before that is known."""
    yield from not_chosen(context)
    for lack in context.reach.lacks:
        yield _found(context, lack)


def _found(context: Context, lack: Lack) -> Found:
    words = context.words
    here = listed(words.contact(lack.end, contact) for contact in lack.contacts)
    there = listed(sorted({words.spot(spot.end, spot.contact) for spot in lack.elsewhere}))
    places = [words.joint(lack.end, contact) for contact in lack.contacts]
    places += [words.joint(spot.end, spot.contact) for spot in lack.elsewhere]
    signal = signal_text(lack.signal)
    landed = [context.wiring.landed_on(lack.end, contact) for contact in lack.contacts]
    fault = f"has no way to {there}" if any(landed) else "is empty"
    return Found(
        what=f"{signal} does not reach {lack.end}: its {here} {fault}.",
        mend=f"Bring {signal} from {there} to {lack.end} {here}.",
        where=tuple(sorted({place for joint in places for place in joint})),
        title=f"{signal} does not reach {lack.end}",
        remedy=_remedy(context, lack),
        unfinished=lack.unfinished,
    )


def _remedy(context: Context, lack: Lack) -> Remedy | None:
    """Offer to land the one core that carries the signal and is loose at this end."""
    if len(lack.conductors) != 1 or len(lack.contacts) != 1:
        return None
    core, contact = lack.conductors[0], lack.contacts[0]
    if context.wiring.landed_on(lack.end, contact):
        return None
    name = context.words.node(("conductor", core))
    label = f"Land {name} on {context.words.contact(lack.end, contact)}"
    edit = partial(landings.land, end=lack.end, conductor=core, contact=contact)
    return Remedy(label, edit)
