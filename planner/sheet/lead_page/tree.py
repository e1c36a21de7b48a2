"""Where the nodes of a lead stand in its picture: the first end left, the others in rows right."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from planner.drawing.primitives import Point
from planner.model.plan import Plan, Section

_EACH_DRAWN = 4  # ends on the right that are each drawn, alike or not


def named_span(ends: tuple[str, ...]) -> str:
    """Name one end, or many by the first and the last."""
    return ends[0] if len(ends) == 1 else f"{ends[0]}\u2013{ends[-1]}"


@dataclass(frozen=True, slots=True)
class Tip:
    """What stands at the end of a leg: one end, or many that are alike, drawn once."""

    ends: tuple[str, ...]
    section: Section | None

    @property
    def first(self) -> str:
        """The end that is drawn."""
        return self.ends[0]


@dataclass(frozen=True)
class Tree:
    """A plan as a tree from its first end; what is not joined to it stands alone on the right."""

    plan: Plan

    @cached_property
    def root(self) -> str:
        """The end on the left; empty for a plan without ends."""
        return self.plan.ends[0].id if self.plan.ends else ""

    @cached_property
    def tips(self) -> tuple[Tip, ...]:
        """The ends on the right from the top down; alike ones are one where there are many."""
        legs = {child: section for _, child, section in self._steps}
        others = [end.id for end in self.plan.ends if end.id != self.root]
        reached = [child for _, child, _ in self._steps if child in self.plan.end_by_id]
        ordered = [*reached, *(end for end in others if end not in reached)]
        if len(ordered) <= _EACH_DRAWN:
            return tuple(Tip((end,), legs.get(end)) for end in ordered)
        groups: dict[tuple[object, ...], list[str]] = {}
        for end in ordered:
            groups.setdefault(self._kind(end, legs.get(end)), []).append(end)
        return tuple(Tip(tuple(ends), legs.get(ends[0])) for ends in groups.values())

    def _kind(self, end: str, leg: Section | None) -> tuple[object, ...]:
        """Return what two ends must share to be drawn as one."""
        if leg is None:
            return (end,)
        near = leg.far if leg.near == end else leg.near
        return (self.plan.end_by_id[end].connector, near, leg.cable, leg.fan_of, leg.length_mm)

    @cached_property
    def joints(self) -> tuple[tuple[str, str, Section], ...]:
        """What is drawn as cable: from, to, the section; of alike legs only the first."""
        drawn = {tip.first for tip in self.tips}
        return tuple(
            (parent, child, section)
            for parent, child, section in self._steps
            if child in drawn or child not in self.plan.end_by_id
        )

    @cached_property
    def _steps(self) -> tuple[tuple[str, str, Section], ...]:
        """Return (parent, child, section) from the root outwards, depth first."""
        found: list[tuple[str, str, Section]] = []
        seen, stack = {self.root}, [self.root]
        while stack:
            node = stack.pop()
            near = [
                (section.far if section.near == node else section.near, section)
                for section in self.plan.sections
                if node in {section.near, section.far}
            ]
            fresh = [(child, section) for child, section in near if child not in seen]
            found += [(node, child, section) for child, section in fresh]
            seen |= {child for child, _ in fresh}
            stack += [child for child, _ in reversed(fresh)]
        return tuple(found)

    def spots(self, left: float, right: float, levels: Sequence[float]) -> dict[str, Point]:
        """Return where each drawn node stands, from the level of each tip (or of the root alone).

        The splits share the way from left to right.
        """
        rows = {tip.first: level for tip, level in zip(self.tips, levels, strict=False)}
        depth = {self.root: 0}
        for parent, child, _ in self.joints:
            depth[child] = depth[parent] + 1
        deepest = max(*depth.values(), 1)
        found = {end: (right, y) for end, y in rows.items()}
        for node in sorted(depth, key=lambda one: -depth[one]):
            if node not in found:
                x = left + (right - left) * depth[node] / deepest
                found[node] = (x, self._middle(node, found, levels[0]))
        return found

    def _middle(self, node: str, found: dict[str, Point], top: float) -> float:
        levels = [found[child][1] for parent, child, _ in self.joints if parent == node]
        return (min(levels) + max(levels)) / 2 if levels else top
