"""Which parts from stock an end or a split wants, and why: what they must pass and grip."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from planner.dryfit.bodies import joint_bodies
from planner.dryfit.fit import EndFit, fit_end
from planner.dryfit.proposing import Answer, Lack, Proposal, reached
from planner.dryfit.shrink_places import Step, step_at_end, step_at_split
from planner.dryfit.shrinking import (
    shrink_cut_mm,
    shrink_for,
    shrink_too_short,
    shrink_why_not,
    shrunk_outside_mm,
)
from planner.dryfit.sleeves import joints_of, sleeves_for
from planner.dryfit.suiting import is_boot, is_clamp, is_liner, is_shell
from planner.dryfit.thickness import (
    beyond,
    section_mm,
    sections_at,
    together_mm,
    trunk_at,
)
from planner.model.connector import Connector
from planner.model.part import Part
from planner.model.plan import Plan, Section
from planner.units import number
from planner.wiring.graph import Wiring

# What is only slipped on stays put up to this many times what it sits on: our own choice, no
# source.
LOOSE = 1.5


def proposals(
    plan: Plan, stock: Sequence[Part], *, end: str = "", section: str = ""
) -> tuple[Proposal, ...]:
    """Return the parts that an end still wants, or the splits that a section is the trunk of.

    The whole lead where neither is named. A kind that is chosen at a place already is not proposed
    again. Parts come from the nearest end on their side that they get to their place from. Raise
    KeyError for what is not there.
    """
    found = answers(plan, stock, end=end, section=section)
    return tuple(it for it in found if isinstance(it, Proposal))


def lacks(
    plan: Plan, stock: Sequence[Part], *, end: str = "", section: str = ""
) -> tuple[Lack, ...]:
    """Return what nothing in stock does at the same places, with the figures wanted."""
    found = answers(plan, stock, end=end, section=section)
    return tuple(it for it in found if isinstance(it, Lack))


def answers(
    plan: Plan, stock: Sequence[Part], *, end: str = "", section: str = ""
) -> tuple[Answer, ...]:
    """Return proposals and lacks together, by place in the plan's order."""
    named = bool(end or section)
    ends = [plan.end_by_id[end].id] if end else [it.id for it in plan.ends if not named]
    trunk = plan.section_by_id[section].id if section else ""
    found = [it for name in ends for it in _at_end(plan, stock, name)]
    for split in plan.splits if section or not named else ():
        way = trunk_at(plan, split.id)
        if way is not None and trunk in {"", way.id}:
            found += _at_split(plan, stock, split.id, way)
    return tuple(reached(plan, found))


@dataclass(frozen=True, slots=True)
class _Place:
    """Where parts go: next to `at`, from `comes_from`, over `passes_mm`, said as `over`."""

    plan: Plan
    stock: Sequence[Part]
    at: str
    comes_from: str
    passes_mm: float
    over: str

    def chosen(self, kind: str) -> Part | None:
        """Return a part of a kind that is planned here already."""
        known = {part.id: part for part in self.plan.definitions.parts}
        here = [known.get(use.part) for use in self.plan.parts if use.at == self.at]
        return next((part for part in here if part is not None and part.kind == kind), None)

    def answer(
        self, kind: str, does: str, suiting: Sequence[Part], *, sits_on_mm: float = math.inf
    ) -> Iterator[Answer]:
        """Yield the smallest suiting part that passes and is not loose where it sits, or a lack.

        What opens has nothing to pass, and comes after all else that does.
        """
        if self.chosen(kind):
            return
        most_mm = LOOSE * sits_on_mm
        least_mm = min(sits_on_mm, self.passes_mm)
        fitting = [
            part
            for part in suiting
            if (least_mm if part.opens else self.passes_mm) <= part.bore_mm <= most_mm
        ]
        best = min(fitting, key=lambda part: (part.opens, *_size(part)), default=None)
        if best is None:
            yield Lack(kind, self.at, self._wanted(kind, does, most_mm, suiting))
        else:
            laid = f"is laid round {number(least_mm)} mm" if best.opens else f"passes {self.over}"
            why = f"{does}: its bore of {number(best.bore_mm)} mm {laid}"
            yield Proposal(best, self.at, self.comes_from, why)

    def _wanted(self, kind: str, does: str, most_mm: float, suiting: Sequence[Part]) -> str:
        bore = f"a bore of at least {number(self.passes_mm)} mm to pass {self.over}"
        hold = f" and at most {number(most_mm)} mm to hold" if most_mm < math.inf else ""
        has = ", ".join(f"{number(part.bore_mm)} mm" for part in sorted(suiting, key=_size))
        return f"no {kind} in stock {does}: wanted is {bore}{hold}; there is {has or 'none'}"

    def lack(self, kind: str, why: str) -> Lack:
        """Return a lack at this place."""
        return Lack(kind, self.at, why)


def _at_end(plan: Plan, stock: Sequence[Part], end: str) -> Iterator[Answer]:
    section, connector = plan.section_at.get(end), plan.connector_of(end)
    thick_mm = section_mm(plan, section) if section is not None else 0.0
    if section is None or thick_mm <= 0:
        return
    thick = f"{number(thick_mm)} mm"
    over = f"the cores, {thick} together" if section.fan_of else f"the jacket of {thick}"
    place = _Place(plan, stock, end, end, thick_mm, over)
    if connector is not None:
        yield from _shell(place, connector)
        yield from _clamped(place, connector)
        step = step_at_end(plan, section)
        if step is not None:
            inside = (connector.barrel.bore_mm, f"the barrel of {connector.title}")
            yield from _shrink(place, step, inside)
        yield from _liner(place, connector)
    labels = [part for part in stock if part.kind == "label"]
    yield from place.answer("label", f"marks {end}", labels, sits_on_mm=thick_mm)


def _shell(place: _Place, connector: Connector) -> Iterator[Answer]:
    """Yield the shell or hood made for the plug; where none is in stock it has its own."""
    made = [part for part in place.stock if is_shell(part, connector)]
    if made:
        yield from place.answer("shell", f"closes {connector.title}", made)


def _clamped(place: _Place, connector: Connector) -> Iterator[Answer]:
    """Yield collet and boot made for the plug, which hold only what its clamp grips."""
    clamp = connector.clamp
    collets = [part for part in place.stock if is_clamp(part, connector)]
    boots = [part for part in place.stock if is_boot(part, connector)]
    if not clamp.min_mm <= place.passes_mm <= clamp.max_mm:
        grips = f"{connector.title} grips {number(clamp.min_mm)} to {number(clamp.max_mm)} mm"
        if collets or boots:
            yield place.lack("clamp", f"no clamp or boot holds {place.over}: {grips}")
        return
    if collets:
        yield from place.answer("clamp", f"grips the cable in {connector.title}", collets)
    if boots:
        yield from place.answer("boot", f"relieves the cable at {connector.title}", boots)


def _shrink(place: _Place, step: Step, inside: tuple[float, str] | None) -> Iterator[Answer]:
    """Yield the tube over the jacket's end, if what lies over it still goes over it then."""
    if place.chosen("heat-shrink"):
        return
    best = shrink_for(place.passes_mm, step.grips_mm, place.stock)
    if best is None:
        why_not = shrink_why_not(place.passes_mm, step.grips_mm, place.stock)
        yield place.lack("heat-shrink", why_not)
        return
    why_not = shrink_too_short(step.cover_mm, best) or _no_room(best, place.passes_mm, inside)
    if why_not:
        yield place.lack("heat-shrink", why_not)
        return
    cut_mm = shrink_cut_mm(step.cover_mm, best)
    does = f"covers the jacket's end: passes {place.over}, grips {number(step.grips_mm)} mm"
    yield Proposal(best, place.at, place.comes_from, f"{does}; cut {number(cut_mm)} mm", cut_mm)


def _no_room(part: Part, over_mm: float, inside: tuple[float, str] | None) -> str:
    thick_mm = shrunk_outside_mm(part, over_mm)
    if inside is None or thick_mm <= inside[0]:
        return ""
    bore = f"{inside[1]} has a bore of {number(inside[0])} mm"
    return f"{bore}, {part.title} is {number(thick_mm)} mm thick when it is shrunk on"


def _liner(place: _Place, connector: Connector) -> Iterator[Answer]:
    fit = fit_end(place.plan, Wiring(place.plan), place.at)
    if fit is None or not sleeves_for(place.plan, fit).liner:
        return
    joints_mm = _joints_mm(fit, connector)
    over = f"{place.over} and the joints, {number(joints_mm)} mm across"
    lined = replace(place, passes_mm=max(place.passes_mm, joints_mm), over=over)
    made = [part for part in place.stock if is_liner(part, connector)]
    yield from lined.answer("liner", "keeps the joints off the shell", made)


def _joints_mm(fit: EndFit, connector: Connector) -> float:
    """Return how far across the joints are, round the plug's axis."""
    contacts = [connector.by_id[it] for it in joints_of(fit)]
    bodies = [it for each in contacts for it in joint_bodies(each, 0.0, covered=False)]
    return max(
        2 * (math.hypot(*point[:2]) + body.radius_mm)
        for body in bodies
        for point in (body.start, body.end)
    )


def _at_split(plan: Plan, stock: Sequence[Part], split: str, trunk: Section) -> Iterator[Answer]:
    """Yield cover and shrink; both rest round the trunk, so they come over all ends of its side."""
    legs = tuple(it for it in sections_at(plan, split) if it is not trunk)
    step, legs_mm = step_at_split(plan, split, trunk), together_mm(plan, legs)
    way, ends = beyond(plan, split, trunk)
    if step is None or not ends:
        return
    leaves = tuple(plan.section_at[name] for name in ends)
    passes_mm = max(together_mm(plan, leaves), legs_mm, *(section_mm(plan, it) for it in way))
    over = f"{number(passes_mm)} mm, the thickest of trunk and legs"
    nearest = min(ends, key=lambda name: (ends[name], name))
    place = _Place(plan, stock, split, nearest, passes_mm, over)
    covers = [part for part in stock if part.kind == "cover"]
    cover = place.chosen("cover")
    for answer in place.answer(
        "cover", "closes the split", covers, sits_on_mm=section_mm(plan, trunk)
    ):
        cover = answer.part if isinstance(answer, Proposal) else cover
        yield answer
    inside = (cover.bore_mm, cover.title) if cover is not None else None
    yield from _shrink(place, step, inside)


def _size(part: Part) -> tuple[float, float, str]:
    return part.bore_mm, part.length_mm, part.id
