"""Measure the gaps of an end: the small ones against their limits, and the smallest of all."""

from dataclasses import dataclass
from functools import lru_cache

from planner.dryfit.gaps import (
    Gap,
    Limits,
    limits_of,
    own_gap_mm,
    own_wall_gaps_mm,
    small_gaps,
    wall_gaps,
)
from planner.dryfit.identity import ById
from planner.dryfit.scene import least_between, least_in, near_in
from planner.dryfit.site import Site
from planner.model.connector import Connector


@dataclass(frozen=True, slots=True)
class Own:
    """A connector as made: smallest gap between terminals, and of each terminal to the shell."""

    gap_mm: float | None
    wall_mm: tuple[float, ...]


@lru_cache(maxsize=64)
def own_gaps_of(hardware: ById[Connector]) -> Own:
    """Return the gaps of a connector as made."""
    walls = own_wall_gaps_mm(hardware.record)
    return Own(own_gap_mm(hardware.record), tuple(walls.values()))


def measured(site: Site, turn_deg: float) -> tuple[tuple[Gap, ...], float]:
    """Return the small gaps of an end with the plug turned, and the smallest gap of all, mm."""
    limits, walls = limits_at(site)
    reach_mm = max(own_gaps_of(site.hardware).gap_mm or 0.0, limits.watch_mm if limits else 0.0)
    scene = site.scene(turn_deg)
    near = near_in(scene, reach_mm)
    shell, nets = site.connector.shell, site.nets_by_spot
    gaps = small_gaps(near, nets, limits)
    gaps += wall_gaps(scene, site.beside_wall(scene), shell, turn_deg, walls)
    least = min(least_in(near, nets), site.least_to_wall_mm(scene, turn_deg))
    if least > reach_mm:
        least = min(least, least_between(scene, nets))
    return tuple(gaps), least


def limits_at(site: Site) -> tuple[Limits | None, Limits | None]:
    """Return the limits at an end between bodies, and to the shell.

    Both come from the connector as made. The shell asks no more than its nearest terminal that may
    not touch it has, nor more than terminals ask of each other; so a connector as made, landed with
    care, has nothing to mend.
    """
    own = own_gaps_of(site.hardware)
    to_wall = [mm for mm, off in zip(own.wall_mm, site.off_shell, strict=True) if off]
    if own.gap_mm is not None:
        to_wall.append(own.gap_mm)
    rules = site.workmanship
    return limits_of(own.gap_mm, rules), limits_of(min(to_wall, default=None), rules)
