"""Which whole groups of cores, pairs above all, may take each other's part in the whole lead."""

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, permutations

from planner.dryfit.alike import Alike, wire_of
from planner.dryfit.site import Exit, Site
from planner.model.cable import Cable, Core, Shield
from planner.model.plan import Conductor, Plan

Legs = tuple[int, ...]
# Groups of more cores change legs by exchanges of two, not in every order.
MOST_LEGS = 4


@dataclass(frozen=True, slots=True)
class Unit:
    """Cores that keep together, by their place among the cores of a site, with their own shields.

    The cores stand in an order in which units of one make match leg by leg. `name` is that of the
    group in the cable; empty where a lone core is the unit.
    """

    name: str
    members: tuple[int, ...]
    shields: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Peers:
    """Units of one make, each of which may take the place of another.

    `legs` are the orders in which a unit's cores may take the places of a unit; all there are, if
    `complete`, else those from which all others follow.
    """

    units: tuple[Unit, ...]
    legs: tuple[Legs, ...] = ((0,),)
    complete: bool = True


def group_peers(plan: Plan, site: Site, cores: Sequence[Exit]) -> tuple[Peers, ...]:
    """Return the groups of one make that may take each other's part, two or more of each make.

    A group plays along where each of its cores is landed here, and each core and shield of its own
    is one and the same wire from end to end: in its section and in legs that fan out of it. Cores
    spliced to another cable stay, for there the groups are others.
    """
    section = plan.section_at.get(site.end)
    cable = plan.cable_of(section.id) if section is not None else None
    if section is None or cable is None:
        return ()
    by_run = {run.core: one for one, run in plan.conductors_at[site.end]}
    places = {it.part.id: place for place, it in enumerate(cores)}
    by_make: dict[Hashable, list[Unit]] = {}
    for name, members in _groups(cable).items():
        ids = [core.id for core in members]
        shields = [it for it in cable.shields if not set(ids).isdisjoint(it.around)]
        own = [it for it in shields if set(it.around) == set(ids)]
        common = tuple(it.id for it in shields if it not in own)
        wires = [by_run.get(name) for name in (*ids, *(it.id for it in own))]
        if not all(name in places for name in ids) or not _runs_whole(plan, wires):
            continue
        shield_ids = tuple(one.id for one in wires[len(members) :] if one is not None)
        unit = Unit(name, tuple(places[name] for name in ids), shield_ids)
        make = tuple(wire_of(core) for core in members), tuple(map(_shield_make, own)), common
        by_make.setdefault(make, []).append(unit)
    return tuple(
        Peers(tuple(units), *_legs_of(cores, units[0])) for units in by_make.values() if units[1:]
    )


def _groups(cable: Cable) -> dict[str, list[Core]]:
    """Return the cores of each group, cores of one wire beside each other."""
    found: dict[str, list[Core]] = {}
    for core in cable.cores:
        if core.group:
            found.setdefault(core.group, []).append(core)
    return {name: sorted(members, key=_wire_key) for name, members in found.items()}


def _wire_key(core: Core) -> str:
    return repr(wire_of(core))


def _shield_make(shield: Shield) -> Hashable:
    return shield.kind, shield.tail_mm, shield.metal


def _runs_whole(plan: Plan, wires: Sequence[Conductor | None]) -> bool:
    """Tell whether each conductor is one core or shield of one cable, in one run to a section."""
    for wire in wires:
        if wire is None or len({run.core for run in wire.runs}) != 1:
            return False
        trunks = {_trunk(plan, run.section) for run in wire.runs}
        if len(trunks) != 1 or len({run.section for run in wire.runs}) != len(wire.runs):
            return False
    return True


def _trunk(plan: Plan, section: str) -> str:
    """Return the section whose jacket the cores of a section come out of."""
    record, seen = plan.section_by_id[section], {section}
    while record.fan_of in plan.section_by_id and record.fan_of not in seen:
        record = plan.section_by_id[record.fan_of]
        seen.add(record.id)
    return record.id


def _legs_of(cores: Sequence[Exit], unit: Unit) -> tuple[tuple[Legs, ...], bool]:
    """Return the orders of legs in which each place keeps its wire, and whether they are all."""
    wires = [wire_of(part) for it in unit.members if isinstance(part := cores[it].part, Core)]
    count = len(unit.members)
    complete = count <= MOST_LEGS
    orders = permutations(range(count)) if complete else _exchanged_legs(count)
    fitting = (it for it in orders if all(wires[k] == wires[leg] for k, leg in enumerate(it)))
    return tuple(fitting), complete


def _exchanged_legs(count: int) -> Iterator[Legs]:
    plain = tuple(range(count))
    yield plain
    for one, other in combinations(plain, 2):
        yield tuple({one: other, other: one}.get(leg, leg) for leg in plain)


def lone_peers(groups: Sequence[Alike], peers: Sequence[Peers]) -> tuple[Alike, ...]:
    """Return the alike cores that are in no unit of the peers."""
    taken = {core for each in peers for unit in each.units for core in unit.members}
    left = (
        Alike(tuple(core for core in group.members if core not in taken), group.everywhere)
        for group in groups
    )
    return tuple(group for group in left if len(group.members) > 1)


def as_peers(group: Alike) -> Peers:
    """Return alike cores as units of one core each."""
    return Peers(tuple(Unit("", (core,)) for core in group.members))


def taken_places(peers: Sequence[Peers], placing: Sequence[int]) -> Iterator[tuple[Unit, Unit]]:
    """Yield each unit that takes the place of another, and that other one."""
    for each in peers:
        slots = {place: unit for unit in each.units for place in unit.members}
        for unit in each.units:
            slot = slots[placing[unit.members[0]]]
            if slot is not unit:
                yield unit, slot
