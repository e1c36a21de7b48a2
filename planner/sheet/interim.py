"""Pages by the compact blocks, until each has its own."""

from collections.abc import Callable, Iterator
from importlib import import_module
from importlib.util import find_spec

from planner.sheet.block import flow
from planner.sheet.end_block import end_blocks
from planner.sheet.facts import end_facts
from planner.sheet.findings_panel import finding_blocks, stops_blocks
from planner.sheet.leaf import Leaf, Making
from planner.sheet.panels import care_blocks, check_bar, pinout_blocks, remarks_blocks
from planner.sheet.stop_band import free_above

Pages = Callable[[Making], Iterator[Leaf]]


def pages_of(module: str, name: str, instead: Pages) -> Pages:
    """Return a page function, or what stands in for it until it is there."""
    if find_spec(module) is None:
        return instead
    return getattr(import_module(module), name, instead)


def _bottoms(making: Making) -> tuple[float, float]:
    paper = making.paper
    return free_above(paper) if making.stopped else (paper.body_bottom, paper.body_bottom)


def end_leaves(making: Making) -> Iterator[Leaf]:
    """Yield a page or more for each end."""
    bottoms = _bottoms(making)
    room = min(bottoms) - making.paper.body_top
    for facts in end_facts(making.plan):
        blocks = tuple(end_blocks(facts, "wide", boxes=not making.stopped, room=room))
        for body in flow(blocks, making.paper, bottoms):
            tab = f"END {facts.end.id}"
            yield Leaf(tab, facts.title, facts.subtitle, facts.end.id, body)


def source_leaves(making: Making) -> Iterator[Leaf]:
    """Yield pinouts, findings, remarks."""
    plan, bottoms = making.plan, _bottoms(making)
    room = min(bottoms) - making.paper.body_top
    blocks = [
        *(stops_blocks(making, room) if making.stopped else ()),
        *pinout_blocks(plan, room),
        *finding_blocks(making, room),
        *remarks_blocks(plan, room),
    ]
    if not making.stopped:
        blocks += [*care_blocks(room), check_bar()]
    for body in flow(blocks, making.paper, bottoms):
        yield Leaf("SOURCES", "Who says so", "", "", body)


def nothing(making: Making) -> Iterator[Leaf]:  # noqa: ARG001 - stands in for pages not there yet
    """Yield nothing."""
    yield from ()
