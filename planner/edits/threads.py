"""Rebuild a plan's conductors from its sections: which core joins which at each split."""

from collections import Counter
from collections.abc import Iterable
from typing import TypeVar

from planner.edits.changing import with_landings
from planner.model.cable import Cable, Core
from planner.model.plan import Cap, Conductor, Landing, Plan, Run, Section

Metal = tuple[str, str]  # (section, core or shield)
Put = TypeVar("Put", Landing, Cap)
MAX_ID = 64


def shared_node(one: Section, other: Section) -> str:
    """Return the node where two sections meet, or empty text."""
    nodes = {one.near, one.far} & {other.near, other.far}
    return min(nodes) if nodes else ""


def fanned_legs(plan: Plan, trunk: Section, node: str) -> tuple[Section, ...]:
    """Return the sections in which the trunk's cores go on, out of the jacket, from a node."""
    return tuple(
        leg for leg in plan.sections if leg.fan_of == trunk.id and node in {leg.near, leg.far}
    )


def rebuild(plan: Plan, *, anew: Iterable[str] = ()) -> Plan:
    """Make the conductors again from cables and legs, keeping ids, ways and landings.

    Ways through the sections named in `anew` are divided again, but a core that is landed at the
    end of a leg stays in that leg.
    """
    threads = _Threads(plan, frozenset(anew))
    threads.lay()
    conductors = _named(plan, threads.joined())
    return _relanded(plan, plan.evolve(conductors=conductors))


class _Threads:
    """Collects the joins between runs at splits, over the plan as it was."""

    def __init__(self, plan: Plan, anew: frozenset[str]) -> None:
        self.plan, self.anew = plan, anew
        self.was = {(run.section, run.core): one for one in plan.conductors for run in one.runs}
        self.joins: dict[Metal, Metal] = {}
        self.metals: list[Metal] = []

    def lay(self) -> None:
        for section in self.plan.sections:
            cable = self.plan.cable_of(section.id)
            if cable is not None and not section.fan_of:
                names = [*cable.core_by_id, *cable.shield_by_id]
                self.metals += [(section.id, name) for name in names]
                self._fan(section, cable, names)
        for split in self.plan.splits:
            self._splice(split.id)

    def joined(self) -> list[list[Metal]]:
        """Return the runs that are one metal, each list in the order of laying."""
        threads: dict[Metal, list[Metal]] = {}
        for metal in self.metals:
            threads.setdefault(self._root(metal), []).append(metal)
        return list(threads.values())

    def _root(self, metal: Metal) -> Metal:
        while metal in self.joins:
            metal = self.joins[metal]
        return metal

    def _join(self, trunk: Metal, leg: Metal) -> None:
        one, other = self._root(trunk), self._root(leg)
        if one != other:
            self.joins[other] = one

    # -- legs in which the trunk's own cores go on ---------------------------------------------

    def _fan(self, trunk: Section, cable: Cable, names: list[str]) -> None:
        for node in (trunk.near, trunk.far):
            legs = fanned_legs(self.plan, trunk, node)
            if not legs:
                continue
            ways = self._ways(trunk, cable, names, node)
            for leg in legs:
                mine = [name for name in names if ways.get(name) == leg.id]
                self.metals += [(leg.id, name) for name in mine]
                for name in mine:
                    self._join((trunk.id, name), (leg.id, name))
                self._fan(leg, cable, mine)

    def _ways(self, trunk: Section, cable: Cable, names: list[str], node: str) -> dict[str, str]:
        """Return the leg of each core and shield that goes on at a node."""
        beyond = [
            one.id
            for one in self.plan.sections
            if node in {one.near, one.far} and one.id != trunk.id
        ]
        cores = [core for core in cable.cores if core.id in names]
        ways = {**default_ways(cores, beyond), **self._kept(trunk, node, names)}
        for shield in cable.shields:
            if shield.id in names and self._fresh(trunk, shield.id):
                follows = len(shield.around) < len(cable.cores) and shield.around
                ways[shield.id] = ways.get(shield.around[0], "") if follows else ""
        return ways

    def _fresh(self, trunk: Section, name: str) -> bool:
        """Tell whether nothing is known of the way of a core or shield from before."""
        return trunk.id in self.anew or (trunk.id, name) not in self.was

    def _kept(self, trunk: Section, node: str, names: list[str]) -> dict[str, str]:
        legs = [leg.id for leg in fanned_legs(self.plan, trunk, node)]
        kept: dict[str, str] = {}
        for name in names:
            old = next((leg for leg in legs if (leg, name) in self.was), "")
            fresh = self._fresh(trunk, name)
            if not fresh or (old and self._landed_beyond(old, name)):
                kept[name] = old
        return kept

    def _landed_beyond(self, leg: str, name: str) -> bool:
        conductor = self.was[leg, name]
        inside = self.plan.section_by_id[leg]
        return any(
            (node, conductor.id) in self.plan.landing_at for node in (inside.near, inside.far)
        )

    # -- legs with their own cable, spliced at the split ---------------------------------------

    def _splice(self, node: str) -> None:
        touching = [one for one in self.plan.sections if node in {one.near, one.far}]
        groups: dict[str, list[Section]] = {}
        for section in touching:
            groups.setdefault(section.fan_of or section.id, []).append(section)
        if len(groups) < 2:
            return
        trunk = next((one for one in touching if not one.fan_of and one.far == node), touching[0])
        legs = [one for one in touching if (one.fan_of or one.id) != (trunk.fan_of or trunk.id)]
        fanned = fanned_legs(self.plan, trunk, node)
        going_on = {name for section, name in self.metals if section in {leg.id for leg in fanned}}
        for shields in (False, True):
            free = [it for it in self._metals_in(trunk, shields) if it[1] not in going_on]
            ends = [it for leg in legs for it in self._metals_in(leg, shields)]
            touched = not self.anew.isdisjoint(one.id for one in touching)
            known = {leg: up for leg in ends for up in free if self._was_joined(up, leg, touched)}
            self._match(free, ends, known, branch=not fanned)

    def _metals_in(self, section: Section, shields: bool) -> list[Metal]:  # noqa: FBT001
        cable = self.plan.cable_of(section.id)
        if cable is None:
            return []
        names = cable.shield_by_id if shields else cable.core_by_id
        return [it for it in self.metals if it[0] == section.id and it[1] in names]

    def _match(
        self, trunk: list[Metal], legs: list[Metal], known: dict[Metal, Metal], *, branch: bool
    ) -> None:
        """Join leg metals to trunk metals: as known, by colour, in order, then by branching."""
        taken: set[Metal] = set()
        met: set[tuple[Metal, str]] = set()
        open_legs = list(legs)

        def settle(pairs: Iterable[tuple[Metal, Metal]]) -> None:
            for above, below in pairs:
                self._join(above, below)
                taken.add(above)
                met.add((above, below[0]))
                open_legs.remove(below)

        settle([(up, leg) for leg, up in known.items()])
        for leg in tuple(open_legs):
            same = [up for up in trunk if up not in taken and self._code(up) == self._code(leg)]
            settle([(same[0], leg)] if same else [])
        # A black core left over for branching is a common return more often than the others are.
        rest = sorted(open_legs, key=lambda leg: (self._code(leg) == "BK", legs.index(leg)))
        settle(list(zip([up for up in trunk if up not in taken], rest, strict=False)))
        for leg in tuple(open_legs) if branch else ():
            same = [up for up in trunk if self._code(up) == self._code(leg)]
            same = [up for up in same if (up, leg[0]) not in met]
            settle([(same[0], leg)] if same else [])

    def _was_joined(self, trunk: Metal, leg: Metal, touched: bool) -> bool:  # noqa: FBT001
        """Tell whether a join is to be kept: at a split that changes only if it is in use."""
        old = self.was.get(trunk)
        if old is None or old is not self.was.get(leg):
            return False
        return not touched or any(it.conductor == old.id for it in self.plan.landings)

    def _code(self, metal: Metal) -> str:
        cable = self.plan.cable_of(metal[0])
        core = cable.core_by_id.get(metal[1]) if cable is not None else None
        return core.code if core is not None else "shield"


def default_ways(cores: list[Core], legs: list[str]) -> dict[str, str]:
    """Divide cores over legs: pairs (`group`) stay together, in order and evenly."""
    units: dict[str, list[str]] = {}
    for core in cores:
        units.setdefault(f"group {core.group}" if core.group else f"core {core.id}", []).append(
            core.id
        )
    ways: dict[str, str] = {}
    for place, unit in enumerate(units.values()):
        leg = legs[place * len(legs) // len(units)]
        ways |= dict.fromkeys(unit, leg)
    return ways


def _named(plan: Plan, threads: list[list[Metal]]) -> tuple[Conductor, ...]:
    """Give each thread the id it had, else its core's id, else that with the section before it."""
    was = {(run.section, run.core): one.id for one in plan.conductors for run in one.runs}
    firsts = {(one.runs[0].section, one.runs[0].core): one.id for one in plan.conductors}
    kept = {place: firsts.get(thread[0], "") for place, thread in enumerate(threads)}
    names = {place: name for place, name in kept.items() if name}
    for place, thread in enumerate(threads):
        if place in names:
            continue
        old = [was[metal] for metal in thread if metal in was]
        free = [name for name in old if name not in names.values()]
        if free:
            names[place] = free[0]
    often = Counter(thread[0][1] for thread in threads)
    used = set(names.values())
    for place, thread in enumerate(threads):
        if place not in names:
            section, core = thread[0]
            names[place] = _free_id(
                used, core if often[core] == 1 else f"{section}.{core}", section
            )
            used.add(names[place])
    return tuple(_conductor(plan, names[place], thread) for place, thread in enumerate(threads))


def _free_id(used: set[str], wanted: str, section: str) -> str:
    tries = [wanted, f"{section}.{wanted}", *(f"k{number}" for number in range(1, len(used) + 2))]
    return next(name for name in tries if name not in used and len(name) <= MAX_ID)


def _conductor(plan: Plan, name: str, thread: list[Metal]) -> Conductor:
    cable = plan.cable_of(thread[0][0])
    shield = cable is not None and thread[0][1] in cable.shield_by_id
    runs = tuple(Run(section=section, core=core) for section, core in thread)
    new = Conductor(id=name, kind="shield" if shield else "core", runs=runs)
    old = plan.conductor_by_id.get(name)
    return old if old == new else new


def _relanded(old: Plan, new: Plan) -> Plan:
    """Carry landings and caps over by the core that comes out at each end."""
    core_was = {
        (end, conductor.id): run.core
        for end, pairs in old.conductors_at.items()
        for conductor, run in pairs
    }
    name_now = {
        (end, run.core): conductor.id
        for end, pairs in new.conductors_at.items()
        for conductor, run in pairs
    }

    def renamed(it: Landing | Cap) -> str:
        return name_now.get((it.end, core_was.get((it.end, it.conductor), "")), "")

    landings = [_moved(it, renamed(it)) for it in old.landings if renamed(it)]
    caps = tuple(_moved(it, renamed(it)) for it in old.caps if renamed(it))
    return with_landings(new.evolve(caps=caps), landings)


def _moved(it: Put, conductor: str) -> Put:
    return it if it.conductor == conductor else it.evolve(conductor=conductor)
