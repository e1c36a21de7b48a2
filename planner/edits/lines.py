"""Lines to wire: which contacts a signal still has to join, and which free core may do it."""

from collections.abc import Iterable
from dataclasses import dataclass

from planner.edits.changing import reaches
from planner.edits.routing import can_join
from planner.model.cable import Core
from planner.model.plan import Conductor, Plan
from planner.model.signals import GROUNDS, channel_of, leg_of, sort_key
from planner.wiring.graph import Wiring, contact_node
from planner.wiring.roles import role_of

# Left white, right red: CTA/CEDIA-863. Only ever used to choose between cores that are else equal.
CHANNEL_OF_COLOUR = {"WH": "L", "RD": "R"}

Spot = tuple[str, str]  # (end, contact)


@dataclass(frozen=True)
class Line:
    """One conductor to be: the signals it carries between two contacts."""

    signals: frozenset[str]
    near: Spot
    far: Spot

    @property
    def unit(self) -> tuple[str, ...]:
        """What is kept together on one pair: the channel and where it goes."""
        return (*sorted({channel_of(it) for it in self.signals}), *self.far[:1])

    @property
    def rank(self) -> tuple[int, str]:
        """Order by channel, plus before minus; a joined return after all that share it."""
        return max(sort_key(it) for it in self.signals)


@dataclass(frozen=True)
class Doubt:
    """A signal that an end carries on several contacts, with none certain."""

    signal: str
    end: str
    contacts: tuple[str, ...]


def carriers(wiring: Wiring, end: str, signals: Iterable[str]) -> tuple[str, ...]:
    """Return the contacts of an end that carry one of the signals, in the connector's order."""
    connector = wiring.plan.connector_of(end)
    wanted = frozenset(signals)
    known = connector.by_id if connector is not None else {}
    return tuple(it for it in known if wiring.signals_at(end, it) & wanted)


def ends_carrying(wiring: Wiring) -> dict[str, tuple[str, ...]]:
    """Return the ends that carry each channel leg; signals in order, ends in the plan's order."""
    found: dict[str, list[str]] = {}
    for end in wiring.plan.ends:
        for (at, _), signals in wiring.signals.items():
            if at == end.id:
                for signal in signals - GROUNDS:
                    if end.id not in found.setdefault(signal, []):
                        found[signal].append(end.id)
    return {signal: tuple(found[signal]) for signal in sorted(found, key=sort_key)}


def open_lines(wiring: Wiring) -> tuple[tuple[Line, ...], tuple[Doubt, ...]]:
    """Return the lines that are still to be wired, in order, and the signals left in doubt."""
    joins: dict[tuple[Spot, Spot], set[str]] = {}
    doubts = []
    for signal, ends in ends_carrying(wiring).items():
        spots = {end: carriers(wiring, end, {signal}) for end in ends}
        double = [Doubt(signal, end, at) for end, at in spots.items() if len(at) > 1]
        if len(ends) > 1 and double:
            doubts += double
            continue
        for near, far in _to_join(wiring, [(end, at[0]) for end, at in spots.items()]):
            joins.setdefault((near, far), set()).add(signal)
    lines = [Line(frozenset(signals), *pair) for pair, signals in joins.items()]
    return tuple(sorted(lines, key=lambda line: line.rank)), tuple(doubts)


def _to_join(wiring: Wiring, spots: list[Spot]) -> list[tuple[Spot, Spot]]:
    """Pair the first contact with each that no metal joins to it yet."""
    hub = wiring.net_of(contact_node(*spots[0]))
    apart: list[tuple[Spot, Spot]] = []
    seen = {hub}
    for spot in spots[1:]:
        net = wiring.net_of(contact_node(*spot))
        if net not in seen:
            seen.add(net)
            apart.append((spots[0], spot))
    return apart


def joins_outputs(wiring: Wiring, end: str, contact: str) -> bool:
    """Tell whether a core on a contact would tie a driven minus leg to ground or to another one.

    Two driven minus legs joined short two amplifier outputs; the other way round, where the join
    is on the passive side, it is harmless.
    """
    plan, carried = wiring.plan, wiring.signals_at(end, contact)
    record = plan.pinout_of(end)
    minus = {it for it in carried if leg_of(it) == "-"}
    for other in plan.ends:
        drives = plan.pinout_of(other.id)
        if other.id == end or drives is None or drives.drive != "driven-balanced":
            continue
        shared = {it for it in minus if carriers(wiring, other.id, {it})}
        grounded = carried & GROUNDS or (record is not None and record.drive == "single-ended")
        apart = len({carriers(wiring, other.id, {it}) for it in shared}) > 1
        if role_of(plan, other.id) == "source" and shared and (grounded or apart):
            return True
    return False


def free_cores(plan: Plan) -> tuple[Conductor, ...]:
    """Return the cores that are neither landed nor capped anywhere, in cable order."""
    used = {it.conductor for it in plan.landings} | {it.conductor for it in plan.caps}
    return tuple(it for it in plan.conductors if it.kind == "core" and it.id not in used)


def core_of(plan: Plan, conductor: Conductor) -> Core | None:
    """Return the core of a conductor's first run."""
    part = plan.part_of(conductor.runs[0])
    return part if isinstance(part, Core) else None


def doubled_group(plan: Plan, conductor: Conductor) -> tuple[str, str] | None:
    """Return the section and group of a core that is meant to be doubled with others, or None."""
    section = conductor.runs[0].section
    cable, core = plan.cable_of(section), core_of(plan, conductor)
    if cable is None or core is None or not core.group or cable.groups != "doubled":
        return None
    return (section, core.group)


def assign(plan: Plan, lines: tuple[Line, ...]) -> dict[Line, str]:
    """Choose a free core for each line: legs of one channel on one pair, else in cable order.

    Cores that are meant to be doubled go to one line: a line takes one of a fresh group first.
    """
    free = list(free_cores(plan))
    begun = {doubled_group(plan, it) for it in plan.conductors if it not in free}
    chosen: dict[Line, str] = {}
    units: dict[tuple[str, ...], list[Line]] = {}
    for line in lines:
        units.setdefault(line.unit, []).append(line)
    for unit in units.values():
        pool = _best_pool(plan, unit, free)
        for line in unit:
            core = _first_choice(plan, line, pool, begun)
            if core is not None:
                chosen[line] = core.id
                begun.add(doubled_group(plan, core))
                pool.remove(core)
                free.remove(core)
    return chosen


def _first_choice(
    plan: Plan, line: Line, pool: list[Conductor], begun: set[tuple[str, str] | None]
) -> Conductor | None:
    def preference(core: Conductor) -> tuple[bool, bool, int]:
        away = not all(reaches(plan, end, core.id) for end, _ in (line.near, line.far))
        group = doubled_group(plan, core)
        return (away, group is not None and group in begun, _colour_rank(plan, line, core))

    return min((it for it in pool if _fits(plan, line, it)), key=preference, default=None)


def _fits(plan: Plan, line: Line, conductor: Conductor) -> bool:
    return can_join(plan, conductor.id, [line.near[0], line.far[0]])


def _best_pool(plan: Plan, unit: list[Line], free: list[Conductor]) -> list[Conductor]:
    """Return the free cores of the pair that suits a unit best, or all free ones."""
    groups: dict[tuple[str, str], list[Conductor]] = {}
    for conductor in free:
        core = core_of(plan, conductor)
        paired = core is not None and core.group and doubled_group(plan, conductor) is None
        if core is not None and paired and _fits(plan, unit[0], conductor):
            groups.setdefault((conductor.runs[0].section, core.group), []).append(conductor)
    enough = [group for group in groups.values() if len(group) >= len(unit)]
    if not enough:
        return list(free)

    def suits(group: list[Conductor]) -> tuple[bool, int, int]:
        away = any(not reaches(plan, unit[0].far[0], it.id) for it in group)
        colours = min(_colour_rank(plan, unit[0], it) for it in group)
        return (away, len(group) - len(unit), colours)

    return min(enough, key=suits)


def _colour_rank(plan: Plan, line: Line, conductor: Conductor) -> int:
    """Return 0 for a channel's own colour on its plus leg, 2 for another channel's, else 1."""
    core = core_of(plan, conductor)
    meant = CHANNEL_OF_COLOUR.get(core.colours[0], "") if core is not None else ""
    channels = {channel_of(it) for it in line.signals}
    if not meant or not channels <= {"L", "R"}:
        return 1
    plus = {leg_of(it) for it in line.signals} == {"+"}
    return 0 if plus and channels == {meant} else 2
