"""Capacitance of pairs and coaxes, and the frequency where it and the source halve the power."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from planner.electrical.loops import Loop, loops
from planner.model.cable import Cable, Core, Shield
from planner.model.plan import Plan, Section
from planner.wiring.graph import Node, Wiring

VACUUM_PF_PER_M = 8.8541878128  # electric constant, CODATA 2018

# Cores are thought embedded in their insulation with nothing else near: air between them lowers
# the real figure, a shield round a pair raises it. A core out of its jacket lies as it did inside.


@dataclass(frozen=True, slots=True)
class PairCapacitance:
    """Capacitance between two conductors of a cable; `printed` where the maker gives it."""

    section: str
    first: str
    second: str
    pf_per_m: float
    printed: bool


@dataclass(frozen=True, slots=True)
class ChannelCapacitance:
    """Capacitance between the legs of a channel, and its roll-off into the assumed source.

    None where the cable's insulation is not known or several cores carry a leg side by side.
    """

    channel: str
    source: str
    load: str
    pf: float | None
    rolloff_hz: float | None


def coax_pf_per_m(
    wire_mm: float, shield_mm: float, permittivity: float, off_mm: float = 0
) -> float:
    """Return the capacitance of a wire in a round shield, `off_mm` off its middle, pF/m.

    2 pi eps / acosh((R^2 + r^2 - s^2) / 2 R r), in the middle 2 pi eps / ln(D/d); any handbook of
    electromagnetics. Not a number where the wire would touch the shield.
    """
    r, big = wire_mm / 2, shield_mm / 2
    return _cylinders(permittivity, (big**2 + r**2 - off_mm**2) / (2 * big * r))


def pair_pf_per_m(one_mm: float, other_mm: float, apart_mm: float, permittivity: float) -> float:
    """Return the capacitance of two wires whose middles are `apart_mm` apart, pF/m.

    2 pi eps / acosh((D^2 - r^2 - q^2) / 2 r q), for equal wires pi eps / acosh(D/d); any handbook
    of electromagnetics. Not a number where the wires would touch.
    """
    r, q = one_mm / 2, other_mm / 2
    return _cylinders(permittivity, (apart_mm**2 - r**2 - q**2) / (2 * r * q))


def _cylinders(permittivity: float, ratio: float) -> float:
    if ratio <= 1:
        return math.nan
    return 2 * math.pi * VACUUM_PF_PER_M * permittivity / math.acosh(ratio)


def rolloff_hz(source_ohm: float, pf: float) -> float:
    """Return where a source and a capacitance are 3 dB down: f = 1 / (2 pi R C)."""
    return 1 / (2 * math.pi * source_ohm * pf * 1e-12)


def between(cable: Cable, one: str, other: str) -> float | None:
    """Return the capacitance between two parts of a cable in pF/m, None where not known."""
    if cable.pf_per_m is not None:
        return cable.pf_per_m
    parts = sorted((cable.part(name) for name in (one, other)), key=lambda it: isinstance(it, Core))
    first, second = parts
    if cable.permittivity is None or not isinstance(second, Core):
        return None
    if isinstance(first, Core):
        apart_mm = math.dist(_spot(first), _spot(second))
        pf = pair_pf_per_m(first.conductor_mm, second.conductor_mm, apart_mm, cable.permittivity)
    elif isinstance(first, Shield) and second in _covered(cable, first):
        middle, across_mm = _inside(_covered(cable, first))
        off_mm = math.dist(middle, _spot(second))
        pf = coax_pf_per_m(second.conductor_mm, across_mm, cable.permittivity, off_mm)
    else:
        return None
    return None if math.isnan(pf) else pf


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
    printed = cable.pf_per_m is not None
    return tuple(
        PairCapacitance(section, one, other, pf, printed)
        for one, other, pf in found
        if pf is not None
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
    pf = _channel_pf(plan, wiring, loop) if loop.ohm is not None else None
    hz = rolloff_hz(plan.assumed.source_ohm, pf) if pf else None
    return ChannelCapacitance(loop.channel, loop.source, loop.load, pf or None, hz)


def _channel_pf(plan: Plan, wiring: Wiring, loop: Loop) -> float | None:
    legs = [_runs_by_section(plan, wiring, node) for node in loop.at_source()]
    total = 0.0
    for section in plan.sections:
        plus, minus = (leg.get(section.id, ()) for leg in legs)
        if plus and minus:
            pf = _of_section(plan, section, plus, minus)
            if pf is None:
                return None
            total += pf
    return total


def _of_section(
    plan: Plan, section: Section, plus: Sequence[str], minus: Sequence[str]
) -> float | None:
    cable = plan.cable_of(section.id)
    if cable is None or (len(plus), len(minus)) != (1, 1):
        return None
    pf = between(cable, plus[0], minus[0])
    return None if pf is None else pf * section.length_mm / 1000


def _runs_by_section(plan: Plan, wiring: Wiring, at: Node) -> dict[str, tuple[str, ...]]:
    """Return the cores and shields of a net by section, in the plan's order."""
    net = wiring.net_of(at)
    found: dict[str, tuple[str, ...]] = {}
    for conductor in plan.conductors:
        if ("conductor", conductor.id) in net:
            for run in conductor.runs:
                found[run.section] = (*found.get(run.section, ()), run.core)
    return found
