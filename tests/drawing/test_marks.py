import math

import pytest

from planner.drawing.looks import DARK, LIGHT
from planner.drawing.marks import eye, mark
from planner.drawing.primitives import Circle, Path, Poly, Rect

KINDS = [
    "stop",
    "caution",
    "note",
    "clear",
    "empty",
    "landed",
    "hand",
    "nothing",
    "tick",
    "octagon",
]


def shape(items):
    return [
        (
            type(item).__name__,
            len(getattr(item, "points", ())),
            item.style.fill not in {None, LIGHT.paper},
        )
        for item in items
    ]


def test_no_two_marks_share_a_shape():
    shapes = [str(shape(mark(kind, (0, 0), 10, LIGHT))) for kind in KINDS]
    assert len(set(shapes)) == len(KINDS)


def test_a_stop_has_eight_corners_and_a_caution_three():
    assert len(mark("stop", (0, 0), 10, LIGHT)[0].points) == 8
    assert len(mark("caution", (0, 0), 10, LIGHT)[0].points) == 3


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("radius", [6, 24])
def test_a_mark_stays_within_its_radius(kind, radius):
    for item in mark(kind, (100, 100), radius, DARK):
        for x, y, reach in spots(item):
            assert math.dist((x, y), (100, 100)) + reach <= radius * 1.2 + 0.6


def spots(item):
    if isinstance(item, Circle):
        yield (*item.centre, item.radius)
    elif isinstance(item, Rect):
        x, y = item.corner
        yield from ((x, y, 0), (x + item.width, y + item.height, 0))
    else:
        assert isinstance(item, Poly)
        yield from ((x, y, 0) for x, y in item.points)


def test_an_eye_is_lids_pupil_and_glint():
    assert [type(item) for item in eye((0, 0), 70, LIGHT)] == [Path, Circle, Circle]
