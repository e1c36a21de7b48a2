"""Landing conductors on contacts: land, exchange, lift, cap, link, sleeve, dab."""

from planner.edits.changing import (
    reaches,
    spoken_count,
    swapped,
    the_conductor,
    the_connector,
    the_contact,
    the_end,
    with_landings,
)
from planner.edits.refusal import ContactFull, NotAllowed, NotThere, OutOfReach
from planner.edits.routing import check_route, leg_for, route
from planner.model.plan import Cap, Landing, Link, Plan


def occupants(plan: Plan, end: str, contact: str) -> tuple[Landing, ...]:
    """Return what is landed on a contact, in the plan's order."""
    return tuple(it for it in plan.landings if (it.end, it.contact) == (end, contact))


def check_land(plan: Plan, *, end: str, conductor: str, contact: str) -> None:
    """Raise the refusal that `land` would give, or return."""
    check_reach(plan, end=end, conductor=conductor)
    record = the_contact(plan, end, contact)
    others = [it for it in occupants(plan, end, contact) if it.conductor != conductor]
    if len(others) >= record.terminal.takes:
        taken = f"{record.spoken} takes {spoken_count(record.terminal.takes)}"
        raise ContactFull(taken, "Hold Shift to exchange.")


def check_reach(plan: Plan, *, end: str, conductor: str) -> None:
    """Refuse unless the conductor comes out at an end or can be led there through a split."""
    the_conductor(plan, conductor)
    the_end(plan, end)
    if reaches(plan, end, conductor):
        return
    leg = leg_for(plan, conductor, end)
    if leg is None:
        raise OutOfReach(
            f"{conductor} does not come out at {end}", "Take a core that runs to this end."
        )
    check_route(plan, conductor=conductor, section=leg)


def land(plan: Plan, *, end: str, conductor: str, contact: str) -> Plan:
    """Land a conductor on a contact; it leaves the contact of the same end where it was.

    A core of a fanned-out leg is led to this end when it is not landed at the end it leaves.
    Raises `ContactFull`, `OutOfReach`, `LandedElsewhere` or `NotThere`.
    """
    check_land(plan, end=end, conductor=conductor, contact=contact)
    led, name = _led_to(plan, end, conductor)
    return _put(led, end, {name: contact})


def exchange(plan: Plan, *, end: str, conductor: str, contact: str) -> Plan:
    """Land a conductor and send what was on the contact to where it came from, or lift that.

    Exchanging back is the identity where each contact holds one conductor.
    """
    check_reach(plan, end=end, conductor=conductor)
    the_contact(plan, end, contact)
    others = [it for it in occupants(plan, end, contact) if it.conductor != conductor]
    was = plan.landing_at.get((end, conductor))
    left = was.contact if was else ""
    if left == contact:
        return plan
    if left:
        _check_takes_all(plan, end, left, conductor, len(others))
    moves = {it.conductor: left for it in others}
    led, name = _led_to(plan, end, conductor)
    return _put(led, end, {**moves, name: contact})


def _check_takes_all(plan: Plan, end: str, contact: str, leaving: str, coming: int) -> None:
    record = the_contact(plan, end, contact)
    stay = [it for it in occupants(plan, end, contact) if it.conductor != leaving]
    if coming and len(stay) + coming > record.terminal.takes:
        raise ContactFull(
            f"{record.spoken} takes {spoken_count(record.terminal.takes)}, "
            f"and {spoken_count(len(stay) + coming)} would be on it",
            "Lift one first.",
        )


def _led_to(plan: Plan, end: str, conductor: str) -> tuple[Plan, str]:
    """Lead a conductor to an end; return also its id, which new joins at a split may change."""
    if reaches(plan, end, conductor):
        return plan, conductor
    leg = plan.section_at[end]
    trunk = next(run for run in plan.conductor_by_id[conductor].runs if run.section == leg.fan_of)
    led = route(plan, conductor=conductor, section=leg.id)
    return led, next(it.id for it in led.conductors if trunk in it.runs)


def _put(plan: Plan, end: str, moves: dict[str, str]) -> Plan:
    """Move conductors at one end to contacts; an empty contact lifts. Landed ones lose a cap."""
    if all(_is_on(plan, end, conductor, contact) for conductor, contact in moves.items()):
        return plan
    kept = [it for it in plan.landings if not (it.end == end and it.conductor in moves)]
    for conductor, contact in moves.items():
        if contact:
            was = plan.landing_at.get((end, conductor))
            fresh = Landing(end=end, conductor=conductor, contact=contact)
            kept.append(was.evolve(contact=contact) if was else fresh)
    return _uncapped(with_landings(plan, kept), end, {key for key, at in moves.items() if at})


def _is_on(plan: Plan, end: str, conductor: str, contact: str) -> bool:
    was = plan.landing_at.get((end, conductor))
    return was is not None and was.contact == contact


def _uncapped(plan: Plan, end: str, conductors: set[str]) -> Plan:
    kept = tuple(cap for cap in plan.caps if not (cap.end == end and cap.conductor in conductors))
    return plan if len(kept) == len(plan.caps) else plan.evolve(caps=kept)


def lift(plan: Plan, *, end: str, conductor: str) -> Plan:
    """Take a conductor off its contact at an end."""
    _the_landing(plan, end, conductor)
    return _put(plan, end, {conductor: ""})


def _the_landing(plan: Plan, end: str, conductor: str) -> Landing:
    the_end(plan, end)
    the_conductor(plan, conductor)
    landing = plan.landing_at.get((end, conductor))
    if landing is None:
        raise NotThere(f"{conductor} is not landed at {end}")
    return landing


def cap(plan: Plan, *, end: str, conductor: str) -> Plan:
    """Mark a loose conductor as spare at an end: cut back and capped."""
    the_end(plan, end)
    the_conductor(plan, conductor)
    if not reaches(plan, end, conductor):
        raise OutOfReach(f"{conductor} does not come out at {end}")
    landing = plan.landing_at.get((end, conductor))
    if landing is not None:
        spoken = the_contact(plan, end, landing.contact).spoken
        raise NotAllowed(f"{conductor} is landed on {spoken} at {end}", "Lift it first.")
    spare = Cap(end=end, conductor=conductor)
    return plan if spare in plan.caps else plan.evolve(caps=(*plan.caps, spare))


def uncap(plan: Plan, *, end: str, conductor: str) -> Plan:
    """Take back that a conductor is spare at an end."""
    if Cap(end=the_end(plan, end).id, conductor=the_conductor(plan, conductor).id) not in plan.caps:
        raise NotThere(f"{conductor} is not capped at {end}")
    return _uncapped(plan, end, {conductor})


def link(plan: Plan, *, end: str, contacts: tuple[str, ...]) -> Plan:
    """Join contacts inside an end on purpose; a link that shares a contact grows."""
    for contact in contacts:
        the_contact(plan, end, contact)
    joined = set(contacts)
    if len(joined) < 2:
        raise NotAllowed("A link joins two contacts or more")
    apart = []
    for known in plan.links:
        if known.end == end and joined & set(known.contacts):
            joined |= set(known.contacts)
        else:
            apart.append(known)
    return plan.evolve(links=(*apart, _link_of(plan, end, joined)))


def _link_of(plan: Plan, end: str, contacts: set[str]) -> Link:
    order = [contact.id for contact in the_connector(plan, end).contacts if contact.id in contacts]
    return Link(end=end, contacts=tuple(order))


def unlink(plan: Plan, *, end: str, contacts: tuple[str, ...]) -> Plan:
    """Take contacts out of the links of an end; a link left with one contact goes."""
    for contact in contacts:
        the_contact(plan, end, contact)
    links: list[Link] = []
    for known in plan.links:
        left = set(known.contacts) - set(contacts) if known.end == end else set(known.contacts)
        if len(left) == len(known.contacts):
            links.append(known)
        elif len(left) > 1:
            links.append(_link_of(plan, end, left))
    if tuple(links) == plan.links:
        raise NotThere(f"No such link at {end}")
    return plan.evolve(links=tuple(links))


def sleeve(plan: Plan, *, end: str, conductor: str, sleeved: bool) -> Plan:
    """Say whether an insulating sleeve covers a conductor at its contact."""
    landing = _the_landing(plan, end, conductor)
    new = landing.evolve(sleeved=sleeved)
    return plan.evolve(landings=swapped(plan.landings, lambda known: known is landing, new))


def dab(plan: Plan, *, end: str, conductor: str, dabbed: bool) -> Plan:
    """Say whether a dab of insulating compound covers a conductor's joint at its contact."""
    landing = _the_landing(plan, end, conductor)
    new = landing.evolve(dabbed=dabbed)
    return plan.evolve(landings=swapped(plan.landings, lambda known: known is landing, new))
