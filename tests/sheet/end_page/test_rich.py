"""Running text with bold pieces and order discs."""

import pytest

from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, Text
from planner.markup import as_it_is, unmarked
from planner.sheet.end_page.rich import rich_lines, rich_width
from planner.sheet.lettering import BODY


def texts(items):
    return [(item.text, item.bold) for item in items if isinstance(item, Text)]


def test_what_stands_between_stars_is_bold_and_neighbours_are_one_text():
    items, _ = rich_lines((0, 0), "Take *18 mm* of jacket off.", 9000)
    assert texts(items) == [("Take", False), ("18 mm", True), ("of jacket off.", False)]


def test_a_comma_after_bold_stands_close():
    items, _ = rich_lines((0, 0), "*A1*, *A2*", 9000)
    assert texts(items) == [("A1", True), (",", False), ("A2", True)]
    first, comma = items[0], items[1]
    assert comma.at[0] == pytest.approx(text_width(first.text, BODY, bold=True))


@pytest.mark.parametrize("text", ["*Solder [1] [12] so.*", "*[1] [12] so.*", "[1], [12]."])
def test_a_number_in_brackets_is_a_disc(text):
    items, _ = rich_lines((0, 0), text, 9000)
    assert sum(isinstance(item, Circle) for item in items) == 2
    assert [text for text, _ in texts(items) if text.isdigit()] == ["1", "12"]


def test_lines_keep_within_the_width_and_bold_goes_on():
    items, height = rich_lines((100, 0), "one *two three four five* six", 1200, pitch=460)
    assert height > 460
    for item in items:
        assert item.at[0] + text_width(item.text, BODY, item.bold) <= 100 + 1200
    assert [bold for text, bold in texts(items) if text not in {"one", "six"}].count(False) == 0


def test_the_width_of_one_line_is_that_of_its_words():
    assert rich_width("ab *cd*") == pytest.approx(
        text_width("ab ", BODY) + text_width("cd", BODY, bold=True)
    )


def test_signs_of_a_title_are_no_marks():
    title = r"Plug *new* [3] \ end"
    items, _ = rich_lines((0, 0), f"Close *A1*: {as_it_is(title)}.", 9000)
    assert texts(items) == [("Close", False), ("A1", True), (f": {title}.", False)]
    assert unmarked(f"*A1* {as_it_is(title)}") == f"A1 {title}"


def test_a_figure_keeps_its_unit_and_a_shield_its_code():
    items, _ = rich_lines((0, 0), "to 2.36 mm, SH 2s", text_width("to 2.36", BODY) + 10)
    assert [text for text, _ in texts(items)] == ["to", "2.36 mm,", "SH 2s"]
