"""The dry fit of each end of a plan: leads, small gaps, crossings, access."""

from dataclasses import dataclass
from functools import lru_cache

from planner.dryfit.access import Access, soldering
from planner.dryfit.bodies import Lead
from planner.dryfit.crossings import crossing_pairs
from planner.dryfit.gaps import Gap, own_gap_mm, small_gaps
from planner.dryfit.site import Hardware, Site, least_gap_mm, site_of
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class EndFit:
    """What the dry fit of one end found.

    `least_gap_mm` is the smallest gap of all (see `planner.dryfit.site`), infinite if there is no
    pair of different nets.
    """

    end: str
    turn_deg: float
    leads: tuple[Lead, ...]
    gaps: tuple[Gap, ...]
    crossings: tuple[tuple[str, str], ...]
    access: tuple[Access, ...]
    least_gap_mm: float

    @property
    def order(self) -> tuple[str, ...]:
        """The contacts in the order of soldering; what is in one contact is one joint."""
        return tuple(dict.fromkeys(access.contact for access in self.access))


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


@lru_cache(maxsize=64)
def _own_gap_mm(hardware: Hardware) -> float | None:
    return own_gap_mm(hardware.connector)


@lru_cache(maxsize=256)
def _fit(site: Site, turn_deg: float, order: tuple[str, ...]) -> EndFit:
    leads = site.leads(turn_deg)
    shares = (site.workmanship.sleeve_share, site.workmanship.watch_share)
    return EndFit(
        site.end,
        turn_deg,
        leads,
        tuple(small_gaps(_own_gap_mm(site.hardware), site.at(turn_deg), site.net_of, shares)),
        crossing_pairs(leads),
        soldering(site, turn_deg, order).access,
        least_gap_mm(site, turn_deg),
    )
