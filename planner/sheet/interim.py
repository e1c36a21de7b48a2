"""Pinouts, findings and remarks by simple blocks, until they have a page of their own."""

from collections.abc import Iterator
from importlib import import_module
from importlib.util import find_spec

from planner.sheet.block import flow
from planner.sheet.findings_panel import finding_blocks
from planner.sheet.leaf import Leaf, Making
from planner.sheet.panels import pinout_blocks, remarks_blocks
from planner.sheet.stop_band import free_above


def source_leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages on who says so."""
    if find_spec("planner.sheet.sources") is not None:
        yield from import_module("planner.sheet.sources").source_leaves(making)
        return
    plan, paper = making.plan, making.paper
    bottoms = free_above(paper) if making.stopped else (paper.body_bottom, paper.body_bottom)
    room = min(bottoms) - paper.body_top
    blocks = [
        *pinout_blocks(plan, room),
        *finding_blocks(making, room),
        *remarks_blocks(plan, room),
    ]
    for body in flow(blocks, paper, bottoms):
        yield Leaf("SOURCES", "Who says so", "", "", body)
