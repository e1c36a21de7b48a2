"""The sign-off: unit number, names, date, and the verdict."""

from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList
from planner.sheet.block import Block
from planner.sheet.leaf import Making
from planner.sheet.lettering import BIG, BODY, RULE, THIN, box, cap, rule, say
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.panel import TOP, title
from planner.sheet.stack import joined

_FIELD, _VERDICT = 1050.0, 900.0
_GAP = 350.0
_SHARES = (("unit", 0.17), ("built_by", 0.31), ("proved_by", 0.31), ("date", 0.21))


def sign_block(making: Making) -> Block:
    """Draw the fields to write in and the two boxes of the verdict."""
    words = making.words
    note = words("proving.keep") if making.leads == 1 else words("proving.page_a_unit")
    items: list[DrawList] = [title(making, "sign", LIVE_WIDTH, note)]
    x, room = 0.0, LIVE_WIDTH - _GAP * (len(_SHARES) - 1)
    for key, share in _SHARES:
        width = room * share
        items.append(
            (
                box((x, TOP + 60), width, _FIELD),
                say((x + 150, TOP + 420), words(f"proving.{key}")),
            )
        )
        x += width + _GAP
    items.append(_verdict(making, TOP + _FIELD + 260))
    return Block(joined(items), TOP + _FIELD + 260 + _VERDICT + 100, full=True)


def _verdict(making: Making, top: float) -> DrawList:
    """Draw each box near its own word, and far from the other's."""
    words, x = making.words, 0.0
    base = top + _VERDICT / 2 + cap(BIG) / 2
    items: list[DrawList] = []
    for key in ("good", "not_good"):
        text = words(f"proving.{key}")
        start = x + _VERDICT + 300
        items.append(
            (
                box((x, top), _VERDICT, _VERDICT, RULE),
                say((start, base), text, BIG, bold=True),
            )
        )
        x = start + text_width(text, BIG, bold=True) + 950
    why = words("proving.why")
    line = x + text_width(why, BODY) + 200
    items.append(
        (
            say((x, top + 350), why),
            rule(line, LIVE_WIDTH, top + 400, THIN),
            rule(x, LIVE_WIDTH, top + _VERDICT + 50, THIN),
        )
    )
    return joined(items)
