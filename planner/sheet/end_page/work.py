"""The steps of an end in the words of the sheet, and of a split that is closed right after it."""

from collections.abc import Iterator
from itertools import groupby, pairwise

from planner.dryfit.work.step import Step
from planner.sheet.end_page.steps import Line
from planner.sheet.leaf import Making
from planner.sheet.way_bar import named

_MOST_CLOSING = 3  # so many steps that close a split go on in an end's list, with no page of theirs


def lines_of(making: Making, end: str) -> Iterator[Line]:
    """Yield the steps that are done on an end's page, numbered as in the whole list.

    Where other steps come between, a line without a number sends the reader there and back.
    """
    before = 0
    for number, step in _here(making, end):
        if before and number > before + 1:
            yield Line("", step.heat, _elsewhere(making, before + 1, number - 1))
        text = making.words(f"steps.{step.kind}", **dict(step.values))
        yield Line(str(number), step.heat, text)
        before = number


def _here(making: Making, end: str) -> Iterator[tuple[int, Step]]:
    made = {step.stage for step in making.steps if end in step.ends}
    closed = {split for before, split in closed_after(making).items() if before in made}
    for number, step in enumerate(making.steps, start=1):
        here = step.stage in making.plan.end_by_id and end in step.ends
        if here or step.stage in closed:
            yield number, step


def _elsewhere(making: Making, first: int, last: int) -> str:
    """Say which steps come between, and where they are done."""
    words, between = making.words, making.steps[first - 1 : last]
    ends = dict.fromkeys(end for step in between for end in step.ends)
    where = [words("end.end", end=named(tuple(ends)))] if ends else []
    if any(not step.ends for step in between):
        where.append(words("cuts.the_split"))
    steps = str(first) if first == last else f"{first}\u2013{last}"
    return words("end.elsewhere", steps=steps, where=", ".join(where))


def closed_after(making: Making) -> dict[str, str]:
    """Return the splits that are only closed, right after an end is made, by that end."""
    runs = [(stage, list(group)) for stage, group in groupby(making.steps, key=_stage)]
    splits = {split.id for split in making.plan.splits}
    often = [stage for stage, _ in runs]
    return {
        before: stage
        for (before, _), (stage, steps) in pairwise(runs)
        if before in making.plan.end_by_id
        and stage in splits
        and often.count(stage) == often.count(before) == 1
        and len(steps) <= _MOST_CLOSING
        and all(step.heat == "close" for step in steps)
    }


def _stage(step: Step) -> str:
    return step.stage
