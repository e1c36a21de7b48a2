"""The landing table of an end: contact, what it carries, flag of the core, colour words, box."""

from collections.abc import Sequence
from dataclasses import dataclass

from planner.drawing.metrics import clipped, wrapped
from planner.drawing.primitives import DrawList
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import BODY, HAIR, HEAD, cap, rule, say, tick_box

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
    rows += [Row("", "ends here", flag, f"{flag.words}: cut back") for flag in facts.ending]
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
            f"{flag.words}, then sleeve" if flag.sleeved else flag.words,
        )
        for place, flag in enumerate(joint.flags)
    ]


def table(
    rows: Sequence[Row], width: float, *, stacked: bool, boxes: bool
) -> tuple[DrawList, float]:
    """Draw rows from 0, 0; return the items and their height.

    `stacked` puts the colour words under the flag, for a narrow column. `boxes` gives each joint
    an empty square to tick.
    """
    items: list[DrawList] = [_header(width, boxes=boxes)]
    y = HEAD_ROW
    for row in rows:
        drawn, height = _row(row, y, width, stacked=stacked, boxes=boxes)
        items += [drawn, (rule(0, width, y + height, HAIR),)]
        y += height
    return tuple(item for drawn in items for item in drawn), y


def _header(width: float, *, boxes: bool) -> DrawList:
    base = HEAD_ROW - 150
    words = [say((0, base), "Contact"), say((_CORE, base), "Core")]
    if boxes:
        words.append(say((width, base), "Done", anchor="end"))
    return (*words, rule(0, width, HEAD_ROW))


def _row(row: Row, y: float, width: float, *, stacked: bool, boxes: bool) -> tuple[DrawList, float]:
    middle = y + ROW / 2
    room = width - (_BOX + 150 if boxes else 0)
    under = stacked and row.flag is not None
    start = _CORE
    if row.flag is not None and not under:
        start += max(1850, flag_width(row.flag, _FLAG) + 150)
    lines = wrapped(row.words, BODY, room - start)
    first = y + ROW + 330 if under else _base(middle, BODY)
    words = tuple(say((start, first + LINE * place), text) for place, text in enumerate(lines))
    height = ROW + LINE * (len(lines) - (0 if under else 1)) + (80 if under else 0)
    items: list[DrawList] = [_left(row, middle), words]
    if row.flag is not None:
        items.append(draw_flag(row.flag, (_CORE, middle - _FLAG / 2), _FLAG))
    if boxes and row.ticked:
        items.append((tick_box((width - _BOX, middle - _BOX / 2), _BOX),))
    return tuple(item for drawn in items for item in drawn), max(height, ROW)


def _left(row: Row, middle: float) -> DrawList:
    first = clipped(row.first, HEAD, _CARRIES - 100, bold=True)
    carries = clipped(row.carries, BODY, _CORE - _CARRIES - 80)
    named = say((0, _base(middle, HEAD)), first, HEAD, bold=True)
    carried = say((_CARRIES, _base(middle, BODY)), carries)
    return tuple(item for item in (named, carried) if item.text)


def _base(middle: float, size: float) -> float:
    return middle + cap(size) / 2
