"""What a rule may look at: the plan, and what is derived from it once for all rules."""

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from planner.checks.wording import Words
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.wiring.exchanges import Exchanges
from planner.wiring.graph import Wiring
from planner.wiring.joins import Joins
from planner.wiring.reach import Reach

if TYPE_CHECKING:
    from planner.dryfit.fit import EndFit


@dataclass(frozen=True)
class Context:
    """One plan under check. `known_pinouts` are the library's records."""

    plan: Plan
    wiring: Wiring
    known_pinouts: tuple[PinoutRecord, ...] = ()

    @cached_property
    def joins(self) -> Joins:
        """What the nets join that should stay apart."""
        return Joins(self.wiring)

    @cached_property
    def exchanges(self) -> Exchanges:
        """Which channels are crossed or reversed, and which nets are bridges."""
        return Exchanges(self.joins)

    @cached_property
    def reach(self) -> Reach:
        """Which signals do not arrive where they are needed."""
        return Reach(self.joins, self.exchanges.hub)

    @cached_property
    def words(self) -> Words:
        """The names of things in findings."""
        return Words(self.wiring)

    @cached_property
    def fit(self) -> "tuple[EndFit, ...]":
        """The dry fit of every end, computed when a rule first asks for it."""
        from planner.dryfit.fit import fit_plan  # noqa: PLC0415 - dear, and only some rules need it

        return fit_plan(self.plan, self.wiring)
