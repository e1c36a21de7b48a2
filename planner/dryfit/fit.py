"""The dry fit of each end of a plan: leads, small gaps, crossings, access."""

from dataclasses import dataclass
from functools import lru_cache

from planner.dryfit.access import Access, soldering
from planner.dryfit.bodies import Lead
from planner.dryfit.crossings import crossing_pairs
from planner.dryfit.gaps import Gap
from planner.dryfit.measuring import measured
from planner.dryfit.site import Site, site_of
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class EndFit:
    """What the dry fit of one end found.

    `least_gap_mm` is the smallest gap of all between different nets: bare metal to bare metal or to
    the shell, and metal that the iron heats to insulation. It is infinite if there is no such pair.
    `gaps` are the small ones, of bare metal only. `wanted` is the plan's own order of soldering.
    """

    end: str
    site: Site
    turn_deg: float
    leads: tuple[Lead, ...]
    gaps: tuple[Gap, ...]
    crossings: tuple[tuple[str, str], ...]
    least_gap_mm: float
    wanted: tuple[str, ...]

    @property
    def access(self) -> tuple[Access, ...]:
        """The way in to each joint in the order of soldering, worked out when asked for."""
        return soldering(self.site, self.turn_deg, self.wanted).access

    @property
    def order(self) -> tuple[str, ...]:
        """The contacts in the order of soldering; what is in one contact is one joint."""
        return tuple(access.contact for access in self.access)


def fit_plan(plan: Plan, wiring: Wiring) -> tuple[EndFit, ...]:
    """Return the dry fit of every end that has a connector and a cable, in the plan's order.

    An end whose inputs did not change is not computed again.
    """
    return tuple(fit for end in plan.ends if (fit := fit_end(plan, wiring, end.id)) is not None)


def fit_end(plan: Plan, wiring: Wiring, end: str) -> EndFit | None:
    """Return the dry fit of one end, or None while nothing is landed there."""
    site = site_of(plan, wiring, end)
    if site is None:
        return None
    record = plan.end_by_id[end]
    return _fit(site, record.turn_deg, record.solder_order)


@lru_cache(maxsize=256)
def _fit(site: Site, turn_deg: float, wanted: tuple[str, ...]) -> EndFit:
    leads = site.leads(turn_deg)
    gaps, least_mm = measured(site, turn_deg)
    crossings = crossing_pairs(leads)
    return EndFit(site.end, site, turn_deg, leads, gaps, crossings, least_mm, wanted)
