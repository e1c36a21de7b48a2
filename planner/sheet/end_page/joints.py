"""Look at each joint: what is good and what is not, drawn from the terminals of the end."""

from collections import Counter
from collections.abc import Iterator

from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.drawing.primitives import DrawList, Point, Poly, Style
from planner.model.connector import TerminalKind
from planner.model.workmanship import Workmanship
from planner.sheet.end_page.joint_pictures import HEIGHT, LOW_HEIGHT, WIDTH, View, picture
from planner.sheet.end_page.panel import RIGHT_WIDTH, Panel, titled
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.facts import EndFacts
from planner.sheet.lettering import HEAD, INK, say
from planner.sheet.stack import joined
from planner.sheet.words import Words

_HEAD_ROW = 620.0
_LINE = 430.0
_GAP, _TIGHT_GAP = 300.0, 120.0
_RIGHT = RIGHT_WIDTH - WIDTH


def joints_panel(
    facts: EndFacts, rules: Workmanship, words: Words, *, tight: bool = False
) -> Panel:
    """Draw pairs of pictures with their words under the title."""
    items: list[DrawList] = [*_heads(words)]
    y, high = _HEAD_ROW, LOW_HEIGHT if tight else HEIGHT
    for kind, view in _rows(facts):
        said = _said(facts, rules, words, kind, view)
        lines = [rich_lines((0, 0), text, WIDTH, pitch=_LINE) for text in said]
        for x, good, text in ((0.0, True, said[0]), (_RIGHT, False, said[1])):
            drawn = Panel(picture(kind, view, good=good, height=high), high)
            items.append(drawn.at(x, y))
            items.append(rich_lines((x, y + high + 370), text, WIDTH, pitch=_LINE)[0])
        y += high + max(used for _, used in lines) + (_TIGHT_GAP if tight else _GAP)
    body = Panel(joined(items), y - (_TIGHT_GAP if tight else _GAP))
    return titled(words("end.look"), RIGHT_WIDTH, body)


def _heads(words: Words) -> Iterator[DrawList]:
    yield mark("tick", (290, 270), 560, PRINT)
    yield (say((720, 430), words("end.good"), HEAD, bold=True),)
    yield _cross((_RIGHT + 290, 260), 190)
    yield (say((_RIGHT + 720, 430), words("end.not_good"), HEAD, bold=True),)


def _cross(at: Point, reach: float) -> DrawList:
    (x, y), pen = at, Style(stroke=INK, width=150)
    return (
        Poly(((x - reach, y - reach), (x + reach, y + reach)), pen),
        Poly(((x - reach, y + reach), (x + reach, y - reach)), pen),
    )


def kinds_of(facts: EndFacts) -> tuple[TerminalKind, ...]:
    """Return the kinds of terminal that are soldered, the commonest first."""
    counts = Counter(joint.contact.terminal.kind for joint in facts.joints if joint.flags)
    return tuple(kind for kind, _ in counts.most_common())


def _rows(facts: EndFacts) -> Iterator[tuple[TerminalKind, View]]:
    kinds = kinds_of(facts)
    for kind in kinds:
        yield kind, "fill"
    if kinds:
        yield kinds[0], "strands"
        yield kinds[0], "gap"


def _said(
    facts: EndFacts, rules: Workmanship, words: Words, kind: TerminalKind, view: View
) -> tuple[str, str]:
    if view == "fill":
        return words(f"end.good_fill_{kind}"), words(f"end.bad_fill_{kind}")
    if view == "gap":
        return words(f"end.good_gap_{rules.insulation_gap}"), words("end.bad_gap")
    counts = {flag.strands for joint in facts.joints for flag in joint.flags if flag.strands}
    if len(counts) == 1:
        return words(f"end.good_strands_{kind}", count=counts.pop()), words("end.bad_strands")
    return words(f"end.good_all_strands_{kind}"), words("end.bad_strands")
