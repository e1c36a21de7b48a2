"""The bench sheet of a plan: the lead, a page an end, the proving, who says so."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.checks.finding import Finding
from planner.drawing.primitives import DrawList
from planner.model.plan import Plan
from planner.sheet.end_page import end_leaves
from planner.sheet.head import foot, head, heading
from planner.sheet.lead_page import lead_leaves
from planner.sheet.leaf import Leaf, Making
from planner.sheet.paper import PaperName
from planner.sheet.proving import proving_leaves
from planner.sheet.sources import source_leaves
from planner.sheet.split_page import split_leaves
from planner.sheet.stop_band import stop_band
from planner.sheet.way_bar import stretches_of, way_bar
from planner.sheet.words import Language

UNIT_MM = 0.01


@dataclass(frozen=True, slots=True)
class Page:
    """One printed page: its items and its size, in 0.01 mm."""

    items: DrawList
    width: float
    height: float


def sheet_pages(
    plan: Plan,
    findings: Sequence[Finding],
    *,
    paper: PaperName = "a4",
    date: str = "",
    language: Language = "en",
    leads: int = 1,
) -> tuple[Page, ...]:
    """Draw the bench sheet of a plan for a run of `leads`; KeyError for a paper not known.

    `date` is printed as given, and left out when empty: the same plan gives the same sheet.
    """
    making = Making(plan, tuple(findings), paper, date, language, leads)
    said = heading(making)
    leaves = tuple(_leaves(making))
    numbers = [
        making.words("page.page_of", page=number, pages=len(leaves))
        for number in range(1, len(leaves) + 1)
    ]
    return tuple(
        Page(
            (
                *head(leaf, said, making, number),
                *way_bar(making, leaf.stage, leaf.also),
                *leaf.body,
                *_band(making),
                *foot(said, making, number),
            ),
            making.paper.width,
            making.paper.height,
        )
        for leaf, number in zip(leaves, numbers, strict=True)
    )


def _band(making: Making) -> DrawList:
    """Draw the band across a page that must not be soldered from."""
    return stop_band(making.paper, making.words("page.not_clear")) if making.stopped else ()


def _leaves(making: Making) -> Iterator[Leaf]:
    """Yield the pages in the order of the work; with a stop, nothing is proved."""
    lead, told = lead_leaves(making)
    yield from lead
    order = {stage: place for place, stage in enumerate(_stages(making))}
    nodes = [*end_leaves(making), *split_leaves(making)]
    yield from sorted(nodes, key=lambda leaf: order.get(leaf.stage, len(order)))
    if not making.stopped:
        yield from proving_leaves(making)
    if not told:
        yield from source_leaves(making)


def _stages(making: Making) -> list[str]:
    """Return the stages of the work, each once."""
    return list(dict.fromkeys(s for one in stretches_of(making) for s in one.stages))
