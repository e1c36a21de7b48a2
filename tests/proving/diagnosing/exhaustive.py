"""Every set of faults up to a cost, from scratch: a second, plain way to the smallest ones.

Works on the plan's own records and knows nothing of the search. A fault is: one joint open, one
link left out, two conductors exchanged at an end, one put on an empty contact, two contacts of one
end bridged, or a named mistake (given by the test as contact for contact), two at most and not at
one end.
"""

from itertools import combinations


class Lead:
    """A lead's joints by name: (end, conductor) on a contact."""

    def __init__(self, plan, mistakes=()):
        self.contacts = [
            (end.id, it.id) for end in plan.ends for it in plan.connector_of(end.id).contacts
        ]
        self.joints = [(it.end, it.conductor) for it in plan.landings]
        self.start = tuple((it.end, it.contact) for it in plan.landings)
        self.links = [
            ((it.end, it.contacts[0]), (it.end, other))
            for it in plan.links
            for other in it.contacts[1:]
        ]
        self.mistakes = mistakes

    def first(self):
        """Yield (cost, places) with the named mistakes alone."""
        yield 0, self.start
        for one in self.mistakes:
            yield 1, self.after(self.start, one)
        for one, other in combinations(self.mistakes, 2):
            if not {end for end, _ in one} & {end for end, _ in other}:
                yield 2, self.after(self.after(self.start, one), other)

    @staticmethod
    def after(places, mistake):
        return tuple(mistake.get(place, place) for place in places)

    def more(self, state):
        """Yield every state with one fault more."""
        places, opens, cut, bridges = state
        for joint in range(len(places)):
            yield places, opens | {joint}, cut, bridges
        for link in range(len(self.links)):
            yield places, opens, cut | {link}, bridges
        for pair in combinations(self.contacts, 2):
            if pair[0][0] == pair[1][0]:
                yield places, opens, cut, bridges | {pair}
        for new in self.landed_otherwise(places):
            yield new, opens, cut, bridges

    def landed_otherwise(self, places):
        """Yield the places after an exchange of two conductors, or a move to an empty contact."""
        for one, other in combinations(range(len(places)), 2):
            if places[one][0] == places[other][0] and places[one] != places[other]:
                new = list(places)
                new[one], new[other] = places[other], places[one]
                yield tuple(new)
        for contact in set(self.contacts) - set(places):
            for joint, place in enumerate(places):
                if contact[0] == place[0]:
                    yield (*places[:joint], contact, *places[joint + 1 :])

    def parts(self, state):
        """Return the contacts of a state in the sets that hang together."""
        places, opens, cut, bridges = state
        net_of = {contact: {contact} for contact in self.contacts}

        def join(one, other):
            if net_of[one] is not net_of[other]:
                net_of[one] |= net_of[other]
                for contact in net_of[other]:
                    net_of[contact] = net_of[one]

        landed = {}
        for joint, (_, wire) in enumerate(self.joints):
            if joint not in opens:
                join(landed.setdefault(wire, places[joint]), places[joint])
        for one, other in bridges:
            join(one, other)
        for number, (one, other) in enumerate(self.links):
            if number not in cut:
                join(one, other)
        return frozenset(frozenset(net) for net in net_of.values())

    def costs(self, deepest):
        """Return the smallest cost of every way to hang together that `deepest` faults can make."""
        waiting = {}
        none = frozenset()
        for cost, places in self.first():
            waiting.setdefault(cost, set()).add((places, none, none, none))
        found, seen = {}, set()
        for cost in range(deepest + 1):
            for state in waiting.get(cost, ()):
                if state in seen:
                    continue
                seen.add(state)
                found.setdefault(self.parts(state), cost)
                if cost < deepest:
                    waiting.setdefault(cost + 1, set()).update(self.more(state))
        return found


def fits(parts, joined, apart):
    """Tell whether readings agree with a way to hang together."""
    at = {contact: number for number, net in enumerate(parts) for contact in net}
    return all(at[a] == at[b] for a, b in joined) and all(at[a] != at[b] for a, b in apart)
