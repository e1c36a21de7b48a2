"""Put steps in order: what a step needs comes first, else as the builder wishes, else as usual."""

from collections.abc import Mapping, Sequence

from planner.dryfit.threading_order import Edges, Node, smallest_order

Needs = Mapping[str, Sequence[str]]


def ordered(usual: Sequence[str], needs: Needs, wish: Sequence[str] = ()) -> tuple[str, ...]:
    """Return the order with the smallest places that `needs` allows.

    Places are those in the `wish`; what it does not name stands behind what is usually before it.
    So a step that comes or goes leaves the order of all others as it is. Names that are not in
    `usual` are passed over. Raise ValueError where the needs go round in a ring.
    """
    ranks: dict[Node, tuple[int, ...]] = {it: (at,) for at, it in enumerate(_wished(usual, wish))}
    edges: Edges = {}
    for name in usual:
        for need in needs.get(name, ()):
            if need in ranks:
                edges.setdefault(need, []).append(name)
    found = tuple(str(node) for node in smallest_order(edges, ranks))
    if len(found) < len(ranks):
        msg = f"steps need one another: {sorted(set(usual) - set(found))}"
        raise ValueError(msg)
    return found


def _wished(usual: Sequence[str], wish: Sequence[str]) -> list[str]:
    known = set(usual)
    order = list(dict.fromkeys(name for name in wish if name in known))
    told, before = set(order), ""
    for name in usual:
        if name not in told:
            order.insert(order.index(before) + 1 if before else 0, name)
        before = name
    return order


def places(order: Sequence[str], needs: Needs, name: str) -> range:
    """Return where in an order one name can stand, the others as they are; places from 0."""
    at = {it: place for place, it in enumerate(order)}
    before = [at[it] for it in needs.get(name, ()) if it in at]
    after = [at[it] for it in order if name in needs.get(it, ())]
    return range(max(before, default=-1) + 1, min(after, default=len(order)))
