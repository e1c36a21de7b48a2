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
    key_boxes,
    key_words_box,
    mating_strip,
    scale_text,
)
from planner.sheet.lettering import THIN
from planner.sheet.sides import WIDE, Side, Sizes, column_width, share_sides

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


def face_panel(
    facts: EndFacts, connector: Connector, sizes: Sizes, *, withheld: bool = False
) -> tuple[DrawList, float]:
    """Draw an end of at most MOST_ROUND contacts from 0, 0; return the items and the height.

    In a wide frame the mating key stands in the lower left corner beside the face, if no leader
    runs through its words there. `withheld` draws open octagons for the order of soldering.
    """
    sizes = _with_flags_that_fit(facts, connector, sizes)
    if sizes.width == WIDE.width:
        items, framing = _framed(facts, connector, sizes, in_corners=True, withheld=withheld)
        if not _struck(items, framing):
            return items, framing.height
    items, framing = _framed(facts, connector, sizes, in_corners=False, withheld=withheld)
    return items, framing.height


def _with_flags_that_fit(facts: EndFacts, connector: Connector, sizes: Sizes) -> Sizes:
    """Show fewer flags beside the face where very many conductors land on its contacts."""
    for shown in (3, 2, 1):
        sizes = replace(sizes, shown=shown)
        if max(side.height for side in share_sides(facts, connector, sizes)) <= _MOST_SIDE:
            break
    return sizes


def _framed(
    facts: EndFacts, connector: Connector, sizes: Sizes, *, in_corners: bool, withheld: bool
) -> tuple[DrawList, Framing]:
    sides = share_sides(facts, connector, sizes)
    corner = STRIP if in_corners else 0.0
    area = max(sizes.face, *(side.height + corner for side in sides))
    framing = Framing(sizes.width, sizes.bar, area, in_corners=in_corners)
    scale = _beside_columns(facts, connector, sizes, area)
    larger = [one for one in SCALES if one > scale] if connector.shell.shape == "round" else []
    keys = key_boxes(framing) if in_corners else ()
    # A round shell leaves its corners free: names may stand there.
    for tried in (*larger, scale):
        drawing, beside = _beside(
            facts, connector, sizes, framing, sides, scale=tried, withheld=withheld
        )
        high = 2 * (shell_reach_mm(connector)[1] * tried * 100 + OUTSIDE) <= area
        if tried == scale or (high and drawing.is_clear_of(keys)):
            break
    items = (
        *bar_and_words(framing, facts, connector, scale_text(tried)),
        *drawing.face(),
        *beside,
        *drawing.names(),
        *mating_strip(framing, facts, connector, true_size_here=sizes.width != WIDE.width),
    )
    return items, framing


def _beside_columns(facts: EndFacts, connector: Connector, sizes: Sizes, area: float) -> float:
    """Return the scale at which the shell stands between the columns of names."""
    column = max(column_width(facts, sizes), 1900.0)
    around = sizes.width - 2 * column - 2 * OUTSIDE
    return best_scale(connector, around, area - 2 * OUTSIDE)


def _beside(
    facts: EndFacts,
    connector: Connector,
    sizes: Sizes,
    framing: Framing,
    sides: tuple[Side, Side],
    *,
    scale: float,
    withheld: bool,
) -> tuple[FaceDrawing, DrawList]:
    """Set the names and flags at both sides of a face at a scale; the face is not drawn yet."""
    top, area = framing.area_top, framing.area
    middle = (sizes.width / 2, top + area / 2)
    drawing = FaceDrawing(facts, connector, sizes, scale * 100, middle, withheld=withheld)
    low = top + area - (STRIP if framing.in_corners else 0.0)
    drawn = (
        *drawing.side(sides[0], top, low, on_left=True),
        *drawing.side(sides[1], top, low, on_left=False),
    )
    return drawing, drawn


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
