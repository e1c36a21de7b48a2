"""The way bar under the head: the stages of the work with their step numbers, this page's dark."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from planner.drawing.metrics import clipped, text_width
from planner.drawing.primitives import DrawList, Poly, Style, centred_baseline
from planner.sheet.leaf import Making
from planner.sheet.lettering import BODY, HEAD, INK, PAPER, PEN, say
from planner.sheet.paper import LIVE_WIDTH

_TOP, _HEIGHT = 3100.0, 800.0
_POINT = 330.0  # how far the arrow's tip reaches
_GAP = 130.0
_PADDING = 300.0


@dataclass(frozen=True, slots=True)
class Stretch:
    """Steps that follow one another at one place; `first` is 0 where no step is known."""

    stages: tuple[str, ...]
    first: int = 0
    last: int = 0

    @property
    def range_text(self) -> str:
        """The numbers of the steps, such as `5–16`."""
        if not self.first:
            return ""
        return str(self.first) if self.first == self.last else f"{self.first}\u2013{self.last}"


def way_bar(making: Making, stage: str) -> DrawList:
    """Draw the bar over the live width, the stretch of `stage` dark."""
    stretches = _fitting(stretches_of(making), making)
    widths = [_needs(stretch, making) for stretch in stretches]
    free = LIVE_WIDTH - sum(widths) - _GAP * (len(widths) - 1)
    x, items = making.paper.left, []
    for place, (stretch, needed) in enumerate(zip(stretches, widths, strict=True)):
        width = needed + free / len(widths)
        dark = stage in stretch.stages
        items.append(_arrow(x, width, dark=dark, first=place == 0))
        items.append(_words(stretch, making, x + (0 if place == 0 else _POINT * 0.7), dark=dark))
        x += width + _GAP
    return tuple(item for part in items for item in part)


def stretches_of(making: Making) -> tuple[Stretch, ...]:
    """Return the stretches of the work in their order."""
    found: list[Stretch] = []
    for number, step in enumerate(getattr(making, "steps", ()), start=1):
        if found and found[-1].stages == (step.stage,):
            found[-1] = replace(found[-1], last=number)
        else:
            found.append(Stretch((step.stage,), number, number))
    if found:
        return tuple(found)
    ends = tuple(Stretch((end.id,)) for end in making.plan.ends)
    return (Stretch(("cut",)), *ends, Stretch(("prove",)))


def _fitting(stretches: Sequence[Stretch], making: Making) -> list[Stretch]:
    """Join neighbours from the last end on backwards until all have room."""
    kept = list(stretches)
    while len(kept) > 3 and _too_wide(kept, making):
        kept[-3:-1] = [Stretch((*kept[-3].stages, *kept[-2].stages), kept[-3].first, kept[-2].last)]
    return kept


def _too_wide(stretches: Sequence[Stretch], making: Making) -> bool:
    needed = sum(_needs(stretch, making) for stretch in stretches)
    return needed + _GAP * (len(stretches) - 1) > LIVE_WIDTH


def _label(stretch: Stretch, making: Making) -> str:
    words = making.words
    fixed = [stage for stage in stretch.stages if stage in {"cut", "prove"}]
    if fixed:
        return words(f"page.way_{fixed[0]}")
    ends = [stage for stage in stretch.stages if stage in making.plan.end_by_id]
    if ends:
        return words("page.way_end", ends=named(ends))
    return words("page.way_split", split=named(stretch.stages))


def named(ids: Sequence[str]) -> str:
    """Name many by the first and the last: `B, C` or `B1 to B8` with a dash."""
    return ", ".join(ids) if len(ids) < 4 else f"{ids[0]}\u2013{ids[-1]}"


def _needs(stretch: Stretch, making: Making) -> float:
    figures = text_width(stretch.range_text, HEAD, bold=True)
    label = text_width(_label(stretch, making), BODY, bold=True)
    return 2 * _PADDING + _POINT * 1.3 + figures + (150 if figures else 0) + label


def _arrow(x: float, width: float, *, dark: bool, first: bool) -> DrawList:
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


def _words(stretch: Stretch, making: Making, x: float, *, dark: bool) -> DrawList:
    colour, middle = (PAPER if dark else INK), _TOP + _HEIGHT / 2
    at = (x + _PADDING, centred_baseline(middle, HEAD))
    figures = stretch.range_text
    used = text_width(figures, HEAD, bold=True) + 150 if figures else 0.0
    label = clipped(_label(stretch, making), BODY, LIVE_WIDTH / 2, bold=True)
    beside = (at[0] + used, centred_baseline(middle, BODY))
    drawn = say(beside, label, bold=dark, colour=colour)
    return (say(at, figures, HEAD, bold=True, colour=colour), drawn) if figures else (drawn,)
