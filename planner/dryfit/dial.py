"""The dial of an end: crossings and the smallest gap over the full turn of the plug."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from planner.dryfit.clocking import COARSE_DEG, Setting, best_setting
from planner.dryfit.seats import Seats
from planner.dryfit.site import site_of
from planner.dryfit.watch import Progress, Watch
from planner.geometry.turning import Sweep
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Window:
    """A span of turn with one count of crossings; the last may end beyond 360."""

    from_deg: float
    to_deg: float
    crossings: int


@dataclass(frozen=True, slots=True)
class Dial:
    """Crossings and the smallest gap (capped at 1 mm) over the full turn, and the best turn.

    The gap is the one that turning changes: of insulated leads to the metal of other nets. The
    windows begin within 0 to 360 degrees, follow each other and add up to a full turn; the gaps
    are (turn, gap in mm) from 0 to 360.
    """

    windows: tuple[Window, ...]
    gaps: tuple[tuple[float, float], ...]
    best_deg: float
    best_crossings: int
    best_gap_mm: float


def dial(
    plan: Plan,
    wiring: Wiring,
    end: str,
    *,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Dial | None:
    """Return the dial of an end, or None while nothing is landed there.

    `progress` is told the share done; raises `Cancelled` soon after `cancelled` returns True.
    """
    site = site_of(plan, wiring, end)
    if site is None:
        return None
    watch = Watch(progress, cancelled)
    seats = Seats(site)
    sweep = seats.sweep(watch.part(0.0, 0.1))
    best = best_setting(seats, sweep, plan.end_by_id[end].turn_deg, watch.part(0.1, 0.7))
    return dial_of(seats, sweep, best, watch.part(0.7, 1.0))


def dial_of(seats: Seats, sweep: Sweep, best: Setting, watch: Watch) -> Dial:
    """Return the dial of an end whose best turn is known."""
    starts, ends = np.degrees(sweep.starts).tolist(), np.degrees(sweep.ends).tolist()
    windows = tuple(map(Window, starts, ends, sweep.counts.tolist()))
    gaps = []
    turns = np.arange(0.0, 360.0 + COARSE_DEG / 2, COARSE_DEG).tolist()
    for place, turn_deg in enumerate(turns):
        watch(place / len(turns))
        gaps.append((turn_deg, round(seats.gap_mm(turn_deg % 360.0), 2)))
    return Dial(windows, tuple(gaps), best.turn_deg, best.crossings, best.gap_mm)
