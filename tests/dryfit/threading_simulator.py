"""Every sequence of acts that gets rings round the cable of an I or a Y, tried one by one.

A lead is told by its legs: how thick, which ends it has, and how thick their plugs are. An I is one
leg with two ends, a Y three legs with an end each that meet at a split. A ring is either on the
bench or round one leg, at a place among the others there. It can be put over an end, change places
with its neighbour where one goes over the other, and at the split go on to the next leg: then the
third leg is put through it, with all that is on it, beside the leg that is in the ring already.

Joints only ever close ways, so all that are not made from the start are made in the end.
"""

from collections import deque
from dataclasses import dataclass


@dataclass(frozen=True)
class Ring:
    """One part: mm."""

    bore: float
    outside: float


@dataclass(frozen=True)
class Leg:
    """One leg: mm, and the ends at its near and far side; None is the split."""

    thick: float
    near: str
    far: str | None = None


@dataclass(frozen=True)
class Bench:
    """Rings and legs. A state is a tuple of rings for each leg, from near to far."""

    legs: tuple[Leg, ...]
    plugs: dict
    rings: dict

    def reaches(self, goal, soldered=frozenset(), start=None, may_move=None):
        """Tell whether a state can be reached, from empty legs if no start is given."""
        start = start or ((),) * len(self.legs)
        movers = set(self.rings) if may_move is None else may_move
        seen, todo = {start}, deque([start])
        while todo:
            state = todo.popleft()
            if state == goal:
                return True
            for after in self._acts(state, soldered, movers):
                if after not in seen:
                    seen.add(after)
                    todo.append(after)
        return False

    def _acts(self, state, soldered, movers):
        on = {name for rings in state for name in rings}
        for leg in range(len(self.legs)):
            yield from self._put_on(state, leg, movers - on, soldered)
            yield from self._taken_off(state, leg, movers, soldered)
            yield from self._places_changed(state, leg)
            if self.legs[leg].far is None:
                yield from self._over_the_split(state, leg, movers, soldered)

    def _put_on(self, state, leg, names, soldered):
        for name in names:
            for end, near in self._ends(leg):
                if self._passes(name, leg, end, soldered):
                    rings = (name, *state[leg]) if near else (*state[leg], name)
                    yield _with(state, {leg: rings})

    def _taken_off(self, state, leg, movers, soldered):
        for end, near in self._ends(leg):
            for name in state[leg][:1] if near else state[leg][-1:]:
                if name in movers and self._passes(name, leg, end, soldered):
                    yield _with(state, {leg: state[leg][1:] if near else state[leg][:-1]})

    def _places_changed(self, state, leg):
        rings = state[leg]
        for at in range(len(rings) - 1):
            one, other = self.rings[rings[at]], self.rings[rings[at + 1]]
            if one.bore >= other.outside or other.bore >= one.outside:
                yield _with(state, {leg: (*rings[:at], rings[at + 1], rings[at], *rings[at + 2 :])})

    def _over_the_split(self, state, leg, movers, soldered):
        others = [it for it in range(3) if it != leg]
        for goal, third in (others, others[::-1]):
            for name in state[leg][-1:]:
                beside = min(self.legs[leg].thick, self.legs[goal].thick)
                needs = self._through_mm(third, state, soldered) + beside
                bore = self.rings[name].bore
                if name in movers and bore >= max(needs, self.legs[goal].thick):
                    yield _with(state, {leg: state[leg][:-1], goal: (*state[goal], name)})

    def _through_mm(self, third, state, soldered):
        """Return how thick a leg is with all that is on it."""
        leg = self.legs[third]
        things = [leg.thick, *(self.rings[name].outside for name in state[third])]
        return max(*things, self.plugs[leg.near] if leg.near in soldered else 0)

    def _ends(self, leg):
        yield self.legs[leg].near, True
        if self.legs[leg].far is not None:
            yield self.legs[leg].far, False

    def _passes(self, name, leg, end, soldered):
        plug = self.plugs[end] if end in soldered else 0
        return self.rings[name].bore >= max(self.legs[leg].thick, plug)


def _with(state, changes):
    return tuple(changes.get(leg, rings) for leg, rings in enumerate(state))
