"""The sweep of a plan with its probe plan: what window, sheet and command line all show."""

from dataclasses import dataclass

from planner.model.plan import Plan
from planner.proving.expected import Sweep, expected_sweep
from planner.proving.methods import Method
from planner.proving.probing import IsolationPlan, ProbePlan, isolation_plans, probe_plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Swept:
    """What a sound lead shows, how to probe it, and what the other methods would take."""

    plan: Plan
    sweep: Sweep
    probes: ProbePlan
    methods: tuple[IsolationPlan, ...]


def sweep_plan(plan: Plan, method: Method = "pairs") -> Swept:
    """Return the expected sweep and the probe plan, isolation by a method."""
    wiring = Wiring(plan)
    return Swept(
        plan,
        expected_sweep(plan, wiring),
        probe_plan(plan, wiring, method),
        isolation_plans(plan, wiring),
    )
