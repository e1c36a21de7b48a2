"""Fit resistances to many layouts at once: least squares in log R, with what is usual beside.

Each edge of a layout has a resistance exp(u). A reading is the sum over its path. What is usual
(drivers of one sample are alike, a return's wire is short) enters as further, weak readings.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from planner.proving.identifying.layouts import Layout
from planner.proving.identifying.sample import SampleReadings
from planner.proving.reading import Meter

Floats = NDArray[np.floating[Any]]

# Typical figures, from memory: (median ohm, spread of its logarithm).
DRIVER = (80.0, 1.3)  # the drivers' common impedance, 16 to 600 ohm
ALIKE = 0.12  # spread between the drivers of one sample
MICROPHONE = (1500.0, 0.7)
RETURN = (0.3, 1.2)  # the own wire of a return
WAYWARD = 0.4  # spread of a reading through a microphone, which is no resistor
PROBE_OHM = 0.2  # what the probes' touch adds or leaves out
SHORT_OHM = 0.7  # spread of what a joined pair reads
NET_OHM = 0.6  # spread of what wire within a net adds to its readings

_ROUNDS = 14
_LONGEST_STEP = 1.2
_FLOOR_OHM = 0.05
_SETTLED = 1e-6


@dataclass(frozen=True, slots=True)
class Figure:
    """One reading with a figure, by contact numbers."""

    one: int
    other: int
    ohm: float


@dataclass(frozen=True, slots=True)
class Fits:
    """The fit of each layout: log resistance of its edges, their covariance, and the costs.

    `paths` is 1 where an edge is on a reading's path (layout, reading, edge); the last edge is the
    drivers' common impedance. `cost` is minus twice the logarithm of how likely the readings are
    under the layout (Laplace's approximation).
    """

    logs: Floats
    covariance: Floats
    paths: Floats
    residuals: Floats
    strain: Floats
    cost: Floats

    @property
    def chi_square(self) -> Floats:
        """Squared residuals of the readings, and how far off a microphone or a return's wire is.

        Unlike drivers do not count: they are rare, but contradict nothing.
        """
        squares: Floats = (self.residuals**2).sum(axis=1) + self.strain
        return squares

    def of(self, order: NDArray[np.int_]) -> "Fits":
        """Return the fits of some of the layouts, in an order."""
        parts = (self.logs, self.covariance, self.paths, self.residuals, self.strain, self.cost)
        return Fits(*(part[order] for part in parts))


def figures_of(sample: SampleReadings) -> list[Figure]:
    """Return all readings with a figure."""
    place = sample.place_of
    return [
        Figure(place[seen.pair[0]], place[seen.pair[1]], ohm)
        for seen in sample.seen.values()
        for ohm in seen.figures
    ]


def spread_ohm(meter: Meter, ohm: Floats) -> Floats:
    """Return the standard deviation of a reading whose true value is `ohm`.

    An error of which only the bound is known counts as rectangular: bound / sqrt 3 (JCGM 100:2008,
    4.3.7, from memory).
    """
    bound = ohm * meter.percent / 100 + meter.offset_ohm
    spread: Floats = np.sqrt(bound**2 / 3 + PROBE_OHM**2)
    return spread


class Prior:
    """What is usual of the edges of each layout, as a mean and a precision matrix."""

    def __init__(self, told: Sequence[Layout], width: int) -> None:
        codes = np.array([_codes(layout, width) for layout in told]).reshape(len(told), width)
        alike = np.where(codes == _DRIVER_EDGE, ALIKE**-2, 0.0)
        self._lone = np.zeros((len(told), width + 1))
        self.mean = np.zeros_like(self._lone)
        self.wayward = np.zeros_like(self._lone)
        for code, (ohm, spread) in ((_MICROPHONE_EDGE, MICROPHONE), (_RETURN_EDGE, RETURN)):
            self._lone[:, :width] += np.where(codes == code, spread**-2, 0.0)
            self.mean[:, :width] += np.where(codes == code, math.log(ohm), 0.0)
        self.mean[:, :width] += np.where(codes == _DRIVER_EDGE, math.log(DRIVER[0]), 0.0)
        self.mean[:, width] = math.log(DRIVER[0])
        self.wayward[:, :width] = codes == _MICROPHONE_EDGE
        own = np.arange(width)
        self.precision = np.zeros((len(told), width + 1, width + 1))
        self.precision[:, own, own] = alike + self._lone[:, :width] + (codes == _SPARE)
        self.precision[:, own, width] = self.precision[:, width, own] = -alike
        self.precision[:, width, width] = DRIVER[1] ** -2 + alike.sum(axis=1)

    def cost(self, logs: Floats) -> Floats:
        """Return minus twice the log density of the edges, but for a constant."""
        drift = logs - self.mean
        cost: Floats = np.einsum("hp,hpq,hq->h", drift, self.precision, drift)
        cost -= np.linalg.slogdet(self.precision)[1]
        return cost

    def strain(self, logs: Floats) -> Floats:
        """Return how far off the edges are that have no like, as chi-square."""
        strain: Floats = (self._lone * (logs - self.mean) ** 2).sum(axis=1)
        return strain


_SPARE, _DRIVER_EDGE, _MICROPHONE_EDGE, _RETURN_EDGE = range(4)


def _codes(layout: Layout, width: int) -> list[int]:
    """Return what each edge of a layout is, filled up with spare ones."""
    codes = []
    for piece in layout:
        kinds = [_DRIVER_EDGE] * piece.elements
        if piece.microphone is not None:
            kinds[piece.microphone] = _MICROPHONE_EDGE
        codes += kinds + [_RETURN_EDGE] * (piece.edges - piece.elements)
    return codes + [_SPARE] * (width - len(codes))


def paths_of(
    told: Sequence[Layout], pairs: Sequence[tuple[int, int]], width: int
) -> tuple[Floats, NDArray[np.bool_], NDArray[np.bool_]]:
    """Return for each layout and pair: the edges between, whether joined, whether in a wide net."""
    paths = np.zeros((len(told), len(pairs), width + 1))
    joined = np.zeros((len(told), len(pairs)), dtype=np.bool_)
    wide = np.zeros_like(joined)
    for row, layout in enumerate(told):
        where = _places(layout)
        for column, (one, other) in enumerate(pairs):
            (piece, net, first), (piece_2, net_2, _) = where[one], where[other]
            if piece != piece_2:
                continue
            joined[row, column] = net == net_2
            nets = layout[piece].nets
            wide[row, column] = len(nets[net]) + len(nets[net_2]) > 2
            if net != net_2:
                edges = [first + edge for edge in layout[piece].path(net, net_2)]
                paths[row, column, edges] = 1
    return paths, joined, wide


def _places(layout: Layout) -> dict[int, tuple[int, int, int]]:
    """Return for each contact its piece, its net in it, and the piece's first edge."""
    places, first = {}, 0
    for at, piece in enumerate(layout):
        for number, net in enumerate(piece.nets):
            for contact in net:
                places[contact] = (at, number, first)
        first += piece.edges
    return places


def edges_at_most(told: Sequence[Layout]) -> int:
    """Return the largest number of edges of a layout."""
    return max((sum(piece.edges for piece in layout) for layout in told), default=0)


def fit(told: Sequence[Layout], figures: Sequence[Figure], meter: Meter) -> Fits:
    """Fit every layout to the figures by damped Gauss-Newton steps."""
    width = edges_at_most(told)
    prior = Prior(told, width)
    task = _Task.of(told, figures, meter, prior)
    logs = _start(prior, task.seen, width)
    for _ in range(_ROUNDS if figures else 0):
        slope, miss, hessian = task.around(logs)
        pull = np.einsum("hop,ho->hp", slope, task.weight * miss)
        pull += np.einsum("hpq,hq->hp", prior.precision, prior.mean - logs)
        step = np.linalg.solve(hessian, pull[..., None])[..., 0]
        logs = logs + np.clip(step, -_LONGEST_STEP, _LONGEST_STEP)
        if np.abs(step).max() < _SETTLED:
            break
    _, miss, hessian = task.around(logs)
    residuals = np.where(task.joined, task.seen / task.short_spread, miss / task.log_spread)
    cost = task.cost(residuals) + prior.cost(logs) + np.linalg.slogdet(hessian)[1]
    return Fits(logs, np.linalg.inv(hessian), task.paths, residuals, prior.strain(logs), cost)


@dataclass(frozen=True, slots=True)
class _Task:
    """The readings as each layout sees them: path, spread, and whether it takes them for joined."""

    paths: Floats
    joined: NDArray[np.bool_]
    seen: Floats
    log_spread: Floats
    short_spread: Floats
    prior: Prior

    @classmethod
    def of(
        cls, told: Sequence[Layout], figures: Sequence[Figure], meter: Meter, prior: Prior
    ) -> "_Task":
        pairs = [(it.one, it.other) for it in figures]
        paths, joined, wide = paths_of(told, pairs, edges_at_most(told))
        seen = np.maximum(np.array([it.ohm for it in figures]), _FLOOR_OHM)
        square = spread_ohm(meter, seen)[None, :] ** 2 + np.where(wide, NET_OHM**2, 0.0)
        through = np.einsum("hop,hp->ho", paths, prior.wayward) > 0
        log_spread = np.sqrt(square / seen**2 + np.where(through, WAYWARD**2, 0.0))
        return cls(paths, joined, seen, log_spread, np.sqrt(square + SHORT_OHM**2), prior)

    @property
    def weight(self) -> Floats:
        """The weight of each reading in the fit; one taken for joined has no slope anyway."""
        weight: Floats = self.log_spread**-2
        return weight

    def around(self, logs: Floats) -> tuple[Floats, Floats, Floats]:
        """Return the slope of each log reading by each log edge, the miss, and the Hessian."""
        parts = self.paths * np.exp(logs)[:, None, :]
        total = parts.sum(axis=2)
        safe = np.where(total > 0, total, 1.0)
        slope = parts / safe[..., None]
        miss = np.where(total > 0, np.log(self.seen) - np.log(safe), 0.0)
        hessian = np.einsum("hop,ho,hoq->hpq", slope, self.weight, slope) + self.prior.precision
        return slope, miss, hessian

    def cost(self, residuals: Floats) -> Floats:
        """Return minus twice the log density of the readings in ohm, but for a constant."""
        scale = np.where(self.joined, self.short_spread, self.log_spread * self.seen)
        cost: Floats = (residuals**2 + 2 * np.log(scale)).sum(axis=1)
        return cost


def _start(prior: Prior, seen: Floats, width: int) -> Floats:
    logs = prior.mean.copy()
    own = seen[seen > 3]
    if own.size:
        usual = math.log(float(np.median(own)) * 0.75)
        alike = prior.precision[:, width, :] != 0
        logs = np.where(alike, usual, logs)
    return logs
