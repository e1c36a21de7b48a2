"""How near the metal of two contacts of an end is, and so how easily a bridge joins them."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
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
# Pairs are beside each other up to this many times the gap to the nearest neighbour as made.
# Common practice, no source.
BESIDE = 1.5
BY_THE_SHELL = (
    "The shell of a plug of rings is screwed onto its outermost contact: a joint near the shell is "
    "near that contact."
)

Names = tuple[str, str]  # contacts of one end, in the connector's order
Gaps = dict[Names, float]


@dataclass(frozen=True, slots=True)
class NearPair:
    """Where two nets come nearest: a contact of each, at one end; `gap_mm` between their metal.

    Nets that are never at one end have no gap. `beside` where at any end they are no farther apart
    than its stop line; it is there then that they are measured.
    """

    one: Contact
    other: Contact
    gap_mm: float | None = None
    beside: bool = False

    @property
    def risk(self) -> tuple[bool, float]:
        """What pairs are ordered by, the greatest risk of a bridge first."""
        return not self.beside, math.inf if self.gap_mm is None else self.gap_mm


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
    """Return for every two nets, by number, where they are most at risk of a bridge."""
    found: dict[tuple[int, int], NearPair] = {
        (one, other): NearPair(sweep.nets[one][0], sweep.nets[other][0])
        for one, other in combinations(range(len(sweep.nets)), 2)
    }
    for pair in _pairs_at_ends(plan, wiring):
        nets = sweep.net_of[pair.one], sweep.net_of[pair.other]
        if nets[0] > nets[1]:
            _keep_riskier(found, (nets[1], nets[0]), replace(pair, one=pair.other, other=pair.one))
        elif nets[0] < nets[1]:
            _keep_riskier(found, nets, pair)
    return found


def _keep_riskier(
    found: dict[tuple[int, int], NearPair], nets: tuple[int, int], pair: NearPair
) -> None:
    if pair.risk < found[nets].risk:
        found[nets] = pair


def _pairs_at_ends(plan: Plan, wiring: Wiring) -> Iterator[NearPair]:
    """Yield every two contacts of each end with their gap, to 0.01 mm."""
    for end in plan.ends:
        connector = plan.connector_of(end.id)
        line_mm = stop_line_mm(connector) if connector is not None else 0.0
        for names, exact_mm in contact_gaps_mm(plan, wiring, end.id).items():
            gap_mm = round(exact_mm, 2)
            one, other = ((end.id, name) for name in names)
            yield NearPair(one, other, gap_mm, beside=gap_mm <= line_mm)
