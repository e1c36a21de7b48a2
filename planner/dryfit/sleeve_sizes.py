"""How long a sleeve is, what it must pass and grip, and whether it parks before the joint."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from planner.dryfit.bodies import CUP_WALL_MM, Lead
from planner.dryfit.shrinking import STEP_MM, tube_cut_mm, tube_fits, widest_mm
from planner.geometry.packing import pack
from planner.model.connector import Terminal
from planner.model.workmanship import SleeveOverlap, Workmanship

# Kept free between a parked sleeve and the cut insulation, where the iron heats: common practice,
# no source.
HEAT_CLEAR_MM = 2.0
# Bore as supplied and as recovered: sizes of AS23053/5 in mm, from memory.
TWO_TO_ONE_MM = (
    (1.17, 0.58), (1.60, 0.79), (2.36, 1.17), (3.18, 1.57),
    (4.75, 2.36), (6.35, 3.18), (9.53, 4.75), (12.7, 6.35),
)  # fmt: skip
# Typical sizes, from memory.
THREE_TO_ONE_MM = (
    (2.4, 0.8), (3.0, 1.0), (4.8, 1.6), (6.0, 2.0), (9.0, 3.0), (12.0, 4.0), (18.0, 6.0),
)  # fmt: skip
# What shrinks less is thinner once it is on, so it is taken first.
SHRINK_MM = (*TWO_TO_ONE_MM, *THREE_TO_ONE_MM)
# Bores of plain insulating sleeves, for tails: typical, from memory.
PLAIN_MM = (1.0, 1.5)
# NASA-STD-8739.3, 9.8: 5 mm or two diameters, the larger; J-STD-001: 6 mm or two diameters.
LEAST_OVERLAP_MM: dict[SleeveOverlap, float] = {"five-mm": 5.0, "six-mm": 6.0}


@dataclass(frozen=True, slots=True)
class SleeveUse:
    """A sleeve over a joint, or over a tail from the jacket to its joint, mm.

    It parks on `conductor` before the joint is made. `bore_mm` is the stock size as supplied, 0
    where none in stock passes `passes_mm` and grips `grips_mm`.
    """

    contact: str
    conductor: str
    length_mm: float
    bore_mm: float
    park_needs_mm: float
    park_has_mm: float
    passes_mm: float
    grips_mm: float
    covers: Literal["joint", "tail"] = "joint"

    @property
    def parks(self) -> bool:
        """Tell whether it has room on its core before the joint is made."""
        return self.park_needs_mm <= self.park_has_mm

    @property
    def goes_over(self) -> bool:
        """Tell whether a size in stock passes the joint and grips what is behind it."""
        return self.bore_mm > 0

    @property
    def fits(self) -> bool:
        """Tell whether it parks and goes over."""
        return self.parks and self.goes_over


def overlap_mm(diameter_mm: float, rule: SleeveOverlap) -> float:
    """Return how far a sleeve reaches over insulation of that diameter by the chosen rule.

    `five-mm`: NASA-STD-8739.3, 9.8. `six-mm`: J-STD-001. Two diameters where that is more.
    """
    return max(LEAST_OVERLAP_MM[rule], 2 * diameter_mm)


def sleeve_mm(lead: Lead, terminal: Terminal, workmanship: Workmanship) -> float:
    """Return how long to cut the shrink over a joint.

    Shrunk, and shorter by that, it covers the outside of a cup to its depth, or the length of a lug
    or post, then the insulation gap, and overlaps the insulation.
    """
    joint = terminal.depth_mm + lead.gap_mm
    return tube_cut_mm(joint + overlap_mm(lead.covered_mm, workmanship.sleeve_overlap))


def joint_sleeve(leads: Sequence[Lead], workmanship: Workmanship) -> SleeveUse:
    """Return the sleeve over the joint of one contact, round all `leads` in it; at least one.

    It is parked on all of them together, so the shortest tells how much room there is.
    """
    cores = [lead for lead in leads if not lead.is_shield] or list(leads)
    terminal, first = leads[0].terminal, cores[0]
    bundle = _bundle_mm(leads)
    outside = terminal.across_mm + (2 * CUP_WALL_MM if terminal.kind == "cup" else 0.0)
    passes = max(outside, bundle)
    length = max(sleeve_mm(lead, terminal, workmanship) for lead in cores)
    room = min(_room_mm(lead) for lead in cores)
    if first.is_shield:
        length = max(length, _lowered(room, STEP_MM))
    return SleeveUse(
        first.landing.contact,
        first.landing.conductor,
        length,
        shrink_bore_mm(passes, bundle),
        length,
        room,
        round(passes, 2),
        round(bundle, 2),
    )


def tail_sleeve(lead: Lead) -> SleeveUse:
    """Return the sleeve that covers a bare tail from the jacket to its joint, and not the joint.

    It is as long as leaves the joint free for the iron; then it is pushed down to the terminal.
    """
    room, tail = _room_mm(lead), lead.metal_mm
    length = max(_lowered(room, STEP_MM), STEP_MM)
    bores = sorted((*PLAIN_MM, *(bore for bore, _ in TWO_TO_ONE_MM)))
    bore = next((bore for bore in bores if bore >= tail), 0.0)
    names = (lead.landing.contact, lead.landing.conductor)
    around = round(tail, 2)
    return SleeveUse(*names, length, bore, length, room, around, around, "tail")


def _bundle_mm(leads: Sequence[Lead]) -> float:
    """Return the diameter round all leads; a tail that is alone is bare, else it has a sleeve."""
    if len(leads) == 1:
        return leads[0].metal_mm if leads[0].is_shield else leads[0].covered_mm
    return pack([lead.covered_mm for lead in leads], "quick").diameter_mm


def shrink_bore_mm(passes_mm: float, grips_mm: float) -> float:
    """Return the smallest size that passes and grips, of 2:1 before 3:1, or 0."""
    return next((size[0] for size in SHRINK_MM if tube_fits(size, passes_mm, grips_mm)), 0.0)


def shrink_widest_mm(grips_mm: float) -> float:
    """Return the most that any size may have to pass where it must grip this; 0 for none."""
    return max(widest_mm(size, grips_mm) for size in SHRINK_MM)


def _room_mm(lead: Lead) -> float:
    """Return the length from the jacket to the cut insulation, less what the heat needs free."""
    covered = sum(math.dist(one, other) for one, other in pairwise(lead.way[:-1]))
    return max(_lowered(covered - HEAT_CLEAR_MM, 0.1), 0.0)


def _lowered(length_mm: float, step_mm: float) -> float:
    """Round down, so that a figure that is told never flatters."""
    return round(math.floor(round(length_mm / step_mm, 6)) * step_mm, 2)
