"""Lay out every end of a plan: the dry fit with all that is worked out from it on demand."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from planner.dryfit.bodies import cut_mm, strip_mm
from planner.dryfit.fit import EndFit, fit_end
from planner.dryfit.sleeves import SleevePlan, sleeves_for
from planner.dryfit.turning import Turning, best_turn
from planner.dryfit.watch import Progress, Watch
from planner.dryfit.wires import FitLine, end_fits
from planner.edits.sleeving import take_sleeves
from planner.edits.soldering import take_best_order
from planner.edits.turning import apply_turning
from planner.electrical.summary import ElectricalSummary, electrical_summary
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class LeadLength:
    """How far one lead is stripped, and how long it is from the jacket to its tip, mm."""

    conductor: str
    contact: str
    strip_mm: float
    cut_mm: float


@dataclass(frozen=True, slots=True)
class EndLayout:
    """One end as it is now, the best turn of its plug, and what its joints need."""

    fit: EndFit
    turning: Turning | None
    lengths: tuple[LeadLength, ...]
    sleeves: SleevePlan
    fits: tuple[FitLine, ...]


@dataclass(frozen=True, slots=True)
class Layout:
    """The layout of a plan; ends where nothing is landed are left out."""

    plan: Plan
    ends: tuple[EndLayout, ...]
    electrical: ElectricalSummary


def lay_out(
    plan: Plan,
    *,
    only: Collection[str] = (),
    free: bool = False,
    progress: Progress | None = None,
) -> Layout:
    """Lay out the ends of a plan, or the ones named in `only`.

    `free` lets all cores of one make take each other's part in the whole lead, whatever their
    colour. `progress` is told the share that is done, 0 to 1.
    """
    wiring = Wiring(plan)
    found = []
    for end, part in _parts(plan, only, progress):
        fit = fit_end(plan, wiring, end)
        if fit is not None:
            turning = best_turn(plan, wiring, end, free=free, progress=part)
            found.append(_end(plan, fit, turning))
    return Layout(plan, tuple(found), electrical_summary(plan, wiring))


def _parts(
    plan: Plan, only: Collection[str], progress: Progress | None
) -> Iterator[tuple[str, Watch]]:
    """Yield each end that is wanted with its part of the whole progress."""
    names = [end.id for end in plan.ends if not only or end.id in only]
    for done, end in enumerate(names):
        yield end, Watch(progress).part(done / len(names), (done + 1) / len(names))


def _end(plan: Plan, fit: EndFit, turning: Turning | None) -> EndLayout:
    lengths = tuple(
        LeadLength(
            lead.landing.conductor,
            lead.landing.contact,
            round(strip_mm(lead), 1),
            round(cut_mm(lead), 1),
        )
        for lead in fit.leads
    )
    return EndLayout(fit, turning, lengths, sleeves_for(plan, fit), end_fits(plan, fit))


def taken(
    plan: Plan, *, only: Collection[str] = (), free: bool = False, progress: Progress | None = None
) -> Plan:
    """Return the plan with the best turn, the order of soldering and the sleeves of its ends.

    One end after the other, since where all cores of a make are free one end's choice lands cores
    at the others too. What the builder has sleeved stays sleeved.
    """
    for end, part in _parts(plan, only, progress):
        turning = best_turn(plan, Wiring(plan), end, free=free, progress=part)
        if turning is not None:
            plan = apply_turning(plan, turning=turning)
            plan = take_sleeves(plan, end=end)
            plan = take_best_order(plan, end=end)
    return plan
