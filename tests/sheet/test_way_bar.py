"""The way bar: the stages of the work in their order, this page's one dark."""

from itertools import pairwise

from planner.drawing.primitives import Poly, Text
from planner.sheet.leaf import Making
from planner.sheet.lettering import INK, PAPER
from planner.sheet.way_bar import Stretch, stretches_of, way_bar
from tests.sheet.plain_plan import plain_plan
from tests.sheet.samples import loom


def test_a_range_has_a_dash_one_step_its_number():
    assert [Stretch(("A",), ("A",), *span).range_text for span in ((5, 16), (4, 4), (0, 0))] == [
        "5\u201316",
        "4",
        "",
    ]


def test_the_ranges_follow_one_another_without_a_gap():
    making = Making(plain_plan(), ())
    stretches = stretches_of(making)
    assert stretches[0].first == 1
    assert stretches[-1].last == len(making.steps)
    for one, other in pairwise(stretches):
        assert other.first == one.last + 1


def test_one_arrow_is_dark_and_its_words_are_white():
    items = way_bar(Making(plain_plan(), ()), "A")
    dark = [item for item in items if isinstance(item, Poly) and item.style.fill == INK]
    white = [item.text for item in items if isinstance(item, Text) and item.colour == PAPER]
    assert len(dark) == 1
    assert white[-1] == "Solder A"


def test_no_arrow_is_dark_on_a_page_that_is_no_step():
    items = way_bar(Making(plain_plan(), ()), "")
    assert [item for item in items if isinstance(item, Poly) and item.style.fill == INK] == []


def test_many_ends_share_an_arrow_so_that_all_words_fit():
    making = Making(loom(), ())
    said = [item.text for item in way_bar(making, "cut") if isinstance(item, Text)]
    assert "Solder B1\u2013B8" in said
    assert not any(text.endswith("\u2026") for text in said)
