"""The lead as numbers: contacts, the conductors that land on them, links. Made once a wiring."""

from dataclasses import dataclass
from functools import cached_property
from weakref import WeakKeyDictionary

from planner.model.plan import Plan
from planner.proving.reading import Contact
from planner.wiring.graph import Wiring
from planner.wiring.partners import contacts_of


@dataclass(frozen=True)
class Board:
    """Contacts, slots and links by number.

    A slot is one conductor at one end: `wire_of` and `place_of` give its conductor and the contact
    that it lands on in the plan. A conductor's slots are joined by its metal.
    """

    plan: Plan
    contacts: tuple[Contact, ...]
    wires: tuple[str, ...]
    wire_of: tuple[int, ...]
    place_of: tuple[int, ...]
    links: tuple[tuple[int, int], ...]

    @cached_property
    def number(self) -> dict[Contact, int]:
        """The number of each contact."""
        return {contact: number for number, contact in enumerate(self.contacts)}

    @cached_property
    def at(self) -> dict[str, tuple[int, ...]]:
        """The contacts of each end, in their connector's order."""
        found: dict[str, tuple[int, ...]] = {}
        for number, (end, _) in enumerate(self.contacts):
            found[end] = (*found.get(end, ()), number)
        return found

    @cached_property
    def end_of(self) -> tuple[str, ...]:
        """The end of each contact."""
        return tuple(end for end, _ in self.contacts)

    @cached_property
    def slots_of(self) -> tuple[tuple[int, ...], ...]:
        """The slots of each conductor."""
        found: list[list[int]] = [[] for _ in self.wires]
        for slot, wire in enumerate(self.wire_of):
            found[wire].append(slot)
        return tuple(map(tuple, found))


def _board(plan: Plan, wiring: Wiring) -> Board:
    contacts = contacts_of(wiring)
    number = {contact: place for place, contact in enumerate(contacts)}
    wires: dict[str, int] = {}
    wire_of, place_of = [], []
    for landing in plan.landings:
        place = number.get((landing.end, landing.contact))
        if place is not None and landing.conductor in plan.conductor_by_id:
            wire_of.append(wires.setdefault(landing.conductor, len(wires)))
            place_of.append(place)
    links = [
        (number[link.end, link.contacts[0]], number[link.end, other])
        for link in plan.links
        for other in link.contacts[1:]
        if {(link.end, link.contacts[0]), (link.end, other)} <= number.keys()
    ]
    return Board(plan, contacts, tuple(wires), tuple(wire_of), tuple(place_of), tuple(links))


_BOARDS: "WeakKeyDictionary[Wiring, Board]" = WeakKeyDictionary()


def board_of(plan: Plan, wiring: Wiring) -> Board:
    """Return the board of a plan; made once for each wiring."""
    kept = _BOARDS.get(wiring)
    if kept is None or kept.plan is not plan:
        kept = _BOARDS[wiring] = _board(plan, wiring)
    return kept
