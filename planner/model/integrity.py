"""Whether a plan hangs together: every name that it uses exists, and none is used twice."""

from collections.abc import Callable, Collection, Iterable, Iterator

from planner.model.plan import Conductor, Plan, Run
from planner.model.tree import node_ids, tree_problems
from planner.problem import Problem, did_you_mean

Part = Callable[[Plan], Iterator[Problem]]


def integrity_problems(plan: Plan) -> tuple[Problem, ...]:
    """List what does not hang together; `where` is the key path inside the plan.

    Names come first: while one is used twice or not known, what rests on it is not looked at.
    """
    for group in _GROUPS:
        problems = tuple(problem for part in group for problem in part(plan))
        if problems:
            return problems
    return ()


def _ids_used_once(plan: Plan) -> Iterator[Problem]:
    held = plan.definitions
    yield from _twice("ends and splits", node_ids(plan))
    yield from _twice("sections", (record.id for record in plan.sections))
    yield from _twice("conductors", (record.id for record in plan.conductors))
    yield from _twice("parts", (record.id for record in plan.parts))
    yield from _twice("definitions.connectors", (record.id for record in held.connectors))
    yield from _twice("definitions.pinouts", (record.id for record in held.pinouts))
    yield from _twice("definitions.cables", (record.id for record in held.cables))
    yield from _twice("definitions.parts", (record.id for record in held.parts))


def _twice(name: str, ids: Iterable[str]) -> Iterator[Problem]:
    seen: set[str] = set()
    for record_id in ids:
        if record_id in seen:
            what = f"the id {record_id!r} stands twice among {name.removeprefix('definitions.')}"
            yield Problem(what, f"{name}[{record_id}].id", "Give one of the two another id.")
        seen.add(record_id)


def _unknown(kind: str, name: str, where: str, known: Collection[str]) -> Iterator[Problem]:
    if name not in known:
        yield Problem(f"there is no {kind} {name!r}", where, did_you_mean(name, known))


def _end_names(plan: Plan) -> Iterator[Problem]:
    held = plan.definitions
    for end in plan.ends:
        at = f"ends[{end.id}]"
        if end.connector:
            known = {record.id for record in held.connectors}
            yield from _unknown("connector", end.connector, f"{at}.connector", known)
        if end.pinout:
            known = {record.id for record in held.pinouts}
            yield from _unknown("pinout record", end.pinout, f"{at}.pinout", known)


def _section_names(plan: Plan) -> Iterator[Problem]:
    nodes = node_ids(plan)
    cables = {record.id for record in plan.definitions.cables}
    for section in plan.sections:
        at = f"sections[{section.id}]"
        yield from _unknown("end or split", section.near, f"{at}.near", nodes)
        yield from _unknown("end or split", section.far, f"{at}.far", nodes)
        if section.cable:
            yield from _unknown("cable", section.cable, f"{at}.cable", cables)
        if section.fan_of:
            known = plan.section_by_id.keys() - {section.id}
            yield from _unknown("section", section.fan_of, f"{at}.fan_of", known)
        if section.cable and section.fan_of:
            what = f"it has a cable of its own and is the fan of {section.fan_of!r}"
            yield Problem(what, at, "Keep one of cable and fan_of.")


def _part_names(plan: Plan) -> Iterator[Problem]:
    nodes = node_ids(plan)
    known = {record.id for record in plan.definitions.parts}
    for use in plan.parts:
        at = f"parts[{use.id}]"
        yield from _unknown("part", use.part, f"{at}.part", known)
        yield from _unknown("end or split", use.at, f"{at}.at", nodes)
        yield from _unknown("end", use.comes_from, f"{at}.comes_from", plan.end_by_id)
        if use.section:
            meeting = {it.id for it in plan.sections if use.at in {it.near, it.far}}
            yield from _unknown("section there", use.section, f"{at}.section", meeting)


def _run_sections(plan: Plan) -> Iterator[Problem]:
    for conductor in plan.conductors:
        for at, run in enumerate(conductor.runs, start=1):
            where = f"conductors[{conductor.id}].runs[#{at}].section"
            yield from _unknown("section", run.section, where, plan.section_by_id)


def _run_cores(plan: Plan) -> Iterator[Problem]:
    users: dict[Run, str] = {}
    for conductor in plan.conductors:
        for at, run in enumerate(conductor.runs, start=1):
            where = f"conductors[{conductor.id}].runs[#{at}].core"
            yield from _core_known(plan, run, where)
            user = users.setdefault(run, conductor.id)
            if (user, at) != (conductor.id, conductor.runs.index(run) + 1):
                what = f"{run.core!r} of section {run.section!r} is also in conductor {user!r}"
                yield Problem(what, where, "Let each core run in one conductor, once.")


def _core_known(plan: Plan, run: Run, where: str) -> Iterator[Problem]:
    cable = plan.cable_of(run.section)
    if cable is None:
        what = f"section {run.section!r} has no cable, so no core {run.core!r}"
        yield Problem(what, where, "Choose a cable for the section.")
        return
    known = cable.core_by_id.keys() | cable.shield_by_id.keys()
    yield from _unknown(f"core or shield in cable {cable.id!r} called", run.core, where, known)


def _runs_meet(plan: Plan) -> Iterator[Problem]:
    for conductor in plan.conductors:
        at = f"conductors[{conductor.id}].runs"
        sections = [run.section for run in conductor.runs]
        for section in sorted({name for name in sections if sections.count(name) > 1}):
            what = f"it runs twice through section {section!r}"
            yield Problem(what, at, "Make two conductors of it.")
        if not _hang_together(plan, conductor):
            what = f"its runs in {', '.join(sections)} do not meet at splits"
            yield Problem(what, at, "Name sections that meet, or make two conductors of it.")


def _hang_together(plan: Plan, conductor: Conductor) -> bool:
    nodes = [
        {plan.section_by_id[run.section].near, plan.section_by_id[run.section].far}
        for run in conductor.runs
    ]
    reached, rest = set(nodes[0]), nodes[1:]
    while touching := [pair for pair in rest if pair & reached]:
        rest = [pair for pair in rest if not pair & reached]
        reached.update(*touching)
    return not rest


def _landing_names(plan: Plan) -> Iterator[Problem]:
    for at, landing in enumerate(plan.landings, start=1):
        where = f"landings[#{at}]"
        yield from _comes_out(plan, landing.end, landing.conductor, where)
        yield from _contact_known(plan, landing.end, landing.contact, f"{where}.contact")
    for at, cap in enumerate(plan.caps, start=1):
        yield from _comes_out(plan, cap.end, cap.conductor, f"caps[#{at}]")


def _comes_out(plan: Plan, end: str, conductor: str, where: str) -> Iterator[Problem]:
    unknown = [
        *_unknown("end", end, f"{where}.end", plan.end_by_id),
        *_unknown("conductor", conductor, f"{where}.conductor", plan.conductor_by_id),
    ]
    yield from unknown
    if not unknown and conductor not in {found.id for found, _run in plan.conductors_at[end]}:
        what = f"conductor {conductor!r} does not come out at end {end!r}"
        yield Problem(what, f"{where}.conductor", "Name a conductor that runs in its section.")


def _contact_known(plan: Plan, end: str, contact: str, where: str) -> Iterator[Problem]:
    if end not in plan.end_by_id:
        return
    connector = plan.connector_of(end)
    if connector is None:
        what = f"end {end!r} has no connector, so no contact {contact!r}"
        yield Problem(what, where, "Choose a connector for the end.")
        return
    yield from _unknown(f"contact on {connector.id!r} called", contact, where, connector.by_id)


def _landed_once(plan: Plan) -> Iterator[Problem]:
    uses = [(f"landings[#{at}]", use.end, use.conductor) for at, use in enumerate(plan.landings, 1)]
    uses += [(f"caps[#{at}]", use.end, use.conductor) for at, use in enumerate(plan.caps, 1)]
    seen: set[tuple[str, str]] = set()
    for where, end, conductor in uses:
        if (end, conductor) in seen:
            what = f"conductor {conductor!r} is landed or capped twice at end {end!r}"
            yield Problem(what, where, "Keep one of the two.")
        seen.add((end, conductor))


def _link_names(plan: Plan) -> Iterator[Problem]:
    for at, link in enumerate(plan.links, start=1):
        where = f"links[#{at}]"
        yield from _unknown("end", link.end, f"{where}.end", plan.end_by_id)
        for contact in link.contacts:
            yield from _contact_known(plan, link.end, contact, f"{where}.contacts")
        if len(set(link.contacts)) < len(link.contacts):
            yield Problem("a contact stands twice in it", f"{where}.contacts", "Name each once.")


def _order_names(plan: Plan) -> Iterator[Problem]:
    for end in plan.ends:
        where = f"ends[{end.id}].solder_order"
        for contact in end.solder_order:
            yield from _contact_known(plan, end.id, contact, where)
        if len(set(end.solder_order)) < len(end.solder_order):
            yield Problem("a contact stands twice in it", where, "Name each contact once.")


def _pinouts_fit(plan: Plan) -> Iterator[Problem]:
    for end in plan.ends:
        pinout, connector = plan.pinout_of(end.id), plan.connector_of(end.id)
        if pinout is None:
            continue
        where = f"ends[{end.id}].pinout"
        if connector is None or connector.id not in pinout.fits:
            has = f"{connector.id!r}" if connector else "no connector"
            what = f"pinout record {pinout.id!r} is for {', '.join(pinout.fits)}; the end has {has}"
            yield Problem(what, where, "Choose a pinout record that fits the connector.")
            continue
        for contact in pinout.signals:
            yield from _contact_known(plan, end.id, contact, f"{where} ({pinout.id}: {contact})")


_GROUPS: tuple[tuple[Part, ...], ...] = (
    (_ids_used_once,),
    (_end_names, _section_names, _part_names, _run_sections),
    (tree_problems, _run_cores, _runs_meet, _pinouts_fit),
    (_landing_names, _landed_once, _link_names, _order_names),
)
