"""Say in sentences what landing by signal has left, and why."""

from collections.abc import Iterator

from planner.edits.changing import answered, spoken_count, the_contact
from planner.edits.doubling import full_spot, partners
from planner.edits.landings import occupants
from planner.edits.lines import Doubt, Line, carriers, ends_carrying, joins_outputs, open_lines
from planner.edits.shields import policy_of, shield_contacts, wanted_ends
from planner.edits.signal_shields import certain_contacts, loose_shields
from planner.model.plan import Conductor, Plan
from planner.model.signals import signal_text, signals_text
from planner.wiring.graph import Wiring
from planner.wiring.roles import is_return, role_of

Said = tuple[str, str]  # the end it is about, or empty text; the sentence


def left(plan: Plan, end: str = "") -> tuple[str, ...]:
    """Return what is left of the whole lead, or what concerns one end, each thing once."""
    wiring = Wiring(plan)
    told = [*_not_chosen(plan), *_alone(wiring), *_lines(wiring), *_cores(wiring)]
    told += _shields(wiring)
    return tuple(dict.fromkeys(text for at, text in told if not end or at in {"", end}))


def _not_chosen(plan: Plan) -> Iterator[Said]:
    for end in plan.ends:
        if plan.connector_of(end.id) is None:
            yield end.id, f"{end.id} has no connector yet"
        elif plan.pinout_of(end.id) is None:
            yield end.id, f"{end.id} has no pinout yet"
    for section in plan.sections:
        if plan.cable_of(section.id) is None and not section.fan_of:
            yield "", f"{section.id} has no cable yet"


def _alone(wiring: Wiring) -> Iterator[Said]:
    if len([end for end in wiring.plan.ends if wiring.plan.pinout_of(end.id)]) < 2:
        return
    for signal, ends in ends_carrying(wiring).items():
        if len(ends) == 1:
            yield ends[0], f"{signal_text(signal)} at {ends[0]}: no other end carries it"


def _lines(wiring: Wiring) -> Iterator[Said]:
    lines, doubts = open_lines(wiring)
    for doubt in doubts:
        yield doubt.end, _doubtful(wiring.plan, doubt)
    for line in lines:
        yield line.far[0], _unwired(wiring, line)


def _doubtful(plan: Plan, doubt: Doubt) -> str:
    names = [the_contact(plan, doubt.end, it).spoken for it in doubt.contacts]
    listed = f"{', '.join(names[:-1])} and {names[-1]}"
    return f"{signal_text(doubt.signal)} at {doubt.end}: {listed} carry it, choose one"


def _unwired(wiring: Wiring, line: Line) -> str:
    plan = wiring.plan
    for end, contact in (line.near, line.far):
        record = the_contact(plan, end, contact)
        if joins_outputs(wiring, end, contact):
            return f"{record.spoken} at {end} would join driven outputs, keep off"
        if len(occupants(plan, end, contact)) >= record.terminal.takes:
            return f"{record.spoken} at {end} is taken"
    return f"{signals_text(line.signals)} at {line.far[0]}: no core is left for it"


def _cores(wiring: Wiring) -> Iterator[Said]:
    plan = wiring.plan
    done, doubled = answered(plan), _undoubled(plan)
    yield from doubled.values()
    for conductor in plan.conductors:
        if conductor.kind == "shield" or conductor.id in doubled:
            continue
        landed = [it for it in plan.landings if it.conductor == conductor.id]
        if not any(name == conductor.id for _, name in done):
            yield "", f"{conductor.id} is spare"
        signals = frozenset().union(*(wiring.signals_at(it.end, it.contact) for it in landed))
        for end in wiring.ends_of(conductor.id) if landed else ():
            if (end, conductor.id) not in done:
                yield end, _loose(wiring, conductor.id, end, signals)


def _undoubled(plan: Plan) -> dict[str, Said]:
    """Say of each core that should be doubled with another which contact has no room for that."""
    beside = partners(plan)
    full = full_spot(plan, beside)
    if full is None:
        return {}
    record = the_contact(plan, *full)
    why = f"{record.spoken} at {full[0]} takes {spoken_count(record.terminal.takes)}"
    return {name: ("", f"{name} stays loose, to be capped: {why}") for name in beside}


def _loose(wiring: Wiring, conductor: str, end: str, signals: frozenset[str]) -> str:
    carrying = carriers(wiring, end, signals)
    if not signals:
        return f"{conductor} at {end}: where it is landed carries nothing"
    if not carrying:
        return f"{conductor} at {end}: nothing there carries {signals_text(signals)}"
    if any(joins_outputs(wiring, end, it) for it in carrying):
        return f"{conductor} at {end}: it would join driven outputs, keep off"
    names = " and ".join(the_contact(wiring.plan, end, it).spoken for it in carrying)
    full = all(
        len(occupants(wiring.plan, end, it)) >= the_contact(wiring.plan, end, it).terminal.takes
        for it in carrying
    )
    return f"{conductor} at {end}: {names} {'is taken' if full else 'is not certain'}"


def _shields(wiring: Wiring) -> Iterator[Said]:
    plan = wiring.plan
    for end in plan.ends:
        for shield in loose_shields(plan, end.id):
            yield end.id, f"{shield.id} at {end.id}: {_unshielded(wiring, shield, end.id)}"
    roles = {role_of(plan, end.id) for end in plan.ends}
    for shield in plan.conductors:
        if shield.kind == "shield" and not _is_landed(plan, shield.id):
            policy = policy_of(plan, shield)
            if policy is None:
                yield "", f"{shield.id}: no shield policy is chosen"
            elif policy == "source-end" and "source" not in roles:
                yield "", f"{shield.id}: no end is known as the source"
            elif policy == "load-end" and "load" not in roles:
                yield "", f"{shield.id}: no end is known as the load"
    yield from _beyond_policy(plan)


def _beyond_policy(plan: Plan) -> Iterator[Said]:
    """Say of each shield that is landed as a return where its policy would leave it off."""
    for it in plan.landings:
        shield = plan.conductor_by_id[it.conductor]
        alone = len(occupants(plan, it.end, it.contact)) == 1
        if shield.kind != "shield" or not alone or not is_return(plan, it.end, it.contact):
            continue
        policy = policy_of(plan, shield)
        if policy is None or it.end not in wanted_ends(plan, shield):
            yield (
                it.end,
                f"{shield.id} is the return, so it lands at both ends: make that its policy",
            )


def _unshielded(wiring: Wiring, shield: Conductor, end: str) -> str:
    plan, contacts = wiring.plan, shield_contacts(wiring, end)
    names = [the_contact(plan, end, it).spoken for it in contacts]
    if not contacts:
        return "no contact is for it"
    certain = certain_contacts(wiring, shield, end)
    if not certain and len(names) == 1:
        return f"{names[0]} is the return of another channel"
    if not certain:
        return f"{', '.join(names[:-1])} or {names[-1]}, choose one"
    return _no_room(plan, end, certain[0])


def _no_room(plan: Plan, end: str, contact: str) -> str:
    record = the_contact(plan, end, contact)
    there = " and ".join(it.conductor for it in occupants(plan, end, contact))
    return (
        f"{record.spoken} takes {spoken_count(record.terminal.takes)} and is full with {there}; "
        "exchange them if the shield may be the return, or make the shield isolated"
    )


def _is_landed(plan: Plan, conductor: str) -> bool:
    return any(it.conductor == conductor for it in plan.landings)
