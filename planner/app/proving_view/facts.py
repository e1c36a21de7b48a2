"""What is derived from a plan to prove its lead: the sweep that is expected, and what to probe."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.app.proving_view.rows import ProbeRow, Row, Section
from planner.proving.expected import Sweep, expected_sweep
from planner.proving.probing import IsolationPlan, Probe, isolation_plans, probe_plan

if TYPE_CHECKING:
    from planner.app.fitting.errands import Cancelled
    from planner.model.plan import Plan
    from planner.proving.reading import Pair
    from planner.wiring.graph import Wiring

METHOD_WORDS = {
    "pairs": "Pairs, the nearest first",
    "against-the-rest": "Each against the rest",
    "gangs": "Gangs, clipped together",
    "gangs-of-near": "Gangs of those that are near",
}


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


def rows_of(facts: ProofFacts, method: str, heard: "frozenset[Pair]") -> tuple[Row, ...]:
    """Return the rows in the order of the probe plan; a group that beeped is split into pairs."""
    rows: list[Row] = []
    isolation = facts.isolation(method)
    if facts.continuity:
        rows += [Section("Continuity", "each beeps, within its limit"), *facts.continuity]
    if isolation is not None and isolation.probes:
        rows += [Section("Isolation", "nothing beeps"), *_split(isolation, heard)]
    return tuple(rows)


def _split(isolation: IsolationPlan, heard: "frozenset[Pair]") -> Iterator[ProbeRow]:
    for probe in isolation.probes:
        row = _row(probe)
        yield row
        if row.key in heard:
            yield from (ProbeRow((one,), (other,), inner=True) for one, other in row.pairs())
