"""The landing table of an end: contact, what it carries, flag of the core, colour words, box."""

from collections.abc import Sequence
from dataclasses import dataclass

from planner.drawing.metrics import clipped
from planner.drawing.primitives import DrawList, Point, Text
from planner.sheet.block import moved
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import BODY, HAIR, HEAD, cap, paragraph, rule, say, tick_box
from planner.sheet.stack import Part, joined, piled

ROW = 600.0
LINE = 440.0
HEAD_ROW = 560.0
_FLAG = 460.0
_CARRIES, _CORE = 1050.0, 2550.0
_BOX = 470.0


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table: what stands first, what is carried, a flag or none, words."""

    first: str
    carries: str
    flag: Flag | None
    words: str
    ticked: bool = True


def rows_of(facts: EndFacts) -> tuple[Row, ...]:
    """Return the rows of an end: its contacts in order, links, then spare and loose cores."""
    rows = [row for joint in facts.joints for row in _contact_rows(joint.contact.id, joint)]
    rows += [Row("link", "", None, f"join {link}") for link in facts.links]
    rows += [Row("", "spare", flag, f"{flag.words}: cut back, cap") for flag in facts.capped]
    rows += [Row("", "", flag, f"{flag.words}: ends here, cut back") for flag in facts.ending]
    rows += [Row("", "", flag, f"{flag.words}: not landed", False) for flag in facts.loose]
    return tuple(rows)


def _contact_rows(contact: str, joint: Joint) -> list[Row]:
    if not joint.flags:
        return [Row(contact, joint.carries, None, "leave empty", False)]
    return [
        Row(
            contact if place == 0 else "",
            joint.carries if place == 0 else "",
            flag,
            flag.words + _sleeve_words(flag),
        )
        for place, flag in enumerate(joint.flags)
    ]


def _sleeve_words(flag: Flag) -> str:
    """Say when the sleeve goes on: over a core's joint afterwards, on a tail beforehand."""
    if not flag.sleeved:
        return ""
    return ", then sleeve" if flag.colours else ", in a sleeve"


def row_parts(rows: Sequence[Row], width: float, *, under: bool, boxes: bool) -> tuple[Part, ...]:
    """Draw each row from 0, 0, with its hairline.

    `under` puts the colour words under the flag, for a narrow column. `boxes` gives each joint an
    empty square to tick.
    """
    return tuple(_row(row, width, under=under, boxes=boxes) for row in rows)


def table(parts: Sequence[Part], width: float, *, boxes: bool) -> Part:
    """Put rows under the table's head, from 0, 0."""
    items, height = piled(parts)
    return (*_header(width, boxes=boxes), *moved(items, (0, HEAD_ROW))), HEAD_ROW + height


def _header(width: float, *, boxes: bool) -> DrawList:
    base = HEAD_ROW - 150
    words = [say((0, base), "Contact"), say((_CORE, base), "Core")]
    if boxes:
        words.append(say((width, base), "Done", anchor="end"))
    return (*words, rule(0, width, HEAD_ROW))


def _row(row: Row, width: float, *, under: bool, boxes: bool) -> Part:
    middle = ROW / 2
    items = [_left(row, middle), *_flag_and_words(row, width, under=under, boxes=boxes)]
    if boxes and row.ticked:
        items.append((tick_box((width - _BOX, middle - _BOX / 2), _BOX),))
    drawn = joined(items)
    lowest = max((item.at[1] for item in drawn if isinstance(item, Text)), default=0.0)
    height = max(ROW, lowest + 125)
    return (*drawn, rule(0, width, height, HAIR)), height


def _flag_and_words(row: Row, width: float, *, under: bool, boxes: bool) -> list[DrawList]:
    start, first = _CORE, _base(ROW / 2, BODY)
    room = width - (_BOX + 150 if boxes else 0)
    if row.flag is None:
        return [_lines(row.words, (start, first), room - start)]
    if under:
        first = ROW + 330
    else:
        start += max(1850, flag_width(row.flag, _FLAG) + 150)
    flag = draw_flag(row.flag, (_CORE, (ROW - _FLAG) / 2), _FLAG)
    return [flag, _lines(row.words, (start, first), room - start)]


def _lines(text: str, at: Point, width: float) -> DrawList:
    return paragraph(at, text, width, pitch=LINE)[0]


def _left(row: Row, middle: float) -> DrawList:
    first = clipped(row.first, HEAD, _CARRIES - 100, bold=True)
    named = say((0, _base(middle, HEAD)), first, HEAD, bold=True)
    carried = _lines(row.carries, (_CARRIES, _base(middle, BODY)), _CORE - _CARRIES - 80)
    return (named, *carried) if first else carried


def _base(middle: float, size: float) -> float:
    return middle + cap(size) / 2
