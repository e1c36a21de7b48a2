"""Where each shield lands, against the policy that the plan states: three rules share this."""

from collections.abc import Iterator
from dataclasses import dataclass

from planner.checks.context import Context
from planner.model.place import Place
from planner.model.plan import Plan, Section, ShieldPolicy
from planner.wiring.roles import role_of
from planner.wording import listed

POLICY_WORDS = {
    "both-ends": "both ends",
    "source-end": "the source end only",
    "load-end": "the load end only",
    "isolated": "no end",
}
_ROLE_WANTED = {"source-end": "source", "load-end": "load"}


@dataclass(frozen=True)
class LaidShield:
    """A shield: the stated policy, the ends it comes out at, and those where it lands."""

    conductor: str
    policy: ShieldPolicy | None
    comes_out: tuple[str, ...]
    lands: tuple[str, ...]
    unwanted: tuple[str, ...]
    missing: tuple[str, ...]

    @property
    def text(self) -> str:
        """Say the policy and where the shield lands."""
        wanted = POLICY_WORDS[self.policy] if self.policy else "nowhere in particular"
        return f"is to land at {wanted}, and lands at {listed(self.lands)}"

    @property
    def places(self) -> tuple[Place, ...]:
        """The shield at every end where it comes out."""
        ends = self.comes_out or ("",)
        return tuple(sorted(Place(end=end, conductor=self.conductor) for end in ends))


def laid_shields(context: Context) -> Iterator[LaidShield]:
    """Yield every shield of the plan, in its order."""
    plan = context.plan
    for conductor in plan.conductors:
        if conductor.kind == "shield":
            sections = [plan.section_by_id.get(run.section) for run in conductor.runs]
            yield _laid(context, conductor.id, _policy_of(sections))


def _policy_of(sections: list[Section | None]) -> ShieldPolicy | None:
    stated = (section.shield_policy for section in sections if section and section.shield_policy)
    return next(stated, None)


def _laid(context: Context, conductor: str, policy: ShieldPolicy | None) -> LaidShield:
    comes_out = context.wiring.ends_of(conductor)
    lands = tuple(end for end in comes_out if (end, conductor) in context.plan.landing_at)
    wanted = {end: _wanted(context.plan, end, policy) for end in comes_out}
    return LaidShield(
        conductor=conductor,
        policy=policy,
        comes_out=comes_out,
        lands=lands,
        unwanted=tuple(end for end in lands if wanted[end] is False),
        missing=tuple(end for end in comes_out if wanted[end] and end not in lands),
    )


def _wanted(plan: Plan, end: str, policy: ShieldPolicy | None) -> bool | None:
    """Tell whether the policy wants a landing at an end; None where it cannot be told."""
    if policy in {"both-ends", "isolated"}:
        return policy == "both-ends"
    role = role_of(plan, end)
    if policy is None or not role:
        return None
    return role == _ROLE_WANTED[policy]
