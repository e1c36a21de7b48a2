"""The steps of an end in the words of the sheet."""

from collections.abc import Iterator

from planner.sheet.end_page.steps import Line
from planner.sheet.leaf import Making


def lines_of(making: Making, end: str) -> Iterator[Line]:
    """Yield the steps that are done at an end, numbered as in the whole list."""
    for number, step in enumerate(making.steps, start=1):
        if step.stage in making.plan.end_by_id and end in step.ends:
            text = making.words(f"steps.{step.kind}", **dict(step.values))
            yield Line(str(number), step.heat, text)
