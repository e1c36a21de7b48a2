"""The cable of a lead as a part meets it: how thick each piece is, and what lies on which side."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from planner.dryfit.thickness import section_mm
from planner.geometry.packing import pack
from planner.model.plan import Plan, Section


class Thing(NamedTuple):
    """Something that a part has to pass."""

    over: str
    thick_mm: float


@dataclass(frozen=True, slots=True)
class Side:
    """What lies on one side of a section: the ends, and the sections beyond it."""

    ends: tuple[str, ...]
    sections: frozenset[str]


class CableTree:
    """The cable of a plan as a part meets it: what is how thick, what lies on which side."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self._sides: dict[tuple[str, str], Side] = {}
        self._things: dict[str, Thing] = {}

    @cached_property
    def _touching(self) -> dict[str, list[Section]]:
        found: dict[str, list[Section]] = {}
        for section in self.plan.sections:
            found.setdefault(section.near, []).append(section)
            found.setdefault(section.far, []).append(section)
        return found

    def side(self, section: Section, node: str) -> Side:
        """Return what lies beyond a section on the side of one of its two nodes."""
        key = (section.id, node)
        if key not in self._sides:
            self._sides[key] = self._walked(section, node)
        return self._sides[key]

    def _walked(self, section: Section, start: str) -> Side:
        nodes, beyond, todo = {start}, set[str](), [start]
        while todo:
            node = todo.pop()
            for step in self._touching.get(node, ()):
                if step.id != section.id and step.id not in beyond:
                    beyond.add(step.id)
                    other = step.far if step.near == node else step.near
                    nodes.add(other)
                    todo.append(other)
        ends = tuple(end.id for end in self.plan.ends if end.id in nodes)
        return Side(ends, frozenset(beyond))

    def path(self, start: str, goal: str) -> tuple[str, ...]:
        """Return the sections between two nodes, in order; none if they are one or not joined."""
        todo: list[tuple[str, tuple[str, ...]]] = [(start, ())]
        seen = {start}
        while todo:
            node, path = todo.pop()
            if node == goal:
                return path
            for step in self._touching.get(node, ()):
                other = step.far if step.near == node else step.near
                if other not in seen:
                    seen.add(other)
                    todo.append((other, (*path, step.id)))
        return ()

    def section(self, name: str) -> Thing:
        """Return how thick a section is: its jacket, or its cores where they go on without."""
        if name not in self._things:
            section, cable = self.plan.section_by_id[name], self.plan.cable_of(name)
            title = cable.title if cable is not None else ""
            over = f"the bundle of cores of {title}" if section.fan_of else f"the jacket of {title}"
            self._things[name] = Thing(over, section_mm(self.plan, section))
        return self._things[name]

    def plug(self, end: str) -> Thing:
        """Return how thick the plug of an end is; nothing while it is not chosen."""
        connector = self.plan.connector_of(end)
        if connector is None:
            return Thing("", 0.0)
        return Thing(connector.title, connector.barrel.outside_mm)


def bundle_mm(diameters_mm: Sequence[float]) -> float:
    """Return the smallest bore that a bundle was found to go through; 0 for no bundle."""
    if len(diameters_mm) <= 2:
        return sum(diameters_mm)
    return pack(diameters_mm, "quick").diameter_mm
