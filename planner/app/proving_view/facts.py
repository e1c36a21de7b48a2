"""What is derived from a plan to prove its lead: the sweep that is expected, and what to probe."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.app.proving_view.rows import ProbeRow, Row, Section
from planner.proving.expected import Sweep, expected_sweep
from planner.proving.methods import METHOD_WORDS
from planner.proving.probing import IsolationPlan, Probe, isolation_plans, probe_plan

if TYPE_CHECKING:
    from planner.app.fitting.errands import Cancelled
    from planner.model.plan import Plan
    from planner.proving.reading import Pair, Readings
    from planner.wiring.graph import Wiring


def method_words(isolation: IsolationPlan) -> str:
    """Say a way to read isolation, how many readings it takes, and what it leaves out."""
    left = f", {isolation.stop_after.left} pairs left out" if isolation.stop_after else ""
    return f"{METHOD_WORDS[isolation.method]}: {isolation.count}{left}"


@dataclass(frozen=True)
class ProofFacts:
    """The sweep and the probes of a plan, with the isolation by each method."""

    sweep: Sweep | None = None
    continuity: tuple[ProbeRow, ...] = ()
    isolations: tuple[IsolationPlan, ...] = ()
    unseen: tuple[str, ...] = ()

    def isolation(self, method: str) -> IsolationPlan | None:
        """Return the plan of isolation by a method; None before there is one."""
        return next((it for it in self.isolations if it.method == method), None)


def proof_facts(plan: "Plan", wiring: "Wiring", off: "Cancelled") -> ProofFacts:
    """Work out what to probe, and what a sound lead shows; nothing where it is called off."""
    sweep = expected_sweep(plan, wiring)
    if not sweep.paths or off():
        return ProofFacts(sweep)
    probes = probe_plan(plan, wiring)
    continuity = tuple(_row(it) for it in probes.continuity)
    return ProofFacts(sweep, continuity, isolation_plans(plan, wiring), probes.unseen)


def _row(probe: Probe) -> ProbeRow:
    return ProbeRow(probe.one, probe.other, probe.path, probe.gap_mm)


def rows_of(
    facts: ProofFacts, method: str, heard: "frozenset[Pair]", besides: "Iterable[Pair]" = ()
) -> tuple[Row, ...]:
    """Return the rows in the order of the probe plan; a group that beeped is split into pairs.

    `besides` are pairs that were read, or are asked for, though the plan does not have them.
    """
    rows: list[Row] = []
    isolation = facts.isolation(method)
    if facts.continuity:
        rows += [Section("Continuity", "each beeps, within its limit"), *facts.continuity]
    if isolation is not None and isolation.probes:
        rows += [Section("Isolation", "nothing beeps"), *_split(isolation, heard)]
    more = [_besides(facts.sweep, pair) for pair in besides] if facts.sweep is not None else []
    if more:
        rows += [Section("Besides the plan", "read, or asked for by the diagnosis"), *more]
    return tuple(rows)


def _besides(sweep: Sweep, pair: "Pair") -> ProbeRow:
    place = {contact: at for at, contact in enumerate(sweep.contacts)}
    one, other = sorted(pair, key=lambda contact: place.get(contact, -1))
    path = sweep.path(one, other) if sweep.joined(one, other) else None
    return ProbeRow((one,), (other,), path)


def _split(isolation: IsolationPlan, heard: "frozenset[Pair]") -> Iterator[ProbeRow]:
    for probe in isolation.probes:
        row = _row(probe)
        yield row
        if row.key in heard:
            yield from (ProbeRow((one,), (other,), inner=True) for one, other in row.pairs())


def known_readings(readings: "Readings", sweep: Sweep) -> "Readings":
    """Return the readings between contacts that the plan still has."""
    known = frozenset(sweep.contacts)
    kept = tuple(it for it in readings.readings if it.pair <= known)
    return readings if len(kept) == len(readings.readings) else readings.evolve(readings=kept)


def covered(rows: "Iterable[Row]") -> "frozenset[Pair]":
    """Return all pairs that some rows cover."""
    probes = (row for row in rows if isinstance(row, ProbeRow))
    return frozenset(frozenset(pair) for row in probes for pair in row.pairs())
