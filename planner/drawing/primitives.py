"""The draw list: what is drawn, decided once, for the canvas and the sheet alike.

Coordinates are in the units of the target (px on the canvas, 0.01 mm on the sheet), x right and
**y down**; drawing functions flip the y-up millimetres of the records themselves. Colours are
resolved (`#rrggbb`). `owner` names what a primitive belongs to, such as `contact/A/T`,
`conductor/A/WH`, `end/A`, `finding/...`; backends use it for picking and lighting.
"""

from dataclasses import dataclass, replace
from typing import Literal

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Style:
    """Resolved look: fill and stroke `#rrggbb` or None, widths and dashes in target units."""

    fill: str | None = None
    stroke: str | None = None
    width: float = 1.0
    dash: tuple[float, ...] = ()
    opacity: float = 1.0
    cap: Literal["butt", "round"] = "butt"
    join: Literal["miter", "round"] = "round"


@dataclass(frozen=True, slots=True)
class Poly:
    """A polyline, or a polygon when `closed`."""

    points: tuple[Point, ...]
    style: Style
    closed: bool = False
    owner: str = ""


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle."""

    centre: Point
    radius: float
    style: Style
    owner: str = ""


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle with its top left corner, width, height, and corner radius."""

    corner: Point
    width: float
    height: float
    style: Style
    radius: float = 0.0
    owner: str = ""


Command = tuple[str, tuple[float, ...]]


@dataclass(frozen=True, slots=True)
class Path:
    """A path of absolute commands: M x y, L x y, C x1 y1 x2 y2 x y, Z."""

    commands: tuple[Command, ...]
    style: Style
    owner: str = ""


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text. `at` is on the baseline; `size` is the em, in target units."""

    at: Point
    text: str
    size: float
    colour: str
    bold: bool = False
    anchor: Anchor = "start"
    turn_deg: float = 0.0
    owner: str = ""


Primitive = Poly | Circle | Rect | Path | Text
DrawList = tuple[Primitive, ...]

# Cap height over em of the bundled face (Inter); half of it centres text on a line.
CAP_HEIGHT = 0.727


def owned(items: DrawList, owner: str) -> DrawList:
    """Return the items with `owner` set where they have none."""
    return tuple(item if item.owner else replace(item, owner=owner) for item in items)


def centred_baseline(y: float, size: float) -> float:
    """Return the baseline that puts capitals of `size` in the middle of `y`."""
    return y + size * CAP_HEIGHT / 2
