"""The landing table of an end: contact, what it carries, flag of the core, colour words, box."""

from collections.abc import Sequence
from dataclasses import dataclass

from planner.drawing.fitting.discs import order_disc
from planner.drawing.fitting.halos import gap_text
from planner.drawing.looks import PRINT
from planner.drawing.metrics import clipped
from planner.drawing.primitives import DrawList, Point, Text
from planner.dryfit.bodies import Capsule
from planner.sheet.block import moved
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import (
    BODY,
    HAIR,
    HEAD,
    Run,
    cap,
    paragraph,
    rule,
    say,
    say_runs,
    tick_box,
)
from planner.sheet.stack import Part, joined, piled
from planner.units import number

ROW = 600.0
LINE = 440.0
HEAD_ROW = 560.0
_FLAG = 460.0
_DISC, _CONTACT, _CARRIES, _CORE = 270.0, 950.0, 1720.0, 2800.0
_BOX = 470.0
_ONE_LINE = 15000.0  # a table as wide as this has words and lengths on one line
GAP_WORDS = {"touch": "they touch", "sleeve": "wants a sleeve"}


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the table: what stands first, what is carried, a flag or none, words.

    `number` is the joint's place in the order of soldering, 0 for none.
    """

    first: str
    carries: str
    flag: Flag | None
    words: str
    ticked: bool = True
    number: int = 0
    is_contact: bool = True


def rows_of(facts: EndFacts) -> tuple[Row, ...]:
    """Return the rows of an end: its joints as they are soldered, links, spare and loose cores.

    Contacts where nothing is soldered follow the others; then what comes too near is told.
    """
    joints = sorted(facts.joints, key=lambda joint: (joint.number == 0, joint.number))
    rows = [row for joint in joints for row in _contact_rows(joint.contact.id, joint)]
    rows += [Row("link", "", None, f"join {link}", is_contact=False) for link in facts.links]
    rows += [Row("", "spare", flag, f"{flag.words}: cut back, cap") for flag in facts.capped]
    rows += [Row("", "", flag, f"{flag.words}: ends here, cut back") for flag in facts.ending]
    rows += [Row("", "", flag, f"{flag.words}: not landed", False) for flag in facts.loose]
    rows += [Row("gap", "", None, words, False, is_contact=False) for words in gap_words(facts)]
    return tuple(rows)


def gap_words(facts: EndFacts) -> tuple[str, ...]:
    """Say which bodies of different nets touch, or come so near that a sleeve is wanted."""
    gaps = facts.fit.gaps if facts.fit is not None else ()
    return tuple(
        f"{_body(gap.first)} to {_body(gap.second)}: {gap_text(gap.gap_mm)}, {GAP_WORDS[gap.grade]}"
        for gap in gaps
        if gap.grade in GAP_WORDS
    )


def _body(body: Capsule) -> str:
    if body.conductor and body.contact:
        return f"{body.conductor} at {body.contact}"
    return body.contact or "shell"


def _contact_rows(contact: str, joint: Joint) -> list[Row]:
    if not joint.flags:
        return [Row(contact, joint.carries, None, "leave empty", False)]
    return [
        Row(
            contact if place == 0 else "",
            joint.carries if place == 0 else "",
            flag,
            flag.words + _sleeve_words(flag),
            number=joint.number if place == 0 else 0,
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
    words = [say((0, base), "Order"), say((_CONTACT + 100, base), "Contact")]
    words.append(say((_CORE, base), "Core"))
    if boxes:
        words.append(say((width, base), "Done", anchor="end"))
    return (*words, rule(0, width, HEAD_ROW))


def _row(row: Row, width: float, *, under: bool, boxes: bool) -> Part:
    middle = ROW / 2
    items = [_left(row, middle), *_flag_and_words(row, width, under=under, boxes=boxes)]
    if row.number:
        disc = order_disc((_DISC, middle), row.number, _DISC, PRINT, withheld=not boxes)
        items.append(disc)
    if boxes and row.ticked:
        items.append((tick_box((width - _BOX, middle - _BOX / 2), _BOX),))
    drawn = joined(items)
    lowest = max((item.at[1] for item in drawn if isinstance(item, Text)), default=0.0)
    height = max(ROW, lowest + 125)
    return (*drawn, rule(0, width, height, HAIR)), height


def _flag_and_words(row: Row, width: float, *, under: bool, boxes: bool) -> list[DrawList]:
    start, first = _CORE, _base(ROW / 2, BODY)
    room = width * 0.53 if boxes and width > _ONE_LINE else width - (_BOX + 150 if boxes else 0)
    if row.flag is None:
        return [_lines(row.words, (start, first), room - start)]
    if under:
        first = ROW + 330
    else:
        start += max(1850, flag_width(row.flag, _FLAG) + 150)
    flag = draw_flag(row.flag, (_CORE, (ROW - _FLAG) / 2), _FLAG)
    said = _lines(row.words, (start, first), room - start)
    if not boxes:
        return [flag, said]
    if width > _ONE_LINE:
        return [flag, said, say_runs((width * 0.55, first), _lengths(row.flag))]
    base = max((item.at[1] for item in said if isinstance(item, Text)), default=first) + LINE
    return [flag, said, say_runs((_CORE, max(base, ROW + 330)), _lengths(row.flag))]


def _lengths(flag: Flag) -> tuple[Run, ...]:
    """Say how long to cut and to strip, and the sleeve's length: figures bold."""
    said = [("cut ", flag.cut_mm), ("bare " if not flag.colours else "strip ", flag.bare_mm)]
    said.append(("sleeve ", flag.sleeve_mm))
    runs: list[Run] = []
    for word, length_mm in said:
        if length_mm > 0:
            runs += [(word, False), (number(round(length_mm, 1)) + "  ", True)]
    return (*runs, ("mm", False)) if runs else ()


def _lines(text: str, at: Point, width: float) -> DrawList:
    return paragraph(at, text, width, pitch=LINE)[0]


def _left(row: Row, middle: float) -> DrawList:
    start = _CONTACT if row.is_contact else 0.0
    first = clipped(row.first, HEAD, _CARRIES - start - 60, bold=True)
    named = say((start, _base(middle, HEAD)), first, HEAD, bold=True)
    carried = _lines(row.carries, (_CARRIES, _base(middle, BODY)), _CORE - _CARRIES - 80)
    return (named, *carried) if first else carried


def _base(middle: float, size: float) -> float:
    return middle + cap(size) / 2
