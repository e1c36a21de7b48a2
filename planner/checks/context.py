"""What a rule may look at: the plan, and what is derived from it once for all rules."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from planner.checks.wording import Words
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.model.source import Retired
from planner.wiring.exchanges import Exchanges
from planner.wiring.graph import Node, Wiring, contact_node
from planner.wiring.joins import Joins, Pair
from planner.wiring.reach import Reach

if TYPE_CHECKING:
    from planner.dryfit.fit import EndFit
    from planner.dryfit.threading import Threading


@dataclass(frozen=True)
class Context:
    """One plan under check. `known_pinouts` are the library's records."""

    plan: Plan
    wiring: Wiring
    known_pinouts: tuple[PinoutRecord, ...] = ()

    def retired(self, record: PinoutRecord) -> Retired | None:
        """Return why a record is to be used no more, as it says itself or the library does."""
        known = (it.retired for it in self.known_pinouts if it.id == record.id)
        return record.retired or next(filter(None, known), None)

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

    def shortest(self, pairs: Iterable[Pair]) -> tuple[Node, ...]:
        """Return the shortest of the paths that join the contacts of any of the pairs."""
        ends = {
            (contact_node(one.end, one.contact), contact_node(other.end, other.contact))
            for one, other in pairs
        }
        paths = (self.joins.wiring.path(*pair) for pair in sorted(ends))
        return min(paths, key=lambda path: (len(path), path))

    @cached_property
    def words(self) -> Words:
        """The names of things in findings."""
        return Words(self.wiring)

    @cached_property
    def fit(self) -> "tuple[EndFit, ...]":
        """The dry fit of every end, computed when a rule first asks for it."""
        from planner.dryfit.fit import fit_plan  # noqa: PLC0415 - dear, and only some rules need it

        return fit_plan(self.plan, self.wiring)

    @cached_property
    def threading(self) -> "Threading":
        """How the parts get to their places, worked out when a rule first asks for it."""
        from planner.dryfit.threading import thread  # noqa: PLC0415 - only some rules need it

        return thread(self.plan)
