from xml.etree import ElementTree as ET

import pytest

from planner.drawing.primitives import Circle, Path, Poly, Rect, Style, Text
from planner.drawing.safe_svg import SVG, unsafe_parts
from planner.drawing.svg import Group, plain_text, svg_text, whole

PEN = Style(fill="#ff0000", stroke="#000000", width=3, opacity=0.5, dash=(4, 2), cap="round")
EVERYTHING = (
    Poly(((0, 0), (10, 10.4), (5, 5)), PEN, closed=True),
    Poly(((0, 0), (10, 10.4)), PEN),
    Circle((50, 50), 20.6, PEN),
    Rect((3, 4), 20, 20, PEN, radius=3),
    Path((("M", (0, 0)), ("L", (1, 1)), ("C", (1, 2, 3, 4, 5, 6)), ("Z", ())), PEN),
    Text((50, 50), "plain", 12, "#000000", bold=True, anchor="middle", turn_deg=-20.1234),
)


def written(content=EVERYTHING, **changes):
    return svg_text(content, width=100, height=200, **changes)


def test_every_primitive_is_written_within_the_safe_subset():
    text = written(title="A <b>", desc="seen & heard", paper="#ffffff", unit_mm=0.01)
    assert unsafe_parts(text) == ()
    names = [element.tag.removeprefix(SVG) for element in ET.fromstring(text)]
    shapes = ["polygon", "polyline", "circle", "rect", "path", "text"]
    assert names == ["title", "desc", "rect", *shapes]


def test_same_bytes_each_time():
    assert written() == written()


def test_root_has_true_size():
    root = ET.fromstring(svg_text((), width=21000, height=29700, unit_mm=0.01))
    assert (root.get("width"), root.get("height")) == ("210mm", "297mm")


def test_groups_carry_their_own_ids():
    root = ET.fromstring(written((Group("end-A", EVERYTHING), Group("foot", EVERYTHING[:1]))))
    assert [group.get("id") for group in root] == ["end-A", "foot"]


@pytest.mark.parametrize(("value", "expected"), [(0.5, 1), (-0.5, 0), (1.4999, 1), (0.1 + 0.2, 0)])
def test_one_rounding_for_all_figures(value, expected):
    assert whole(value) == expected


def test_markup_and_control_characters_in_names_are_harmless():
    hostile = '</text><script>x</script>&amp;"\x07\x1b\u2028\ud800'
    text = written((Text((0, 0), hostile, 12, "#000000"),), title=hostile)
    assert unsafe_parts(text) == ()
    root = ET.fromstring(text)
    assert [element.text for element in root] == ['</text><script>x</script>&amp;"'] * 2


def test_plain_text_keeps_letters_of_all_kinds():
    assert plain_text("L\u2212 \u00e9\u6f22\U0001f50c") == "L\u2212 \u00e9\u6f22\U0001f50c"


def test_an_unknown_primitive_is_refused():
    with pytest.raises(TypeError, match="no primitive"):
        written(("not a primitive",))
