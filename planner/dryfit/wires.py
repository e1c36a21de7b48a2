"""Whether things go into each other at an end: strands, bundle, jacket, sleeves; with figures."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from planner.dryfit.fit import EndFit
from planner.dryfit.sleeve_sizes import SleeveUse, shrink_widest_mm
from planner.dryfit.sleeves import joints_of, sleeves_on
from planner.geometry.packing import Packing, Search, bundle_at_least_mm, is_sound, pack
from planner.model.connector import Connector
from planner.model.place import Place
from planner.model.plan import Plan
from planner.units import number

Answer = Literal["fits", "tight", "fails"]
# What is neither an overlap nor a difference: far below what can be measured.
SLACK_MM = 1e-9
_SEARCHES: tuple[Search, ...] = ("laid", "quick", "thorough")
# With so few wires a quick search costs about as little, and the picture shows them as they lie.
_FEW = 8
# How much smaller a bore a long search may find than a quick one: by experience, 6 in 100.
_HOPE = 0.93
What = Literal["strands", "bundle", "jacket", "cores-in-clamp", "sleeve"]


@dataclass(frozen=True, slots=True)
class WireFit:
    """Whether wires go into a bore, mm.

    `fits`: they do, and `packing` is the proof; `needs_mm` is its bore. `fails`: they do not, below
    `needs_mm` nothing would. `tight`: neither is proved; `needs_mm` is the smallest bore found for
    them, `packing` how they lie in it. `least_mm` is the bound below which they surely do not go.
    """

    answer: Answer
    needs_mm: float
    has_mm: float
    least_mm: float = 0.0
    packing: Packing | None = None


@dataclass(frozen=True, slots=True)
class FitLine:
    """One thing that has to go into another at an end.

    `wires` names the conductors in the order of the packing, `diameters_mm` says how thick each is
    there. `into` says what it goes into, as a builder speaks of it.
    """

    what: What
    where: Place
    into: str
    fit: WireFit
    wires: tuple[str, ...] = ()
    diameters_mm: tuple[float, ...] = ()

    @property
    def packed(self) -> bool:
        """Tell whether it goes into a round bore, and not onto a lug or post."""
        return self.fit.least_mm > 0


def into_bore(diameters_mm: Sequence[float], bore_mm: float) -> WireFit:
    """Tell whether round wires go into a round bore together, with the proof or the bound.

    What a bound or a plain layout settles costs under 1 ms; only what they leave open is searched.
    """
    return _into_bore(tuple(diameters_mm), bore_mm)


@lru_cache(maxsize=1024)
def _into_bore(diameters_mm: tuple[float, ...], bore_mm: float) -> WireFit:
    least_mm = bundle_at_least_mm(diameters_mm)
    if least_mm > bore_mm + SLACK_MM:
        return WireFit("fails", least_mm, bore_mm, least_mm)
    for search in _SEARCHES[len(diameters_mm) <= _FEW :]:
        packing = pack(diameters_mm, search, enough_mm=bore_mm)
        if packing.diameter_mm <= bore_mm + SLACK_MM and is_sound(packing, diameters_mm):
            return WireFit("fits", packing.diameter_mm, bore_mm, least_mm, packing)
        if search == "quick" and bore_mm < _HOPE * packing.diameter_mm:
            break
    return WireFit("tight", packing.diameter_mm, bore_mm, least_mm, packing)


def told_apart(*figures_mm: float) -> tuple[str, ...]:
    """Print figures with two to four decimals: as few as tell apart what differs."""
    apart = len({round(each, 6) for each in figures_mm})
    for digits in (2, 3):
        texts = tuple(number(each, digits) for each in figures_mm)
        if len(set(texts)) == apart:
            return texts
    return tuple(number(each, 4) for each in figures_mm)


def end_fits(plan: Plan, fit: EndFit) -> tuple[FitLine, ...]:
    """Return what goes into what at an end: strands, bundle, jacket, sleeves, in this order."""
    connector = plan.connector_of(fit.end)
    if connector is None:
        return ()
    return (
        *_strands(fit, connector),
        *_bundle(fit, connector),
        *_jacket(plan, fit, connector),
        *(sleeve_line(fit.end, use) for use in sleeves_on(fit, plan.workmanship)),
    )


def strands_in_cups(fit: EndFit, connector: Connector) -> Iterator[FitLine]:
    """Yield a line for the strands in each cup."""
    return (line for line in _strands(fit, connector) if _kind(connector, line) == "cup")


def _kind(connector: Connector, line: FitLine) -> str:
    return connector.by_id[line.where.contact].terminal.kind


def _strands(fit: EndFit, connector: Connector) -> Iterator[FitLine]:
    for contact, leads in joints_of(fit).items():
        terminal = connector.by_id[contact].terminal
        wires = tuple(lead.landing.conductor for lead in leads)
        metal = tuple(lead.metal_mm for lead in leads)
        cup = terminal.kind == "cup"
        inside = into_bore(metal, terminal.bore_mm) if cup else onto_tab(metal, terminal.width_mm)
        where = Place(end=fit.end, contact=contact)
        yield FitLine("strands", where, f"{terminal.kind} of {contact}", inside, wires, metal)


def onto_tab(diameters_mm: Sequence[float], width_mm: float) -> WireFit:
    """Tell whether wires lie beside each other on a lug or post; over its edge is not a no.

    Common practice, no source: solder holds what lies on the metal.
    """
    needs_mm = sum(diameters_mm)
    answer: Answer = "fits" if needs_mm <= width_mm + SLACK_MM else "tight"
    return WireFit(answer, needs_mm, width_mm)


def _bundle(fit: EndFit, connector: Connector) -> Iterator[FitLine]:
    bundle = bundle_line(fit, connector)
    if bundle is not None:
        yield bundle


def bundle_line(fit: EndFit, connector: Connector) -> FitLine | None:
    """Return whether the leads go through the barrel together; None without leads."""
    if not fit.leads:
        return None
    inside = into_bore([lead.covered_mm for lead in fit.leads], connector.barrel.bore_mm)
    return _of_leads("bundle", fit, "barrel", inside)


def _of_leads(what: What, fit: EndFit, into: str, inside: WireFit) -> FitLine:
    wires = tuple(lead.landing.conductor for lead in fit.leads)
    covered = tuple(lead.covered_mm for lead in fit.leads)
    return FitLine(what, Place(end=fit.end), into, inside, wires, covered)


def _jacket(plan: Plan, fit: EndFit, connector: Connector) -> Iterator[FitLine]:
    section, cable = plan.section_at[fit.end], plan.cable_of(plan.section_at[fit.end].id)
    if section.fan_of:
        yield clamped_leads(fit, connector)
    elif cable is not None:
        yield jacket_line(fit.end, connector, cable.jacket_mm)


def clamped_leads(fit: EndFit, connector: Connector) -> FitLine:
    """Return whether the leads go into the clamp where they come without a jacket."""
    inside = into_bore([lead.covered_mm for lead in fit.leads], connector.clamp.max_mm)
    return _of_leads("cores-in-clamp", fit, "clamp", inside)


def jacket_line(end: str, connector: Connector, jacket_mm: float) -> FitLine:
    """Return whether the clamp grips a jacket; `has_mm` is the end of its range that is missed."""
    low, high = connector.clamp.min_mm, connector.clamp.max_mm
    answer: Answer = "fits" if low <= jacket_mm <= high else "fails"
    missed = low if jacket_mm < low else high
    fit = WireFit(answer, jacket_mm, missed, least_mm=jacket_mm)
    return FitLine("jacket", Place(end=end), "clamp", fit, (), (jacket_mm,))


def sleeve_line(end: str, use: SleeveUse) -> FitLine:
    """Return whether a size in stock goes over a joint and grips what is behind it.

    Without one, `has_mm` is the most that a size which grips may have to pass.
    """
    where = Place(end=end, contact=use.contact, conductor=use.conductor)
    answer: Answer = "fits" if use.goes_over else "fails"
    has_mm = use.bore_mm or shrink_widest_mm(use.grips_mm)
    fit = WireFit(answer, use.passes_mm, has_mm, least_mm=use.passes_mm)
    return FitLine("sleeve", where, f"sleeve on {use.contact}", fit, (use.conductor,))
