"""The best turn of a plug to its cable, and which of the alike cores goes to which contact."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from planner.dryfit.clocking import Seats, best_setting
from planner.dryfit.dial import Dial, dial_of
from planner.dryfit.site import site_of
from planner.dryfit.watch import Progress, Watch
from planner.model.plan import Plan
from planner.wiring.graph import Wiring

Verdict = Literal["proved", "proved among candidates", "found"]


@dataclass(frozen=True, slots=True)
class Turning:
    """The best turn of an end's plug, with what it gives and what there is before it.

    `swaps` are (conductor, contact it goes to at this end). `roles` are (conductor, the conductor
    whose landings it takes over at all other ends), so that the wiring stays what it is. `dial` is
    drawn for the landings after the swaps.
    """

    end: str
    turn_deg: float
    swaps: tuple[tuple[str, str], ...]
    roles: tuple[tuple[str, str], ...]
    crossings: int
    gap_mm: float
    before_crossings: int
    before_gap_mm: float
    verdict: Verdict
    dial: Dial
    reason: str = ""


def best_turn(
    plan: Plan,
    wiring: Wiring,
    end: str,
    *,
    free: bool = False,
    progress: Progress | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Turning | None:
    """Return the best turn of an end's plug, or None while nothing is landed there.

    In order: fewest crossings, widest smallest gap (capped at 1 mm), shortest leads, least turn.
    Cores that are alike may take each other's place; with `free` also those of other colours.
    `progress` is told the share done; raises `Cancelled` soon after `cancelled` returns True.
    """
    site = site_of(plan, wiring, end)
    if site is None:
        return None
    watch = Watch(progress, cancelled)
    present_deg = plan.end_by_id[end].turn_deg
    seats = Seats(site)
    before = seats.setting(present_deg)
    sweep = seats.sweep(watch.part(0.0, 0.05))
    best = best_setting(seats, sweep, present_deg, watch.part(0.05, 0.8))
    return Turning(
        end=end,
        turn_deg=best.turn_deg,
        swaps=(),
        roles=(),
        crossings=best.crossings,
        gap_mm=best.gap_mm,
        before_crossings=before.crossings,
        before_gap_mm=before.gap_mm,
        verdict="proved" if best.proved else "found",
        dial=dial_of(seats, sweep, best, watch.part(0.8, 1.0)),
    )
