"""How near the metal of two contacts of an end is, and so how easily a bridge joins them."""

from dataclasses import dataclass
from itertools import combinations

import numpy as np

from planner.dryfit.gaps import own_gaps_mm
from planner.dryfit.scene import Scene
from planner.dryfit.shell import wall_gaps_mm
from planner.dryfit.site import Site, site_of
from planner.geometry.boxes import Index
from planner.geometry.segments import Array, segment_distances
from planner.model.connector import Connector
from planner.model.plan import Plan
from planner.proving.expected import Sweep
from planner.proving.reading import Contact
from planner.wiring.graph import Wiring

_METAL = frozenset({"terminal", "joint", "strands", "tail"})
# Pairs are beside each other up to this many times the gap to the nearest neighbour as made, and
# up to the flat clearance in any case. Common practice, no source.
BESIDE = 1.5

Names = tuple[str, str]  # contacts of one end, in the connector's order
Gaps = dict[Names, float]


@dataclass(frozen=True, slots=True)
class NearPair:
    """Where two nets come nearest: a contact of each, at one end; `gap_mm` between their metal.

    Nets that are never at one end have no gap.
    """

    one: Contact
    other: Contact
    gap_mm: float | None


def contact_gaps_mm(plan: Plan, wiring: Wiring, end: str) -> Gaps:
    """Return the gap in mm between every two contacts of an end, below 0 where they overlap.

    It is between joints, bare strands and tails as the dry fit lays them, sleeved or not: what a
    sleeve covers may have been bridged before. Where nothing is laid, between bare terminals. A
    concentric plug's shell screws onto its outermost contact (common practice, no source), so what
    is near the shell is near that contact.
    """
    connector = plan.connector_of(end)
    if connector is None:
        return {}
    site = site_of(plan, wiring, end)
    if site is None:
        return own_gaps_mm(connector)
    gaps = _laid_gaps(site, plan.end_by_id[end].turn_deg)
    names = [contact.id for contact in connector.contacts]
    return {
        (names[one], names[other]): float(gaps[one, other])
        for one, other in combinations(range(len(names)), 2)
    }


def _laid_gaps(site: Site, turn_deg: float) -> Array:
    """Return the gaps of an end with a cable, by numbers of contacts."""
    scene = site.scene(turn_deg)
    metal = np.flatnonzero([body.kind in _METAL for body in scene.bodies])
    first, second = (metal[it] for it in np.triu_indices(len(metal), 1))
    between = segment_distances(
        scene.start[first], scene.end[first], scene.start[second], scene.end[second]
    )
    between = between - scene.radius[first] - scene.radius[second]
    count = len(site.connector.contacts)
    gaps = np.full((count, count), np.inf)
    spots = scene.spots
    low, high = np.minimum(spots[first], spots[second]), np.maximum(spots[first], spots[second])
    np.minimum.at(gaps, (low, high), between)
    if site.connector.mating == "concentric":
        walls = _wall_gaps(scene, site.connector, metal, turn_deg)
        gaps[:, -1] = np.minimum(gaps[:, -1], walls)
    return gaps


def _wall_gaps(scene: Scene, connector: Connector, metal: Index, turn_deg: float) -> Array:
    """Return the gap to the shell of each contact's joint; a tail is led along it on purpose."""
    hot = [at for at in metal if scene.bodies[at].kind != "tail"]
    shell, figures = connector.shell, (scene.start[hot], scene.end[hot], scene.radius[hot])
    walls = np.full(len(connector.contacts), np.inf)
    np.minimum.at(walls, scene.spots[hot], wall_gaps_mm(shell, *figures, turn_deg))
    return walls


def stop_line_mm(connector: Connector) -> float:
    """Return the gap in mm beyond which two contacts are no longer beside each other.

    Every terminal has its nearest neighbour, as made, well within it.
    """
    nearest: dict[str, float] = {}
    for names, gap_mm in own_gaps_mm(connector).items():
        for name in names:
            nearest[name] = min(nearest.get(name, gap_mm), gap_mm)
    return round(BESIDE * max(nearest.values(), default=0.0), 2)


def near_pairs(plan: Plan, wiring: Wiring, sweep: Sweep) -> dict[tuple[int, int], NearPair]:
    """Return for every two nets, by number, where they come nearest."""
    found: dict[tuple[int, int], NearPair] = {
        (one, other): NearPair(sweep.nets[one][0], sweep.nets[other][0], None)
        for one, other in combinations(range(len(sweep.nets)), 2)
    }
    for end in plan.ends:
        for names, gap_mm in contact_gaps_mm(plan, wiring, end.id).items():
            pair = _ordered(sweep, (end.id, names[0]), (end.id, names[1]))
            if pair is not None and _nearer(gap_mm, found[pair[0]].gap_mm):
                found[pair[0]] = NearPair(*pair[1], round(gap_mm, 2))
    return found


def _ordered(
    sweep: Sweep, one: Contact, other: Contact
) -> tuple[tuple[int, int], tuple[Contact, Contact]] | None:
    """Return two contacts with the numbers of their nets, the lower first; None if of one net."""
    first, second = sweep.net_of[one], sweep.net_of[other]
    if first == second:
        return None
    if first < second:
        return (first, second), (one, other)
    return (second, first), (other, one)


def _nearer(gap_mm: float, than_mm: float | None) -> bool:
    return than_mm is None or round(gap_mm, 2) < than_mm
