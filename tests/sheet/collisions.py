"""Find text that lies on other text, leaves the page, or has a line or a stripe through it."""

import math
from itertools import combinations

from planner.drawing.metrics import text_width
from planner.drawing.primitives import CAP_HEIGHT, Poly, Text
from planner.sheet.lettering import INK, THIN

DESCENT = 0.16  # of the em; deeper tails may touch a rule


def corners(text):
    """Return the four corners of a line of text, capitals to a part of the tails."""
    width = text_width(text.text, text.size, text.bold)
    left = -{"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * width
    angle = math.radians(text.turn_deg)
    cos, sin = math.cos(angle), math.sin(angle)
    x0, y0 = text.at
    top, bottom = -CAP_HEIGHT * text.size, DESCENT * text.size
    flat = ((left, top), (left + width, top), (left + width, bottom), (left, bottom))
    return [(x0 + x * cos - y * sin, y0 + x * sin + y * cos) for x, y in flat]


def spans(points, axis):
    along = [x * axis[0] + y * axis[1] for x, y in points]
    return min(along), max(along)


def axes(points):
    for (x0, y0), (x1, y1) in zip(points, points[1:] + points[:1], strict=True):
        size = math.hypot(x1 - x0, y1 - y0)
        if size > 0:
            yield ((y0 - y1) / size, (x1 - x0) / size)


def parted(one, other, axis, slack):
    (low, high), (start, stop) = spans(one, axis), spans(other, axis)
    return high - slack <= start or stop - slack <= low


def meet(one, other, slack=1.0):
    """Tell whether two convex shapes share more than `slack`: no axis parts them."""
    return not any(parted(one, other, axis, slack) for axis in (*axes(one), *axes(other)))


def texts(items):
    return [item for item in items if isinstance(item, Text) and item.text.strip()]


def reach(points):
    """Return left, top, right and bottom of an upright box round the points."""
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def near(one, other):
    """Tell whether two upright boxes touch: what is not near can't meet, and this is quick."""
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]


def overlapping(items):
    """Return pairs of texts that lie on one another."""
    boxes = [(text, shape, reach(shape)) for text in texts(items) for shape in [corners(text)]]
    return [
        (one.text, other.text)
        for (one, first, here), (other, second, there) in combinations(boxes, 2)
        if near(here, there) and meet(first, second)
    ]


def outside(page, margin=500.0):
    """Return texts that come nearer to the edge of the page than `margin`."""
    return [
        text.text
        for text in texts(page.items)
        if not all(
            margin <= x <= page.width - margin and margin <= y <= page.height - margin
            for x, y in corners(text)
        )
    ]


def struck(items):
    """Return texts that a leader runs through."""
    leaders = [
        list(item.points)
        for item in items
        if isinstance(item, Poly)
        and len(item.points) == 2
        and (item.style.stroke, item.style.width) == (INK, THIN)
    ]
    return [
        text.text
        for text in texts(items)
        for shape in [corners(text)]
        for leader in leaders
        if near(reach(shape), reach(leader)) and meet(shape, leader, slack=10.0)
    ]


def barred(page):
    """Return texts that a stripe from edge to edge of the page lies over."""
    stripes = [
        list(item.points)
        for item in page.items
        if isinstance(item, Poly)
        and {0.0, page.width} == {x for x, _ in item.points}
        and item.style.fill == INK
    ]
    return [
        text.text for text in texts(page.items) for stripe in stripes if meet(corners(text), stripe)
    ]
