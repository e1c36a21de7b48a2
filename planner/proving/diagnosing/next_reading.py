"""The reading to take next: the one that splits the rivals best; or the look that does."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from planner.proving.diagnosing.coverage import Coverage
from planner.proving.diagnosing.observed import Clash, Observed, Two, contact_pair
from planner.proving.diagnosing.records import Explanation, NextProbe
from planner.proving.diagnosing.search import Found
from planner.proving.diagnosing.wording import Teller
from planner.units import ohm_text

# Of more rivals than this the likeliest are split.
_MOST_SPLIT = 400
Rival = tuple[float, Found]


def splitting(seen: Observed, rivals: Sequence[Rival]) -> tuple[Two, NDArray[np.bool_]] | None:
    """Return the unread pair that splits the rivals best, and which of them have it joined.

    Of pairs that split alike the first counts; None where no unread pair splits them.
    """
    rivals = rivals[:_MOST_SPLIT]
    if len(rivals) < 2:
        return None
    one, other = _unread(seen)
    share = np.array([likelihood for likelihood, _ in rivals])
    nets = np.array([found.state.label for _, found in rivals])
    joined = np.zeros(len(one))
    for weight, net in zip(share / share.sum(), nets, strict=True):
        joined += weight * (net[one] == net[other])
    worst = np.maximum(joined, 1 - joined).round(9)
    mixed = worst < 1 - 1e-6
    if not mixed.any():
        return _rare(nets, one, other)
    best = int(np.argmin(worst))
    pair = int(one[best]), int(other[best])
    return pair, nets[:, pair[0]] == nets[:, pair[1]]


def _rare(
    nets: NDArray[np.intp], one: NDArray[np.intp], other: NDArray[np.intp]
) -> tuple[Two, NDArray[np.bool_]] | None:
    """Return a pair that tells only what is unlikely apart, if there is one."""
    for a, b in zip(one.tolist(), other.tolist(), strict=True):
        joined = nets[:, a] == nets[:, b]
        if joined.any() and not joined.all():
            return (a, b), joined
    return None


def _unread(seen: Observed) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return the pairs that no reading tells of: their groups are neither one nor apart."""
    group = np.array(seen.group, dtype=np.intp)
    one, other = np.triu_indices(len(group), 1)
    known = np.zeros((len(group), len(group)), dtype=bool)
    for a, b in seen.parted:
        known[a, b] = True
    unread = ~known[group[one], group[other]] & (group[one] != group[other])
    return one[unread], other[unread]


class Advice:
    """Says what to read next, or what to look at."""

    def __init__(self, teller: Teller, seen: Observed) -> None:
        self.teller, self.seen = teller, seen

    def again(self, clash: Clash) -> NextProbe:
        """Ask for a reading of a contradiction once more."""
        return self._probe(clash.apart, "read it again, it contradicts others")

    def wrong(self, pair: Two) -> NextProbe:
        """Ask for a reading once more that nothing explains."""
        return self._probe(pair, "read it again, no fault explains it")

    def unread(self, wanted: Coverage) -> NextProbe | None:
        """Ask for what is still unread of a lead without a fault: continuity first."""
        if wanted.continuity:
            return self._probe(wanted.continuity[0], "a sound lead joins them")
        if wanted.isolation:
            return self._probe(wanted.isolation[0], "a sound lead keeps them apart")
        return None

    def telling(self, rivals: Sequence[Rival], told: Sequence[Explanation]) -> NextProbe | None:
        """Ask for the reading that splits the rivals; `told` are the first of them in words."""
        split = splitting(self.seen, rivals)
        if split is None:
            return None
        pair, joined = split
        if_joined = _first(told, joined, wanted=True)
        if_open = _first(told, joined, wanted=False)
        return self._probe(pair, f"joined means {if_joined}; open means {if_open}")

    def by_ohm(
        self, split: tuple[Two, float, float] | None, told: Sequence[Explanation]
    ) -> NextProbe | None:
        """Ask for the resistance that tells the first two rivals apart."""
        if split is None:
            return None
        pair, first, second = split
        why = (
            f"take the resistance; about {ohm_text(first)} means {told[0].words}, about "
            f"{ohm_text(second)} means {told[1].words}"
        )
        return self._probe(pair, why)

    def _probe(self, pair: Two, why: str) -> NextProbe:
        one, other = contact_pair(self.teller.board, pair)
        words = f"Read {self.teller.full(one)} to {self.teller.full(other)}: {why}."
        return NextProbe((one, other), words)


def _first(told: Sequence[Explanation], joined: NDArray[np.bool_], *, wanted: bool) -> str:
    number = int(np.flatnonzero(joined == wanted)[0])
    return told[number].words if number < len(told) else "something less likely"


def look_for(told: Sequence[Explanation], *, alike: bool) -> str:
    """Say what to look at first; `alike` where no reading can tell the rivals apart."""
    if not told:
        return ""
    if not alike or len(told) < 2:
        return told[0].faults[0].look
    common = set.intersection(*(set(it.faults) for it in told))
    differ = [next((it for it in each.faults if it not in common), None) for each in told[:3]]
    looks = dict.fromkeys(fault.look for fault in differ if fault is not None)
    return " ".join(["No reading tells these apart.", *looks])
