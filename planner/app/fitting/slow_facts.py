"""What takes its time to know of an end: the order of soldering, the iron's room, the sleeves."""

from dataclasses import dataclass, field

from planner.dryfit.access import Access
from planner.dryfit.fit import EndFit
from planner.dryfit.sleeves import SleevePlan, sleeves_for
from planner.model.plan import Plan

# With more leads than this the slow facts and the full picture are made off the UI thread.
MANY = 12


@dataclass(frozen=True)
class SlowFacts:
    """Ways in to the joints in the order of soldering, and what is advised to put on."""

    access: tuple[Access, ...] = ()
    sleeves: SleevePlan = field(default_factory=SleevePlan)

    @property
    def order(self) -> tuple[str, ...]:
        """The contacts in the order of soldering."""
        return tuple(access.contact for access in self.access)


def slow_facts(plan: Plan, fit: EndFit) -> SlowFacts:
    """Work the slow facts out."""
    return SlowFacts(fit.access, sleeves_for(plan, fit))
