"""Leads of one I or one Y with parts on them, as plans and for the simulator. All invented."""

import random

from planner.model.cable import Cable, Core
from planner.model.connector import Barrel, Clamp, Connector, Contact, Shell, Terminal
from planner.model.part import Part
from planner.model.plan import Definitions, End, PartUse, Plan, Section, Split
from tests.dryfit.threading_simulator import Bench, Leg, Ring

KINDS = ("liner", "sleeve", "clamp", "shell", "heat-shrink", "boot", "cover", "label")
LEGS = {"AB": (("A", "B"),), "ABC": (("A", "Y"), ("B", "Y"), ("C", "Y"))}


def plug(end, outside_mm):
    """Return a plug that is as thick as told."""
    contact = Contact(id="T", terminal=Terminal(kind="cup", x_mm=0, y_mm=0, bore_mm=1, depth_mm=2))
    return Connector(
        id=f"plug-{end}",
        title=f"plug {end}",
        family="bench",
        gender="male",
        shell=Shell(bore_mm=5),
        clamp=Clamp(min_mm=1, max_mm=9),
        barrel=Barrel(outside_mm=outside_mm, bore_mm=5, length_mm=20),
        contacts=(contact,),
    )


def cable(name, jacket_mm):
    """Return a cable with one core and a jacket as thick as told."""
    core = Core(
        id="RD", colours=("RD",), strands=7, strand_mm=0.05, insulation_mm=0.5, x_mm=0, y_mm=0
    )
    return Cable(id=name, title=f"cable {name}", jacket_mm=jacket_mm, cores=(core,))


def part(name, bore_mm, outside_mm=None, **figures):
    """Return a part with a wall of 0.5 mm where nothing else is said."""
    figures = {"kind": "boot", "length_mm": 10, "title": f"part {name}", **figures}
    outside_mm = bore_mm + 1 if outside_mm is None else outside_mm
    return Part(id=name, bore_mm=bore_mm, outside_mm=outside_mm, **figures)


def use(name, at, comes_from=None, **more):
    """Return where a part rests; it comes from its own end where nothing else is said."""
    return PartUse(id=name, part=name, at=at, comes_from=comes_from or at, **more)


def lead(ends, jackets_mm, plugs_mm, parts, uses):
    """Return an I or a Y: ends `AB` or `ABC`, figures in their order; sections are a, b, c."""
    names = [name.lower() for name in ends]
    nodes = LEGS[ends]
    sections = (
        Section(id=name, near=near, far=far, cable=name, length_mm=1000)
        for name, (near, far) in zip(names, nodes, strict=False)
    )
    return Plan(
        ends=tuple(End(id=end, connector=f"plug-{end}") for end in ends),
        splits=(Split(id="Y"),) if "C" in ends else (),
        sections=tuple(sections),
        parts=tuple(uses),
        definitions=Definitions(
            connectors=tuple(plug(*it) for it in zip(ends, plugs_mm, strict=True)),
            cables=tuple(cable(*it) for it in zip(names, jackets_mm, strict=False)),
            parts=tuple(parts),
        ),
    )


def bench(plan):
    """Return the simulator's own reading of such a plan, and without what opens."""
    parts = {it.id: it for it in plan.definitions.parts}
    jackets = {it.id: it.jacket_mm for it in plan.definitions.cables}
    legs = tuple(
        Leg(jackets[it.id], it.near, None if it.far == "Y" else it.far) for it in plan.sections
    )
    plugs = {it.id[-1]: it.barrel.outside_mm for it in plan.definitions.connectors}
    closed = {it.id: parts[it.part] for it in plan.parts if not parts[it.part].opens}
    rings = {name: Ring(it.bore_mm, it.outside_mm) for name, it in closed.items()}
    return Bench(legs, plugs, rings)


def goal(plan, names):
    """Return where the parts named rest, from near to far on each leg.

    By kind, as listed above, away from their end or split; of two of a kind the one that the plan
    names first is farther from an end, nearer to a split. Shrink too narrow for the plug of its end
    lies under all else there.
    """
    parts = {it.id: it for it in plan.definitions.parts}
    plugs = {it.id[-1]: it.barrel.outside_mm for it in plan.definitions.connectors}
    listed = {it.id: at for at, it in enumerate(plan.parts)}
    state = []
    for section in plan.sections:
        here = [it for it in plan.parts if it.id in names and rests_round(plan, it) == section.id]
        at_far = [it for it in here if it.at == section.far]
        at_near = [it for it in here if it.at == section.near]

        def away(it):
            of_it = parts[it.part]
            under = of_it.kind == "heat-shrink" and of_it.bore_mm < plugs.get(it.at, 0)
            order = listed[it.id] if it.at == "Y" else -listed[it.id]
            return -1 if under else KINDS.index(of_it.kind), order

        row = [*sorted(at_near, key=away), *sorted(at_far, key=away, reverse=True)]
        state.append(tuple(it.id for it in row))
    return tuple(state)


def rests_round(plan, it):
    """Return the leg of a part: that of its end, or at the split that which it comes over."""
    end = it.at if it.at in plan.end_by_id else it.comes_from
    return plan.section_at[end].id


def random_lead(seed, most=4):
    """Return a random lead with parts that often hinder each other."""
    rng = random.Random(seed)
    ends = rng.choice(("AB", "ABC", "ABC"))
    jackets = [rng.choice((2, 3, 4)) for _ in ends]
    plugs = [rng.choice((3, 5, 8)) for _ in ends]
    parts, uses = [], []
    for at in range(rng.randint(1, most)):
        bore = rng.choice((2, 3, 4, 5, 6, 7, 8, 10))
        figures = {"kind": rng.choice(KINDS), "opens": rng.random() < 0.08}
        parts.append(part(f"p{at}", bore, bore + rng.choice((0.5, 1, 3)), **figures))
        node = rng.choice([*ends, "Y"] if "C" in ends else list(ends))
        late = rng.random() < 0.2
        uses.append(use(f"p{at}", node, rng.choice(ends), after_joint=late))
    return lead(ends, jackets, plugs, parts, uses)
