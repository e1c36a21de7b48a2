"""Whether each part gets to its place: over what it must pass, and before which joint."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from planner.model.part import Part
from planner.model.plan import PartUse, Plan


@dataclass(frozen=True, slots=True)
class Hindrance:
    """Why a part can't be where it is planned, with the figure that it has and the one it needs."""

    kind: Literal["cannot-pass", "threaded-too-late", "shrink-misfit"]
    use: PartUse
    part: Part
    over: str
    has_mm: float
    needs_mm: float


def hindrances(plan: Plan) -> Iterator[Hindrance]:
    """Yield what hinders each part of the plan; a part not chosen yet is passed over."""
    parts = {part.id: part for part in plan.definitions.parts}
    for use in plan.parts:
        part = parts.get(use.part)
        if part is None:
            continue
        yield from _on_the_way(plan, use, part)
        if part.kind == "heat-shrink":
            yield from _shrinks(plan, use, part)


def sections_passed(plan: Plan, use: PartUse) -> list[str]:
    """Return the sections a part slides over from the end it comes on to where it rests."""
    path = _path(plan, use.comes_from, use.at)
    if path:
        return path
    section = plan.section_at.get(use.comes_from)
    return [section.id] if section is not None else []


def _on_the_way(plan: Plan, use: PartUse, part: Part) -> Iterator[Hindrance]:
    """Yield what is too thick on the way: the jacket always, the plug when it is on already."""
    if part.opens:
        return
    for section in sections_passed(plan, use):
        cable = plan.cable_of(section)
        fanned = bool(plan.section_by_id[section].fan_of)
        if cable is not None and not fanned and cable.jacket_mm > part.bore_mm:
            over = f"the jacket of {cable.title}"
            yield Hindrance("cannot-pass", use, part, over, part.bore_mm, cable.jacket_mm)
    connector = plan.connector_of(use.comes_from) if use.comes_from in plan.end_by_id else None
    if use.after_joint and connector is not None and connector.barrel.outside_mm > part.bore_mm:
        thick = connector.barrel.outside_mm
        yield Hindrance("threaded-too-late", use, part, connector.title, part.bore_mm, thick)


def _shrinks(plan: Plan, use: PartUse, part: Part) -> Iterator[Hindrance]:
    """Recovered shrink must grip the jacket where it rests (NASA-STD-8739.4 9.8.1)."""
    for section in sections_passed(plan, use)[-1:]:
        cable = plan.cable_of(section)
        if cable is not None and part.recovered_mm >= cable.jacket_mm:
            over = f"the jacket of {cable.title}"
            yield Hindrance("shrink-misfit", use, part, over, part.recovered_mm, cable.jacket_mm)


def _path(plan: Plan, start: str, goal: str) -> list[str]:
    """Return the sections between two nodes of the tree; empty if they are one or not joined."""
    stack: list[tuple[str, list[str]]] = [(start, [])]
    seen = {start}
    while stack:
        node, path = stack.pop()
        if node == goal:
            return path
        for section in plan.sections:
            if node in {section.near, section.far}:
                other = section.far if node == section.near else section.near
                if other not in seen:
                    seen.add(other)
                    stack.append((other, [*path, section.id]))
    return []
