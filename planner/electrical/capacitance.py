"""Capacitance of pairs and coaxes, and the frequency where it and the source halve the power."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from planner.electrical.loops import Loop, loops
from planner.model.cable import Cable, Core, Shield
from planner.model.plan import Plan, Section
from planner.wiring.graph import Node, Wiring

VACUUM_PF_PER_M = 8.8541878128  # electric constant, CODATA 2018

# All is thought to lie in the insulation of the cores: air in between lowers the real figure. What
# has left its jacket lies as it did inside.

LEAST_SOURCE_OHM = 1e-6

# What a figure rests on: the maker's print; the lay; the lay with a shield round more than the pair
# left out, which would raise it.
Basis = Literal["printed", "lay", "no-shield"]
_WORST: tuple[Basis, ...] = ("no-shield", "lay", "printed")


@dataclass(frozen=True, slots=True)
class Between:
    """Capacitance between two parts of a cable, pF/m, and what it rests on."""

    pf_per_m: float
    basis: Basis


@dataclass(frozen=True, slots=True)
class PairCapacitance:
    """Capacitance between two parts of the cable of a section."""

    section: str
    first: str
    second: str
    pf_per_m: float
    basis: Basis


@dataclass(frozen=True, slots=True)
class ChannelCapacitance:
    """Capacitance between the legs of a channel, and its roll-off into the assumed source.

    None where the cable's insulation is not known or several cores carry a leg side by side.
    `basis` is the weakest of its sections.
    """

    channel: str
    source: str
    load: str
    pf: float | None
    rolloff_hz: float | None
    basis: Basis | None


def coax_pf_per_m(
    wire_mm: float, shield_mm: float, permittivity: float, off_mm: float = 0
) -> float:
    """Return the capacitance of a wire in a round shield, `off_mm` off its middle, pF/m.

    2 pi eps / acosh((R^2 + r^2 - s^2) / 2 R r), in the middle 2 pi eps / ln(D/d); any handbook of
    electromagnetics. Not a number where the wire would touch the shield.
    """
    r, big = wire_mm / 2, shield_mm / 2
    return _cylinders(permittivity, _over(big**2 + r**2 - off_mm**2, 2 * big * r))


def pair_pf_per_m(one_mm: float, other_mm: float, apart_mm: float, permittivity: float) -> float:
    """Return the capacitance of two wires whose middles are `apart_mm` apart, pF/m.

    2 pi eps / acosh((D^2 - r^2 - q^2) / 2 r q), for equal wires pi eps / acosh(D/d); any handbook
    of electromagnetics. Not a number where the wires would touch.
    """
    r, q = one_mm / 2, other_mm / 2
    return _cylinders(permittivity, _over(apart_mm**2 - r**2 - q**2, 2 * r * q))


def shielded_pair_pf_per_m(
    wire_mm: float, apart_mm: float, shield_mm: float, permittivity: float
) -> float:
    """Return the capacitance of two wires driven in balance in a round shield, pF/m.

    pi eps / ln(2 s/d (1 - q) / (1 + q)) with q = (s/D)^2: Reference Data for Radio Engineers, from
    memory; within 1 % of an exact solution for close pairs. Not a number where things touch.
    """
    q = (apart_mm / shield_mm) ** 2
    ratio = _over(2 * apart_mm * (1 - q), wire_mm * (1 + q))
    if not ratio > 1 or apart_mm <= wire_mm:
        return math.nan
    return math.pi * VACUUM_PF_PER_M * permittivity / math.log(ratio)


def _over(top: float, bottom: float) -> float:
    """Return a ratio; not a number where a wire has no thickness worth the name."""
    return top / bottom if bottom > 1e-12 else math.nan


def _cylinders(permittivity: float, ratio: float) -> float:
    if not ratio > 1:
        return math.nan
    return 2 * math.pi * VACUUM_PF_PER_M * permittivity / math.acosh(ratio)


def rolloff_hz(source_ohm: float, pf: float) -> float:
    """Return where a source and a capacitance are 3 dB down: f = 1 / (2 pi R C)."""
    return 1e12 / (2 * math.pi * source_ohm * pf)


def between(cable: Cable, one: str, other: str) -> Between | None:
    """Return the capacitance between two parts of a cable, None where not known."""
    if cable.pf_per_m is not None:
        return Between(cable.pf_per_m, "printed")
    first, second = cable.part(one), cable.part(other)
    if isinstance(first, Core):
        first, second = second, first
    if cable.permittivity is None or not isinstance(second, Core) or first is None:
        return None
    if isinstance(first, Core):
        return _two_cores(cable, first, second, cable.permittivity)
    return _in_shield(cable, first, second, cable.permittivity)


def _two_cores(cable: Cable, one: Core, other: Core, permittivity: float) -> Between | None:
    apart_mm = math.dist(_spot(one), _spot(other))
    wires = (one.conductor_mm, other.conductor_mm)
    round_both = [it for it in (_covered(cable, s) for s in cable.shields) if one in it]
    own = [it for it in round_both if other in it and len(it) == 2]
    if own and math.isclose(*wires):
        _, across_mm = _inside(own[0])
        return _known(shielded_pair_pf_per_m(wires[0], apart_mm, across_mm, permittivity), "lay")
    basis: Basis = "no-shield" if round_both else "lay"
    return _known(pair_pf_per_m(*wires, apart_mm, permittivity), basis)


def _in_shield(cable: Cable, shield: Shield, core: Core, permittivity: float) -> Between | None:
    inside = _covered(cable, shield)
    if core not in inside:
        return None
    middle, across_mm = _inside(inside)
    off_mm = math.dist(middle, _spot(core))
    return _known(coax_pf_per_m(core.conductor_mm, across_mm, permittivity, off_mm), "lay")


def _known(pf_per_m: float, basis: Basis) -> Between | None:
    return None if math.isnan(pf_per_m) else Between(pf_per_m, basis)


def _spot(core: Core) -> tuple[float, float]:
    return core.x_mm, core.y_mm


def _covered(cable: Cable, shield: Shield) -> tuple[Core, ...]:
    return tuple(core for core in cable.cores if not shield.around or core.id in shield.around)


def _inside(cores: Sequence[Core]) -> tuple[tuple[float, float], float]:
    """Return the middle and the inside diameter of a shield that just goes round some cores."""
    x, y = (sum(axis) / len(cores) for axis in zip(*map(_spot, cores), strict=True))
    reach = max(math.dist((x, y), _spot(core)) + core.insulation_mm / 2 for core in cores)
    return (x, y), 2 * reach


# -- sections ---------------------------------------------------------------------------------


def section_capacitances(plan: Plan, section: str) -> tuple[PairCapacitance, ...]:
    """Return the capacitance of each circuit of a section's cable, where it is known.

    A circuit is a group of two cores, or a core in a shield of its own; in a cable without either
    it is the two cores that lie nearest to one another.
    """
    cable = plan.cable_of(section)
    if cable is None:
        return ()
    found = [(one, other, between(cable, one, other)) for one, other in _circuits(cable)]
    return tuple(
        PairCapacitance(section, one, other, pair.pf_per_m, pair.basis)
        for one, other, pair in found
        if pair is not None
    )


def _circuits(cable: Cable) -> Iterator[tuple[str, str]]:
    groups: dict[str, list[str]] = {}
    for core in cable.cores:
        if core.group:
            groups.setdefault(core.group, []).append(core.id)
    if groups:
        if cable.groups == "pairs":
            yield from ((cores[0], cores[1]) for cores in groups.values() if len(cores) == 2)
        return
    covered = [(_covered(cable, shield), shield.id) for shield in cable.shields]
    alone = [(cores[0].id, shield) for cores, shield in covered if len(cores) == 1]
    yield from alone or _nearest(cable)


def _nearest(cable: Cable) -> Iterator[tuple[str, str]]:
    pairs = list(combinations(cable.cores, 2))
    if pairs:
        one, other = min(pairs, key=lambda two: round(math.dist(_spot(two[0]), _spot(two[1])), 6))
        yield one.id, other.id


# -- channels ---------------------------------------------------------------------------------


def capacitances(plan: Plan, wiring: Wiring) -> tuple[ChannelCapacitance, ...]:
    """Return the capacitance of each channel's loop with its roll-off, in the loops' order."""
    return tuple(_of_loop(plan, wiring, loop) for loop in loops(plan, wiring))


def _of_loop(plan: Plan, wiring: Wiring, loop: Loop) -> ChannelCapacitance:
    found = _channel(plan, wiring, loop) if loop.ohm is not None else None
    if not found:
        return ChannelCapacitance(loop.channel, loop.source, loop.load, None, None, None)
    pf = sum(pair.pf_per_m * length_mm for pair, length_mm in found) / 1000
    basis = min((pair.basis for pair, _ in found), key=_WORST.index)
    hz = rolloff_hz(max(plan.assumed.source_ohm, LEAST_SOURCE_OHM), pf)
    return ChannelCapacitance(loop.channel, loop.source, loop.load, pf, hz, basis)


def _channel(plan: Plan, wiring: Wiring, loop: Loop) -> list[tuple[Between, float]] | None:
    """Return pF/m and length of each section with both legs in it; None if one is not known."""
    legs = [_runs_by_section(plan, wiring, node) for node in loop.at_source()]
    found = []
    for section in plan.sections:
        plus, minus = (leg.get(section.id, ()) for leg in legs)
        if plus and minus:
            pair = _of_section(plan, section, plus, minus)
            if pair is None:
                return None
            found.append((pair, section.length_mm))
    return found


def _of_section(
    plan: Plan, section: Section, plus: Sequence[str], minus: Sequence[str]
) -> Between | None:
    cable = plan.cable_of(section.id)
    if cable is None or (len(plus), len(minus)) != (1, 1):
        return None
    return between(cable, plus[0], minus[0])


def _runs_by_section(plan: Plan, wiring: Wiring, at: Node) -> dict[str, tuple[str, ...]]:
    """Return the cores and shields of a net by section, in the plan's order."""
    net = wiring.net_of(at)
    found: dict[str, tuple[str, ...]] = {}
    for conductor in plan.conductors:
        if ("conductor", conductor.id) in net:
            for run in conductor.runs:
                found[run.section] = (*found.get(run.section, ()), run.core)
    return found
