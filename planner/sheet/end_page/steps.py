"""The steps of an end with a box to tick each, and the bar that says how warm the iron is."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from planner.drawing.metrics import text_width
from planner.drawing.primitives import DrawList, Rect, Style, Text
from planner.sheet.end_page.panel import Panel
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.lettering import BODY, HEAD, INK, PAPER, PEN, cap, say, tick_box
from planner.sheet.stack import joined
from planner.sheet.words import Words

PITCH, TIGHT_PITCH, LEAST_PITCH = 675.0, 600.0, 545.0
_BOX, _NUMBER_RIGHT, _TEXT = 470.0, 1350.0, 1600.0
_LINE = 440.0
_HEAT_WIDTH = 480.0
HEAT_ROOM = _HEAT_WIDTH + 120.0  # what the bar takes of the width beside the steps
_FOOT = 450.0


@dataclass(frozen=True, slots=True)
class Line:
    """One step as it is printed: its number, heat, text in the sheet's markup.

    Without a number it is no step: what to do between two of them, with nothing to tick.
    """

    number: str
    heat: str
    text: str


@dataclass(frozen=True, slots=True)
class Run:
    """Steps that follow one another with the iron in one state."""

    heat: str
    steps: tuple[Panel, ...]

    @property
    def height(self) -> float:
        """How high its steps are."""
        return sum(step.height for step in self.steps)


def runs_of(lines: Sequence[Line], width: float, pitch: float) -> tuple[Run, ...]:
    """Draw the steps, run by run.

    One cold step between hot ones is among them: the iron stays on.
    """
    room = width - HEAT_ROOM - _TEXT
    heats = [line.heat for line in lines]
    for place in range(1, len(heats) - 1):
        if heats[place - 1] == heats[place + 1] == "hot":
            heats[place] = "hot"
    pairs = zip(heats, lines, strict=True)
    return tuple(
        Run(heat, tuple(_step(line, room, pitch) for _, line in group))
        for heat, group in groupby(pairs, key=lambda pair: pair[0])
    )


def _step(line: Line, room: float, pitch: float) -> Panel:
    middle = pitch / 2
    text, used = rich_lines((_TEXT, middle + cap(BODY) / 2), line.text, room, pitch=_LINE)
    if not line.number:
        return Panel(text, pitch + used - _LINE)
    size = HEAD if text_width(line.number, HEAD, bold=True) < _NUMBER_RIGHT - _BOX - 60 else BODY
    at = (_NUMBER_RIGHT, middle + cap(size) / 2)
    named = say(at, line.number, size, bold=True, anchor="end")
    items = (tick_box((0, middle - _BOX / 2), _BOX), named, *text)
    return Panel(items, pitch + used - _LINE)


def steps_panels(
    runs: Sequence[Run], words: Words, width: float, rooms: Sequence[float]
) -> Iterator[Panel]:
    """Yield the steps in pieces, each no higher than its room; the last of `rooms` comes again.

    A piece ends where the iron changes; within a run only if it is higher than the last room. A
    piece for a room that is too small may be empty.
    """
    rest, place = list(runs), 0
    while rest:
        room = rooms[min(place, len(rooms) - 1)]
        whole = _fitting(rest, words, room)
        if whole < len(rest):
            whole = _fitting(rest, words, room - _FOOT)
        kept, rest = rest[:whole], rest[whole:]
        if rest and not kept and _height(rest[0], words) > rooms[-1] - _FOOT:
            some, others = _parted(rest[0], room - _FOOT, least=int(room >= rooms[-1]))
            kept, rest = ([some] if some.steps else []), [others, *rest[1:]]
        yield _piece(kept, words, width, goes_on=bool(rest))
        place += 1


def _parted(run: Run, room: float, least: int) -> tuple[Run, Run]:
    """Part a run where `room` ends, with at least so many steps before."""
    used, place = 0.0, 0
    for step in run.steps:
        used += step.height
        if used > room:
            break
        place += 1
    place = max(place, least)
    return Run(run.heat, run.steps[:place]), Run(run.heat, run.steps[place:])


def _fitting(runs: Sequence[Run], words: Words, room: float) -> int:
    used = 0.0
    for place, run in enumerate(runs):
        used += _height(run, words)
        if used > room:
            return place
    return len(runs)


def _height(run: Run, words: Words) -> float:
    """Return how high a run is; its bar must be as high as its word."""
    if not run.heat:
        return run.height
    return max(run.height, text_width(words(f"end.heat_{run.heat}"), BODY, bold=True) + 350)


def _piece(runs: Sequence[Run], words: Words, width: float, *, goes_on: bool) -> Panel:
    items: list[DrawList] = []
    y = 0.0
    for run in runs:
        height = _height(run, words)
        items.append(_heat(run, words, width - _HEAT_WIDTH, y, height))
        for step in run.steps:
            items.append(step.at(0, y))
            y += step.height
        y += height - run.height
    if runs and goes_on:
        items.append((say((width, y + 380), words("end.steps_go_on"), anchor="end"),))
        y += _FOOT
    return Panel(joined(items), y)


def _heat(run: Run, words: Words, x: float, top: float, height: float) -> DrawList:
    """Draw the bar beside a run: black with white letters where the iron is hot."""
    if not run.heat:
        return ()
    ground, ink = (INK, PAPER) if run.heat == "hot" else (PAPER, INK)
    pen = Style(fill=ground, stroke=INK, width=PEN)
    bar = Rect((x, top + 60), _HEAT_WIDTH, height - 120, pen, owner=f"heat/{run.heat}")
    at = (x + _HEAT_WIDTH / 2 + cap(BODY) / 2, top + height / 2)
    word = words(f"end.heat_{run.heat}")
    return (bar, Text(at, word, BODY, ink, bold=True, anchor="middle", turn_deg=-90.0))
