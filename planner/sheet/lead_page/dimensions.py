"""The lengths in the picture of a lead: dimensions under it, or a figure at each leg."""

from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point, Poly, Style
from planner.model.plan import Section
from planner.sheet.lead_page.tree import Tree
from planner.sheet.leaf import Making
from planner.sheet.lettering import HAIR, HEAD, INK, PEN, cap, say

_DEPTH = 520.0  # from one line of dimensions to the next


def lengths(
    making: Making, tree: Tree, spots: dict[str, Point], top: float
) -> tuple[DrawList, float]:
    """Draw lengths as dimensions; return them and how far down they reach.

    One row along the way to the first end on the right where all legs are as long; else a figure
    stands at each leg.
    """
    words, way = making.words, _way(tree)
    if not way:
        return (), top
    legs = {section.length_mm for _, child, section in tree.joints if child in _firsts(tree)}
    alike = len(legs) == 1 and len(making.plan.splits) <= 1
    shown = way if alike else way[:-1]
    items: list[DrawList] = []
    for near, far, section in shown:
        (left, y), (right, level) = spots[near], spots[far]
        starts = (y + 450, top - 300 if far in making.plan.end_by_id else level + 550)
        items.append(dimension((left, right), top, words.number(section.length_mm), starts))
    if alike and len(way) > 1:
        left, right = spots[way[0][0]][0], spots[way[-1][1]][0]
        total = words.number(sum(section.length_mm for _, _, section in way))
        top += _DEPTH
        items.append(dimension((left, right), top, total, (top - _DEPTH, top - _DEPTH)))
    elif not alike:
        items += [
            _at_leg(spots[child], words.number(section.length_mm))
            for _, child, section in tree.joints
            if child in _firsts(tree)
        ]
    return tuple(item for part in items for item in part), top + 350


def _firsts(tree: Tree) -> set[str]:
    return {tip.first for tip in tree.tips}


def _way(tree: Tree) -> list[tuple[str, str, Section]]:
    """Return the sections from the root to the first end on the right."""
    into = {child: (parent, child, section) for parent, child, section in tree.joints}
    node = tree.tips[0].first if tree.tips else ""
    way = []
    while node in into:
        way.append(into[node])
        node = into[node][0]
    return way[::-1]


def _at_leg(at: Point, figure: str) -> DrawList:
    return (say((at[0] - 150, at[1] - 250), figure, HEAD, bold=True, anchor="end"),)


def dimension(
    span: tuple[float, float], y: float, figure: str, starts: tuple[float, float]
) -> DrawList:
    """Draw a dimension: a stop at each end down from its start, arrows, the figure in a gap."""
    left, right = span
    middle, half = (left + right) / 2, text_width(figure, HEAD, bold=True) / 2 + 120
    pen, stop = Style(stroke=INK, width=PEN), Style(stroke=INK, width=HAIR)
    lines = [((left + 60, y), (middle - half, y)), ((middle + half, y), (right - 60, y))]
    stops = [((x, start), (x, y + 180)) for x, start in zip(span, starts, strict=True)]
    arrows = [
        ((left, y), (left + 260, y - 95), (left + 260, y + 95)),
        ((right, y), (right - 260, y - 95), (right - 260, y + 95)),
    ]
    return (
        *(Poly(line, pen) for line in lines),
        *(Poly(line, stop) for line in stops),
        *(Poly(points, Style(fill=INK), closed=True) for points in arrows),
        say((middle, y + cap(HEAD) / 2), figure, HEAD, bold=True, anchor="middle"),
    )
