"""Put steps in order: what a step needs comes first, else as the builder wishes, else as usual."""

from collections.abc import Mapping, Sequence

from planner.dryfit.threading_order import Edges, Node, smallest_order

Needs = Mapping[str, Sequence[str]]


def ordered(usual: Sequence[str], needs: Needs, wish: Sequence[str] = ()) -> tuple[str, ...]:
    """Return the order with the smallest places that `needs` allows.

    Places are those in the `wish`, if there is one; a name that it does not tell stands behind what
    is usually before it. Names that are not in `usual` are passed over. So a step that comes or
    goes leaves the others as they are. Raise ValueError where the needs go round in a ring.
    """
    first = _smallest(usual, needs)
    return _smallest(_wished(first, needs, wish), needs) if wish else first


def _smallest(wanted: Sequence[str], needs: Needs) -> tuple[str, ...]:
    ranks: dict[Node, tuple[int, ...]] = {name: (at,) for at, name in enumerate(wanted)}
    edges: Edges = {}
    for name in wanted:
        for need in needs.get(name, ()):
            if need in ranks:
                edges.setdefault(need, []).append(name)
    found = tuple(str(node) for node in smallest_order(edges, ranks))
    if len(found) < len(ranks):
        msg = f"steps need one another: {sorted(set(wanted) - set(found))}"
        raise ValueError(msg)
    return found


def _wished(usual: Sequence[str], needs: Needs, wish: Sequence[str]) -> list[str]:
    """Return all names as wished, and each other one behind what is usually before it.

    Where that would be before something that it needs, or behind what needs it, it stands as near
    as it may: then nothing else has to give way.
    """
    known = set(usual)
    order = list(dict.fromkeys(name for name in wish if name in known))
    told, before = set(order), ""
    for name in usual:
        if name not in told:
            free = places([*order, name], needs, name)
            wanted = order.index(before) + 1 if before else 0
            order.insert(max(min(wanted, free.stop), free.start), name)
        before = name
    return order


def places(order: Sequence[str], needs: Needs, name: str) -> range:
    """Return where in an order one name can stand, the others as they are; places from 0."""
    at = {it: place for place, it in enumerate(order)}
    before = [at[it] for it in needs.get(name, ()) if it in at]
    after = [at[it] for it in order if name in needs.get(it, ())]
    return range(max(before, default=-1) + 1, min(after, default=len(order)))
