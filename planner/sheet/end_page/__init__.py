"""The page of each end: what is soldered where, in which order, and what it should look like."""

from collections.abc import Iterator

from planner.sheet.end_page.page import TOP, end_bodies
from planner.sheet.facts import EndFacts
from planner.sheet.leaf import Leaf, Making
from planner.sheet.lettering import say


def end_leaves(making: Making) -> tuple[Leaf, ...]:
    """Return the pages of all ends, in the plan's order; alike ends share one."""
    return tuple(leaf for facts in making.facts for leaf in _leaves(making, facts))


def _leaves(making: Making, facts: EndFacts) -> Iterator[Leaf]:
    tab = making.words("end.tab", end=facts.end.id)
    if facts.connector is None:
        words = say((making.paper.left, TOP + 700), making.words("end.no_connector_here"))
        yield Leaf(tab, facts.title, facts.subtitle, facts.end.id, (words,))
        return
    for body in end_bodies(making, facts, facts.connector):
        yield Leaf(tab, facts.title, facts.subtitle, facts.end.id, body)
