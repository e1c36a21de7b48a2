"""Units with faults planted, and what a meter reads on them."""

from dataclasses import dataclass
from itertools import combinations

from planner.proving.diagnosing.board import board_of
from planner.proving.diagnosing.mistakes import mistakes_of
from planner.proving.diagnosing.state import sound
from planner.proving.reading import Reading, Readings
from planner.wiring.graph import Wiring


@dataclass(frozen=True)
class Bench:
    """A plan with what is derived from it."""

    plan: object
    wiring: Wiring

    @property
    def sound(self):
        return sound(board_of(self.plan, self.wiring))

    @property
    def mistakes(self):
        return mistakes_of(board_of(self.plan, self.wiring), self.wiring)

    def place(self, name):
        """Return the number of a contact, such as `A.R1`."""
        return self.sound.board.number[tuple(name.split("."))]

    def slot(self, name):
        """Return the number of a joint, such as `A.RD` for the core RD at A."""
        end, wire = name.split(".", 1)
        board = self.sound.board
        number = board.wires.index(wire)
        return next(it for it in board.slots_of[number] if board.end_of[board.place_of[it]] == end)


def bench(plan):
    return Bench(plan, Wiring(plan))


def read_all(state, **more):
    """Return every pair's reading of a unit."""
    pairs = combinations(range(len(state.board.contacts)), 2)
    return read_some(state, pairs, **more)


def read_some(state, pairs, **more):
    """Return the readings of some pairs of a unit, by number."""
    contacts, label = state.board.contacts, state.label
    taken = tuple(
        Reading(one=contacts[a], other=contacts[b], joined=label[a] == label[b]) for a, b in pairs
    )
    return Readings(readings=taken, **more)


def spoiled(its, dice, count):
    """Return a unit with so many faults, planted at random: named mistakes, then the others."""
    state, left = its.sound, count
    if its.mistakes and dice.random() < 0.3:
        state, left = state.permuted(dice.choice(its.mistakes).moves), count - 1
    for _ in range(left):
        state = _one_more(state, dice)
    return state


def _one_more(state, dice):
    board = state.board
    kind, end = dice.choice("obx"), dice.choice(list(board.at))
    slots = [it for it, place in enumerate(state.places) if board.end_of[place] == end]
    if kind == "o":
        return state.opened(dice.choice(slots))
    if kind == "b" or len(slots) < 2:
        return state.bridged(*dice.sample(board.at[end], 2))
    return state.exchanged(*dice.sample(slots, 2))
