"""The solder side of an end in its frame: eye bar, face, names and flags round it, mating key."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import product

from planner.drawing.primitives import DrawList, Poly
from planner.model.connector import Connector
from planner.sheet.boxes import Box
from planner.sheet.face_drawing import OUTSIDE, FaceDrawing, drawn_reach_mm
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
GOOD_SCALE = 4.0
_FACES = (
    6350.0,
    6900.0,
    7450.0,
    8000.0,
    8250.0,
    8450.0,
    8900.0,
)  # heights of the area for the face, in turn
MOST_ROUND = 8  # contacts that still have room for names and flags round the face
_MOST_SIDE = 7500.0


def _best_scale(reach_mm: tuple[float, float], width: float, height: float) -> float:
    """Return the largest stated scale at which a face fits `width` by `height` (0.01 mm)."""
    for scale in SCALES:
        if reach_mm[0] * 200 * scale <= width and reach_mm[1] * 200 * scale <= height:
            return scale
    return SCALES[-1]


@dataclass(frozen=True, slots=True)
class Faced:
    """A face in its frame from 0, 0; `keyed` where the mating key stands in the frame."""

    items: DrawList
    height: float
    scale: float
    keyed: bool


@dataclass(frozen=True, slots=True)
class _Laid:
    """A face laid out with what stands beside it, before the costly search for names in it."""

    drawing: FaceDrawing
    around: DrawList
    framing: Framing
    keyed: bool

    @property
    def scale(self) -> float:
        return self.drawing.scale / 100

    def drawn(self) -> Faced:
        items = _put_together(self.drawing, self.around, self.framing, keyed=self.keyed)
        return Faced(items, self.framing.height, self.scale, self.keyed)


def page_face(
    facts: EndFacts, connector: Connector, *, withheld: bool = False, least: float = 0.0
) -> Faced:
    """Draw an end of at most MOST_ROUND contacts for a page of its own, at GOOD_SCALE or larger.

    The frame grows as high as that takes, the face's area from `least` on. The mating key stands in
    its lower left corner, or, where it would be in the way, not in the frame. `withheld` draws open
    octagons for the order.
    """
    best: _Laid | None = None
    sizes = WIDE
    for sizes in _with_flags_that_fit(facts, connector):
        for keyed, face in product((True, False), (one for one in _FACES if one >= least)):
            tried = _framed(
                facts, connector, replace(sizes, face=face), keyed=keyed, withheld=withheld
            )
            if tried is None:
                continue
            if tried.scale >= GOOD_SCALE:
                return tried.drawn()
            best = tried if best is None or tried.scale > best.scale else best
    last = best or _last_resort(facts, connector, sizes, withheld=withheld)
    return last.drawn()


def _with_flags_that_fit(facts: EndFacts, connector: Connector) -> Iterator[Sizes]:
    """Yield sizes with fewer and fewer flags beside the face, for very many conductors on it."""
    most = max((len(joint.flags) for joint in facts.joints), default=0)
    for shown in (3, 2, 1):
        sizes = replace(WIDE, shown=shown)
        high = max(side.height for side in share_sides(facts, connector, sizes))
        if shown == 1 or (high <= _MOST_SIDE and (most >= shown or shown == WIDE.shown)):
            yield sizes


def _framed(
    facts: EndFacts, connector: Connector, sizes: Sizes, *, keyed: bool, withheld: bool
) -> _Laid | None:
    """Lay out the face as large as it goes; None where leaders would run through words."""
    sides = share_sides(facts, connector, sizes)
    corner = STRIP if keyed else 0.0
    area = max(sizes.face, sides[0].height + corner, sides[1].height)
    framing = Framing(sizes.width, sizes.bar, area, in_corners=True)
    beside = _beside_columns(facts, connector, sizes, area)
    keys = key_boxes(framing, facts) if keyed else ()
    most = (area - 2 * OUTSIDE) / (200 * drawn_reach_mm(facts, connector)[1])
    for scale in (one for one in SCALES if beside <= one <= most):
        for packed in _packings(facts, connector, sizes, framing, sides):
            drawing = _drawing(
                facts, connector, sizes, framing, scale, packed=packed, withheld=withheld
            )
            around = _sides(drawing, sides, framing, keyed=keyed)
            if not drawing.is_clear_of(keys) or not drawing.has_free_leaders():
                continue
            if not (keyed and _struck(around, framing, facts)):
                return _Laid(drawing, around, framing, keyed)
    return None


def _packings(
    facts: EndFacts, connector: Connector, sizes: Sizes, framing: Framing, sides: tuple[Side, Side]
) -> Iterator[tuple[int, int] | None]:
    """Yield ways to set the names: each at its core; or so many of a side from the top down."""
    yield None
    if connector.shell.shape != "round":
        return
    drawing = _drawing(facts, connector, sizes, framing, 1.0, packed=None, withheld=True)
    left, right = (drawing.upper(side) for side in sides)
    for off in ((0, 0), (0, -1), (0, 1), (-1, 0), (1, 0), (-1, -1), (1, 1), (-1, 1), (1, -1)):
        found = (left + off[0], right + off[1])
        if all(0 <= upper <= len(side.joints) for upper, side in zip(found, sides, strict=True)):
            yield found


def _last_resort(facts: EndFacts, connector: Connector, sizes: Sizes, *, withheld: bool) -> _Laid:
    """Lay out the face between its columns, whatever leaders run through."""
    sides = share_sides(facts, connector, sizes)
    framing = Framing(sizes.width, sizes.bar, max(sizes.face, *(side.height for side in sides)))
    scale = _beside_columns(facts, connector, sizes, framing.area)
    drawing = _drawing(facts, connector, sizes, framing, scale, packed=None, withheld=withheld)
    around = _sides(drawing, sides, framing, keyed=False)
    return _Laid(drawing, around, framing, keyed=True)


def _put_together(
    drawing: FaceDrawing, around: DrawList, framing: Framing, *, keyed: bool
) -> DrawList:
    facts, connector = drawing.facts, drawing.connector
    key = mating_strip(framing, facts, connector) if keyed else ()
    scale = facts.words.decimal(scale_text(drawing.scale / 100))
    bar = bar_and_words(framing, facts, connector, scale)
    return (*bar, *drawing.face(), *around, *drawing.names(), *key)


def _beside_columns(facts: EndFacts, connector: Connector, sizes: Sizes, area: float) -> float:
    """Return the scale at which the shell stands between the columns of names."""
    column = max(column_width(facts, sizes), 1900.0)
    around = sizes.width - 2 * column - 2 * OUTSIDE
    return _best_scale(drawn_reach_mm(facts, connector), around, area - 2 * OUTSIDE)


def _drawing(
    facts: EndFacts,
    connector: Connector,
    sizes: Sizes,
    framing: Framing,
    scale: float,
    *,
    packed: tuple[int, int] | None,
    withheld: bool,
) -> FaceDrawing:
    middle = (sizes.width / 2, framing.area_top + framing.area / 2)
    return FaceDrawing(
        facts, connector, sizes, scale * 100, middle, withheld=withheld, packed=packed
    )


def _sides(
    drawing: FaceDrawing, sides: tuple[Side, Side], framing: Framing, *, keyed: bool
) -> DrawList:
    """Set the names and flags at both sides of a face; the left one ends above the key."""
    top = framing.area_top
    low = top + framing.area - 200
    left = low + 200 - STRIP if keyed else low
    return (
        *drawing.side(sides[0], top, left, on_left=True),
        *drawing.side(sides[1], top, low, on_left=False),
    )


def _struck(items: DrawList, framing: Framing, facts: EndFacts) -> bool:
    """Tell whether a leader runs through the words of the key."""
    words = key_words_box(framing, facts)
    return any(
        isinstance(item, Poly)
        and len(item.points) == 2
        and item.style.width == THIN
        and words.meets(Box.round_line(item.points[0], item.points[1], 60))
        for item in items
    )
