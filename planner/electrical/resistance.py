"""Resistance of cores and shields along a lead, from size, length, metal and temperature."""

import math
from collections import Counter
from dataclasses import dataclass

from planner.electrical.metals import REFERENCE_C, resistivity
from planner.model.cable import Core, Shield
from planner.model.plan import Conductor, Plan, Run

# Strands run on a helix, so they are a little longer than the cable (common practice, no source).
# The twist of the cores round one another is not counted.
LAY_STRANDED = 1.02
LAY_SOLID = 1.0
# Metal in a round bunch of strands over the circle round it: the same sqrt(1.332 N) as for a core.
BUNCH_FILL = 1 / 1.332
# No run of a lead lies outside this, ohm: such a figure comes from a slip in a file.
PLAUSIBLE_OHM = (1e-7, 1e6)


@dataclass(frozen=True, slots=True)
class RunOhm:
    """One run of a conductor; `ohm` is None where its cable is not known."""

    section: str
    core: str
    length_mm: float
    ohm: float | None


@dataclass(frozen=True, slots=True)
class ConductorOhm:
    """A conductor run by run. `ohm` is from end to end: None where not known, or where it forks.

    `estimated` says that a shield is in it, whose metal is reckoned from its twisted tail.
    """

    conductor: str
    runs: tuple[RunOhm, ...]
    ohm: float | None
    estimated: bool


def area_mm2(part: Core | Shield) -> float:
    """Return the metal area in mm2.

    A shield's is an estimate: all its strands are in the twisted tail (in the drain wire, for a
    foil, whose thin metal is left out), and fill it as a loose bunch does.
    """
    if isinstance(part, Core):
        return part.area_mm2
    return BUNCH_FILL * math.pi / 4 * part.tail_mm**2


def lay_factor(part: Core | Shield) -> float:
    """Return the length of the strands over that of the cable."""
    return LAY_SOLID if isinstance(part, Core) and part.strands == 1 else LAY_STRANDED


def ohm_per_km(part: Core | Shield, temperature_c: float = REFERENCE_C) -> float:
    """Return the resistance in ohm per km of cable at a temperature; infinite without metal."""
    metal, area = resistivity(part.metal, temperature_c), area_mm2(part)
    return 1000 * metal * lay_factor(part) / area if area > 0 else math.inf


def run_ohm(plan: Plan, run: Run) -> float | None:
    """Return the resistance of one run in ohm.

    None where its section or cable is not known, or the figure is beyond what any wire has.
    """
    part = plan.part_of(run)
    if part is None:
        return None
    length_mm = plan.section_by_id[run.section].length_mm
    ohm = ohm_per_km(part, plan.assumed.temperature_c) * length_mm / 1e6
    return ohm if PLAUSIBLE_OHM[0] <= ohm <= PLAUSIBLE_OHM[1] else None


def conductor_ohm(plan: Plan, conductor: str) -> ConductorOhm:
    """Return the resistance of a conductor run by run, and end to end where that is one figure."""
    record = plan.conductor_by_id[conductor]
    runs = tuple(_run(plan, run) for run in record.runs)
    shielded = any(isinstance(plan.part_of(run), Shield) for run in record.runs)
    known = [run.ohm for run in runs if run.ohm is not None]
    whole = sum(known) if len(known) == len(runs) and _is_one_line(plan, record) else None
    return ConductorOhm(conductor, runs, whole, shielded)


def _run(plan: Plan, run: Run) -> RunOhm:
    section = plan.section_by_id.get(run.section)
    length_mm = section.length_mm if section else 0.0
    return RunOhm(run.section, run.core, length_mm, run_ohm(plan, run))


def _is_one_line(plan: Plan, conductor: Conductor) -> bool:
    """Tell whether the runs follow one another: two nodes are touched once, the others twice."""
    sections = [plan.section_by_id.get(run.section) for run in conductor.runs]
    if None in sections:
        return False
    touched = Counter(node for it in sections if it for node in (it.near, it.far))
    often = Counter(touched.values())
    return often[1] == 2 and set(often) <= {1, 2}
