"""What the sheet says of the shields: on which contacts they land, and where they stop."""

from collections.abc import Iterator

from planner.sheet.leaf import Making
from planner.sheet.way_bar import named


def shield_lines(making: Making) -> Iterator[str]:
    """Yield a sentence for all shields that land at the same ends."""
    plan, words = making.plan, making.words
    landed: dict[tuple[str, ...], list[tuple[str, str]]] = {}
    for conductor in plan.conductors:
        if conductor.kind == "shield":
            on = [(one.end, one.contact) for one in plan.landings if one.conductor == conductor.id]
            ends = tuple(dict.fromkeys(end for end, _ in on))
            landed.setdefault(ends, []).extend(on)
    for ends, on in landed.items():
        if not ends:
            yield words("lead.shield_nowhere")
            continue
        contacts = {contact for _, contact in on}
        places = named(ends)
        if len(contacts) == 1:
            places = words("lead.contact_of", contact=contacts.pop(), ends=places)
        only = len(ends) == 1 and len(plan.ends) > 1
        yield words("lead.shield_only" if only else "lead.shield_on", places=places)
