"""The table of what is joined: each path with what was expected, shown and allowed, in ohm."""

from collections.abc import Iterator

from planner.drawing.looks import PRINT
from planner.drawing.marks import MarkKind, mark
from planner.drawing.primitives import DrawList
from planner.proving.judging import JudgedPath, Standing
from planner.sheet.block import Block, moved
from planner.sheet.certificate.case import Case
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.lettering import (
    BODY,
    HAIR,
    THIN,
    TITLE_HEIGHT,
    cap,
    panel_title,
    rule,
    say,
)
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.proving.panel import ARROW, arrow, named, named_width
from planner.sheet.stack import Part, chunked, joined, piled

_TOP, _HEAD, _PITCH = TITLE_HEIGHT + 120, 560.0, 640.0
# The right edges of the figures; where mark and word of the outcome stand.
_FIGURES = {"expected": 7400.0, "shown": 9500.0, "own": 11600.0, "limit": 13700.0}
_MARK, _WORD = 14600.0, 15000.0
_MARKS: dict[Standing, MarkKind] = {
    "good": "clear",
    "heard": "tick",
    "through": "note",
    "high": "stop",
    "open": "stop",
    "unread": "nothing",
}
_WRONG = frozenset({"high", "open"})


def joined_blocks(case: Case, room: float) -> Iterator[Block]:
    """Yield the table, its head on each part, the rules of the limits under the last."""
    found = case.judgement
    paths = (*found.paths, *found.further)
    if not paths:
        return
    column = max(named_width(path.path.one) for path in paths) + 150
    parts = [_row(case, path, column) for path in paths] + _rules(case, paths)
    words, name = case.words, case.words("certificate.joined")
    for place, chunk in enumerate(chunked(parts, room - _TOP - _HEAD)):
        items, height = piled(chunk)
        title = name if place == 0 else words("page.goes_on", title=name)
        head = panel_title(0, LIVE_WIDTH, 0, title, words("certificate.in_ohm"))
        body = (*head, *_columns(case), *moved(items, (0, _TOP + _HEAD)))
        yield Block(body, _TOP + _HEAD + height, full=True)


def _columns(case: Case) -> DrawList:
    base = _TOP + _HEAD - 170
    named_columns = [
        say((right, base), case.words(f"certificate.{key}"), anchor="end")
        for key, right in _FIGURES.items()
    ]
    outcome = say((_WORD, base), case.words("certificate.outcome"))
    return (*named_columns, outcome, rule(0, LIVE_WIDTH, _TOP + _HEAD, THIN))


def _row(case: Case, judged: JudgedPath, column: float) -> Part:
    middle = _PITCH / 2
    path, reading = judged.path, judged.reading
    wrong = judged.standing in _WRONG
    shown = "" if reading is None else _shown(case, judged)
    about = "\u2248 " if path.estimated else ""
    expected = f"{about}{case.ohm(path.ohm)}" if path.ohm is not None else "?"
    figures = {
        "expected": (expected, False),
        "shown": (shown, True),
        "own": (case.ohm(judged.own_ohm), True),
        "limit": (case.ohm(path.limit_ohm), False),
    }
    base = middle + cap(BODY) / 2
    word = case.words(f"certificate.standing_{judged.standing}")
    items = [
        named(path.one, (0, middle))[0],
        arrow(column, middle),
        named(path.other, (column + ARROW + 150, middle))[0],
        tuple(
            say((_FIGURES[key], base), text, bold=bold, anchor="end")
            for key, (text, bold) in figures.items()
            if text
        ),
        mark(_MARKS[judged.standing], (_MARK, middle), 210, PRINT),
        (say((_WORD, base), word, bold=wrong), rule(0, LIVE_WIDTH, _PITCH, HAIR)),
    ]
    return joined(items), _PITCH


def _shown(case: Case, judged: JudgedPath) -> str:
    reading = judged.reading
    if reading is None or not reading.joined:
        return case.words("certificate.open")
    return case.words("certificate.beep") if reading.ohm is None else case.ohm(reading.ohm)


def _rules(case: Case, paths: tuple[JudgedPath, ...]) -> list[Part]:
    """Say by which rule each limit was found; what is not known here has no words."""
    words = case.words
    keys = [f"certificate.rule_{key}" for key in dict.fromkeys(it.path.rule for it in paths)]
    texts = [words(key) for key in keys if key in words]
    if any(judged.path.estimated for judged in paths):
        texts.append(words("certificate.estimated"))
    if texts:
        texts.append(words("certificate.source"))
    drawn = (rich_lines((0, 420), text, LIVE_WIDTH) for text in texts)
    return [(items, used + 40) for items, used in drawn]
