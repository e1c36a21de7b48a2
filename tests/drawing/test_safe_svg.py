"""The lint itself: it passes what is safe and fails all that is not."""

import pytest

from planner.drawing.safe_svg import unsafe_parts

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm" viewBox="0 0 9 9">'


def lint(inner):
    return unsafe_parts(f"{HEAD}{inner}</svg>")


@pytest.mark.parametrize(
    "inner",
    [
        '<rect x="0" y="1" width="2" height="3" rx="1" fill="#ffffff" fill-opacity="0.5"/>',
        '<g id="a"><line x1="0" y1="0" x2="5" y2="-5" stroke="#000000" stroke-width="25"/></g>',
        '<polyline points="0,0 5,-5" fill="none" stroke="#000000" stroke-dasharray="4 2"/>',
        '<path d="M0 0C1 2 3 4 5 6Z" fill="none" stroke-linecap="round"/>',
        '<text x="1" y="2" font-size="344" text-anchor="end" transform="rotate(-20 1 2)">A</text>',
        "<title>t</title><desc>d</desc>",
    ],
)
def test_safe(inner):
    assert lint(inner) == ()


@pytest.mark.parametrize(
    "inner",
    [
        "<script>x</script>",
        "<style>rect{}</style>",
        '<clipPath id="a"/>',
        '<mask id="a"/>',
        '<pattern id="a"/>',
        '<marker id="a"/>',
        '<filter id="a"/>',
        "<svg/>",
        '<image href="a.png"/>',
        "<foreignObject/>",
        '<a href="http://example.org"><rect x="0" y="0" width="1" height="1"/></a>',
        '<rect x="0" y="0" width="1" height="1" onclick="x()"/>',
        '<rect x="0" y="0" width="1" height="1" style="fill:red"/>',
        '<rect x="0.3" y="0" width="1" height="1"/>',
        '<rect x="1mm" y="0" width="1" height="1"/>',
        '<rect x="0" y="0" width="50%" height="1"/>',
        '<rect x="0" y="0" width="1" height="1" fill="red"/>',
        '<rect x="0" y="0" width="1" height="1" fill="#ff000080"/>',
        '<rect x="0" y="0" width="1" height="1" fill="rgba(1,2,3,0.4)"/>',
        '<rect x="0" y="0" width="1" height="1" fill="url(#a)"/>',
        '<line x1="0" y1="0" x2="5" y2="5" stroke-dasharray="0 4"/>',
        '<path d="M0 0A5 5 0 0 0 1 1"/>',
        '<path d="M0.5 0L1 1"/>',
        '<text x="1" y="2" dominant-baseline="middle">A</text>',
        '<text x="1" y="2" letter-spacing="2">A</text>',
        '<text x="1" y="2" dx="3">A</text>',
        '<text x="1" y="2"><tspan x="3">A</tspan></text>',
        '<text x="1" y="2">A\nB</text>',
        '<g font-family="Inter, Arial"/>',
    ],
)
def test_unsafe(inner):
    assert len(lint(inner)) >= 1


def test_entities_are_refused_before_reading():
    assert unsafe_parts('<!DOCTYPE x [<!ENTITY a "b">]><svg/>') != ()
