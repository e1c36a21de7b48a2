"""Which ends are made alike, so that one list of steps serves all of them."""

from collections.abc import Hashable, Sequence

from planner.dryfit.threading import Route, thread
from planner.model.cable import Core
from planner.model.plan import Plan, Section

# Two plugs have a list each: then every picture shows the very cores in hand. Our own choice.
SHARED_FROM = 3


def alike_ends(plan: Plan, routes: Sequence[Route] | None = None) -> tuple[tuple[str, ...], ...]:
    """Return all ends in the plan's order, in groups that share their steps; most are alone.

    Ends are alike when connector, cable, length, parts and landing pattern are equal: only colours
    and names of the cores differ. An end over which a part goes on late is alone. `routes` saves
    threading anew.
    """
    routes = thread(plan).routes if routes is None else routes
    groups: dict[Hashable, list[str]] = {}
    for end in plan.ends:
        groups.setdefault(_make(plan, end.id, routes), []).append(end.id)
    parted = [
        part
        for group in groups.values()
        for part in ([group] if len(group) >= SHARED_FROM else [[end] for end in group])
    ]
    place = {end.id: at for at, end in enumerate(plan.ends)}
    return tuple(tuple(part) for part in sorted(parted, key=lambda part: place[part[0]]))


def _make(plan: Plan, end: str, routes: Sequence[Route]) -> Hashable:
    record, section = plan.end_by_id[end], plan.section_at.get(end)
    cable = plan.cable_of(section.id) if section is not None else None
    parts = tuple(
        (it.part.id, it.at == end, it.after_joint, it.comes_from == end)
        for it in routes
        if end in {it.at, it.comes_from}
    )
    late = end if any(part[2] for part in parts) else ""
    links = tuple(link.contacts for link in plan.links if link.end == end)
    return (
        record.connector,
        record.pinout,
        record.turn_deg,
        record.room_mm,
        record.solder_order,
        cable.id if cable is not None else end,
        _shape(section, end),
        _landings(plan, end),
        links,
        parts,
        late,
    )


def _shape(section: Section | None, end: str) -> Hashable:
    if section is None:
        return end
    other = section.far if section.near == end else section.near
    return other, section.near == end, bool(section.fan_of), section.length_mm


def _landings(plan: Plan, end: str) -> Hashable:
    """Return what wire is on which contact, whatever its colour, and what is spare or left."""
    capped = {cap.conductor for cap in plan.caps if cap.end == end}
    found = []
    for conductor, run in plan.conductors_at.get(end, ()):
        part = plan.part_of(run)
        landing = plan.landing_at.get((end, conductor.id))
        on = (landing.contact, landing.sleeved, landing.dabbed) if landing else ()
        wire = (part.strands, part.strand_mm, part.insulation_mm) if isinstance(part, Core) else ()
        kind = getattr(part, "kind", "")
        found.append((on, wire, kind, conductor.id in capped))
    return tuple(sorted(found, key=repr))
