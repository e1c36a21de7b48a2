"""Looms of pairs, each in its own foil, straight through or fanned out; invented figures."""

import math

from planner.model.cable import Shield
from planner.model.plan import Conductor, End, Landing, Run, Section, Split
from tests.dryfit.plugs import crowded, end_plan


def loom(seed, pairs, *, legs=2, back=None):
    """Return a straight loom of `pairs` groups of `legs` cores, crowded at end B.

    Core k is landed on contact k; the foil of each pair on a contact beside the others. End A has
    the cores in the order of `back`, the foils as at B.
    """
    count = pairs * legs
    exits, cups = crowded(seed, count)
    plan = end_plan(
        exits,
        cups,
        groups=[str(core // legs + 1) for core in range(count)],
        spare=[(14 * math.cos(foil), 14 * math.sin(foil)) for foil in range(pairs)],
        back=range(count) if back is None else back,
    )
    cable = plan.definitions.cables[0]
    around = [tuple(f"w{foil * legs + leg}" for leg in range(legs)) for foil in range(pairs)]
    foils = tuple(
        Shield(id=f"s{foil}", kind="foil", around=cores, tail_mm=0.4)
        for foil, cores in enumerate(around)
    )
    tails = tuple(
        Conductor(id=it.id, kind="shield", runs=(Run(section="s", core=it.id),)) for it in foils
    )
    cable = cable.evolve(shields=foils)
    landings = [
        *plan.landings,
        *(
            Landing(end=end, conductor=f"s{foil}", contact=f"c{count + foil}")
            for end in ("A", "B")
            for foil in range(pairs)
        ),
    ]
    return plan.evolve(
        conductors=(*plan.conductors, *tails),
        landings=_in_order(landings, ("A", "B"), [*plan.conductors, *tails]),
        definitions=plan.definitions.evolve(cables=(cable,)),
    )


def fanned(plan):
    """Return a straight loom with the pairs of end A fanned out, each to an end of its own."""
    cable = plan.definitions.cables[0]
    names = sorted({core.group for core in cable.cores})
    leg_of = {core.id: f"leg{core.group}" for core in cable.cores}
    leg_of |= {foil.id: leg_of[foil.around[0]] for foil in cable.shields}
    ends = tuple(End(id=f"A{name}", connector="plug") for name in names)
    legs = tuple(
        Section(id=f"leg{name}", near="m", far=f"A{name}", fan_of="s", length_mm=300)
        for name in names
    )
    conductors = tuple(
        it.evolve(runs=(*it.runs, Run(section=leg_of[it.id], core=it.id))) for it in plan.conductors
    )
    landings = [
        it.evolve(end=leg_of[it.conductor].replace("leg", "A")) if it.end == "A" else it
        for it in plan.landings
    ]
    return plan.evolve(
        ends=(plan.end_by_id["B"], *ends),
        splits=(Split(id="m"),),
        sections=(plan.sections[0].evolve(near="m"), *legs),
        conductors=conductors,
        landings=_in_order(landings, ("B", *(end.id for end in ends)), conductors),
    )


def _in_order(landings, ends, conductors):
    names = [it.id for it in conductors]
    return tuple(sorted(landings, key=lambda it: (ends.index(it.end), names.index(it.conductor))))
