"""Simulated samples and what a meter shows on them, by a nodal solver of their own.

All of it is invented; the solver shares nothing with the planner.
"""

import random
from dataclasses import dataclass, field
from itertools import combinations

import numpy as np

from planner.proving.identifying import SampleReading, SampleReadings
from planner.proving.reading import Meter

POOR = Meter(zero_ohm=0.3, percent=5.0, offset_ohm=1.0)
FINE = Meter(zero_ohm=0.2, percent=0.5, offset_ohm=0.1)


@dataclass
class Device:
    """Resistors between nodes, contacts on nodes; the truth about them as sets of contacts.

    `capsule` is a microphone: node, node, ohm one way, ohm the other way.
    """

    contacts: list[str] = field(default_factory=list)
    node_of: dict[str, str] = field(default_factory=dict)
    resistors: list[tuple[str, str, float]] = field(default_factory=list)
    capsule: tuple[str, str, float, float] | None = None
    drivers: set[tuple[frozenset[str], frozenset[str]]] = field(default_factory=set)
    returns: set[frozenset[str]] = field(default_factory=set)
    microphone: tuple[frozenset[str], frozenset[str]] | None = None
    unused: set[str] = field(default_factory=set)
    floating: set[str] = field(default_factory=set)
    kind: str = ""

    def ohm(self, plus: str, minus: str) -> float:
        """Return the true resistance from contact to contact, infinite where apart."""
        values = [None]
        if self.capsule is not None:
            values = list(self.capsule[2:])
        for value in values:
            ohm, forward = self._solved(self.node_of[plus], self.node_of[minus], value)
            if value is None or forward == (value == self.capsule[2]):
                return ohm
        return ohm

    def _solved(self, plus: str, minus: str, capsule_ohm: float | None):
        """Return ohm by nodal analysis, and whether the microphone's current runs forward."""
        edges = list(self.resistors)
        if capsule_ohm is not None:
            edges.append((*self.capsule[:2], capsule_ohm))
        nodes = sorted({node for edge in edges for node in edge[:2]} | {plus, minus})
        at = {node: number for number, node in enumerate(nodes)}
        matrix = np.zeros((len(nodes), len(nodes)))
        for one, other, ohm in edges:
            a, b = at[one], at[other]
            matrix[[a, b], [a, b]] += 1 / ohm
            matrix[[a, b], [b, a]] -= 1 / ohm
        reached, grown = {plus}, True
        while grown:
            more = {n for e in edges for n in e[:2] if reached & set(e[:2])} - reached
            reached, grown = reached | more, bool(more)
        if minus not in reached:
            return np.inf, True
        free = [at[node] for node in sorted(reached) if node != minus]
        volts = np.zeros(len(nodes))
        drive = np.array([1.0 if number == at[plus] else 0.0 for number in free])
        volts[free] = np.linalg.solve(matrix[np.ix_(free, free)], drive)
        forward = True
        if self.capsule is not None and set(self.capsule[:2]) <= set(nodes):
            forward = volts[at[self.capsule[0]]] >= volts[at[self.capsule[1]]]
        return float(volts[at[plus]]), forward


def simulated(rng: random.Random, kind: str = "") -> Device:
    """Make a sample: one, two or (headset) two drivers and a microphone, and what else is there."""
    kind = kind or rng.choice(["common"] * 3 + ["separate"] * 3 + ["one", "headset"])
    device = Device(kind=kind)
    legs = {"common": 3, "separate": 4, "one": 2, "headset": 4}[kind]
    extra = rng.choice([0, 0, 1, 1, 2]) if legs < 4 else rng.choice([0, 1, 1])
    numbers = [str(each) for each in range(1, legs + extra + 1)]
    rng.shuffle(numbers)
    has_shell = extra > 0 and rng.random() < 0.6
    ohm = float(np.exp(rng.uniform(np.log(16), np.log(600))))
    drivers = [ohm * rng.uniform(0.97, 1.03) for _ in range(2)]
    names, others = numbers[:legs], numbers[legs:]
    if has_shell:
        others[0] = "shell"
    device.contacts = sorted(names + others)
    for name in device.contacts:
        device.node_of[name] = name
    cold = _wire_up(device, names, drivers, rng)
    for name in others:
        _hang(device, name, cold, rng)
    return device


def _wire_up(device, names, drivers, rng):
    """Put the drivers between the contacts; return the contact that a shell would be tied to."""
    wire = lambda: rng.uniform(0.02, 0.4)  # noqa: E731
    if device.kind == "one":
        device.resistors.append((*names[:2], drivers[0]))
        device.drivers.add(_pair(*names[:2]))
        return names[1]
    if device.kind == "separate":
        for at in (0, 2):
            device.resistors.append((*names[at : at + 2], drivers[at // 2] + wire()))
            device.drivers.add(_pair(*names[at : at + 2]))
        return None
    hot, cold = names[:2], names[2]
    series = rng.choice([rng.uniform(0.01, 0.3), rng.uniform(0.3, 2.0)])
    device.resistors.append((cold, "hub", series))
    for name, ohm in zip(hot, drivers, strict=True):
        device.resistors.append((name, "hub", ohm + wire()))
    device.returns.add(frozenset({cold}))
    device.drivers |= {_pair(name, cold) for name in hot}
    if device.kind == "headset":
        low = rng.uniform(700, 2200)
        device.capsule = (names[3], "hub", low, low * rng.uniform(1.3, 3.0))
        device.microphone = _pair(names[3], cold)
    return cold


def _pair(one, other):
    return (frozenset({one}), frozenset({other}))


def _hang(device, name, cold, rng):
    """Tie a further contact to the return, or leave it unused or floating."""
    if cold is not None and rng.random() < 0.45:
        device.resistors.append((name, cold, rng.uniform(0.02, 0.4)))
        wider = lambda ends: tuple(each | {name} if cold in each else each for each in ends)  # noqa: E731
        device.drivers = {wider(pair) for pair in device.drivers}
        device.returns = set(wider(device.returns))
        if device.microphone is not None:
            device.microphone = wider(device.microphone)
    elif name == "shell":
        device.floating.add(name)
    else:
        device.unused.add(name)


def shown(device: Device, plus: str, minus: str, meter: Meter, rng: random.Random) -> SampleReading:
    """Return what a meter of that error shows; fingers on the probes may bridge an open pair."""
    ohm = device.ohm(plus, minus)
    if not np.isfinite(ohm):
        fingers = rng.random() < 0.3
        value = rng.uniform(1e5, 2e6) if fingers else None
        return SampleReading(one=plus, other=minus, joined=fingers, ohm=value)
    value = ohm * (1 + rng.uniform(-1, 1) * meter.percent / 100)
    value += rng.uniform(-1, 1) * meter.offset_ohm + meter.zero_ohm
    return SampleReading(one=plus, other=minus, joined=True, ohm=max(round(value, 2), 0.0))


def read_all(device: Device, meter: Meter, rng: random.Random, *, both_ways=False):
    """Read every pair, in a random direction or both."""
    readings = []
    for pair in combinations(device.contacts, 2):
        one, other = pair if rng.random() < 0.5 else pair[::-1]
        readings.append(shown(device, one, other, meter, rng))
        if both_ways:
            readings.append(shown(device, other, one, meter, rng))
    return SampleReadings(contacts=tuple(device.contacts), readings=tuple(readings), meter=meter)


def is_right(device: Device, found) -> bool:
    """Tell whether an understanding is the truth: drivers, return, microphone, shell, unused."""
    ends = lambda it: frozenset({frozenset(it.hot), frozenset(it.cold)})  # noqa: E731
    microphone = found.microphone and ends(found.microphone)
    return (
        {ends(it) for it in found.drivers} == {frozenset(pair) for pair in device.drivers}
        and {frozenset(it.contacts) for it in found.returns} == device.returns
        and microphone == (device.microphone and frozenset(device.microphone))
        and set(found.unused) == device.unused
        and {it.contact for it in found.shell if it.floating} == device.floating
    )


def sample(readings, *, contacts=None, meter=None, shells=()) -> SampleReadings:
    """Make readings by hand: figures, None for open, `beep` for joined without a figure."""
    names = tuple(contacts or dict.fromkeys(name for pair in readings for name in pair))
    taken = tuple(
        SampleReading(
            one=one,
            other=other,
            joined=value is not None,
            ohm=None if value == "beep" else value,
        )
        for (one, other), value in readings.items()
    )
    return SampleReadings(
        contacts=names, readings=taken, meter=meter or Meter(), shells=tuple(shells)
    )
