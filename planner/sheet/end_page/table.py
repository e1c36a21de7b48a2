"""The landing table of an end: order disc, contact, signal, flag of the core, sleeve, done box."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.drawing.fitting.discs import order_disc
from planner.drawing.fitting.halos import gap_text
from planner.drawing.looks import PRINT
from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList
from planner.dryfit.bodies import Capsule
from planner.sheet.end_page.panel import Panel
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.lettering import BODY, HAIR, HEAD, cap, rule, say, say_within, tick_box
from planner.sheet.stack import joined
from planner.sheet.words import Words
from planner.units import number

ROW, TIGHT_ROW = 600.0, 560.0
HEAD_ROW = 520.0
_FLAG, _BOX, _DISC = 440.0, 470.0, 256.0
_CONTACT, _CORE = 1050.0, 2500.0
_SLEEVE_BEFORE_BOX = 300.0
_PITCH = 440.0
_GAP_WORDS = {"touch": "end.gap_touch", "sleeve": "end.gap_sleeve"}


@dataclass(frozen=True, slots=True)
class Row:
    """One row: a conductor on its contact; or, with `words`, something else to do or to know.

    `number` is the joint's place in the order of soldering, 0 on further conductors of a joint,
    where the contact is named `again`.
    """

    flag: Flag | None = None
    number: int = 0
    contact: str = ""
    carries: str = ""
    words: str = ""
    ticked: bool = True
    again: bool = False


@dataclass(frozen=True, slots=True)
class Manner:
    """How a table is drawn: `boxes` to tick, rows `pitch` high, `width` wide."""

    words: Words
    width: float
    boxes: bool
    pitch: float = ROW


def rows_of(facts: EndFacts, words: Words) -> tuple[Row, ...]:
    """Return the joints as they are soldered, empty contacts, links, what is cut back, gaps."""
    joints = sorted(facts.joints, key=lambda joint: (joint.number == 0, joint.number))
    rows = [row for joint in joints for row in _joint_rows(joint, words)]
    rows += [Row(words=words("end.link", contacts=link)) for link in facts.links]
    rows += [Row(flag, words=words("end.spare")) for flag in facts.capped]
    rows += [Row(flag, words=words("end.ends_here")) for flag in facts.ending]
    rows += [Row(flag, words=words("end.not_landed"), ticked=False) for flag in facts.loose]
    rows += [Row(words=said, ticked=False) for said in gap_words(facts, words)]
    return tuple(rows)


def _joint_rows(joint: Joint, words: Words) -> Iterator[Row]:
    if not joint.flags:
        empty = words("end.leave_empty")
        yield Row(contact=joint.contact.id, carries=joint.carries, words=empty, ticked=False)
    for place, flag in enumerate(joint.flags):
        number = joint.number if place == 0 else 0
        carries = joint.carries if place == 0 else ""
        yield Row(flag, number, joint.contact.id, carries, again=place > 0)


def gap_words(facts: EndFacts, words: Words) -> tuple[str, ...]:
    """Say which bodies of different nets touch, or come so near that a sleeve is wanted."""
    gaps = facts.fit.gaps if facts.fit is not None else ()
    return tuple(
        words(
            _GAP_WORDS[gap.grade],
            one=_body(gap.first, words),
            other=_body(gap.second, words),
            gap=gap_text(gap.gap_mm),
        )
        for gap in gaps
        if gap.grade in _GAP_WORDS
    )


def _body(body: Capsule, words: Words) -> str:
    if body.conductor and body.contact:
        return words("end.body_at", conductor=body.conductor, contact=body.contact)
    return body.contact or words("end.body_shell")


def table_panels(rows: Sequence[Row], manner: Manner, first: float, then: float) -> Iterator[Panel]:
    """Yield the table in pieces, the first at most `first` high, the others at most `then`.

    The head is repeated on each, and each but the last says that it goes on.
    """
    core = _core_left(rows, manner)
    parts = [_row(row, manner, core) for row in rows]
    room = first
    while parts:
        kept = _fitting(parts, room - HEAD_ROW)
        if kept < len(parts):
            kept = max(_fitting(parts, room - HEAD_ROW - ROW), 1)
        yield _piece(parts[:kept], manner, core, goes_on=kept < len(parts))
        parts, room = parts[kept:], then


def table_height(rows: Sequence[Row], manner: Manner) -> float:
    """Return how high the whole table is in one piece."""
    core = _core_left(rows, manner)
    return HEAD_ROW + sum(_row(row, manner, core).height for row in rows)


def notes(rows: Sequence[Row], manner: Manner) -> Panel:
    """Draw only the rows that say something else than a core on its contact, without a head."""
    items, y = [], 0.0
    for row in rows:
        if row.words and not row.contact:
            drawn = _row(row, manner, _CORE)
            items.append(drawn.at(0, y))
            y += drawn.height
    return Panel(joined(items), y)


def _fitting(parts: Sequence[Panel], room: float) -> int:
    used = 0.0
    for place, part in enumerate(parts):
        used += part.height
        if used > room:
            return place
    return len(parts)


def _piece(parts: Sequence[Panel], manner: Manner, core: float, *, goes_on: bool) -> Panel:
    items, y = [_head(manner, core)], HEAD_ROW
    for part in parts:
        items.append(part.at(0, y))
        y += part.height
    if goes_on:
        items.append((say((manner.width, y + 420), manner.words("end.goes_on"), anchor="end"),))
        y += ROW
    return Panel(joined(items), y)


def _head(manner: Manner, core: float) -> DrawList:
    words, base = manner.words, HEAD_ROW - 150
    said = [
        say((0, base), words("end.order")),
        say((_CONTACT, base), words("end.contact")),
        say((core, base), words("end.core")),
    ]
    done = words("end.done")
    right = manner.width
    if manner.boxes:
        said.append(say((right, base), done, anchor="end"))
        right -= text_width(done, BODY) + 150
    said.append(say((min(right, _sleeve_right(manner)), base), words("end.sleeve"), anchor="end"))
    return (*said, rule(0, manner.width, HEAD_ROW))


def _sleeve_right(manner: Manner) -> float:
    return manner.width - (_BOX + _SLEEVE_BEFORE_BOX if manner.boxes else 0.0)


def _core_left(rows: Sequence[Row], manner: Manner) -> float:
    """Return where flags start: right of the longest contact with its signal, clear of sleeves."""
    wanted = max([_CORE, *(_CONTACT + _named_width(row) + 150 for row in rows if row.contact)])
    flags = [row.flag for row in rows if row.flag is not None and not row.words]
    widest = max((flag_width(flag, _FLAG) for flag in flags), default=0.0)
    sleeves = max(
        (text_width(_sleeve_words(flag, manner), BODY, bold=True) for flag in flags), default=0.0
    )
    return max(min(wanted, _sleeve_right(manner) - sleeves - widest - 150), _CORE)


def _named_width(row: Row) -> float:
    gap = 120 if row.carries else 0
    return text_width(row.contact, HEAD, bold=True) + gap + text_width(row.carries, BODY)


def _row(row: Row, manner: Manner, core: float) -> Panel:
    middle = manner.pitch / 2
    items = [_contact(row, middle, core), _number(row, manner, middle)]
    height = manner.pitch
    if row.flag is not None and not row.words:
        items.append(draw_flag(row.flag, (core, middle - _FLAG / 2), _FLAG))
        items.append(_sleeve(row.flag, manner, middle))
    else:
        said, height = _said(row, manner, core, middle)
        items.append(said)
    if manner.boxes and row.ticked:
        items.append((tick_box((manner.width - _BOX, middle - _BOX / 2), _BOX),))
    return Panel((*joined(items), rule(0, manner.width, height, HAIR)), height)


def _number(row: Row, manner: Manner, middle: float) -> DrawList:
    if not row.number:
        return ()
    return order_disc((_DISC, middle), row.number, _DISC, PRINT, withheld=not manner.boxes)


def _contact(row: Row, middle: float, core: float) -> DrawList:
    if not row.contact:
        return ()
    if row.again:
        return (say((_CONTACT, middle + cap(BODY) / 2), row.contact),)
    named = say((_CONTACT, middle + cap(HEAD) / 2), row.contact, HEAD, bold=True)
    x = _CONTACT + text_width(row.contact, HEAD, bold=True) + 120
    if not row.carries:
        return (named,)
    return (named, say_within((x, middle + cap(BODY) / 2), row.carries, core - 100 - x))


def _sleeve(flag: Flag, manner: Manner, middle: float) -> DrawList:
    at = (_sleeve_right(manner), middle + cap(BODY) / 2)
    bold = flag.sleeved or flag.dabbed
    return (say(at, _sleeve_words(flag, manner), bold=bold, anchor="end"),)


def _sleeve_words(flag: Flag, manner: Manner) -> str:
    words = manner.words
    if flag.sleeved:
        length = words("end.mm", length=number(round(flag.sleeve_mm, 1)))
        return length if flag.sleeve_mm else words("end.yes")
    return words("end.dab" if flag.dabbed else "end.none")


def _said(row: Row, manner: Manner, core: float, middle: float) -> tuple[DrawList, float]:
    """Set a row's words, after its flag if it has one."""
    flag: DrawList = ()
    x = core if row.contact else 0.0
    if row.flag is not None:
        flag = draw_flag(row.flag, (0, middle - _FLAG / 2), _FLAG)
        x = flag_width(row.flag, _FLAG) + 150
    room = _sleeve_right(manner) - x
    items, height = rich_lines((x, middle + cap(BODY) / 2), row.words, room, pitch=_PITCH)
    return (*flag, *items), max(manner.pitch, manner.pitch + height - _PITCH)
