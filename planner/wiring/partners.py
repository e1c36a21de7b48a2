"""What a sound lead shows to a beeper: which contacts are joined to which, and to nothing else."""

from dataclasses import dataclass

from planner.wiring.graph import Wiring, contact_node

Contact = tuple[str, str]  # end, contact


@dataclass(frozen=True, slots=True)
class Hold:
    """Where one probe is held for a net, and every other contact that must beep with it."""

    contact: Contact
    partners: tuple[Contact, ...] = ()

    @property
    def all(self) -> tuple[Contact, ...]:
        """Every contact of the net, the held one first."""
        return (self.contact, *self.partners)


def contacts_of(wiring: Wiring) -> tuple[Contact, ...]:
    """Return every contact of the lead: ends in the plan's order, contacts in their connector's."""
    plan = wiring.plan
    return tuple(
        (end.id, contact.id)
        for end in plan.ends
        for contact in getattr(plan.connector_of(end.id), "contacts", ())
    )


def expected_partners(wiring: Wiring) -> dict[Contact, tuple[Contact, ...]]:
    """Return for each contact all others that are joined to it, at its own end too.

    Landings, links and joined returns count, and a shield joins only where it lands: what stops
    short of a contact has no partner there.
    """
    contacts = contacts_of(wiring)
    nets: dict[object, list[Contact]] = {}
    for contact in contacts:
        nets.setdefault(wiring.net_of(contact_node(*contact)), []).append(contact)
    joined = {contact: net for net in nets.values() for contact in net}
    return {
        contact: tuple(other for other in joined[contact] if other != contact)
        for contact in contacts
    }


def holds(wiring: Wiring) -> tuple[Hold, ...]:
    """Return one place to hold a probe for each net: its first contact.

    These are all continuity readings that a net needs, its contacts less one.
    """
    found, seen = [], set[Contact]()
    for contact, partners in expected_partners(wiring).items():
        if contact not in seen:
            seen |= {contact, *partners}
            found.append(Hold(contact, partners))
    return tuple(found)
