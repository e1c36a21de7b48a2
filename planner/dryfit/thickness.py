"""How thick a lead is where parts go over it, and which way along the tree they come."""

from planner.dryfit.bodies import covered_mm
from planner.geometry.packing import pack
from planner.model.plan import Plan, Section


def section_mm(plan: Plan, section: Section) -> float:
    """Return the diameter of a section: its jacket, or its cores together where they go on bare.

    0 while its cable is not chosen, or nothing runs in it.
    """
    cable = plan.cable_of(section.id)
    if cable is None:
        return 0.0
    return cores_mm(plan, (section,)) if section.fan_of else cable.jacket_mm


def cores_mm(plan: Plan, sections: tuple[Section, ...]) -> float:
    """Return the diameter round all cores and tails of these sections; 0 if there are none."""
    return _bundle_mm([size for section in sections for size in _sizes(plan, section)])


def together_mm(plan: Plan, sections: tuple[Section, ...]) -> float:
    """Return the diameter round these sections side by side: jackets, and cores that go on bare."""
    sizes: list[float] = []
    for section in sections:
        thick = section_mm(plan, section)
        sizes += _sizes(plan, section) if section.fan_of else [thick] * (thick > 0)
    return _bundle_mm(sizes)


def sections_at(plan: Plan, node: str) -> tuple[Section, ...]:
    """Return the sections that meet at a node, in the plan's order."""
    return tuple(it for it in plan.sections if node in {it.near, it.far})


def trunk_at(plan: Plan, split: str) -> Section | None:
    """Return the section that parts at a split: whose cores go on, else that with most wires."""
    meeting = sections_at(plan, split)
    fanned = {it.fan_of for it in meeting}
    sources = [it for it in meeting if it.id in fanned]
    return max(sources or meeting, key=lambda it: len(_sizes(plan, it)), default=None)


def beyond(plan: Plan, node: str, section: Section) -> tuple[tuple[Section, ...], dict[str, float]]:
    """Return the sections on the far side of `section` seen from `node`, itself among them.

    And the ends there, each with its distance from the node in mm.
    """
    passed: list[Section] = []
    ends: dict[str, float] = {}
    ways = [(node, section, 0.0)]
    while ways:
        start, way, gone = ways.pop()
        passed.append(way)
        goal, gone = way.far if way.near == start else way.near, gone + way.length_mm
        if goal in plan.end_by_id:
            ends[goal] = gone
        seen = {it.id for it in passed}
        ways += [(goal, it, gone) for it in sections_at(plan, goal) if it.id not in seen]
    return tuple(passed), ends


def _sizes(plan: Plan, section: Section) -> list[float]:
    runs = [run for it in plan.conductors for run in it.runs if run.section == section.id]
    found = (plan.part_of(run) for run in runs)
    return [covered_mm(part) for part in found if part is not None]


def _bundle_mm(sizes: list[float]) -> float:
    return pack(sizes, "quick").diameter_mm if sizes else 0.0
