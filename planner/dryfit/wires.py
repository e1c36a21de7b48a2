"""Whether strands go into cups, cores into the barrel, the jacket into the clamp."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from planner.geometry.packing import bundle_at_least_mm, bundle_at_most_mm

Answer = Literal["fits", "tight", "fails"]


@dataclass(frozen=True, slots=True)
class WireFit:
    """`fits` is certain, `fails` is certain, `tight` is not proved. Figures in mm."""

    answer: Answer
    needs_mm: float
    has_mm: float


def into_bore(diameters_mm: Sequence[float], bore_mm: float) -> WireFit:
    """Tell whether round wires go into a round bore together."""
    sure, least = bundle_at_most_mm(diameters_mm), bundle_at_least_mm(diameters_mm)
    if sure <= bore_mm:
        return WireFit("fits", sure, bore_mm)
    if least > bore_mm:
        return WireFit("fails", least, bore_mm)
    return WireFit("tight", sure, bore_mm)
