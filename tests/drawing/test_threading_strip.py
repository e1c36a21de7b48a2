"""The threading strip: what stands in which order, in how many rows, and within its room."""

import pytest

from planner.drawing.looks import LIGHT, PRINT
from planner.drawing.metrics import text_width
from planner.drawing.part_shapes import part_shape
from planner.drawing.primitives import Circle, Poly, Rect, Text
from planner.drawing.threading import ROW_MM, strip_height, threading_strip
from planner.dryfit.threading import thread
from tests.dryfit.threaded import KINDS, lead, part, use

WIDTH = 19000.0


def queue(count, ends="A", **figures):
    """Return a Y with this many parts at each of the ends named."""
    names = [f"{end}{at}" for end in ends for at in range(count)]
    parts = [part(name, 5, title=f"title of {name}", **figures) for name in names]
    plan = lead("ABC", (4, 4, 4), (9, 9, 9), parts, [use(name, name[0]) for name in names])
    return plan, thread(plan)


def drawn(plan, threading, **more):
    return threading_strip(
        plan, threading, end="A", origin=(1000.0, 2000.0), width=WIDTH, look=PRINT, **more
    )


def said(items):
    return [item.text for item in items if isinstance(item, Text)]


def test_parts_stand_in_threading_order_with_tag_and_title():
    items = drawn(*queue(3))
    assert said(items) == ["A", "A1", "title of A0", "A2", "title of A1", "A3", "title of A2"]
    tags = {item.text: item.at[0] for item in items if isinstance(item, Text)}
    assert tags["A1"] < tags["A2"] < tags["A3"]


def test_nothing_at_an_end_draws_nothing():
    plan, threading = queue(2, ends="B")
    assert drawn(plan, threading) == ()
    assert strip_height(threading, end="A", width=WIDTH, scale=100) == 0


@pytest.mark.parametrize(("count", "rows"), [(1, 1), (5, 1), (6, 2), (11, 3)])
def test_a_long_queue_goes_on_in_more_rows(count, rows):
    plan, threading = queue(count)
    assert strip_height(threading, end="A", width=WIDTH, scale=100) == rows * ROW_MM * 100
    assert said(drawn(plan, threading)).count("A") == rows


def test_alike_ends_share_one_strip():
    plan, threading = queue(2, ends="ABC")
    words = said(drawn(plan, threading, alike=("B",)))
    assert words[:5] == ["A", "B", "A1", "B1", "title of A0"]
    assert said(drawn(plan, threading, alike=("B", "C")))[:4] == ["A", "A1", "\u2026", "C1"]


def test_words_can_be_given_and_keep_to_two_lines_in_their_cell():
    plan, threading = queue(5)
    items = drawn(plan, threading, words=lambda route: (f"{route.tag} goes on", "long " * 30))
    texts = [item for item in items if isinstance(item, Text)]
    assert sum("goes on" in item.text for item in texts) == 5
    assert sum(item.text.endswith("\u2026") for item in texts) == 5
    cell = (WIDTH - 4500) / 5
    assert all(text_width(it.text, it.size, it.bold) < cell for it in texts)


def corners(items):
    for item in items:
        if isinstance(item, Poly):
            yield from item.points
        elif isinstance(item, Rect):
            yield item.corner
            yield (item.corner[0] + item.width, item.corner[1] + item.height)
        elif isinstance(item, Circle):
            yield item.centre
        elif isinstance(item, Text):
            yield item.at
            yield (item.at[0] + text_width(item.text, item.size, item.bold), item.at[1])


@pytest.mark.parametrize("count", [1, 5, 7])
def test_all_lies_within_the_width_and_height_told(count):
    plan, threading = queue(count, length_mm=500)
    high = strip_height(threading, end="A", width=WIDTH, scale=100)
    for x, y in corners(drawn(plan, threading)):
        assert 1000 <= x <= 1000 + WIDTH
        assert 2000 <= y <= 2000 + high


def test_parts_are_owned_by_their_use():
    owners = {item.owner for item in drawn(*queue(2))}
    assert owners == {"", "part/A0", "part/A1"}


def test_every_kind_has_a_shape_of_its_own():
    shapes = [
        part_shape(part("p", 6, kind=kind, length_mm=20), centre=(0, 0), scale=4, look=LIGHT)
        for kind in KINDS
    ]
    assert len(set(shapes)) == len(KINDS)


def test_the_wide_end_of_a_cover_goes_to_the_legs():
    cover = part("p", 6, kind="cover", length_mm=20)
    first, last = (
        part_shape(cover, centre=(0, 0), scale=1, look=LIGHT, wide_first=it)[0].points
        for it in (True, False)
    )
    assert last == tuple((-x, y) for x, y in first)
    assert max(y for x, y in first if x < 0) > max(y for x, y in first if x == max(first)[0])


def test_what_opens_shows_a_seam():
    whole, split = (
        part_shape(part("p", 6, opens=it, length_mm=20), centre=(0, 0), scale=1, look=LIGHT)
        for it in (False, True)
    )
    assert split[:-1] == whole
