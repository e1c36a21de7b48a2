"""The way bar under the head: the stages of the work with their step numbers, this page's dark."""

from collections.abc import Sequence, Set
from dataclasses import dataclass, replace
from itertools import groupby

from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import DrawList, Poly, Style, centred_baseline
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, HEAD, INK, PAPER, PEN, say
from planner.sheet.paper import LIVE_WIDTH
from planner.sheet.words import Words

_TOP, _HEIGHT = 3100.0, 800.0
_POINT = 330.0  # how far the arrow's tip reaches
_GAP = 130.0
_PADDING = 240.0
_MANY = 4


@dataclass(frozen=True, slots=True)
class Stretch:
    """Steps that follow one another at one place; `first` is 0 where no step is known.

    `ends` are made in them; an alike one has no stage of its own.
    """

    stages: tuple[str, ...]
    ends: tuple[str, ...] = ()
    first: int = 0
    last: int = 0

    @property
    def range_text(self) -> str:
        """The numbers of the steps, such as `5–16`."""
        if not self.first:
            return ""
        return str(self.first) if self.first == self.last else f"{self.first}\u2013{self.last}"

    def joined(self, other: "Stretch") -> "Stretch":
        """Return this and the next one as one."""
        stages, ends = (*self.stages, *other.stages), (*self.ends, *other.ends)
        return Stretch(stages, ends, self.first, other.last)


@dataclass(frozen=True, slots=True)
class _Arrow:
    """One arrow of the bar: its figures, its word, whether it is dark."""

    figures: str
    word: str
    dark: bool

    @property
    def needs(self) -> float:
        """How wide it is at least."""
        figures = text_width(self.figures, HEAD, bold=True)
        between = 150 if figures and self.word else 0
        word = text_width(self.word, BODY, bold=True)
        return 2 * _PADDING + _POINT * 1.3 + figures + between + word


def way_bar(making: Making, *stages: str) -> DrawList:
    """Draw the bar over the live width, the stretches of `stages` dark."""
    arrows = _arrows(stretches_of(making), making, frozenset(stages))
    free = LIVE_WIDTH - _width(arrows)
    x, items = making.paper.left, []
    for place, arrow in enumerate(arrows):
        width = arrow.needs + free / len(arrows)
        items.append(_outline(x, width, dark=arrow.dark, first=place == 0))
        items.append(_words(arrow, x + (0 if place == 0 else _POINT * 0.7)))
        x += width + _GAP
    return tuple(item for part in items for item in part)


def stretches_of(making: Making) -> tuple[Stretch, ...]:
    """Return the stretches of the work in their order."""
    found: list[Stretch] = []
    for number, step in enumerate(making.steps, start=1):
        one = Stretch((step.stage,), step.ends, number, number)
        if found and found[-1].stages == one.stages:
            found[-1] = replace(found[-1], last=number)
        else:
            found.append(one)
    if found:
        return tuple(found)
    ends = tuple(Stretch((end.id,), (end.id,)) for end in making.plan.ends)
    return (Stretch(("cut",)), *ends, Stretch(("prove",)))


def _arrows(stretches: Sequence[Stretch], making: Making, here: Set[str]) -> list[_Arrow]:
    """Return arrows that have room: first the words grow short, then neighbours share one."""
    kept = list(stretches)
    while True:
        for spare in range(4):
            arrows = [_arrow(one, making, here, spare) for one in kept]
            if _width(arrows) <= LIVE_WIDTH or len(kept) < 4:
                break
        else:
            kept[-3:-1] = [kept[-3].joined(kept[-2])]
            continue
        return arrows


def _arrow(stretch: Stretch, making: Making, here: Set[str], spare: int) -> _Arrow:
    """Return an arrow whose word is short from a step of sparing on: ends and this page last."""
    dark = not here.isdisjoint(stretch.stages)
    kept = 1 + (dark or bool(stretch.ends)) + dark
    form = "_short" if spare >= kept else ""
    return _Arrow(stretch.range_text, _label(stretch, making.words, form), dark)


def _width(arrows: Sequence[_Arrow]) -> float:
    return sum(arrow.needs for arrow in arrows) + _GAP * (len(arrows) - 1)


def _label(stretch: Stretch, words: Words, form: str) -> str:
    for stage in ("cut", "prove"):
        if stage in stretch.stages:
            return words(f"page.way_{stage}{form}")
    if stretch.ends:
        return words(f"page.way_end{form}", ends=clipped(named(stretch.ends), BODY, 2500))
    return words(f"page.way_split{form}")


def named(ids: Sequence[str]) -> str:
    """Name a few one by one, many by the first and the last: `B, C`, or `A, B1` to `B8`."""
    told: list[str] = []
    for _, group in groupby(ids, key=lambda one: one.rstrip("0123456789")):
        run = list(group)
        told += run if len(run) < _MANY else [f"{run[0]}\u2013{run[-1]}"]
    return ", ".join(told) if len(told) < _MANY else f"{ids[0]}\u2013{ids[-1]}"


def _outline(x: float, width: float, *, dark: bool, first: bool) -> DrawList:
    top, middle, bottom = _TOP, _TOP + _HEIGHT / 2, _TOP + _HEIGHT
    tail = () if first else ((x + _POINT, middle),)
    points = (
        (x, top),
        (x + width - _POINT, top),
        (x + width, middle),
        (x + width - _POINT, bottom),
        (x, bottom),
        *tail,
    )
    return (Poly(points, Style(fill=INK if dark else PAPER, stroke=INK, width=PEN), closed=True),)


def _words(arrow: _Arrow, x: float) -> DrawList:
    colour, middle = (PAPER if arrow.dark else INK), _TOP + _HEIGHT / 2
    at = (x + _PADDING, centred_baseline(middle, HEAD))
    used = text_width(arrow.figures, HEAD, bold=True) + 150 if arrow.figures else 0.0
    beside = (at[0] + used, centred_baseline(middle, BODY))
    word = say(beside, arrow.word, bold=arrow.dark, colour=colour)
    if not arrow.figures:
        return (word,)
    return (say(at, arrow.figures, HEAD, bold=True, colour=colour), word)
