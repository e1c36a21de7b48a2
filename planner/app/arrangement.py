"""Where each region of the window lies, as plain rectangles: wide, compact, or one column.

Nothing is ever dropped when the window gets smaller, only folded or stacked.
"""

from dataclasses import dataclass
from enum import Enum

Box = tuple[int, int, int, int]  # x, y, width, height in px

# The row of the ends, and what the view's buttons need beside it in one column, px.
ENDS_HIGH, HEAD_WIDE = 48, 484
# What is kept for the state of saving at the end of the bottom bar, px.
STATE_WIDE = 136

PANELS = ("shelf", "canvas", "landings", "findings", "in_hand")


class Form(Enum):
    """The three forms of the window."""

    WIDE = "wide"
    COMPACT = "compact"
    COLUMN = "column"


@dataclass(frozen=True, slots=True)
class Sizes:
    """Sizes of the fixed regions in one form, px."""

    menu: int
    band: int
    shelf: int
    rail: int
    margin: int
    head: int
    landings: int
    landings_head: int
    hints: int
    bar: int


SIZES = {
    Form.WIDE: Sizes(32, 72, 216, 48, 304, 40, 184, 32, 28, 0),
    Form.COMPACT: Sizes(24, 56, 216, 48, 264, 40, 184, 32, 28, 0),
    Form.COLUMN: Sizes(24, 48, 0, 0, 0, 40, 0, 0, 0, 44),
}


def form_of(width: int, height: int) -> Form:
    """Return the form for a window of this size in logical px."""
    if width < 900 or height < 560:
        return Form.COLUMN
    return Form.WIDE if width >= 1200 and height >= 760 else Form.COMPACT


@dataclass(frozen=True, slots=True)
class Folds:
    """What is folded away, and in one column which panel is shown as a sheet."""

    shelf: bool = False
    landings: bool = False
    sheet: str = "canvas"
    lately: bool = False  # the recent plans, beside a new one
    ends: bool = False  # the steps from end to end, over the bench


@dataclass(frozen=True, slots=True)
class Arrangement:
    """The boxes of the regions below the menu; a region that is not shown has no box."""

    form: Form
    boxes: dict[str, Box]
    over: tuple[str, ...] = ()  # regions that lie over others, to be raised


def arrange(width: int, height: int, folds: Folds, form: Form) -> Arrangement:
    """Lay the regions out in an area of `width` by `height` px below the menu."""
    if form is Form.COLUMN:
        return _column(width, height, folds)
    sizes = SIZES[form]
    body_top, body_end = sizes.band, height - sizes.hints
    margin_x = width - sizes.margin
    boxes: dict[str, Box] = {
        "band": (0, 0, width, sizes.band),
        "hints": (0, body_end, width, sizes.hints),
    }
    over: tuple[str, ...] = ()
    left = sizes.shelf if form is Form.WIDE and not folds.shelf else sizes.rail
    if folds.shelf:
        boxes["rail"] = (0, body_top, sizes.rail, body_end - body_top)
    else:
        boxes["shelf"] = (0, body_top, sizes.shelf, body_end - body_top)
        over = ("shelf",) if form is Form.COMPACT else ()
    boxes |= _centre(left, margin_x - left, body_top, body_end, folds, sizes)
    boxes |= _margin((margin_x, body_top, sizes.margin, body_end - body_top), folds)
    return Arrangement(form, boxes, over)


def _centre(  # noqa: PLR0917 - four edges of one rectangle, and how to divide it
    x: int, width: int, top: int, end: int, folds: Folds, sizes: Sizes
) -> dict[str, Box]:
    low = sizes.landings_head if folds.landings else min(sizes.landings, (end - top) // 2)
    boxes: dict[str, Box] = {"head": (x, top, width, sizes.head)}
    canvas_y = top + sizes.head
    if folds.ends:
        boxes["ends"] = (x, canvas_y, width, ENDS_HIGH)
        canvas_y += ENDS_HIGH
    boxes["canvas"] = (x, canvas_y, width, end - canvas_y - low)
    boxes["landings_bar" if folds.landings else "landings"] = (x, end - low, width, low)
    return boxes


def _margin(area: Box, folds: Folds) -> dict[str, Box]:
    x, top, width, height = area
    lately = min(370, height * 48 // 100) if folds.lately else 0
    in_hand = min(180, height * 24 // 100) if folds.lately else min(300, height * 2 // 5)
    boxes = {
        "findings": (x, top, width, height - in_hand - lately),
        "in_hand": (x, top + height - in_hand - lately, width, in_hand),
    }
    if folds.lately:
        boxes["lately"] = (x, top + height - lately, width, lately)
    return boxes


def _column(width: int, height: int, folds: Folds) -> Arrangement:
    sizes = SIZES[Form.COLUMN]
    bar_y = height - sizes.bar
    boxes: dict[str, Box] = {
        "band": (0, 0, width, sizes.band),
        "bar": (0, bar_y, width - STATE_WIDE, sizes.bar),
        "hints": (width - STATE_WIDE, bar_y, STATE_WIDE, sizes.bar),
    }
    if folds.sheet == "canvas":
        head = ENDS_HIGH if folds.ends else sizes.head
        # One row for the steps and the view's buttons: the end below needs the height.
        steps = max(width - HEAD_WIDE, 0) if folds.ends else 0
        boxes["head"] = (steps, sizes.band, width - steps, head)
        if folds.ends:
            boxes["ends"] = (0, sizes.band, steps, head)
        boxes["canvas"] = (0, sizes.band + head, width, bar_y - sizes.band - head)
    elif folds.sheet == "in_hand" and folds.lately:
        high = (bar_y - sizes.band) * 2 // 5
        boxes["in_hand"] = (0, sizes.band, width, high)
        boxes["lately"] = (0, sizes.band + high, width, bar_y - sizes.band - high)
    else:
        boxes[folds.sheet] = (0, sizes.band, width, bar_y - sizes.band)
    return Arrangement(Form.COLUMN, boxes)
