"""What shrink lies on where a jacket ends, at an end and at a split, and how long that is."""

from dataclasses import dataclass

from planner.dryfit.shrinking import shrink_cut_mm
from planner.dryfit.sleeve_sizes import overlap_mm
from planner.dryfit.thickness import cores_mm, section_mm, sections_at, together_mm, trunk_at
from planner.model.plan import PartUse, Plan, Section


@dataclass(frozen=True, slots=True)
class Step:
    """A step in thickness, mm: shrink grips `grips_mm` and lies on `cover_mm` of the length."""

    grips_mm: float
    cover_mm: float


def step_at(plan: Plan, node: str) -> Step | None:
    """Return the step at an end or split that shrink covers; None where there is none."""
    if node in plan.end_by_id:
        section = plan.section_at.get(node)
        return step_at_end(plan, section) if section is not None else None
    trunk = trunk_at(plan, node)
    return step_at_split(plan, node, trunk) if trunk is not None else None


def step_at_end(plan: Plan, section: Section) -> Step | None:
    """Return the step from the jacket to the cores; bare cores have none.

    Shrink reaches one diameter of the cores over them, clear of the sleeves: our own choice.
    """
    cores = 0.0 if section.fan_of else cores_mm(plan, (section,))
    jacket = section_mm(plan, section)
    if not 0 < cores <= jacket:
        return None
    return Step(cores, overlap_mm(jacket, plan.workmanship.sleeve_overlap) + cores)


def step_at_split(plan: Plan, split: str, trunk: Section) -> Step | None:
    """Return the step from the trunk to its legs, with the overlap on both."""
    legs = tuple(it for it in sections_at(plan, split) if it is not trunk)
    sits_mm, legs_mm = section_mm(plan, trunk), together_mm(plan, legs)
    if not (sits_mm and legs_mm):
        return None
    rule = plan.workmanship.sleeve_overlap
    return Step(min(sits_mm, legs_mm), overlap_mm(sits_mm, rule) + overlap_mm(legs_mm, rule))


def cut_mm(plan: Plan, use: PartUse) -> float:
    """Return how long to cut a chosen piece of shrink, mm; 0 for others and where nothing tells.

    Never longer than the piece in stock.
    """
    part = next((it for it in plan.definitions.parts if it.id == use.part), None)
    if part is None or part.kind != "heat-shrink":
        return 0.0
    step = step_at(plan, use.at)
    return min(shrink_cut_mm(step.cover_mm, part), part.length_mm) if step is not None else 0.0
