"""Where to touch: each kind of connector as it looks when its shell is closed, contacts named."""

from collections.abc import Iterator

from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Poly, Rect, Style, centred_baseline
from planner.model.connector import Connector
from planner.sheet.badge import badge
from planner.sheet.block import Block, moved
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, HEAD, INK, PAPER, PEN, TITLE_HEIGHT, panel_title, say
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.panel import BADGE
from planner.sheet.stack import joined

_MOST_SCALE = 350.0  # 3.5:1
_MOST_HIGH = 2100.0
_LONGEST = 6800.0
_PEN = Style(fill=PAPER, stroke=INK, width=PEN)
Drawn = tuple[DrawList, float]


def kinds(making: Making) -> dict[str, tuple[Connector, list[str]]]:
    """Return each connector of the plan with the ends that have it."""
    found: dict[str, tuple[Connector, list[str]]] = {}
    for end in making.plan.ends:
        connector = making.plan.connector_of(end.id)
        if connector is not None:
            found.setdefault(connector.id, (connector, []))[1].append(end.id)
    return found


def touch_column(making: Making, width: float) -> Drawn:
    """Draw every kind with what to do; return also the height.

    Plugs of rings stand under one another, faces beside one another where they have room.
    """
    words = making.words
    items: list[DrawList] = [panel_title(0, width, 0, words("proving.where"))]
    x, y, tall = 0.0, TITLE_HEIGHT + 150, 0.0
    for connector, ends in kinds(making).values():
        drawn, height, across = _connector(connector, ends, width)
        if x and x + across > width:
            x, y, tall = 0.0, y + tall, 0.0
        items.append(moved(drawn, (x, y)))
        x, tall = x + across + 250, max(tall, height + 100)
    y += tall + 330
    faces = any(one.mating != "concentric" for one, _ in kinds(making).values())
    keys = (*(("mating_side",) if faces else ()), "hold_one", "not_as_printed")
    for key in keys:
        drawn, height = rich_lines((0, y), words(f"proving.{key}"), width)
        items.append(drawn)
        y += height + 60
    return joined(items), y - 330


def touch_blocks(making: Making) -> Iterator[Block]:
    """Yield a panel of all kinds over the live width, for a lead that is swept by a list."""
    drawn, height = touch_column(making, LIVE_WIDTH)
    yield Block(drawn, height, full=True)


def _connector(
    connector: Connector, ends: list[str], width: float
) -> tuple[DrawList, float, float]:
    """Draw one kind beside the badges of its ends; return also how high and how wide it is."""
    marks, x = _badges(ends)
    if connector.mating == "concentric":
        drawn, height = _poles(connector, min(width, _LONGEST) - x)
        across = min(width, _LONGEST)
        return (*moved(marks, (0, height - 640)), *moved(drawn, (x, 0))), height, across
    drawn, height, across = _mating_face(connector, width - x)
    return (*moved(marks, (0, 80)), *moved(drawn, (x, 0))), height, x + across


def _badges(ends: list[str]) -> Drawn:
    shown = ends if len(ends) <= 3 else [f"{ends[0]}\u2013{ends[-1]}"]
    items, x = [], 0.0
    for end in shown:
        drawn, wide = badge(end, (x, 0), BADGE)
        items.append(drawn)
        x += wide + 70
    return joined(items), x + 60


def _poles(connector: Connector, width: float) -> Drawn:
    """Draw a plug of rings from the side, the tip left, each pole under its name."""
    names = [contact.id for contact in connector.contacts]
    wide = min(width - 1100, 1250.0 * len(names))
    pitch, base, half = wide / len(names), 900.0, 260.0
    items: list[DrawList] = []
    for place, name in enumerate(names):
        x = pitch * place
        if place == 0 and connector.gender == "male":
            points = (
                (x, base),
                (x + 230, base - half - 40),
                (x + pitch - 120, base - half),
                (x + pitch - 120, base + half),
                (x + 230, base + half + 40),
            )
            items.append((Poly(points, _PEN, closed=True),))
        else:
            items.append((Rect((x, base - half), pitch - 120, 2 * half, _PEN),))
        items.append((Rect((x + pitch - 120, base - half), 120, 2 * half, Style(fill=INK)),))
        middle = x + (pitch - 120) / 2
        items.append((say((middle, 450), name, HEAD, bold=True, anchor="middle"),))
    body = Rect((wide, base - 480), width - wide, 960, Style(fill="#ececec", stroke=INK, width=PEN))
    return (*joined(items), body), base + 500


def _mating_face(connector: Connector, width: float) -> tuple[DrawList, float, float]:
    """Draw the contacts as they are met by a probe: the solder side mirrored.

    Returns the items, how high and how wide they are.
    """
    spots = {
        contact.id: (-contact.terminal.x_mm, -contact.terminal.y_mm)
        for contact in connector.contacts
    }
    rounds = connector.shell.shape == "round"
    half_x = max(abs(x) for x, _ in spots.values()) + 1.6
    half_y = max(abs(y) for _, y in spots.values()) + 1.6
    if rounds:
        half_x = half_y = max(connector.shell.bore_mm / 2, half_x, half_y)
    scale = min(_MOST_SCALE, width / (2 * half_x), _MOST_HIGH / 2 / half_y)
    centre = (half_x * scale, half_y * scale)
    items: list[DrawList] = [_outline(centre, rounds=rounds)]
    size = BODY
    named: list[tuple[float, float, float]] = []
    for name, (x, y) in spots.items():
        at = (centre[0] + x * scale, centre[1] + y * scale)
        half = text_width(name, size, bold=True) / 2
        # Contacts that a record puts in one place are told by `odd-geometry`: one name is read.
        if any(abs(at[0] - u) < half + other and abs(at[1] - v) < size for u, v, other in named):
            continue
        named.append((*at, half))
        reach = max(half + 60, 300)
        ring = () if len(spots) > 9 else (Circle(at, reach, _PEN),)
        base = centred_baseline(at[1], size)
        items.append((*ring, say((at[0], base), name, size, bold=True, anchor="middle")))
    return joined(items), 2 * centre[1], 2 * centre[0]


def _outline(centre: tuple[float, float], *, rounds: bool) -> DrawList:
    x, y = centre
    if rounds:
        return (Circle(centre, y, _PEN),)
    return (Rect((0, 0), 2 * x, 2 * y, _PEN, radius=300),)
