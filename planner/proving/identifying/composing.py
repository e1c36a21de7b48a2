"""From a weighed layout to drivers, returns, shell and microphone with their figures."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from planner.proving.identifying.answer import (
    CommonReturn,
    Contacts,
    Driver,
    Found,
    Microphone,
    ShellState,
)
from planner.proving.identifying.fitting import Floats, spread_ohm
from planner.proving.identifying.hanging import hanging_together
from planner.proving.identifying.layouts import Layout, Net, Piece
from planner.proving.identifying.sample import SampleReadings
from planner.proving.identifying.weighing import Weighed, same_each_way

COVERAGE = 2.0  # standard deviations in a printed +-


def compose(sample: SampleReadings, weighed: Weighed, rank: int) -> Found:
    """Return what the layout of a rank says of the sample."""
    return _Composer(sample, weighed, rank).found()


class _Composer:
    def __init__(self, sample: SampleReadings, weighed: Weighed, rank: int) -> None:
        self.sample = sample
        self.layout: Layout = weighed.layouts[rank]
        self.edges = _edges(sample, weighed, rank)

    def found(self) -> Found:
        elements = list(self._elements())
        loose = [piece.nets[0] for piece in self.layout if piece.kind == "loose"]
        alone = [self._names(net)[0] for net in loose if len(net) == 1]
        return Found(
            groups=tuple(
                self._names(net) for piece in self.layout for net in piece.nets if len(net) > 1
            ),
            drivers=tuple(it for it in elements if not isinstance(it, Microphone)),
            returns=tuple(self._returns()),
            microphone=next((it for it in elements if isinstance(it, Microphone)), None),
            shell=tuple(self._shells()),
            unused=tuple(name for name in alone if not self.sample.is_shell(name)),
            in_a_row=any(piece.kind == "chain" for piece in self.layout),
        )

    def _names(self, net: Net) -> Contacts:
        return tuple(self.sample.contacts[at] for at in sorted(net))

    def _pieces(self) -> Iterator[tuple[Piece, int]]:
        first = 0
        for piece in self.layout:
            yield piece, first
            first += piece.edges

    def _elements(self) -> Iterator[Driver]:
        for piece, first in self._pieces():
            for number in range(piece.elements):
                hot, cold = piece.ends(number)
                ends = (self._names(hot), self._names(cold) if cold is not None else ())
                if piece.kind == "pair":
                    ends = (ends[1], ends[0])  # in the order of the contacts
                edge = self.edges[first + number]
                if number == piece.microphone:
                    shown = self._differs(piece.nets)
                    yield Microphone(*ends, edge.ohm, edge.error_ohm, edge.measured, shown)
                else:
                    yield Driver(*ends, edge.ohm, edge.error_ohm, edge.measured)

    def _differs(self, nets: Sequence[Net]) -> bool:
        """Tell whether a pair of the piece was read differently each way round."""
        inside = {name for net in nets for name in self._names(net)}
        return any(
            seen.one_way or (len(seen.figures) > 1 and not same_each_way(self.sample, seen))
            for pair, seen in self.sample.seen.items()
            if set(pair) <= inside
        )

    def _returns(self) -> Iterator[CommonReturn]:
        for piece, first in self._pieces():
            if piece.kind == "common":
                edge = self.edges[first + piece.elements]
                names, low = self._names(piece.nets[0]), edge.ohm < edge.error_ohm
                yield CommonReturn(names, edge.ohm, edge.error_ohm, low, edge.measured)

    def _shells(self) -> Iterator[ShellState]:
        for piece in self.layout:
            for net in piece.nets:
                for name in self._names(net):
                    if self.sample.is_shell(name):
                        others = tuple(it for it in self._names(net) if it != name)
                        yield ShellState(name, others, piece.kind == "loose" and not others)


@dataclass(frozen=True, slots=True)
class _Edge:
    ohm: float
    error_ohm: float
    measured: bool


def _edges(sample: SampleReadings, weighed: Weighed, rank: int) -> list[_Edge]:
    """Return the resistance of each edge with its +-, from the readings alone where they suffice.

    Where they don't, what is usual fills the gap, and the +- grows accordingly. A reading through a
    microphone says nothing of the rest.
    """
    fits, width = weighed.fits, weighed.fits.paths.shape[2] - 1
    ohms = np.exp(fits.logs[rank, :width])
    errors = COVERAGE * ohms * np.sqrt(np.diag(fits.covariance[rank])[:width])
    measured = np.zeros(width, dtype=bool)
    paths = fits.paths[rank, :, :width]
    through = paths[:, _microphones(weighed.layouts[rank])].any(axis=1)
    measured[_microphones(weighed.layouts[rank])] = through.any()
    seen = np.array([it.ohm for it in weighed.figures])
    for group in _apart(paths[paths.any(axis=1) & ~through]):
        rows = paths[:, group].any(axis=1) & ~through
        solved = _solved(paths[rows][:, group], seen[rows], spread_ohm(sample.meter, seen[rows]))
        if solved is not None:
            ohms[group], errors[group] = solved
            measured[group] = True
    for edge in _microphones(weighed.layouts[rank]):
        if through.any():  # what was read, less what is known: not drawn towards what is usual
            known = np.where(measured, ohms, 0.0)
            known[edge] = 0.0
            ohms[edge] = (seen[through] - paths[through] @ known).mean()
    figures = (np.maximum(ohms, 0.0).tolist(), errors.tolist(), measured.tolist())
    return [_Edge(*each) for each in zip(*figures, strict=True)]


def _microphones(layout: Layout) -> list[int]:
    """Return the number of the edge that is a microphone, if there is one."""
    found, first = [], 0
    for piece in layout:
        if piece.microphone is not None:
            found.append(first + piece.microphone)
        first += piece.edges
    return found


def _apart(paths: Floats) -> list[list[int]]:
    """Return the edges in sets that share no reading."""
    sets: list[set[int]] = hanging_together(set(np.flatnonzero(row).tolist()) for row in paths)
    return [sorted(each) for each in sets]


def _solved(paths: Floats, seen: Floats, spread: Floats) -> tuple[Floats, Floats] | None:
    """Return edges and +- in ohm by weighted least squares; None if too little was read."""
    if np.linalg.matrix_rank(paths) < paths.shape[1]:
        return None
    scaled = paths / spread[:, None]
    covariance = np.linalg.inv(scaled.T @ scaled)
    errors: Floats = COVERAGE * np.sqrt(np.diag(covariance))
    return covariance @ scaled.T @ (seen / spread), errors
