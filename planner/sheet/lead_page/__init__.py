"""The first page: the whole lead at a glance, what to cut and pick, what to thread."""

from collections.abc import Iterator

from planner.sheet.block import flow
from planner.sheet.leaf import Leaf, Making
from planner.sheet.panels import cable_blocks
from planner.units import length_text


def lead_leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages on the whole lead."""
    paper = making.paper
    bottoms = (paper.body_bottom, paper.body_bottom)
    blocks = tuple(cable_blocks(making.plan, paper.body_bottom - paper.body_top))
    for body in flow(blocks, paper, bottoms):
        yield Leaf("LEAD", making.plan.title, subtitle(making), "cut", body)


def subtitle(making: Making) -> str:
    """Say the shape: how many ends, and the lengths."""
    lengths = [length_text(section.length_mm) for section in making.plan.sections]
    return f"{len(making.plan.ends)} ends; {', '.join(dict.fromkeys(lengths))}"
