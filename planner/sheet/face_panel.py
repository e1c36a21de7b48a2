"""The solder side of an end in its frame: eye bar, face, names and flags round it, mating key."""

from dataclasses import replace

from planner.drawing.face import shell_reach_mm
from planner.drawing.primitives import DrawList, Poly
from planner.model.connector import Connector
from planner.sheet.boxes import Box
from planner.sheet.face_drawing import OUTSIDE, FaceDrawing
from planner.sheet.facts import EndFacts
from planner.sheet.frame import (
    STRIP,
    Framing,
    bar_and_words,
    key_words_box,
    mating_strip,
    scale_text,
)
from planner.sheet.lettering import THIN
from planner.sheet.sides import WIDE, Sizes, column_width, share_sides

SCALES = (
    12.0,
    10.0,
    8.0,
    7.0,
    6.0,
    5.0,
    4.5,
    4.0,
    3.5,
    3.0,
    2.5,
    2.2,
    2.0,
    1.8,
    1.5,
    1.0,
    0.75,
    0.5,
)
MOST_ROUND = 8  # contacts that still have room for names and flags round the face
_MOST_SIDE = 7500.0


def best_scale(connector: Connector, width: float, height: float) -> float:
    """Return the largest stated scale at which the shell fits `width` by `height` (0.01 mm)."""
    half_width, half_height = shell_reach_mm(connector)
    for scale in SCALES:
        if half_width * 200 * scale <= width and half_height * 200 * scale <= height:
            return scale
    return SCALES[-1]


def face_panel(facts: EndFacts, connector: Connector, sizes: Sizes) -> tuple[DrawList, float]:
    """Draw an end of at most MOST_ROUND contacts from 0, 0; return the items and the height.

    In a wide frame the mating key stands in the lower left corner beside the face, if no leader
    runs through its words there.
    """
    sizes = _with_flags_that_fit(facts, connector, sizes)
    if sizes.width == WIDE.width:
        items, framing = _framed(facts, connector, sizes, in_corners=True)
        if not _struck(items, framing):
            return items, framing.height
    items, framing = _framed(facts, connector, sizes, in_corners=False)
    return items, framing.height


def _with_flags_that_fit(facts: EndFacts, connector: Connector, sizes: Sizes) -> Sizes:
    """Show fewer flags beside the face where very many conductors land on its contacts."""
    for shown in (3, 2, 1):
        sizes = replace(sizes, shown=shown)
        if max(side.height for side in share_sides(facts, connector, sizes)) <= _MOST_SIDE:
            break
    return sizes


def _framed(
    facts: EndFacts, connector: Connector, sizes: Sizes, *, in_corners: bool
) -> tuple[DrawList, Framing]:
    left, right = share_sides(facts, connector, sizes)
    corner = STRIP if in_corners else 0.0
    area = max(sizes.face, left.height + corner, right.height + corner)
    column = max(column_width(facts, sizes), 1900.0)
    around = sizes.width - 2 * column - 2 * OUTSIDE
    scale = best_scale(connector, around, area - 2 * OUTSIDE)
    framing = Framing(sizes.width, sizes.bar, area, in_corners=in_corners)
    top = framing.area_top
    drawing = FaceDrawing(facts, connector, sizes, scale * 100, (sizes.width / 2, top + area / 2))
    items = (
        *bar_and_words(framing, facts, connector, scale_text(scale)),
        *drawing.face(),
        *drawing.side(left, top, top + area - corner, on_left=True),
        *drawing.side(right, top, top + area - corner, on_left=False),
        *drawing.names(),
        *mating_strip(framing, facts, connector, true_size_here=sizes.width != WIDE.width),
    )
    return items, framing


def _struck(items: DrawList, framing: Framing) -> bool:
    """Tell whether a leader runs through the words of the key."""
    words = key_words_box(framing)
    return any(
        isinstance(item, Poly)
        and len(item.points) == 2
        and item.style.width == THIN
        and words.meets(Box.round_line(item.points[0], item.points[1], 60))
        for item in items
    )
