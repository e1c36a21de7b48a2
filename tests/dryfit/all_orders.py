"""Independent references for the order of soldering: every order, and every set of joints."""

from itertools import permutations

SIDES = 32
# From where a hand reaches: 60 degrees to either side, in steps of 360 / 32 degrees.
REACH = range(-5, 6)


class AllOrders:
    """The room of the iron by plain lookup, and the best of all orders that ranks allow."""

    def __init__(self, room, ranks):
        self.made, self.by = room.made.tolist(), room.by.tolist()
        self.ranks, self.count = ranks, len(ranks)
        self.known = {}

    def room(self, joint, there):
        """Return the room at a joint from each direction with the joints of a set in place."""
        if (joint, there) not in self.known:
            row = [
                min([self.made[joint][d], *(self.by[joint][d][other] for other in there)])
                for d in range(SIDES)
            ]
            self.known[joint, there] = row
        return self.known[joint, there]

    def margin(self, order):
        """Return the smallest room in an order, with the best direction at each joint."""
        there, least = frozenset(), None
        for joint in order:
            most = max(self.room(joint, there))
            least = most if least is None else min(least, most)
            there |= {joint}
        return least

    def orders(self):
        """Yield every order in which no joint of lower rank comes after one of higher rank."""
        for order in permutations(range(self.count)):
            ranks = [self.ranks[joint] for joint in order]
            if ranks == sorted(ranks):
                yield order

    def best_margin(self):
        return max(self.margin(order) for order in self.orders())

    def sides(self, joint, there, need):
        """Return the sides of the hand from which a joint has the room that it needs."""
        good = [room >= need for room in self.room(joint, there)]
        return {side for side in range(SIDES) if any(good[(side + it) % SIDES] for it in REACH)}

    def clampings(self, order, needs):
        """Return in how many clampings an order can be done; None if a joint lacks its room."""
        there, now, count = frozenset(), set(), 0
        for joint in order:
            sides = self.sides_of(joint, there, needs)
            if not sides:
                return None
            count += not now & sides
            now = now & sides or sides
            there |= {joint}
        return count

    def sides_of(self, joint, there, needs):
        key = ("sides", joint, there)
        if key not in self.known:
            self.known[key] = self.sides(joint, there, needs[joint])
        return self.known[key]

    def fewest_by_orders(self, needs):
        """Return the fewest clampings of all orders, each looked at."""
        found = (self.clampings(order, needs) for order in self.orders())
        return min(count for count in found if count is not None)

    def fewest_by_sets(self, needs):
        """Return the fewest clampings by the cost of each set of joints with each last side."""
        costs = {frozenset(): dict.fromkeys(range(SIDES), 1)}
        for _ in range(self.count):
            larger = {}
            for there, by_side in costs.items():
                cheapest = min(by_side.values())
                for joint in self.next_ones(there):
                    cost = larger.setdefault(there | {joint}, {})
                    for side in self.sides_of(joint, there, needs):
                        clamped = cheapest + 1 if there else 1
                        paid = min(by_side.get(side, clamped), clamped)
                        cost[side] = min(cost.get(side, paid), paid)
            costs = {there: by_side for there, by_side in larger.items() if by_side}
        return min(costs[frozenset(range(self.count))].values())

    def next_ones(self, there):
        left = [joint for joint in range(self.count) if joint not in there]
        lowest = min(self.ranks[joint] for joint in left)
        return [joint for joint in left if self.ranks[joint] == lowest]

    def forward(self):
        """Return the smallest room if always the joint with most room now is soldered next."""
        order, there = [], frozenset()
        while len(order) < self.count:
            order.append(max(self.next_ones(there), key=lambda it: max(self.room(it, there))))
            there |= {order[-1]}
        return self.margin(order)
