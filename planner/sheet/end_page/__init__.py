"""The page of each end: what is soldered where, in which order, and what it should look like."""

from collections.abc import Iterator

from planner.sheet.end_page.alike import Shared, shared_pages
from planner.sheet.end_page.many import many_bodies
from planner.sheet.end_page.page import TOP, end_bodies
from planner.sheet.end_page.work import closed_after
from planner.sheet.face_panel import MOST_ROUND
from planner.sheet.leaf import Leaf, Making
from planner.sheet.lettering import say
from planner.sheet.way_bar import named


def end_leaves(making: Making) -> tuple[Leaf, ...]:
    """Return the pages of all ends, in the plan's order; alike ends share theirs."""
    return tuple(leaf for shared in shared_pages(making) for leaf in _leaves(making, shared))


def _leaves(making: Making, shared: Shared) -> Iterator[Leaf]:
    facts, words = shared.shown, making.words
    tab = words.counted("end.tab", len(shared.ends), ends=named(shared.ids))
    if facts.connector is None:
        said = say((making.paper.left, TOP + 700), words("end.no_connector_here"))
        yield Leaf(tab, facts.title, facts.subtitle, facts.end.id, (said,))
        return
    many = facts.connector.poles > MOST_ROUND
    bodies = many_bodies if many else end_bodies
    also = closed_after(making).get(facts.end.id, "")
    for body in bodies(making, shared):
        yield Leaf(tab, facts.title, _subtitle(shared), facts.end.id, body, also)


def _subtitle(shared: Shared) -> str:
    """Say the names of the ends and whose pinout it is."""
    if len(shared.ends) == 1:
        return shared.shown.subtitle
    names = [f"{one.end.id} {one.end.name}".strip() for one in shared.ends]
    pinouts = dict.fromkeys(one.pinout.title for one in shared.ends if one.pinout)
    return ", ".join([*(names if len(names) < 4 else ()), *pinouts])
