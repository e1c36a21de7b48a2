"""Findings about sleeves that the plan has, at joints of ends and in splits."""

from collections.abc import Callable, Iterator
from functools import partial

from planner.checks.context import Context
from planner.checks.finding import Remedy
from planner.checks.registry import Found
from planner.dryfit.bodies import top_mm
from planner.dryfit.fit import EndFit
from planner.dryfit.sleeve_sizes import SleeveUse
from planner.dryfit.sleeve_words import further_strip_mm, other_ways, why_not
from planner.dryfit.sleeves import joints_of, sleeves_on
from planner.dryfit.splicing import splices_at
from planner.edits.ends import set_room
from planner.edits.sleeving import dab_instead
from planner.model.place import Place
from planner.model.plan import Plan


def sleeves_that(context: Context, fail: Callable[[SleeveUse], bool]) -> Iterator[Found]:
    """Yield a finding for every sleeve of the plan that fails in this way."""
    for fit in context.fit:
        if not any(lead.landing.sleeved for lead in fit.leads):
            continue
        for use in sleeves_on(fit, context.plan.workmanship):
            if fail(use):
                yield _found(context, fit, use)


def splices_open(context: Context) -> Iterator[Found]:
    """Yield a finding for every joint in a split over which no heat-shrink in stock goes."""
    for split in context.plan.splits:
        for it in splices_at(context.plan, split.id):
            if it.bore_mm <= 0:
                name = context.words.conductor(it.conductor)
                yield Found(
                    f"In the split no heat-shrink in stock passes the thick side of joint {name} "
                    "and grips the thin one.",
                    "Build the thin core up with a short sleeve of its own first, or take cores "
                    "of like thickness.",
                    (Place(conductor=it.conductor),),
                )


def _found(context: Context, fit: EndFit, use: SleeveUse) -> Found:
    plan = context.plan
    ways, contact = _ways(plan, fit, use), context.words.contact(fit.end, use.contact)
    what = f"joint on {contact}" if use.covers == "joint" else f"pigtail {use.conductor}"
    return Found(
        f"At {fit.end} the {what} is sleeved, but {why_not(use)}.",
        f"{ways[:1].upper()}{ways[1:]}.",
        (Place(end=fit.end, contact=use.contact, conductor=use.conductor),),
        remedy=_remedy(plan, fit, use),
    )


def _remedy(plan: Plan, fit: EndFit, use: SleeveUse) -> Remedy:
    connector, leads = plan.connector_of(fit.end), joints_of(fit)[use.contact]
    more = further_strip_mm(connector, leads, plan.workmanship) if connector else None
    if more is None or not use.goes_over:
        return Remedy("Dab instead", partial(dab_instead, end=fit.end, contact=use.contact))
    # Not rounded: a tenth of a millimetre less, and the sleeve may not park after all.
    room_mm = fit.site.height_mm - top_mm(connector) + more if connector else 0.0
    return Remedy("Strip back further", partial(set_room, end=fit.end, room_mm=room_mm))


def _ways(plan: Plan, fit: EndFit, use: SleeveUse) -> str:
    connector = plan.connector_of(fit.end)
    leads = joints_of(fit)[use.contact]
    ways = other_ways(connector, leads, use, plan.workmanship) if connector else ()
    return ", or ".join((*ways, "put a dab of insulating compound there instead of the sleeve"))
