"""Joints inside splits, where cores of cables of their own meet: lap, sleeve, core left free."""

from collections.abc import Iterator
from dataclasses import dataclass

from planner.dryfit.shrinking import tube_cut_mm
from planner.dryfit.sleeve_sizes import HEAT_CLEAR_MM, overlap_mm, shrink_bore_mm
from planner.geometry.packing import pack
from planner.model.cable import Core, Shield
from planner.model.plan import Conductor, Plan

# How far wires lie along each other in a joint; each is stripped that much. Common practice, no
# source.
SPLICE_MM = 6.0
# How far before the middle of a split a jacket ends where its cores are spliced; the cores, longer
# than that, fold up under the cover. Common practice, no source.
JACKET_BACK_MM = 10.0


@dataclass(frozen=True, slots=True)
class Splice:
    """A joint of one conductor in a split, with the shrink over it: cut length and bore, mm.

    `bore_mm` is the size as supplied, 0 where none in stock goes over.
    """

    split: str
    conductor: str
    length_mm: float
    bore_mm: float


def splices_at(plan: Plan, split: str) -> Iterator[Splice]:
    """Yield the joints in a split, in the plan's order of conductors."""
    for conductor in plan.conductors:
        thick = _thick_mm(plan, conductor, split)
        if len(thick) > 1:
            passes, grips = _passes_and_grips(thick)
            bore = shrink_bore_mm(passes, grips)
            yield Splice(split, conductor.id, _sleeve_mm(plan, max(thick)), bore)


def free_mm(plan: Plan, split: str) -> float:
    """Return how much of a core is left out of its jacket in a split.

    The longest sleeve parks there, clear of the heat, beside what is stripped.
    """
    longest = max((it.length_mm for it in splices_at(plan, split)), default=0.0)
    return max(longest + HEAT_CLEAR_MM + SPLICE_MM, JACKET_BACK_MM)


def _sleeve_mm(plan: Plan, thickest_mm: float) -> float:
    """Return how long to cut shrink that covers the lap and overlaps the insulation either side."""
    return tube_cut_mm(SPLICE_MM + 2 * overlap_mm(thickest_mm, plan.workmanship.sleeve_overlap))


def _passes_and_grips(thick_mm: list[float]) -> tuple[float, float]:
    """Return what a sleeve parked on the first core passes and grips: it, and the rest together."""
    first, *rest = thick_mm
    others = pack(rest, "quick").diameter_mm
    return max(first, others), min(first, others)


def _thick_mm(plan: Plan, conductor: Conductor, split: str) -> list[float]:
    """Return the diameters of the cores, or tails, of a conductor that end in a split."""
    found = []
    for run in conductor.runs:
        section, part = plan.section_by_id.get(run.section), plan.part_of(run)
        if section is None or section.fan_of or split not in {section.near, section.far}:
            continue
        if isinstance(part, Core):
            found.append(part.insulation_mm)
        elif isinstance(part, Shield):
            found.append(part.tail_mm)
    return found
