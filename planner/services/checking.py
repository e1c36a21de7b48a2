"""Check a plan, and sum up what was found."""

from collections.abc import Iterable

from planner.checks.context import Context
from planner.checks.finding import Finding, Verdict
from planner.checks.runner import run
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


def check_plan(
    plan: Plan, known_pinouts: Iterable[PinoutRecord] = (), wiring: Wiring | None = None
) -> tuple[Finding, ...]:
    """Return all findings, sorted by weight, code, place; what was accepted is among them."""
    return run(Context(plan, wiring or Wiring(plan), tuple(known_pinouts)))


def verdict(findings: Iterable[Finding]) -> Verdict:
    """Return `stop` or `caution` if there is one, accepted or not; else `clear`."""
    weights = {finding.weight for finding in findings}
    if "stop" in weights:
        return "stop"
    return "caution" if "caution" in weights else "clear"
