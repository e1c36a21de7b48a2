"""Units with faults planted, and what a meter reads on them."""

from itertools import combinations

from planner.proving.reading import Reading, Readings


def read_all(state, **more):
    """Return every pair's reading of a unit."""
    contacts, label = state.board.contacts, state.label
    return Readings(
        readings=tuple(
            Reading(one=contacts[a], other=contacts[b], joined=label[a] == label[b])
            for a, b in combinations(range(len(contacts)), 2)
        ),
        **more,
    )
