"""Joints that conduct, but badly: a resistance above wire and meter, or above that of siblings."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import median

from planner.proving.diagnosing.records import Fault, HighJoint
from planner.proving.diagnosing.wording import Teller
from planner.proving.expected import Path, Sweep
from planner.proving.reading import Contact, Meter, Reading, Readings
from planner.units import ohm_text

SIGMAS = 3.0
_ALIKE = 0.2  # siblings are within this share of the expected resistance
_FEWEST_SIBLINGS = 3
# Scatter of one meter on one lead, and what is no bad joint however little the siblings scatter:
# the last digit of a hand meter and the hold of its probes (from memory).
_SCATTER_OHM, _LEAST_OHM = 0.03, 0.1


@dataclass(frozen=True, slots=True)
class Figure:
    """A joined pair with a figure: what its own metal has, and what is expected, ohm.

    Where the wire is not known, 0 is expected, and only the limit of the path counts.
    """

    reading: Reading
    path: Path
    ohm: float
    expected_ohm: float

    @property
    def excess_ohm(self) -> float:
        """How much it is above what is expected."""
        return self.ohm - self.expected_ohm


@dataclass(frozen=True, slots=True)
class Judged:
    """A figure with how far it is off, in errors of the meter and beside its siblings.

    Where it has too few siblings it stands beside all other figures, by the meter's error.
    """

    figure: Figure
    sigmas: float
    beside: float | None

    @property
    def high(self) -> bool:
        """Tell whether it is too high for its joints to be good."""
        over = self.figure.ohm > self.figure.path.limit_ohm
        if self.beside is None:
            return over or self.sigmas > SIGMAS
        return over or self.beside > SIGMAS

    @property
    def all_high(self) -> bool:
        """Tell whether it is too high, and its siblings as well: then it is the meter."""
        return self.sigmas > SIGMAS and not self.high


def judged(readings: Readings, sweep: Sweep) -> tuple[Judged, ...]:
    """Judge every figure on a pair that a sound lead joins.

    Where the wire is not known there is nothing to compare with; the limit of the path holds still.
    """
    figures, unknown = [], []
    for reading in readings.by_pair.values():
        ohm = readings.own_ohm(reading)
        if ohm is not None and sweep.joined(reading.one, reading.other):
            path = sweep.path(reading.one, reading.other)
            if path.ohm is not None:
                figures.append(Figure(reading, path, ohm, path.ohm))
            else:
                unknown.append(Figure(reading, path, ohm, 0.0))
    limited = (Judged(it, 0.0, 0.0) for it in unknown)
    return (*(_judged(it, figures, readings.meter) for it in figures), *limited)


def _judged(figure: Figure, figures: Sequence[Figure], meter: Meter) -> Judged:
    error = max(meter.error_ohm(figure.ohm), 1e-9)
    others = [it for it in figures if it is not figure]
    alike = [it.excess_ohm for it in others if _alike(it, figure)]
    if len(alike) >= _FEWEST_SIBLINGS:
        middle = median(alike)
        # 1.4826 makes of the median deviation the standard deviation of a normal distribution.
        scatter = 1.4826 * median(abs(it - middle) for it in alike)
        spread = max(scatter, _SCATTER_OHM, figure.ohm * meter.percent / 100)
    elif len(others) >= _FEWEST_SIBLINGS:
        middle, spread = median(it.excess_ohm for it in others), error
    else:
        return Judged(figure, figure.excess_ohm / error, None)
    above = figure.excess_ohm - middle
    beside = above / spread if above > _LEAST_OHM else 0.0
    return Judged(figure, figure.excess_ohm / error, beside)


def _alike(one: Figure, other: Figure) -> bool:
    return abs(one.expected_ohm - other.expected_ohm) <= _ALIKE * other.expected_ohm


def high_joints(teller: Teller, found: Sequence[Judged]) -> tuple[HighJoint, ...]:
    """Tell the high joints, the worst first, each at the contact that no good figure clears."""
    cleared = {
        contact
        for it in found
        if not it.high and not it.all_high
        for contact in (it.figure.path.one, it.figure.path.other)
    }
    high = sorted((it for it in found if it.high), key=lambda it: -it.figure.excess_ohm)
    return tuple(_told(teller, it, cleared) for it in high)


def _told(teller: Teller, it: Judged, cleared: set[Contact]) -> HighJoint:
    path, figure = it.figure.path, it.figure
    suspects = tuple(end for end in (path.one, path.other) if end not in cleared)
    suspects = suspects or (path.one, path.other)
    where = " or ".join(teller.full(contact) for contact in suspects)
    known = it.figure.path.ohm is not None
    most = f"{ohm_text(figure.expected_ohm)} is expected"
    most = most if known else f"at most {ohm_text(it.figure.path.limit_ohm)} is allowed"
    words = f"high joint on {where}: {ohm_text(figure.ohm)} where {most}"
    look = f"Warm the joint on {teller.full(suspects[0])} with a little fresh solder"
    if len(suspects) > 1:
        look += f", then that on {teller.full(suspects[1])}; read again after each"
    ends = tuple(dict.fromkeys(end for end, _ in suspects))
    shown = ohm_text(figure.ohm)
    fault = Fault("high-joint", ends[0], suspects, words, f"{look}.", ends, cost=0, figure=shown)
    return HighJoint(path.one, path.other, figure.ohm, path.ohm, it.sigmas, fault)


def meter_remark(found: Sequence[Judged]) -> str:
    """Say that all figures are high alike, which is the meter's zero or the wire; else nothing."""
    high = [it for it in found if it.all_high]
    if not high:
        return ""
    ohm = ohm_text(median(it.figure.excess_ohm for it in high))
    return (
        f"Paths of one kind all read about {ohm} too high: hold the probes together and set the "
        "meter's zero; else compare the cable's length and gauge with the plan."
    )


# What solder or a strand never has; damp flux, or a load that is still plugged in, does (from
# memory).
_NO_SOLDER_OHM = 5.0


def load_remark(readings: Readings, sweep: Sweep, name: Callable[[Contact], str]) -> str:
    """Say that what joins two nets has more resistance than solder; else nothing."""
    for reading in readings.by_pair.values():
        ohm = readings.own_ohm(reading)
        known = reading.one in sweep.partners and reading.other in sweep.partners
        if ohm is None or ohm < _NO_SOLDER_OHM or not known:
            continue
        if not sweep.joined(reading.one, reading.other):
            return (
                f"{name(reading.one)} to {name(reading.other)} reads {ohm_text(ohm)}, which is "
                "more than solder has: is something still plugged in? Else clean off flux and damp."
            )
    return ""
