"""Whether a plan hangs together: every name it uses exists, and its sections form a tree."""

from planner.model.plan import Plan
from planner.problem import Problem


def integrity_problems(plan: Plan) -> tuple[Problem, ...]:
    """List what does not hang together; `where` is the key path inside the plan."""
    return ()
