"""The bench sheet of a plan: one page where it fits, more where it does not."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from planner.checks.finding import Finding
from planner.drawing.primitives import DrawList
from planner.model.plan import Plan
from planner.sheet.block import Block, flow
from planner.sheet.end_block import Form, end_blocks
from planner.sheet.facts import EndFacts, end_facts
from planner.sheet.findings_panel import finding_blocks, stops_blocks
from planner.sheet.head import foot, head, heading
from planner.sheet.panels import (
    cable_blocks,
    care_blocks,
    check_bar,
    pinout_blocks,
    remarks_blocks,
)
from planner.sheet.paper import PAPERS, PaperName
from planner.sheet.stop_band import free_above, stop_band

UNIT_MM = 0.01


@dataclass(frozen=True, slots=True)
class Page:
    """One printed page: its items and its size, in 0.01 mm."""

    items: DrawList
    width: float
    height: float


def sheet_pages(
    plan: Plan, findings: Sequence[Finding], *, paper: PaperName = "a4", date: str = ""
) -> tuple[Page, ...]:
    """Draw the bench sheet of a plan on `a4` or `letter`; KeyError for another paper.

    `date` is printed as given, and left out when empty: the same plan gives the same sheet.
    """
    sheet = PAPERS[paper]
    stopped = any(finding.weight == "stop" for finding in findings)
    bottoms = free_above(sheet) if stopped else (sheet.body_bottom, sheet.body_bottom)
    room = min(bottoms) - sheet.body_top
    tries = (
        list(flow(tuple(_blocks(plan, findings, forms, room)), sheet, bottoms))
        for forms in _attempts(end_facts(plan))
    )
    bodies = _fewest(tries)
    said = heading(plan, findings, date)
    return tuple(
        Page(
            (
                *head(said, sheet, number, len(bodies)),
                *body,
                *(stop_band(sheet) if stopped else ()),
                *foot(said, sheet, number, len(bodies)),
            ),
            sheet.width,
            sheet.height,
        )
        for number, body in enumerate(bodies, start=1)
    )


def _fewest(tries: Iterable[list[DrawList]]) -> list[DrawList]:
    """Return the first try that takes one page, else the first of those with fewest pages."""
    best: list[DrawList] = []
    for bodies in tries:
        if not best or len(bodies) < len(best):
            best = bodies
        if len(best) == 1:
            break
    return best


def _attempts(ends: Sequence[EndFacts]) -> Iterator[tuple[tuple[EndFacts, Form], ...]]:
    """Yield ways to draw the ends, the best of those with as many pages first.

    One wide end among smaller ones where it has more contacts than each of the others.
    """
    counts = sorted(len(facts.joints) for facts in ends)
    if len(counts) > 2 and counts[-1] > counts[-2]:
        for form in _HALVES:
            yield tuple(
                (facts, "wide" if len(facts.joints) == counts[-1] else form) for facts in ends
            )
    yield tuple((facts, "wide") for facts in ends)
    for form in _HALVES:
        yield tuple((facts, form) for facts in ends)


_HALVES: tuple[Form, ...] = ("large", "small")


def _blocks(
    plan: Plan,
    findings: Sequence[Finding],
    ends: Sequence[tuple[EndFacts, Form]],
    room: float,
) -> Iterator[Block]:
    stopped = any(finding.weight == "stop" for finding in findings)
    if stopped:
        yield from stops_blocks(findings, room)
    for facts, form in ends:
        yield from end_blocks(facts, form, boxes=not stopped, room=room)
    yield from cable_blocks(plan, room)
    yield from pinout_blocks(plan, room)
    yield from finding_blocks(plan, findings, room)
    yield from remarks_blocks(plan, room)
    if not stopped:
        yield from care_blocks(room)
        yield check_bar()
