"""Faults in the builder's words, each with where to look or to put the iron."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from planner.model.cable import Core
from planner.model.plan import Conductor, Run
from planner.model.signals import channel_of, leg_of
from planner.proving.diagnosing.board import Board
from planner.proving.diagnosing.mistakes import Mistake
from planner.proving.diagnosing.records import Fault, FaultKind
from planner.proving.diagnosing.search import Found
from planner.proving.diagnosing.told import Ring, base_of, ends_of, rings_of
from planner.proving.reading import Contact
from planner.wiring.graph import Wiring
from planner.wording import listed

_CHANNELS = {"L": "left", "R": "right", "mic": "microphone"}


class Teller:
    """Tells faults of one lead; it knows contacts, cores and channels by name."""

    def __init__(self, board: Board, wiring: Wiring) -> None:
        self.board, self.plan, self.wiring = board, board.plan, wiring

    # -- names ----------------------------------------------------------------------------------

    def spot(self, place: int) -> str:
        """Name a contact as spoken: ring 1, pin 3; S is never called sleeve."""
        return self.named(self.board.contacts[place])

    def named(self, contact: Contact) -> str:
        """Name a contact as spoken, without its end."""
        connector = self.plan.connector_of(contact[0])
        spoken = connector.by_id[contact[1]].spoken if connector else contact[1]
        return contact[1] if spoken.lower() == "sleeve" else spoken

    def full(self, contact: Contact) -> str:
        """Name a contact with its end."""
        return f"{self.named(contact)} at {contact[0]}"

    def core(self, slot: int) -> str:
        """Name what lands in a slot as it is marked there, and as elsewhere: `RD (WH of leg R)`."""
        conductor = self._conductor(slot)
        marks = {run.section: self._mark(conductor.id, run) for run in conductor.runs}
        section = self.plan.section_at.get(self.board.end_of[self.board.place_of[slot]])
        own = marks.get(section.id if section else "", next(iter(marks.values())))
        others = [f"{it} of {_spoken(at)}" for at, it in marks.items() if it != own]
        told = f"{own} ({listed(others)})" if others else own
        return f"shield {told}" if conductor.kind == "shield" else told

    def _mark(self, conductor: str, run: Run) -> str:
        """Return the colour code of a core, the name of a shield; the id where no cable tells."""
        part = self.plan.part_of(run)
        if isinstance(part, Core):
            return part.code
        return part.id if part is not None else conductor

    def _conductor(self, slot: int) -> Conductor:
        return self.plan.conductor_by_id[self.board.wires[self.board.wire_of[slot]]]

    def is_shield(self, slot: int) -> bool:
        """Tell whether a slot takes a shield."""
        return self._conductor(slot).kind == "shield"

    def contacts(self, places: Sequence[int]) -> tuple[Contact, ...]:
        """Return contacts by name."""
        return tuple(self.board.contacts[place] for place in places)

    def _moves(self, steps: Sequence[tuple[int, int]]) -> tuple[tuple[Contact, Contact], ...]:
        """Return from where to where things moved, but not from one end to another."""
        end_of, contacts = self.board.end_of, self.board.contacts
        return tuple((contacts[a], contacts[b]) for a, b in steps if end_of[a] == end_of[b])

    # -- faults ---------------------------------------------------------------------------------

    def faults(self, found: Found) -> Iterator[Fault]:
        """Yield every fault of an explanation: mistakes, exchanges, opens, bridges."""
        for mistake in found.mistakes:
            yield self.mistake(mistake)
        for ring in rings_of(found):
            yield self.ring(found, ring)
        for slot in sorted(found.state.opens):
            yield self.open(found, slot)
        for link in sorted(found.state.cut):
            yield self.link(link)
        for one, other in sorted(found.state.bridges):
            yield self.bridge(one, other)

    def mistake(self, mistake: Mistake) -> Fault:
        """Tell a mistake made at a whole end."""
        end = mistake.ends[0]
        words, look = _MISTAKES[mistake.kind]
        names = [_channel(it) for it in mistake.channels] or [f"ends {it}" for it in mistake.ends]
        said = {
            "end": end,
            "ends": listed(mistake.ends),
            "channels": listed(names),
            "step": "one too far" if mistake.step > 0 else "one short",
        }
        contacts = self.contacts(mistake.moved)
        return Fault(
            mistake.kind, end, contacts, words.format(**said), look.format(**said), mistake.ends,
            moves=self._moves([(it, mistake.moves[it]) for it in mistake.moved]),
        )  # fmt: skip

    def ring(self, found: Found, ring: Ring) -> Fault:
        """Tell conductors that changed places at one end."""
        ends = ends_of(found.state, ring)
        places = ring.places if len(ends) == 1 else self._told_at(ends[0], found, ring)
        end = self.board.end_of[places[0]]
        if not ring.closed:
            return self._moved(ring, end)
        kind, words = self._exchange(places, ends)
        colours = ", ".join(
            f"{self.core(slot)} belongs on {self.spot(place)}"
            for slot, place in zip(ring.slots, places, strict=True)
        )
        look = f"Look at the colours at {end}: {colours}"
        if len(ends) > 1:
            look += f". Right there? Then they are exchanged at {ends[1]}"
        told = [self._told_at(it, found, ring) for it in ends] if len(ends) > 1 else [places]
        steps = self._moves([it for each in told for it in pairwise((*each, each[0]))])
        contacts = self.contacts([place for each in told for place in each])
        return Fault(kind, end, contacts, words, f"{look}.", ends, ring.cost, steps)

    def _told_at(self, end: str, found: Found, ring: Ring) -> tuple[int, ...]:
        """Return where a ring's conductors land at another end."""
        base = base_of(found)
        return tuple(
            base.places[mate]
            for slot in ring.slots
            for mate in self.board.slots_of[self.board.wire_of[slot]]
            if self.board.end_of[base.places[mate]] == end
        )

    def _exchange(self, places: tuple[int, ...], ends: tuple[str, ...]) -> tuple[FaultKind, str]:
        where = f"at {ends[0]}" if len(ends) == 1 else "at one end"
        spots = listed([self.spot(place) for place in places])
        if len(places) > 2:
            return "exchange", f"cores on {spots} changed round {where}"
        plain = f"cores on {spots} exchanged {where}"
        one, other = (self.wiring.signals_at(*it) for it in self.contacts(places))
        if len(one) == len(other) == 1:
            (a,), (b,) = one, other
            first, second = channel_of(a), channel_of(b)
            if first and first == second:
                return "polarity", f"{_reversed(first)}: {plain}"
            if leg_of(a) == leg_of(b) == "+" and self._one_return(places[0], first, second):
                names = listed([_channel(first), _channel(second)])
                return "channels", f"{names} exchanged: {plain}"
        return "exchange", plain

    def _one_return(self, place: int, *channels: str) -> bool:
        """Tell whether channels have one return at the end of a contact: then plus is all of it."""
        end = self.board.end_of[place]
        returns = {
            tuple(
                at
                for at in self.board.at[end]
                if f"{channel}-" in self.wiring.signals_at(*self.board.contacts[at])
            )
            for channel in channels
        }
        return len(returns) == 1

    def _moved(self, ring: Ring, end: str) -> Fault:
        told = [
            f"{self.core(slot)} on {self.spot(after)} instead of {self.spot(before)}"
            for slot, before, after in zip(
                ring.slots, ring.places[:-1], ring.places[1:], strict=True
            )
        ]
        look = f"Look at the colours at {end} and move what stands wrong."
        words = f"{listed(told)} at {end}"
        steps, contacts = self._moves(list(pairwise(ring.places))), self.contacts(ring.places)
        return Fault("moved", end, contacts, words, look, (end,), ring.cost, steps)

    def open(self, found: Found, slot: int) -> Fault:
        """Tell a joint that has no connection; of a core with two joints either, or the core."""
        board, state = self.board, found.state
        mates = board.slots_of[board.wire_of[slot]]
        slots = mates if len(mates) == 2 else (slot,)
        places = [state.places[it] for it in slots]
        ends = tuple(dict.fromkeys(board.end_of[place] for place in places))
        if self.is_shield(slot):
            words = f"shield not landed: {self.core(slot)} on {self._either(places)}"
        else:
            words = f"{self.core(slot)} is open: {self._either(places)}"
        look = f"Tug the core and warm the joint on {self.full(board.contacts[places[0]])}"
        if len(places) > 1:
            look += f", then on {self.full(board.contacts[places[1]])}; else it is broken between"
        kind: FaultKind = "shield-open" if self.is_shield(slot) else "open"
        return Fault(kind, ends[0], self.contacts(places), words, f"{look}.", ends)

    def _either(self, places: Sequence[int]) -> str:
        return " or ".join(self.full(contact) for contact in self.contacts(places))

    def link(self, number: int) -> Fault:
        """Tell a link that was left out."""
        places = self.board.links[number]
        end = self.board.end_of[places[0]]
        spots = listed([self.spot(place) for place in places])
        look = f"Put the link between {spots} at {end} in, or warm its joints."
        return Fault("link-open", end, self.contacts(places), f"no link at {end}: {spots}", look)

    def bridge(self, one: int, other: int) -> Fault:
        """Tell two contacts of one end that are joined and should not be."""
        end, places = self.board.end_of[one], (one, other)
        spots = listed([self.spot(place) for place in places])
        look = f"Look between {spots} at {end} for solder or a stray strand; iron there first."
        return Fault(
            "bridge", end, self.contacts(places), f"bridge between {spots} at {end}", look, (end,)
        )


_MISTAKES: dict[str, tuple[str, str]] = {
    "mirrored": (
        "counted from the mating side at {end}",
        "Hold the plug with the solder side towards you and count the contacts at {end} again.",
    ),
    "shifted": (
        "shifted at {end}: every core {step}",
        "Find the first contact at {end} and move every core by one.",
    ),
    "channels": (
        "{channels} exchanged at {end}",
        "Look at the colours at {end}: {channels} stand in each other's place.",
    ),
    "ends": (
        "ends {ends} exchanged: each has what belongs on the other",
        "Compare both legs' marks with the plan; exchange the marks, or the plugs, of {ends}.",
    ),
    "polarity": (
        "all channels reversed at {end}",
        "Look at the colours at {end}: plus and minus are exchanged in every channel.",
    ),
}


def _spoken(section: str) -> str:
    """Return a section's id as it is spoken: `leg R`."""
    return section.replace("-", " ", 1)


def _channel(channel: str) -> str:
    return _CHANNELS.get(channel, f"channel {channel}")


def _reversed(channel: str) -> str:
    name = _CHANNELS.get(channel)
    return f"{name} channel reversed" if name else f"{_channel(channel)} reversed"
