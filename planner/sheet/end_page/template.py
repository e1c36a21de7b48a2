"""The strip template at true size: lay the core against it, cut and strip at the marks."""

from collections.abc import Sequence
from dataclasses import dataclass

from planner.drawing.cores import strip
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Point, Poly, Rect, Style
from planner.dryfit.shrinking import raised_mm
from planner.sheet.end_page.panel import Panel, titled
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import BODY, HEAD, HEAVY, INK, PEN, THIN, cap, say
from planner.sheet.paper import LIVE_WIDTH, MM
from planner.sheet.stack import joined
from planner.sheet.words import Words

WIDTH = 8500.0
_STEPS_MM = (0.5, 1.0, 2.0, 3.0, 5.0)
_MOST_GROUPS = 5
_EDGE_TOP = 450.0  # the words over the jacket's edge
_ROW, _TIGHT_ROW = 1370.0, 1200.0
_FLAG, _FLAG_GAP, _FLAG_PITCH = 440.0, 100.0, 520.0
_LEAST_JACKET = 900.0
_MOST_JACKET = 2100.0
_TEXT_AFTER = 350.0
_LEAST_THICK = 110.0
_WORDS = 4000.0  # what flags and figures want right of the longest core
_UNDER = 950.0  # how far under the core they stand where there is less
_MOST = LIVE_WIDTH - _LEAST_JACKET - 400  # a longer core is not drawn, its figures tell


@dataclass(frozen=True, slots=True)
class Group:
    """Cores of one length: how long to cut, how much of it to bare, and their flags.

    `contacts` stand in place of the flags where these are many ends'.
    A tail without a sleeve is bare all along: its `bare_mm` is 0, there is nothing to strip.
    """

    cut_mm: float
    bare_mm: float
    is_tail: bool
    flags: tuple[Flag, ...]
    contacts: str = ""


def groups_of(facts: EndFacts) -> tuple[Group, ...]:
    """Gather the cores that are cut and stripped alike, the longest first, tails last.

    Where very many lengths differ by little, cores are cut as the longest of their group.
    """
    flags = [(joint, flag) for joint in facts.joints if joint.number for flag in joint.flags]
    flags.sort(key=lambda pair: pair[0].number)
    for step_mm in _STEPS_MM:
        found = _gathered(flags, step_mm)
        if len(found) <= _MOST_GROUPS:
            break
    return found


def _gathered(flags: Sequence[tuple[Joint, Flag]], step_mm: float) -> tuple[Group, ...]:
    found: dict[tuple[bool, float, float], list[tuple[Joint, Flag]]] = {}
    for joint, flag in flags:
        if flag.cut_mm > 0:
            tail = not flag.colours
            bare_mm = 0.0 if tail and not flag.sleeved else flag.bare_mm
            key = (tail, -raised_mm(flag.cut_mm, step_mm), bare_mm)
            found.setdefault(key, []).append((joint, flag))
    return tuple(_group(tail, bare, pairs) for (tail, _, bare), pairs in sorted(found.items()))


def _group(tail: bool, bare_mm: float, pairs: Sequence[tuple[Joint, Flag]]) -> Group:  # noqa: FBT001 - a kind
    contacts = dict.fromkeys(joint.contact.id for joint, _ in pairs if joint.instead)
    flags = tuple(flag for _, flag in pairs)
    return Group(max(flag.cut_mm for flag in flags), bare_mm, tail, flags, ", ".join(contacts))


@dataclass(frozen=True, slots=True)
class _Ruling:
    """Where things stand: the jacket's edge, the words right of the cores or under them."""

    width: float
    edge: float
    text: float
    under: bool


def template_panel(
    groups: Sequence[Group], words: Words, least: float = WIDTH, *, tight: bool = False
) -> Panel:
    """Draw a row for each group from the jacket's edge on; the lengths are true on paper.

    The panel is `least` wide, or as wide as the page where a core is longer than that.
    """
    drawn = [group for group in groups if group.cut_mm * MM <= _MOST]
    longest = max((group.cut_mm * MM for group in drawn), default=0.0)
    width = least if longest <= least - _LEAST_JACKET - 200 else LIVE_WIDTH
    edge = min(max(width - longest - _WORDS, _LEAST_JACKET), _MOST_JACKET)
    said = max((_words_right(group, words, edge) for group in drawn), default=0.0)
    text = max(edge + longest + _TEXT_AFTER, said + 250)
    under = width - text < _WORDS - _TEXT_AFTER - 300
    ruling = _Ruling(width, edge, edge + 200 if under else text, under)
    items: list[DrawList] = [_edge_words(words, edge)]
    y = _EDGE_TOP
    for group in groups:
        row = _row(group, words, ruling, _TIGHT_ROW if tight else _ROW)
        items.append(row.at(0, y))
        y += row.height
    items.insert(0, (_line(edge, _EDGE_TOP - 100, y, HEAVY),))
    return titled(words("end.template"), width, Panel(joined(items), y), words("end.in_mm"))


def _edge_words(words: Words, edge: float) -> DrawList:
    said = words("end.jacket_edge")
    wide = text_width(said, BODY)
    return (say((max(edge - wide - 80, 0.0), 300), said),)


def _line(x: float, top: float, bottom: float, width: float) -> Poly:
    return Poly(((x, top), (x, bottom)), Style(stroke=INK, width=width))


def _row(group: Group, words: Words, ruling: _Ruling, least: float) -> Panel:
    middle = 420.0
    top = _UNDER if ruling.under else 0.0
    flags, used = _flags(group, words, ruling.text, ruling.width, top)
    figures = _figures(group, words, (ruling.text, used + cap(HEAD) + 60))
    height = max(used + cap(HEAD) + 60 + (least - _TIGHT_ROW) + 160, least)
    core = _core(group, words, ruling.edge, middle) if group.cut_mm * MM <= _MOST else ()
    return Panel((*_jacket(ruling.edge, middle), *core, *flags, *figures), height)


def _figures(group: Group, words: Words, at: Point) -> DrawList:
    """Say how long to cut and to bare, the figures large and bold."""
    said = [(words("end.cut"), group.cut_mm), (words("end.bare"), group.bare_mm)]
    items, x = [], at[0]
    for word, length_mm in said:
        if not length_mm:
            continue
        figure = words.number(round(length_mm, 1))
        items.append(say((x, at[1]), word))
        x += text_width(word, BODY) + 110
        items.append(say((x, at[1]), figure, HEAD, bold=True))
        x += text_width(figure, HEAD, bold=True) + 220
    return tuple(items)


def _flags(
    group: Group, words: Words, left: float, width: float, top: float
) -> tuple[DrawList, float]:
    """Set the flags of a group in lines, or its contacts; return how far down they go."""
    if group.contacts:
        said = words("end.at_contacts", contacts=group.contacts)
        return rich_lines((left, top + 430), said, width - left)[0], top + 560
    items: list[DrawList] = []
    x, y = left, top + 60.0
    for flag in group.flags:
        wide = flag_width(flag, _FLAG)
        if x > left and x + wide > width:
            x, y = left, y + _FLAG_PITCH
        items.append(draw_flag(flag, (x, y), _FLAG))
        x += wide + _FLAG_GAP
    return joined(items), y + _FLAG + 60


def _jacket(edge: float, middle: float) -> DrawList:
    return (Rect((0, middle - 200), edge, 400, Style(fill=PRINT.jacket, stroke=INK, width=THIN)),)


def _core(group: Group, words: Words, edge: float, middle: float) -> DrawList:
    """Draw a core from the jacket's edge to its cut mark, true in length, at least a line thick."""
    cut = edge + group.cut_mm * MM
    bare = cut - group.bare_mm * MM
    thick = max(max(flag.width_mm for flag in group.flags) * MM, _LEAST_THICK)
    metal = Poly(((bare, middle), (cut, middle)), Style(stroke=INK, width=PEN))
    body = strip(((edge, middle), (bare, middle)), ("WH",), thick, PRINT)
    marks = [_line(cut, middle - 280, middle + 280, HEAVY)]
    if group.bare_mm:
        marks.append(_line(bare, middle - 230, middle + 230, PEN))
    base = middle + 300 + cap(BODY)
    named = (
        say((x, base), word, anchor="middle") for word, x, _ in _mark_words(group, words, edge)
    )
    return (metal, *body, *marks, *named)


def _words_right(group: Group, words: Words, edge: float) -> float:
    """Return how far right the words under the marks go."""
    return max(x + wide / 2 for _, x, wide in _mark_words(group, words, edge))


def _mark_words(group: Group, words: Words, edge: float) -> tuple[tuple[str, float, float], ...]:
    """Return the words under the marks, each with its middle and width.

    They stand apart from one another and from the jacket's edge.
    """
    cut = edge + group.cut_mm * MM
    named = [(words("end.cut_mark"), cut)]
    if group.bare_mm:
        mark = words("end.bare_mark" if group.is_tail else "end.strip_mark")
        named.insert(0, (mark, cut - group.bare_mm * MM))
    wide = [text_width(word, BODY) for word, _ in named]
    places = _apart([x for _, x in named], wide, edge + 60)
    return tuple((word, x, width) for (word, _), x, width in zip(named, places, wide, strict=True))


def _apart(wanted: Sequence[float], wide: Sequence[float], least: float) -> list[float]:
    """Return middles as near to those wanted as widths allow, the last one at its place."""
    places = list(wanted)
    for index in range(len(places) - 2, -1, -1):
        room = (wide[index] + wide[index + 1]) / 2 + 130
        places[index] = min(places[index], places[index + 1] - room)
    shift = max(least + wide[0] / 2 - places[0], 0.0)
    return [place + shift for place in places]
