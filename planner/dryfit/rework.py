"""What a part has to be where plugs stay on and it has no way: one that opens, or that shrinks."""

from collections.abc import Iterator
from dataclasses import dataclass

from planner.dryfit.cable_tree import CableTree
from planner.dryfit.routes import resting
from planner.dryfit.threading import Threading
from planner.model.part import Part
from planner.model.plan import PartUse, Plan

# Largest over smallest stays under 3 for 3:1, the highest ratio named (NASA-STD-8739.4, 9.8.1).
_MOST_RATIO = 3.0


@dataclass(frozen=True, slots=True)
class Instead:
    """A part without a way: the bore that would pass on the easiest, and what it rests on, mm."""

    use: PartUse
    part: Part
    passes_mm: float
    grips_mm: float

    @property
    def may_shrink(self) -> bool:
        """Whether heat-shrink could pass and grip; else only what opens gets there."""
        return 0 < self.passes_mm < _MOST_RATIO * self.grips_mm


def instead(plan: Plan, threading: Threading) -> tuple[Instead, ...]:
    """Return what each part would have to be that has no way in this threading of the plan."""
    return tuple(_instead(plan, threading))


def _instead(plan: Plan, threading: Threading) -> Iterator[Instead]:
    tree = CableTree(plan)
    section_of = {it.use.id: it.section for it in resting(plan, tree)}
    for it in threading.hindrances:
        if it.kind == "cannot-pass":
            grips_mm = tree.section(section_of[it.use.id]).thick_mm
            yield Instead(it.use, it.part, min(way.needs_mm for way in it.ways), grips_mm)
