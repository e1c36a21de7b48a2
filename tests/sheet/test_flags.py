import pytest

from planner.drawing.metrics import text_width
from planner.drawing.primitives import Path, Poly, Text
from planner.model.cable import COLOUR_WORDS
from planner.sheet.facts import Flag
from planner.sheet.flags import draw_flag, flag_width, patch


def flag(*colours, code=""):
    return Flag("x", code or "".join(colours) or "SHIELD", colours, "", 0.8)


def drawn(made):
    """What a patch shows with its tint left out: what a grey copy keeps."""
    return str([getattr(item, "commands", getattr(item, "points", ())) for item in made])


def test_no_two_hues_look_alike_without_colour():
    white_like = {"WH", "BK"}  # clear and solid: told apart by the tint itself
    patches = {c: drawn(patch(flag(c), (0, 0), 700)) for c in COLOUR_WORDS if c not in white_like}
    patches["SHIELD"] = drawn(patch(flag(), (0, 0), 700))
    assert len(set(patches.values())) == len(patches)


def test_white_is_clear_and_black_is_solid():
    fills = [patch(flag(code), (0, 0), 700)[0].style.fill for code in ("WH", "BK")]
    assert fills == ["#ffffff", "#1a1a1a"]


def test_a_second_colour_is_a_bend_across_the_patch():
    bends = [item for item in patch(flag("WH", "RD"), (0, 0), 700) if isinstance(item, Poly)]
    assert [(bend.closed, len(bend.points)) for bend in bends] == [(True, 6)]
    assert not [item for item in patch(flag("WH"), (0, 0), 700) if isinstance(item, Poly)]


@pytest.mark.parametrize("height", [460, 560, 700])
@pytest.mark.parametrize("code", ["RD", "WHBK", "SH 8s", "SHIELD"])
def test_the_code_fits_its_frame(height, code):
    made = flag("RD", code=code)
    (text,) = [item for item in draw_flag(made, (0, 0), height) if isinstance(item, Text)]
    assert text.bold
    assert text.at[0] + text_width(text.text, text.size, bold=True) < flag_width(made, height)


def hatch_of(corner):
    (path,) = [item for item in patch(flag("GN"), corner, 500) if isinstance(item, Path)]
    x0, y0 = corner
    return [(step, round(x - x0, 3), round(y - y0, 3)) for step, (x, y) in path.commands]


def test_a_flag_looks_the_same_wherever_it_stands():
    assert hatch_of((0, 0)) == hatch_of((1234.5, 777.7))
