"""The usual cautions of the bench, each with a small picture."""

from collections.abc import Callable

from planner.drawing.primitives import Command, DrawList, Path, Point, Poly, Rect, Style
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.leaf import Making
from planner.sheet.lettering import (
    BODY,
    INK,
    PAPER,
    PEN,
    THIN,
    TITLE_HEIGHT,
    box,
    cap,
    panel_title,
    say,
)
from planner.sheet.stack import Part, joined

_PITCH, _LINE, _TEXT = 560.0, 440.0, 1000.0
_PEN = Style(stroke=INK, width=PEN)


def care_panel(making: Making, width: float) -> Part:
    """Set the cautions under the panel's title."""
    items: list[DrawList] = [panel_title(0, width, 0, making.words("lead.care"))]
    y = TITLE_HEIGHT + 100
    for key, picture in _CARE.items():
        base = y + _PITCH / 2 + cap(BODY) / 2
        said, used = rich_lines(
            (_TEXT, base), making.words(f"lead.care_{key}"), width - _TEXT, pitch=_LINE
        )
        items += [picture((330, y + _PITCH / 2)), said]
        y += _PITCH + used - _LINE
    return joined(items), y


def _iron(at: Point) -> DrawList:
    x, y = at
    tip = ((x - 330, y + 170), (x + 20, y - 60), (x + 90, y + 20))
    handle = ((x + 10, y - 90), (x + 250, y - 220), (x + 340, y - 90), (x + 120, y + 60))
    return (
        Poly(tip, Style(fill=INK), closed=True),
        Poly(handle, Style(fill=PAPER, stroke=INK, width=PEN), closed=True),
    )


def _fumes(at: Point) -> DrawList:
    x, y = at
    return tuple(_wave((x + shift, y)) for shift in (-200, 0, 200))


def _wave(at: Point) -> Path:
    x, y = at
    commands: tuple[Command, ...] = (
        ("M", (x - 60, y + 220)),
        ("C", (x + 120, y + 80, x - 180, y - 60, x + 60, y - 220)),
    )
    return Path(commands, _PEN)


def _drop(at: Point) -> DrawList:
    x, y = at
    outline: tuple[Command, ...] = (
        ("M", (x, y - 240)),
        ("C", (x + 90, y - 90, x + 180, y, x + 180, y + 80)),
        ("C", (x + 180, y + 180, x + 100, y + 240, x, y + 240)),
        ("C", (x - 100, y + 240, x - 180, y + 180, x - 180, y + 80)),
        ("C", (x - 180, y, x - 90, y - 90, x, y - 240)),
        ("Z", ()),
    )
    return (Path(outline, _PEN),)


def _unplugged(at: Point) -> DrawList:
    x, y = at
    socket = ((x + 330, y - 200), (x + 200, y - 200), (x + 200, y + 200), (x + 330, y + 200))
    return (
        Rect((x - 330, y - 120), 260, 240, Style(fill=INK)),
        Rect((x - 70, y - 45), 170, 90, Style(fill=INK)),
        Poly(socket, _PEN),
    )


def _known(at: Point) -> DrawList:
    x, y = at
    return (
        box((x - 200, y - 200), 400, 400, THIN),
        say((x, y + cap(BODY) / 2), "i", bold=True, anchor="middle"),
    )


_CARE: dict[str, Callable[[Point], DrawList]] = {
    "iron": _iron,
    "fumes": _fumes,
    "solder": _drop,
    "unplug": _unplugged,
    "rules": _known,
}
