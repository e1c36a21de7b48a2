"""The first page: the whole lead at a glance, what to cut and pick, what to thread."""

from planner.sheet.block import flow
from planner.sheet.lead_page.arranging import lead_blocks
from planner.sheet.leaf import Leaf, Making
from planner.sheet.sources import sources_block
from planner.sheet.stop_band import free_above
from planner.units import length_text


def lead_leaves(making: Making) -> tuple[tuple[Leaf, ...], bool]:
    """Return the pages on the whole lead; with a stop nothing is cut or threaded.

    Also tell whether who says so is on the last of them: only where that takes no further page.
    """
    paper = making.paper
    bottoms = free_above(paper) if making.stopped else (paper.body_bottom, paper.body_bottom)
    blocks = tuple(lead_blocks(making, min(bottoms) - paper.body_top))
    bare = tuple(flow(blocks, paper, bottoms))
    full = tuple(flow((*blocks, sources_block(making)), paper, bottoms))
    told = len(full) == len(bare)
    title = making.plan.title or making.words("page.untitled")
    tab, shape = making.words("lead.tab"), subtitle(making)
    return tuple(Leaf(tab, title, shape, "cut", body) for body in (full if told else bare)), told


def subtitle(making: Making) -> str:
    """Say the shape: how many ends, and the lengths."""
    words = making.words
    lengths = [length_text(section.length_mm) for section in making.plan.sections]
    ends = words.counted("lead.ends", len(making.plan.ends))
    if not lengths:
        return ends
    counted = [
        f"{lengths.count(one)} \u00d7 {one}" if lengths.count(one) > 1 else one
        for one in dict.fromkeys(lengths)
    ]
    return words("lead.shape", ends=ends, lengths=", ".join(counted))
