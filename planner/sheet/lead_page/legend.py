"""Which core is which: every flag of the lead with its colours in words."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList
from planner.sheet.block import Block
from planner.sheet.core_words import core_words
from planner.sheet.facts import Flag
from planner.sheet.flags import draw_flag, flag_width
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, TITLE_HEIGHT, cap, panel_title, say
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.stack import joined

_FLAG, _ROW, _GAP, _BESIDE = 460.0, 580.0, 300.0, 150.0
_TOP = TITLE_HEIGHT + 130


def end_flags(making: Making) -> dict[str, tuple[Flag, ...]]:
    """Return the cores and shields that come out at each end, landed or not."""
    lay = {conductor.id: place for place, conductor in enumerate(making.plan.conductors)}
    found = {}
    for facts in making.facts:
        landed = (flag for joint in facts.joints for flag in joint.flags)
        flags = (*landed, *facts.capped, *facts.loose, *facts.ending)
        found[facts.end.id] = tuple(sorted(flags, key=lambda flag: lay[flag.conductor]))
    return found


def legend(making: Making, flags: Sequence[Flag]) -> Iterator[Block]:
    """Yield the panel of all flags, in as many columns as there is room for."""
    kinds = {_kind(flag): replace(flag, code=_code(flag)) for flag in flags}.values()
    if not kinds:
        return
    said = {_kind(flag): core_words(making.words, flag) for flag in kinds}
    widths = [
        flag_width(flag, _FLAG) + _BESIDE + text_width(said[_kind(flag)], BODY) + _GAP
        for flag in kinds
    ]
    places = _places(widths)
    rows = 1 + max(row for _, row in places)
    items = [
        _entry(flag, said[_kind(flag)], x, row)
        for flag, (x, row) in zip(kinds, places, strict=True)
    ]
    head = panel_title(0, LIVE_WIDTH, 0, making.words("lead.colours"))
    yield Block((*head, *joined(items)), _TOP + _ROW * rows, full=True)


def _places(widths: Sequence[float]) -> list[tuple[float, int]]:
    """Return left edge and row of each entry: side by side, or in columns down from the left."""
    if sum(widths) - _GAP <= LIVE_WIDTH:
        return [(sum(widths[:place]), 0) for place in range(len(widths))]
    columns = max(int((LIVE_WIDTH + _GAP) // max(widths)), 1)
    rows = -(-len(widths) // columns)
    pitch = LIVE_WIDTH / columns
    return [(pitch * (place // rows), place % rows) for place in range(len(widths))]


def _kind(flag: Flag) -> tuple[str, ...]:
    """Return what flags share that have one line in the legend."""
    return flag.colours or (flag.shield,)


def _code(flag: Flag) -> str:
    """Return a flag's code without the group that tells it from others of its colours."""
    return "".join(flag.colours) or "SHIELD"


def _entry(flag: Flag, words: str, x: float, row: int) -> DrawList:
    y = _TOP + _ROW * row
    beside = (x + flag_width(flag, _FLAG) + _BESIDE, y + _FLAG / 2 + cap(BODY) / 2)
    return (*draw_flag(flag, (x, y), _FLAG), say(beside, words))
