"""Run every rule over a plan; a rule that crashes is named and hides no other."""

import logging
from collections.abc import Iterable

from planner.checks.context import Context
from planner.checks.finding import Finding
from planner.checks.registry import Rule, all_rules

_LOG = logging.getLogger(__name__)


def run(context: Context, rules: Iterable[Rule] | None = None) -> tuple[Finding, ...]:
    """Return the findings of the rules (all of them if none are given), sorted."""
    found: list[Finding] = []
    for rule in all_rules() if rules is None else rules:
        found += _run_one(rule, context)
    return tuple(sorted(found, key=lambda finding: finding.sort_key))


def _run_one(rule: Rule, context: Context) -> list[Finding]:
    found: list[Finding] = []
    try:
        found.extend(rule.findings(context))
    except Exception as error:  # noqa: BLE001 - whatever a rule does, the others must go on
        _LOG.debug("the rule %s crashed", rule.code, exc_info=True)
        found.append(_crash(rule, error))
    return found


def _crash(rule: Rule, error: Exception) -> Finding:
    return Finding(
        code="rule-crashed",
        weight="caution",
        what=f"The check {rule.code!r} stopped short: {type(error).__name__}: {error}.",
        why="What this check looks for has not been looked for, so the plan may hide it.",
        mend="Look over that point by hand, and report the fault with the plan.",
        where=(),
        title=f"Check {rule.code!r} did not run",
    )
