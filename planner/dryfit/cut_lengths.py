"""How long to cut each piece of cable: the planned length and what goes into plugs and splits."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from planner.dryfit.bodies import Lead, cut_mm, stack_mm, strip_mm, top_mm
from planner.dryfit.fit import EndFit, fit_plan
from planner.dryfit.shrinking import raised_mm
from planner.dryfit.splicing import JACKET_BACK_MM, free_mm
from planner.geometry.packing import pack
from planner.model.cable import Core
from planner.model.plan import Plan, Section
from planner.wiring.graph import Wiring

# Cut off more jacket than the longest lead takes, so that each lead is cut on the template: common
# practice, no source.
SPARE_MM = 2.0
# Lay of cores that are twisted by hand, in diameters of their bundle: common practice, no source.
LAY_DIAMETERS = 8.0
# A spare core is left this long before it is capped: common practice, no source.
SPARE_CORE_MM = 5.0
LEAD_STEP_MM = 0.5
STRIP_STEP_MM = 0.1
METRE_MM = 1000.0


@dataclass(frozen=True, slots=True)
class Strip:
    """How long to cut a lead from the end of the jacket, and how much of that to strip, mm.

    A spare core is stripped of nothing and capped.
    """

    end: str
    conductor: str
    cut_mm: float
    strip_mm: float


@dataclass(frozen=True, slots=True)
class EndCut:
    """What an end takes of the cable beyond its planned length, mm.

    `inside_mm` of jacket lie in the barrel, `jacket_off_mm` are taken off, `trim_mm` are cut off
    to square the end. `known` tells whether there is a connector with leads to reckon from. Where
    `fanned`, the leg has no jacket: its cores are that much longer.
    """

    end: str
    inside_mm: float
    jacket_off_mm: float
    trim_mm: float
    known: bool = True
    fanned: bool = False

    @property
    def whole_mm(self) -> float:
        """All of it, mm."""
        return self.inside_mm + self.jacket_off_mm + self.trim_mm


@dataclass(frozen=True, slots=True)
class Opening:
    """Where the jacket of a piece is opened for a split: the cores go on from there.

    `keep_mm` of jacket stay, measured from the cut end at `start` (an end or a split);
    `off_mm` are taken off beyond it. `spliced` where the cores are joined to those of other cables,
    and do not go on themselves.
    """

    split: str
    section: str
    start: str
    keep_mm: float
    off_mm: float
    spliced: bool = False


def cable_mm(length_mm: float) -> float:
    """Round the length of a cable up: to 1 mm, and to 5 mm above 1 m."""
    return raised_mm(length_mm, 1.0 if length_mm <= METRE_MM else 5.0)


def take_up(across_mm: float, lay_mm: float) -> float:
    """Return how much longer a core is than the twisted bundle it lies in: a helix over its axis.

    `across_mm` is the diameter of the circle on which its middle runs: for a pair, one core's
    diameter. `lay_mm` is the length of one whole turn.
    """
    return math.hypot(1.0, math.pi * across_mm / lay_mm)


def fan_take_up(diameters_mm: tuple[float, ...]) -> float:
    """Return the take-up of cores that are twisted to a leg by hand; 1 for fewer than two."""
    if len(diameters_mm) < 2:
        return 1.0
    bundle_mm = pack(diameters_mm, "quick").diameter_mm
    return take_up(bundle_mm - min(diameters_mm), LAY_DIAMETERS * bundle_mm)


class Lengths:
    """The lengths of a plan's pieces.

    A planned length is what shows of the cable: from the back of one barrel to the back of the
    other, at a split to its middle. So each plug takes more of the cable, and so does a leg whose
    cores are twisted.
    """

    def __init__(self, plan: Plan) -> None:
        self.plan = plan

    @cached_property
    def fits(self) -> dict[str, EndFit]:
        """The dry fit of each end that has one."""
        return {fit.end: fit for fit in fit_plan(self.plan, Wiring(self.plan))}

    @cached_property
    def strips(self) -> tuple[Strip, ...]:
        """The leads of every end in the plan's order, then the spare cores of that end."""
        return tuple(strip for end in self.plan.ends for strip in self._strips(end.id))

    @cached_property
    def ends(self) -> dict[str, EndCut]:
        """What each end takes, in the plan's order."""
        return {end.id: self._end(end.id) for end in self.plan.ends}

    @cached_property
    def openings(self) -> tuple[Opening, ...]:
        """Where jackets are opened for splits, by section."""
        return tuple(
            opening
            for section in self.plan.sections
            if not section.fan_of
            for node, other in ((section.far, section.near), (section.near, section.far))
            if (opening := self._opening(section, node, other)) is not None
        )

    def piece_mm(self, section: Section) -> float:
        """Return how long to cut the cable of a section, with the legs that are its cores, mm."""
        reach = self._reach(section, section.near) + self._reach(section, section.far)
        return cable_mm(section.length_mm + reach)

    def reckoned(self, section: Section) -> bool:
        """Tell whether all plugs that the cable of a section ends in are known."""
        reached = {section.near, section.far}
        for leg in self.plan.sections:
            if self._trunk(leg) == section.id:
                reached |= {leg.near, leg.far}
        return all(cut.known for end, cut in self.ends.items() if end in reached)

    def _trunk(self, section: Section) -> str:
        """Return the id of the section whose cable a leg is the cores of."""
        seen = {section.id}
        while section.fan_of in self.plan.section_by_id and section.fan_of not in seen:
            section = self.plan.section_by_id[section.fan_of]
            seen.add(section.id)
        return section.id

    def twist_of(self, section: Section) -> float:
        """Return the take-up of the cores of a leg; 1 for a section in a jacket of its own."""
        if not section.fan_of:
            return 1.0
        runs = (
            run
            for conductor in self.plan.conductors
            for run in conductor.runs
            if run.section == section.id
        )
        parts = (self.plan.part_of(run) for run in runs)
        return fan_take_up(tuple(it.insulation_mm for it in parts if isinstance(it, Core)))

    def _strips(self, end: str) -> Iterator[Strip]:
        fit = self.fits.get(end)
        yield from (self._strip(end, lead) for lead in (fit.leads if fit else ()))
        for conductor, _ in self.spares(end):
            yield Strip(end, conductor, SPARE_CORE_MM, 0.0)

    def spares(self, end: str) -> Iterator[tuple[str, Core]]:
        """Yield the spare cores of an end; a spare shield is cut back to the jacket."""
        capped = {cap.conductor for cap in self.plan.caps if cap.end == end}
        for conductor, run in self.plan.conductors_at[end]:
            part = self.plan.part_of(run)
            if conductor.id in capped and isinstance(part, Core):
                yield conductor.id, part

    def _strip(self, end: str, lead: Lead) -> Strip:
        length = raised_mm(cut_mm(lead), LEAD_STEP_MM)
        bare = raised_mm(strip_mm(lead), STRIP_STEP_MM)
        return Strip(end, lead.landing.conductor, length, bare)

    def _end(self, end: str) -> EndCut:
        trim, section = self.plan.workmanship.trim_mm, self.plan.section_at.get(end)
        fit, connector = self.fits.get(end), self.plan.connector_of(end)
        if fit is None or connector is None or section is None:
            return EndCut(end, 0.0, 0.0, trim, known=False)
        longest = max(strip.cut_mm for strip in self._strips(end))
        room = fit.site.height_mm - top_mm(connector)
        inside = max(connector.barrel.length_mm - stack_mm(connector) - room, 0.0)
        off = raised_mm(longest + SPARE_MM, 1.0)
        inside = raised_mm(inside, LEAD_STEP_MM)
        return EndCut(end, inside, off, trim, fanned=bool(section.fan_of))

    def _opening(self, section: Section, split: str, start: str) -> Opening | None:
        """Return where to open a jacket: at the middle of a split, or before it for joints."""
        if split in self.plan.end_by_id:
            return None
        spliced = not self._fans(section, split)
        shown = section.length_mm - (JACKET_BACK_MM if spliced else 0.0)
        keep = raised_mm(max(shown + self._reach(section, start), 0.0), 1.0)
        return Opening(split, section.id, start, keep, self.piece_mm(section) - keep, spliced)

    def _fans(self, section: Section, node: str) -> list[Section]:
        return [
            leg
            for leg in self.plan.sections
            if leg.fan_of == section.id and node in {leg.near, leg.far}
        ]

    def _reach(self, section: Section, node: str, seen: frozenset[str] = frozenset()) -> float:
        """Return how far a piece goes on beyond a node of its section, mm."""
        if node in self.plan.end_by_id:
            return self.ends[node].whole_mm
        seen |= {section.id}
        legs = [leg for leg in self._fans(section, node) if leg.id not in seen]
        ways = [self._leg(leg, leg.far if leg.near == node else leg.near, seen) for leg in legs]
        return max(ways, default=free_mm(self.plan, node) - JACKET_BACK_MM)

    def _leg(self, leg: Section, beyond: str, seen: frozenset[str]) -> float:
        return leg.length_mm * self.twist_of(leg) + self._reach(leg, beyond, seen)
