"""The steps of an end in the words of the sheet."""

from collections.abc import Iterator, Sequence

from planner.sheet.end_page.steps import Line
from planner.sheet.leaf import Making


def lines_of(making: Making, ends: Sequence[str]) -> Iterator[Line]:
    """Yield the steps of an end, numbered as in the whole list."""
    words = making.words
    for number, step in enumerate(getattr(making, "steps", ()), start=1):
        if step.stage == ends[0]:
            text = words(f"steps.{step.kind}", **dict(step.values))
            yield Line(str(number), step.heat, text)
