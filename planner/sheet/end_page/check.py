"""The check bar of exactly 100 mm, the plug at true size, what the codes mean, room for notes."""

from collections.abc import Sequence

from planner.drawing.face import contact_point, shell_outlines, shell_reach_mm
from planner.drawing.primitives import Circle, DrawList, Poly, Primitive, Rect, Style
from planner.model.connector import Connector
from planner.sheet.end_page.panel import Panel, titled
from planner.sheet.end_page.rich import rich_lines, rich_width
from planner.sheet.facts import EndFacts, Flag
from planner.sheet.lettering import BODY, HAIR, INK, PAPER, THIN, TITLE_HEIGHT, rule, say
from planner.sheet.paper import MM
from planner.sheet.words import Words

WIDTH = 100 * MM
_BAR = 400.0
_PITCH = 500.0
_LEAST_LEGEND = 3500.0


def check_panel(
    facts: Sequence[EndFacts], connector: Connector, words: Words, room: float
) -> Panel:
    """Draw the bar over true size and legend, WIDTH wide, with lines for notes up to `room`."""
    bar, plug = bar_panel(words), plug_panel(facts, connector, words, WIDTH)
    y = bar.height + plug.height + 150
    notes, height = _notes(words, y, room)
    return Panel((*bar.items, *plug.at(0, bar.height), *notes), max(y, height))


def bar_panel(words: Words) -> Panel:
    """Draw the bar alone, and what it is for."""
    said, used = rich_lines((0, 870), words("end.measure"), WIDTH, pitch=_PITCH)
    body = Panel((*_bar(), *said), 770 + used)
    return titled(words("end.check_bar"), WIDTH, body)


def slim_bar_panel(words: Words, width: float) -> Panel:
    """Draw the bar under its title, and beside that what it is for: where a page is full."""
    text = words("end.measure_short")
    said, _ = rich_lines((width - rich_width(text), TITLE_HEIGHT - 160), text, width)
    bar = titled(words("end.check_bar"), width, Panel(_bar(), _BAR))
    return Panel((*bar.items, *said), bar.height)


def plug_panel(
    facts: Sequence[EndFacts], connector: Connector, words: Words, width: float
) -> Panel:
    """Draw the plug at true size, and say what the codes on the page mean."""
    plug, plug_height = _true_size(facts, connector, words)
    legend, legend_height = _legend(facts, words, width, plug_height)
    return Panel((*plug, *legend), max(plug_height, legend_height))


def _bar() -> DrawList:
    """Draw ten cells in a frame whose pen lies inside: from edge to edge it is WIDTH long."""
    pen = Style(fill=PAPER, stroke=INK, width=THIN)
    inner = (WIDTH - THIN, _BAR - THIN)
    frame = Rect((THIN / 2, THIN / 2), *inner, pen, owner="check-bar/frame")
    cells = tuple(
        Rect((20 * MM * place, 0), 10 * MM, _BAR, Style(fill=INK), owner=f"check-bar/{place}")
        for place in range(5)
    )
    return (frame, *cells)


def _true_size(
    facts: Sequence[EndFacts], connector: Connector, words: Words
) -> tuple[DrawList, float]:
    """Draw the outline and the contacts at 1:1, with its words left of it."""
    one = facts[0]
    half_width, half_height = (half * 100 for half in shell_reach_mm(connector))
    said = words("end.plug_true_size", ends=_names(facts))
    lines, used = rich_lines((0, 350), said, 2300)
    centre = (2500 + half_width, half_height + 50)
    outline, _ = shell_outlines(connector, centre=centre, scale=100, turn_deg=one.turn_deg)
    dots = tuple(
        Circle(
            contact_point(connector, contact.id, centre=centre, scale=100, turn_deg=one.turn_deg),
            max(contact.terminal.across_mm * 50, 20),
            Style(stroke=INK, width=HAIR),
        )
        for contact in connector.contacts
    )
    shell = Poly(outline, Style(stroke=INK, width=THIN), closed=True, owner="true-size")
    return (shell, *dots, *lines), max(2 * half_height + 100, used + 150)


def _names(facts: Sequence[EndFacts]) -> str:
    ends = [one.end.id for one in facts]
    return ", ".join(ends) if len(ends) < 4 else f"{ends[0]}\u2013{ends[-1]}"


def _legend(
    facts: Sequence[EndFacts], words: Words, width: float, plug_height: float
) -> tuple[DrawList, float]:
    """Say the codes of the flags on this page in words, right of the plug or under it."""
    flags = [
        flag
        for one in facts
        for group in (*(joint.flags for joint in one.joints), one.capped, one.ending, one.loose)
        for flag in group
    ]
    said = code_words(flags, words)
    connector = facts[0].connector
    assert connector is not None
    x, top = 2500 + 200 * shell_reach_mm(connector)[0] + 300, 0.0
    if width - x < _LEAST_LEGEND:
        x, top = 0.0, plug_height
    items, height = rich_lines((x, top + 350), said, width - x)
    return items, top + height + 100


def code_words(flags: Sequence[Flag], words: Words) -> str:
    """Say each colour code in words, those of stripes in their place, once."""
    bodies = dict.fromkeys(flag.colours[0] for flag in flags if flag.colours)
    stripes = dict.fromkeys(flag.colours[1] for flag in flags if len(flag.colours) > 1)
    few = not set(bodies) & set(stripes)
    said = [_code("end.code", code, words) for code in bodies]
    said += [_code("end.code_stripe", code, words) for code in stripes if few]
    if stripes and not few:
        said += [_code("end.code", code, words) for code in stripes if code not in bodies]
        said.append(words("end.code_second"))
    return " ".join(said)


def _code(key: str, code: str, words: Words) -> str:
    return words(key, code=code, colour=words(f"colours.{code}"))


def _notes(words: Words, top: float, room: float) -> tuple[DrawList, float]:
    """Draw lines to write on, as many as there is room for, up to two."""
    if top + 550 > room:
        return (), top
    label = words("end.notes")
    start = rich_width(f"*{label}*", BODY) + 250
    items: list[Primitive] = [say((0, top + 450), label, bold=True)]
    items.append(rule(start, WIDTH, top + 500, THIN))
    if top + 1300 <= room:
        items.append(rule(0, WIDTH, top + 1250, THIN))
        return tuple(items), top + 1300
    return tuple(items), top + 550
